import type { Id } from '../kernel/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { recordsOf } from '../plan/plan.ts';
import { type DrawFloor, drawContext } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { openingItem } from './openings.ts';
import { featureItem } from './outdoors.ts';
import { WEIGHT } from './prims.ts';
import { setPieceItem } from './scene.ts';
import { wallItem } from './walls.ts';

const faint = (p: Primitive): Primitive[] => {
  switch (p.kind) {
    case 'path': {
      const { fill, stroke, ...bare } = p;
      const shade =
        fill && fill.role !== 'paper' && !fill.hatch
          ? { fill: { role: 'ink-faint' as const, opacity: 0.35 } }
          : {};
      const line = stroke
        ? {
            stroke: {
              ...stroke,
              role: 'ink-faint' as const,
              weightMm: Math.min(stroke.weightMm, WEIGHT.thin),
            },
          }
        : {};
      return 'fill' in shade || 'stroke' in line ? [{ ...bare, ...shade, ...line }] : [];
    }
    case 'circle':
      return p.stroke ? [{ ...p, stroke: { ...p.stroke, role: 'ink-faint' } }] : [];
    case 'text':
      return [{ ...p, role: 'ink-faint' }];
    default:
      return [];
  }
};

const known = new WeakMap<DisplayItem, DisplayItem>();

const beneath = (item: DisplayItem): DisplayItem => {
  let made = known.get(item);
  if (!made) {
    made = {
      ...item,
      key: `beneath:${item.key}`,
      layer: 'underlay',
      primitives: item.primitives.flatMap(faint),
    };
    known.set(item, made);
  }
  return made;
};

/** Walls, openings, set and outdoors of another floor, faint, on the underlay's layer: to draw one storey over another. */
export const beneathItems = (plan: Plan, what: DrawFloor, floorId: Id): readonly DisplayItem[] => {
  const ctx = drawContext(plan, { floorId, setupId: what.setupId, nominalScale: what.nominalScale });
  const shown = (r: { readonly hidden?: boolean | undefined }): boolean => !r.hidden;
  return [
    ...ctx.index.architecture.walls.filter(shown).map((w) => wallItem(ctx, w)),
    ...[...ctx.index.architecture.openings.values()]
      .flat()
      .filter(shown)
      .map((o) => openingItem(ctx, o)),
    ...recordsOf(ctx.plan, 'setPiece')
      .filter((s) => s.floorId === floorId && shown(s))
      .map((s) => setPieceItem(ctx, s)),
    ...recordsOf(ctx.plan, 'feature')
      .filter((f) => f.floorId === floorId && shown(f))
      .map((f) => featureItem(ctx, f)),
  ].flatMap((i) => (i ? [beneath(i)] : []));
};
