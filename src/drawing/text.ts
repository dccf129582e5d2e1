import { REGULAR_ADVANCES, SEMIBOLD_ADVANCES } from './font-metrics.generated.ts';

export type FontWeight = 'regular' | 'semibold';

/** Capital height of the embedded font, as a share of its em. */
export const CAP_PER_EM = 0.66;

/** Font size (em) in mm for a capital height in mm. */
export const emMm = (capMm: number): number => capMm / CAP_PER_EM;

const unpack = (packed: string): ReadonlyMap<number, number> => {
  const out = new Map<number, number>();
  for (const run of packed.split(';')) {
    const [start = '0', list = ''] = run.split(':');
    let code = Number(start);
    for (const item of list.split(',')) {
      const [width = '0', times = '1'] = item.split('*');
      for (let i = 0; i < Number(times); i++) out.set(code++, Number(width));
    }
  }
  return out;
};

const tables: Partial<Record<FontWeight, ReadonlyMap<number, number>>> = {};

const advancesOf = (weight: FontWeight): ReadonlyMap<number, number> => {
  const known = tables[weight];
  if (known) return known;
  const made = unpack(weight === 'regular' ? REGULAR_ADVANCES : SEMIBOLD_ADVANCES);
  tables[weight] = made;
  return made;
};

/** The mark that stands for a character the font has no shape for. */
export const MISSING = '□';

/** Whether the embedded font can show a character. */
export const canShow = (char: string): boolean => advancesOf('regular').has(char.codePointAt(0) ?? 0);

/**
 * Width of a line of text in mm, from the embedded font's advance widths, without kerning.
 * Characters the font lacks count as the mark that stands for them.
 */
export const textWidthMm = (text: string, capMm: number, weight: FontWeight = 'regular'): number => {
  const table = advancesOf(weight);
  const missing = table.get(0x25a1) ?? 600;
  let units = 0;
  for (const char of text) units += table.get(char.codePointAt(0) ?? 0) ?? missing;
  return (units / 1000) * emMm(capMm);
};

/** Text with every character the font lacks replaced by a visible mark, and those characters. */
export const showable = (text: string): { readonly text: string; readonly missing: readonly string[] } => {
  const missing: string[] = [];
  let out = '';
  for (const char of text.normalize('NFC')) {
    const code = char.codePointAt(0) ?? 0;
    if (code === 0x200d || (code >= 0xfe00 && code <= 0xfe0f)) continue;
    if (code < 0x20 || code === 0x7f) out += ' ';
    else if (canShow(char)) out += char;
    else {
      out += MISSING;
      missing.push(char);
    }
  }
  return { text: out, missing };
};

/** The text, shortened with an ellipsis where it is wider than `widthMm`. */
export const fitText = (text: string, capMm: number, weight: FontWeight, widthMm: number): string => {
  if (textWidthMm(text, capMm, weight) <= widthMm) return text;
  const chars = [...text];
  let low = 0;
  let high = chars.length;
  while (low < high) {
    const mid = Math.ceil((low + high) / 2);
    const cut = `${chars.slice(0, mid).join('').trimEnd()}…`;
    if (textWidthMm(cut, capMm, weight) <= widthMm) low = mid;
    else high = mid - 1;
  }
  return low === 0 ? '…' : `${chars.slice(0, low).join('').trimEnd()}…`;
};

/** A figure and its unit are never parted. */
const UNIT_AFTER = /(\d) (k?W|k?VA|m?A|ft|k?m|mm|cm|in|kg|lb|V|k?Hz|K|%|h|min|dB|dBm)(?![\p{L}\d])/gu;

/** The text broken into lines no wider than `widthMm`; words wider than a line are broken, lines past `maxLines` end in an ellipsis. */
export const wrapText = (
  text: string,
  capMm: number,
  weight: FontWeight,
  widthMm: number,
  maxLines = Number.POSITIVE_INFINITY,
): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  const fits = (s: string): boolean => textWidthMm(s, capMm, weight) <= widthMm;
  for (const glued of text
    .replace(UNIT_AFTER, '$1\u00a0$2')
    .split(/[ \t\n\r]+/)
    .filter(Boolean)) {
    const word = glued.replaceAll('\u00a0', ' ');
    const joined = line === '' ? word : `${line} ${word}`;
    if (fits(joined)) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const char of word) {
      if (!fits(line + char) && line !== '') {
        lines.push(line);
        line = '';
      }
      line += char;
    }
  }
  if (line !== '') lines.push(line);
  if (lines.length <= maxLines) return lines;
  const kept = lines.slice(0, maxLines);
  const rest = lines.slice(maxLines - 1).join(' ');
  kept[maxLines - 1] = fits(rest) ? rest : fitText(`${rest}`, capMm, weight, widthMm);
  return kept;
};
