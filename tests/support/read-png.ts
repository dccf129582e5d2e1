import { inflateSync } from 'node:zlib';

/** A picture as bytes of red, green, blue and alpha. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

const paeth = (a: number, b: number, c: number): number => {
  const p = a + b - c;
  const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  return pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
};

/** Reads a PNG of eight bits a sample in RGB or RGBA, not interlaced (PNG specification, third edition, 9 and 10). */
export const readPng = (png: Uint8Array): Pixels => {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const data: Uint8Array[] = [];
  let [width, height, samples] = [0, 0, 4];
  for (let at = 8; at < png.length; ) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...png.subarray(at + 4, at + 8));
    const body = png.subarray(at + 8, at + 8 + length);
    if (type === 'IHDR') {
      [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)];
      if (body[8] !== 8 || body[12] !== 0) throw new Error('a PNG of a sort this does not read');
      samples = body[9] === 6 ? 4 : 3;
    } else if (type === 'IDAT') data.push(body);
    at += length + 12;
  }
  const raw = inflateSync(Buffer.concat(data));
  const row = width * samples;
  const lines = new Uint8Array(row * height);
  const rgba = new Uint8Array(width * height * 4).fill(255);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (row + 1)] ?? 0;
    for (let x = 0; x < row; x++) {
      const left = x >= samples ? (lines[y * row + x - samples] ?? 0) : 0;
      const up = y > 0 ? (lines[(y - 1) * row + x] ?? 0) : 0;
      const both = x >= samples && y > 0 ? (lines[(y - 1) * row + x - samples] ?? 0) : 0;
      const add = [0, left, up, (left + up) >> 1, paeth(left, up, both)][filter] ?? 0;
      lines[y * row + x] = ((raw[y * (row + 1) + 1 + x] ?? 0) + add) & 255;
    }
    for (let x = 0; x < width; x++)
      for (let k = 0; k < samples; k++) rgba[(y * width + x) * 4 + k] = lines[y * row + x * samples + k] ?? 0;
  }
  return { width, height, rgba };
};
