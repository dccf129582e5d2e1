import { deflateSync } from 'node:zlib';

const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc = (bytes: Uint8Array): number => {
  let c = 0xffffffff;
  for (const b of bytes) c = (crcTable[(c ^ b) & 255] ?? 0) ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
};

const chunk = (type: string, data: Uint8Array): Buffer => {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const head = Buffer.alloc(4);
  head.writeUInt32BE(data.length);
  const tail = Buffer.alloc(4);
  tail.writeUInt32BE(crc(body));
  return Buffer.concat([head, body, tail]);
};

/** A PNG of 8-bit RGB (ISO/IEC 15948) whose pixels `color` gives; `claim` writes another size into its header. */
export const pngOf = (
  widthPx: number,
  heightPx: number,
  color: (x: number, y: number) => readonly [number, number, number] = (x) => [x & 255, 80, 40],
  claim: { readonly widthPx: number; readonly heightPx: number } = { widthPx, heightPx },
): Buffer => {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(claim.widthPx, 0);
  header.writeUInt32BE(claim.heightPx, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(heightPx * (1 + widthPx * 3));
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++) rows.set(color(x, y), y * (1 + widthPx * 3) + 1 + x * 3);
  return Buffer.concat([
    Buffer.from('\u0089PNG\r\n\u001a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
};

/** The head of a JPEG (ITU-T T.81) as far as its frame: no picture in it. */
export const jpegHead = (widthPx: number, heightPx: number): Buffer => {
  const frame = Buffer.from([0xff, 0xc0, 0, 11, 8, 0, 0, 0, 0, 1, 1, 0x11, 0]);
  frame.writeUInt16BE(heightPx, 5);
  frame.writeUInt16BE(widthPx, 7);
  return Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0]), frame]);
};
