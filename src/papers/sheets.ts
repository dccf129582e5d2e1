import scales from '../../shared/scales.json' with { type: 'json' };
import sheets from '../../shared/sheets.json' with { type: 'json' };
import type { LengthUnits } from '../kernel/units.ts';

/** A drawing sheet as it lies: width across, height down, millimetres. */
export interface Sheet {
  readonly id: string;
  readonly text: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface DrawingScale {
  /** 48 for 1:48. */
  readonly ratio: number;
  readonly text: string;
  readonly units: LengthUnits;
}

export const SHEET_IDS: readonly string[] = sheets.rows.map((r) => r.id);

/** Standard scales of a system of units, the largest drawing first. */
export const scalesFor = (units: LengthUnits): readonly DrawingScale[] =>
  scales.rows
    .filter((r) => r.units === units)
    .map((r) => ({ ratio: r.ratio, text: r.text, units }))
    .sort((a, b) => a.ratio - b.ratio);

/** A sheet by its name, `A3` or `ANSI B`, upper or lower case; undefined for one the table does not have. */
export const sheetOf = (id: string, landscape: boolean): Sheet | undefined => {
  const row = sheets.rows.find((r) => r.id.toLowerCase() === id.trim().toLowerCase());
  if (!row) return undefined;
  return {
    id: row.id,
    text: row.text,
    widthMm: landscape ? row.longMm : row.shortMm,
    heightMm: landscape ? row.shortMm : row.longMm,
  };
};

/** The sheet for schedules that go with a plot: the plot's own, or the handy size of its family where that is larger. */
export const listSheet = (plot: Sheet): Sheet => {
  const iso = /^A\d$/.test(plot.id);
  const handy = sheetOf(iso ? 'A3' : 'ANSI B', true);
  return handy && plot.widthMm * plot.heightMm > handy.widthMm * handy.heightMm * 1.05 ? handy : plot;
};

/** Words for a ratio: its standard name in these units, else `1:n`. */
export const scaleText = (ratio: number, units: LengthUnits): string =>
  scalesFor(units).find((s) => Math.abs(s.ratio - ratio) < 1e-9)?.text ?? `1:${Number(ratio.toFixed(2))}`;

/** The standard scale that shows the most in the room there is; the smallest of all where nothing fits. */
export const fittingScale = (
  units: LengthUnits,
  needMm: { readonly width: number; readonly height: number },
  roomMm: { readonly width: number; readonly height: number },
): DrawingScale => {
  const all = scalesFor(units);
  const fits = all.find(
    (s) => needMm.width / s.ratio <= roomMm.width && needMm.height / s.ratio <= roomMm.height,
  );
  const last = all.at(-1);
  if (!last) throw new Error('no scales in the table');
  return fits ?? last;
};
