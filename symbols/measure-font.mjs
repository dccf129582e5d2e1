// Reads the advance widths of the embedded font into src/drawing/font-metrics.generated.ts.
// Run: node symbols/measure-font.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const font = join(root, 'node_modules/@expo-google-fonts/source-sans-3');
const target = join(root, 'src/drawing/font-metrics.generated.ts');

const tableOf = (view, tag) => {
  const n = view.getUint16(4);
  for (let i = 0; i < n; i++) {
    const at = 12 + i * 16;
    const name = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
    if (name === tag) return view.getUint32(at + 8);
  }
  throw new Error(`no table ${tag}`);
};

/** Code point to advance width, from a format 4 character map and the horizontal metrics. */
export const advances = (bytes) => {
  const v = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const unitsPerEm = v.getUint16(tableOf(v, 'head') + 18);
  const metricCount = v.getUint16(tableOf(v, 'hhea') + 34);
  const hmtx = tableOf(v, 'hmtx');
  const advance = (glyph) => v.getUint16(hmtx + 4 * Math.min(glyph, metricCount - 1));
  const cmap = tableOf(v, 'cmap');
  let sub = 0;
  for (let i = 0; i < v.getUint16(cmap + 2); i++) {
    const at = cmap + v.getUint32(cmap + 4 + i * 8 + 4);
    if (v.getUint16(at) === 4) sub = at;
  }
  const segX2 = v.getUint16(sub + 6);
  const out = new Map();
  for (let i = 0; i < segX2; i += 2) {
    const end = v.getUint16(sub + 14 + i);
    const start = v.getUint16(sub + 16 + segX2 + i);
    const delta = v.getUint16(sub + 16 + 2 * segX2 + i);
    const rangeAt = sub + 16 + 3 * segX2 + i;
    const range = v.getUint16(rangeAt);
    for (let c = start; c <= end && c !== 0xffff; c++) {
      let glyph = range === 0 ? (c + delta) & 0xffff : v.getUint16(rangeAt + range + 2 * (c - start));
      if (range !== 0 && glyph !== 0) glyph = (glyph + delta) & 0xffff;
      if (glyph !== 0) out.set(c, Math.round((advance(glyph) * 1000) / unitsPerEm));
    }
  }
  return out;
};

/** Runs of code points as `start:w,w,w` with `*n` for repeats, joined by `;`. */
const packed = (map) => {
  const codes = [...map.keys()].sort((a, b) => a - b);
  const runs = [];
  let last = -2;
  for (const c of codes) {
    if (c !== last + 1) runs.push({ start: c, widths: [] });
    runs.at(-1).widths.push(map.get(c));
    last = c;
  }
  const squeeze = (w) => {
    const out = [];
    for (let i = 0; i < w.length; ) {
      let n = 1;
      while (w[i + n] === w[i]) n++;
      out.push(n > 1 ? `${w[i]}*${n}` : `${w[i]}`);
      i += n;
    }
    return out.join(',');
  };
  return runs.map((r) => `${r.start}:${squeeze(r.widths)}`).join(';');
};

export const metricsModule = () => {
  const read = (p) => advances(readFileSync(join(font, p)));
  const lines = [
    '// Made by symbols/measure-font.mjs from the font files. Advance widths per 1,000 units of the em.',
    `export const REGULAR_ADVANCES =\n  '${packed(read('400Regular/SourceSans3_400Regular.ttf'))}';`,
    `export const SEMIBOLD_ADVANCES =\n  '${packed(read('600SemiBold/SourceSans3_600SemiBold.ttf'))}';`,
  ];
  return `${lines.join('\n\n')}\n`;
};

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(target, metricsModule());
