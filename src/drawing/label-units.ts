import { compareNatural, type Id } from '../kernel/ids.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, recordOf } from '../plan/plan.ts';
import { kindLook, memoItem } from './context.ts';
import { drawnSize } from './gear.ts';
import {
  BUBBLE_CAP_MM,
  bubbleRadius,
  type LabelAsk,
  type LabelLine,
  type LabelSpot,
  placeLabel,
  placeOverStrokes,
  takeSpot,
} from './label-place.ts';
import { byHand, inBounds, itsTurn, labelItem, type Placer, push, type Steps } from './label-placer.ts';
import { line, paperPoint, spotDeps, spotPrimitives, unitFacts } from './label-text.ts';
import { fitText, showable } from './text.ts';

/** What became of the units' labels: full ones, those cut to the number, and those without room even for that. */
export interface LabelReport {
  readonly full: number;
  readonly numberOnly: readonly Id[];
  readonly leftOut: readonly Id[];
}

/** Labels of units: number in a bubble, name, use and facts as far as there is room. */
export function* unitLabels(p: Placer): Steps<LabelReport> {
  const { ctx, grid } = p;
  const n = ctx.nominalScale;
  let full = 0;
  const numberOnly: Id[] = [];
  const leftOut: Id[] = [];
  for (const f of ctx.index.fixtures) {
    if (!itsTurn(p, f.id)) continue;
    yield;
    const { at } = fixturePlace(ctx.plan, f);
    if (!inBounds(p, at)) continue;
    const kind = kindOf(ctx.plan, f.kindId);
    const look = kindLook(ctx.plan, f.kindId);
    const size = drawnSize(look, n);
    const unit = fitText(showable(f.unit || '?').text, BUBBLE_CAP_MM, 'regular', 9);
    const rMm = bubbleRadius(unit);
    const said = unitFacts(ctx, f);
    const facts = said === '' ? [] : [line(said)];
    const shows = ctx.options.labelFields;
    const name = shows.includes('kind') ? [line(look.name, 'semibold')] : [];
    const use = f.use && shows.includes('use') ? [line(f.use)] : [];
    const tags = p.tags.get(f.id) ?? [];
    const ask = (lines: readonly LabelLine[], maxMm: number): LabelAsk => ({
      at: paperPoint(at, n),
      halfMm: [size.lengthMm / 2 / n, size.widthMm / 2 / n],
      facingDeg: facingOf(ctx.plan, f),
      bubbleMm: rMm,
      lines,
      owner: f.id,
      bounds: p.bounds,
      maxMm,
    });
    const tiers: readonly (readonly [readonly LabelLine[], number])[] = [
      [[...name, ...use, ...facts, ...tags], 24],
      [[...(use.length > 0 ? use : name), ...facts, ...tags], 17],
      [tags, 30],
    ];
    let lines: readonly LabelLine[] = [];
    let spot: LabelSpot | undefined;
    for (const [tierLines, maxMm] of tiers) {
      lines = tierLines;
      spot = byHand(p, ask(lines, maxMm)) ?? placeLabel(grid, ask(lines, maxMm));
      if (spot) break;
    }
    // A label that was asked to say no more than the number is whole with it.
    const bare = name.length + use.length + facts.length === 0;
    if (spot && (bare || lines.length > tags.length)) full++;
    else {
      lines = tags;
      spot ??= placeOverStrokes(grid, ask(tags, 47));
      (spot ? numberOnly : leftOut).push(f.id);
    }
    if (!spot) continue;
    const placed = spot;
    takeSpot(grid, placed, f.id);
    push(
      p,
      memoItem(f, `label|${n}`, [unit, kind, ...spotDeps(placed, lines)], () =>
        labelItem(f.id, n, placed, spotPrimitives(placed, lines, n, { text: unit, rMm, dashed: false })),
      ),
    );
  }
  const byUnit = (ids: Id[]): readonly Id[] =>
    ids.sort((a, b) =>
      compareNatural(
        recordOf(ctx.plan, 'fixture', a)?.unit ?? '',
        recordOf(ctx.plan, 'fixture', b)?.unit ?? '',
      ),
    );
  return { full, numberOnly: byUnit(numberOnly), leftOut: byUnit(leftOut) };
}
