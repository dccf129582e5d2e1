import { figureKey, type Quantity, type SupplyEntity } from '../../derive/types.ts';
import { LEG_QUANTITIES } from '../../report/reader.ts';
import { CAP, type TextStyle, widthOf } from '../sketch.ts';
import type { OneLineContext } from './types.ts';

/** Key of a figure in the setup shown. */
export const hereKey = (c: OneLineContext, e: SupplyEntity, q: Quantity): string | undefined => {
  const id = c.r.assessment.setups[c.r.setupIndex]?.id;
  return Number.isFinite(c.r.here(e.key, q)) && id !== undefined ? figureKey(q, e.key, id) : undefined;
};

/** Key of a figure in its worst setup. */
export const worstKey = (c: OneLineContext, e: SupplyEntity, q: Quantity): string | undefined => {
  const { value, setupIndex } = c.r.assessment.figures.worst(e.key, q);
  const id = c.r.assessment.setups[setupIndex]?.id;
  return Number.isFinite(value) && id !== undefined ? figureKey(q, e.key, id) : undefined;
};

/** The leg that carries most, here or at worst. */
export const fullestLeg = (c: OneLineContext, e: SupplyEntity, which: 'here' | 'worst'): Quantity => {
  const value = (q: Quantity): number => {
    const v = c.r[which](e.key, q);
    return Number.isFinite(v) ? v : -1;
  };
  return e.legs
    .map((l) => LEG_QUANTITIES[l] ?? 'leg0A')
    .reduce((x, q) => (value(q) > value(x) ? q : x), LEG_QUANTITIES[e.legs[0] ?? 0] ?? 'leg0A');
};

/** Tells a screen where a figure stands that was drawn as a text of its own. Nothing on paper. */
export const markFigure = (
  c: OneLineContext,
  e: SupplyEntity,
  key: string | undefined,
  x: number,
  baseline: number,
  text: string,
  style: TextStyle = {},
): void => {
  if (!c.onFigure || key === undefined) return;
  const cap = style.capMm ?? CAP.note;
  const width = Math.min(style.maxMm ?? Number.POSITIVE_INFINITY, widthOf(text, style));
  const minX = style.align === 'right' ? x - width : x;
  c.onFigure({
    key,
    entityKey: e.key,
    recordId: e.recordId,
    text,
    box: { minX: minX - 0.4, minY: baseline - cap - 0.7, maxX: minX + width + 0.4, maxY: baseline + 0.8 },
  });
};

/** A row of text as it was drawn. */
export interface DrawnRow {
  readonly text: string;
  readonly x: number;
  readonly baseline: number;
}

/** The same for figures within rows of text: each is looked for after the one before. */
export const markFigures = (
  c: OneLineContext,
  e: SupplyEntity,
  rows: readonly DrawnRow[],
  figures: readonly { readonly text: string; readonly key: string | undefined }[],
): void => {
  let row = 0;
  let from = 0;
  for (const f of figures) {
    if (f.text === '') continue;
    for (let i = row; i < rows.length; i++) {
      const r = rows[i];
      const at = r?.text.indexOf(f.text, i === row ? from : 0) ?? -1;
      if (!r || at < 0) continue;
      markFigure(c, e, f.key, r.x + widthOf(r.text.slice(0, at)), r.baseline, f.text);
      [row, from] = [i, at + f.text.length];
      break;
    }
  }
};
