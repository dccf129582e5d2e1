const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** Length and CRC-32 of a text's UTF-16 code units, low byte first: finds any changed bit and any cut. */
export const checksum = (text: string): string => {
  let c = 0xffffffff;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    c = (TABLE[(c ^ unit) & 0xff] ?? 0) ^ (c >>> 8);
    c = (TABLE[(c ^ (unit >>> 8)) & 0xff] ?? 0) ^ (c >>> 8);
  }
  return `${text.length.toString(36)}-${((c ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0')}`;
};
