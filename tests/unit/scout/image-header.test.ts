import { describe, expect, test } from 'vitest';
import { isTooLargeToDecode, readImageHeader } from '../../../src/plan/image-header.ts';
import { jpegHead, pngOf } from '../../support/pictures.ts';

const webp = (sort: string, body: readonly number[]): Buffer => {
  const data = Buffer.alloc(40);
  data.write('RIFF', 0, 'latin1');
  data.write('WEBP', 8, 'latin1');
  data.write(sort, 12, 'latin1');
  data.set(body, 20);
  return data;
};

describe('size of a picture by its header', () => {
  test('PNG, JPEG and the three sorts of WebP', () => {
    expect(readImageHeader(pngOf(31, 17))).toEqual({ mediaType: 'image/png', widthPx: 31, heightPx: 17 });
    expect(readImageHeader(jpegHead(4032, 3024))).toEqual({
      mediaType: 'image/jpeg',
      widthPx: 4032,
      heightPx: 3024,
    });
    // RFC 9649: extended sizes are less one in 24 bits; lossy 14 bits after the start code; lossless less one in 14 bits each.
    const size = { mediaType: 'image/webp', widthPx: 1000, heightPx: 700 };
    expect(readImageHeader(webp('VP8X', [0, 0, 0, 0, 0xe7, 3, 0, 0xbb, 2, 0]))).toEqual(size);
    expect(readImageHeader(webp('VP8 ', [0, 0, 0, 0x9d, 1, 0x2a, 0xe8, 3, 0xbc, 2]))).toEqual(size);
    const bits = 999 | (699 << 14);
    expect(
      readImageHeader(
        webp('VP8L', [0x2f, bits & 255, (bits >> 8) & 255, (bits >> 16) & 255, (bits >> 24) & 255]),
      ),
    ).toEqual(size);
  });

  test('nothing for what is no picture, is cut off, or has no size', () => {
    expect(readImageHeader(new Uint8Array(0))).toBeUndefined();
    expect(readImageHeader(Buffer.from('%PDF-1.7 and more of it'))).toBeUndefined();
    expect(readImageHeader(pngOf(31, 17).subarray(0, 20))).toBeUndefined();
    expect(readImageHeader(pngOf(4, 4, undefined, { widthPx: 0, heightPx: 4 }))).toBeUndefined();
    expect(readImageHeader(jpegHead(10, 10).subarray(0, 12))).toBeUndefined();
    expect(readImageHeader(Buffer.from([0xff, 0xd8, 0xff, 0xd9]))).toBeUndefined();
  });

  test('300 megapixels are too large to decode, and so is a line of pixels a mile long; 100 are not', () => {
    expect(isTooLargeToDecode({ widthPx: 20000, heightPx: 15000 })).toBe(true);
    expect(isTooLargeToDecode({ widthPx: 60000, heightPx: 10 })).toBe(true);
    expect(isTooLargeToDecode({ widthPx: 12000, heightPx: 8300 })).toBe(false);
  });
});
