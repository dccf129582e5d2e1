import { cellsWord } from '../derive/labels.ts';
import { type Point, scale } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { formatLength, formatWatts } from '../kernel/units.ts';
import { fixturePlace, kindOf, recordOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { type DrawContext, type LabelField, pluggedAt } from './context.ts';
import type { Primitive } from './display-list.ts';
import {
  BUBBLE_CAP_MM,
  LABEL_CAP_MM,
  LABEL_PITCH_MM,
  type LabelLine,
  type LabelSpot,
  lineWidthMm,
  SIGN_MM,
} from './label-place.ts';
import { linePrim, pen, polyPath, textPrim, WEIGHT } from './prims.ts';
import { severityPrims } from './severity.ts';
import { fitText, showable } from './text.ts';

/** Longest line of a label on paper. */
export const MAX_LINE_MM = 46;

export const line = (text: string, weight: LabelLine['weight'] = 'regular', soft = false): LabelLine => ({
  text: fitText(showable(text).text, LABEL_CAP_MM, weight, MAX_LINE_MM),
  weight,
  soft,
});

/** The chosen facts of a unit in one line: `K1·4 · U2 101 · 7′-6″`. */
export const unitFacts = (ctx: DrawContext, f: Fixture): string => {
  const fields = ctx.options.labelFields;
  const when = (field: LabelField, text: () => string): string => (fields.includes(field) ? text() : '');
  const universe = f.patch ? recordOf(ctx.plan, 'universe', f.patch.universeId) : undefined;
  const address = f.patch && universe ? `U${universe.number} ${f.patch.address}` : '';
  const power = cellsWord(ctx.plan, f) ?? pluggedAt(ctx, f.id) ?? '';
  return [
    when('channel', () => (f.channel ? `ch ${f.channel}` : '')),
    when('watts', () => {
      const load = kindOf(ctx.plan, f.kindId, 'fixture')?.load;
      return load ? formatWatts(load.wattsW) : '';
    }),
    when('power', () => power),
    when('address', () => address),
    when('gel', () => f.gel),
    when('height', () => formatLength(fixturePlace(ctx.plan, f).heightMm, ctx.settings.lengthUnits)),
  ]
    .filter(Boolean)
    .join(' · ');
};

export const paperPoint = (p: Point, nominal: number): Point => scale(p, 1 / nominal);

export const spotPrimitives = (
  spot: LabelSpot,
  lines: readonly LabelLine[],
  nominal: number,
  bubble: { readonly text: string; readonly rMm: number; readonly dashed: boolean } | undefined,
): Primitive[] => {
  const at = scale(spot.at, nominal);
  const prims: Primitive[] = [];
  const block = lines.length > 0 && spot.patched ? spot.boxes.at(-1) : undefined;
  if (block) {
    const corner = (x: number, y: number): Point => scale({ xMm: x, yMm: y }, nominal);
    prims.push({
      kind: 'path',
      d: polyPath(
        [
          corner(block.minX, block.minY),
          corner(block.maxX, block.minY),
          corner(block.maxX, block.maxY),
          corner(block.minX, block.maxY),
        ],
        true,
      ),
      fill: { role: 'paper' },
    });
  }
  if (spot.leader) {
    const [a, b] = spot.leader;
    prims.push(linePrim(scale(a, nominal), scale(b, nominal), pen('ink', WEIGHT.thin)));
    prims.push({
      kind: 'circle',
      xMm: b.xMm * nominal,
      yMm: b.yMm * nominal,
      rMm: 0.3,
      space: 'paper',
      fill: { role: 'ink' },
    });
  }
  if (bubble) {
    prims.push({
      kind: 'circle',
      xMm: at.xMm,
      yMm: at.yMm,
      rMm: bubble.rMm,
      space: 'paper',
      stroke: pen('ink', WEIGHT.furniture),
      fill: { role: 'paper' },
    });
    prims.push(textPrim(at, 0, BUBBLE_CAP_MM / 2, bubble.text, { capMm: BUBBLE_CAP_MM, align: 'center' }));
  }
  lines.forEach((l, i) => {
    const dy = spot.firstBaselineDy + i * LABEL_PITCH_MM;
    const left = spot.align === 'left';
    if (l.severity) {
      const dx = left ? spot.textDx + 1.4 : spot.textDx - lineWidthMm(l) + 1.4;
      prims.push(...severityPrims(at, dx, dy - LABEL_CAP_MM / 2, l.severity, nominal));
    }
    prims.push(
      textPrim(at, spot.textDx + (l.severity && left ? SIGN_MM : 0), dy, l.text, {
        capMm: LABEL_CAP_MM,
        weight: l.weight,
        align: spot.align,
        role: l.severity ?? (l.soft ? 'ink-soft' : 'ink'),
      }),
    );
  });
  return prims;
};

/** What a memoised label depends on: where it went and what it says. */
export const spotDeps = (spot: LabelSpot, lines: readonly LabelLine[]): unknown[] => [
  spot.at.xMm,
  spot.at.yMm,
  spot.textDx,
  spot.firstBaselineDy,
  spot.align,
  spot.patched,
  ...(spot.leader ? [spot.leader[0].xMm, spot.leader[0].yMm, spot.leader[1].xMm, spot.leader[1].yMm] : []),
  ...lines.flatMap((l) => [l.text, l.severity]),
];

/** The record on this floor whose label speaks for a record: a cable's or ballast's is that of what it feeds. */
const labelledFor = (ctx: DrawContext, id: Id): Id | undefined => {
  const r = ctx.plan.records.get(id);
  if (r?.type === 'cable') return labelledFor(ctx, r.to.recordId);
  if (r?.type === 'ballast') return labelledFor(ctx, r.fixtureId);
  const labelled = r?.type === 'fixture' || r?.type === 'box' || r?.type === 'source' || r?.type === 'outlet';
  return labelled && r.floorId === ctx.floorId ? id : undefined;
};

/** Tags of stops and warnings, at the first record of each that carries a label on this floor. */
export const findingTags = (ctx: DrawContext): ReadonlyMap<Id, readonly LabelLine[]> => {
  const tags = new Map<Id, LabelLine[]>();
  if (!ctx.options.findings) return tags;
  for (const f of ctx.assessment?.findings ?? []) {
    if (f.severity === 'note') continue;
    const at = f.recordIds.map((id) => labelledFor(ctx, id)).find((id) => id !== undefined);
    if (at === undefined) continue;
    const tag: LabelLine = {
      text: `${f.severity.toUpperCase()} ${f.number}`,
      weight: 'semibold',
      severity: f.severity,
    };
    const list = tags.get(at);
    if (list) list.push(tag);
    else tags.set(at, [tag]);
  }
  // More than two tags at one place are summed up; the schedule has them all.
  for (const [id, list] of tags) {
    if (list.length > 2) {
      tags.set(id, [
        ...list.slice(0, 2),
        { text: `and ${list.length - 2} more`, weight: 'regular', soft: true },
      ]);
    }
  }
  return tags;
};
