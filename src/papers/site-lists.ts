import { cablesInCrossings, rampPieces } from '../derive/crossings.ts';
import { needsTerminator } from '../derive/data-lines.ts';
import { overheadLimit } from '../derive/overhead.ts';
import { photosOfNote, photosOn } from '../plan/edits/photos.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { riggingRows } from '../report/rigging-rows.ts';
import { cableLines } from './cable-order.ts';
import { datumOf } from './datum.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';
import type { SetInfo } from './sheet-info.ts';

const floorName = (plan: Plan, id: string): string => recordOf(plan, 'floor', id)?.name ?? '';

/** Where a spot is, in metres to the right of and up from the datum of its floor. */
const placeOf = (plan: Plan, r: { floorId: string; at: { xMm: number; yMm: number } }): readonly number[] => {
  const datum = datumOf(plan, r.floorId);
  return [rounded((r.at.xMm - datum.xMm) / 1000, 3), rounded((datum.yMm - r.at.yMm) / 1000, 3)];
};

/** Ramps and flown crossings with what they take, and the pieces of ramp to order. */
export const crossingTable = (info: SetInfo): ListTable => {
  const taken = cablesInCrossings(info.plan);
  return {
    name: 'crossings',
    head: [
      ...[
        'how',
        'floor',
        'right m',
        'up m',
        'length m',
        'lowest cable m',
        'channels',
        'cables',
        'ramp pieces',
      ],
    ],
    rows: recordsOf(info.plan, 'crossing').map((x) => {
      const cables = taken.get(x.id)?.size ?? 0;
      const ramp = x.how === 'ramp';
      return [
        x.how,
        floorName(info.plan, x.floorId),
        ...placeOf(info.plan, x),
        rounded(x.lengthMm / 1000, 3),
        !ramp && x.heightMm > 0 ? rounded(x.heightMm / 1000, 3) : Number.NaN,
        ramp ? x.channels : Number.NaN,
        cables,
        ramp ? rampPieces(x, cables) : Number.NaN,
      ];
    }),
  };
};

export const noteTable = (info: SetInfo): ListTable => ({
  name: 'notes',
  head: ['note', 'says', 'floor', 'right m', 'up m', 'photos'],
  rows: recordsOf(info.plan, 'mark')
    .filter((m) => m.what === 'note' && !m.hidden)
    .map((m) => [
      m.name,
      m.text ?? m.notes ?? '',
      floorName(info.plan, m.floorId),
      ...placeOf(info.plan, m),
      photosOfNote(info.plan, m)
        .map((p) => p.label)
        .join(' '),
    ]),
});

export const photoTable = (info: SetInfo): ListTable => ({
  name: 'photos',
  head: ['photo', 'caption', 'floor', 'right m', 'up m', 'facing degrees'],
  rows: photosOn(info.plan)
    .filter((p) => !p.hidden)
    .map((p) => [
      p.label,
      p.caption,
      floorName(info.plan, p.floorId),
      ...placeOf(info.plan, p),
      p.facingDeg ?? Number.NaN,
    ]),
});

/** Exits, fire lanes and overhead lines, with the distance to keep from a line and where it is from. */
export const clearTable = (info: SetInfo): ListTable => ({
  name: 'clear',
  head: ['what', 'label', 'floor', 'lowest wire m', 'volts V', 'distance to keep m', 'from'],
  rows: recordsOf(info.plan, 'feature')
    .filter((f) => f.what === 'exit' || f.what === 'fire-lane' || f.what === 'power-line')
    .map((f) => {
      const line = f.what === 'power-line' ? overheadLimit(info.plan, f.voltsV) : undefined;
      return [
        line ? 'overhead line' : f.what.replace('-', ' '),
        f.label,
        floorName(info.plan, f.floorId),
        line && f.heightMm > 0 ? rounded(f.heightMm / 1000, 3) : Number.NaN,
        line ? (f.voltsV ?? Number.NaN) : Number.NaN,
        line ? rounded(line.needMm / 1000, 3) : Number.NaN,
        line ? `${line.limit.source}, ${line.limit.edition}` : '',
      ];
    }),
});

/** Plug-and-socket joints between the pieces of runs, by cable, and terminators for data lines. */
export const jointTable = (info: SetInfo): ListTable => {
  const { lines, joints } = cableLines(info);
  const names = new Map(lines.map((l) => [l.kindId, l.name]));
  const ends = recordsOf(info.plan, 'line').filter((l) => l.terminated && needsTerminator(info.plan, l));
  return {
    name: 'joints',
    head: ['cable', 'joints', 'terminators'],
    rows: [
      ...[...joints]
        .filter(([, n]) => n > 0)
        .map(([kindId, n]) => [names.get(kindId) ?? 'kind not in the plan', n, Number.NaN]),
      ...(ends.length > 0 ? [['data lines, 120 Ω', Number.NaN, ends.length]] : []),
    ],
  };
};

/** Frames and flags at each speed of wind of the table; a factor that nothing bounds is empty. */
export const sailTable = (info: SetInfo): ListTable => ({
  name: 'frames',
  head: ['frame', 'area m²', 'lines', 'wind m/s', 'force N', 'tipping factor', 'pull on a line N'],
  rows: riggingRows(info.plan).sails.flatMap((s) =>
    s.speeds.map((v) => [
      s.label,
      rounded(s.areaM2, 2),
      s.guys,
      rounded(v.speedMps, 1),
      rounded(v.forceN, 0),
      rounded(v.tipFactor, 2),
      rounded(v.guyN, 0),
    ]),
  ),
});
