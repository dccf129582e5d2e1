import type { Id } from '../kernel/ids.ts';
import { isMovable, movePlaceOf, movingRecords, planInSetup } from '../plan/moves.ts';
import { type Plan, recordOf, recordsOf, setupsOf } from '../plan/plan.ts';
import { type DrawContext, floorIndex } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { deviceItem, fixtureItem, placedItem } from './gear.ts';
import { gripItems } from './grip.ts';
import { markItem, setPieceItem } from './scene.ts';

const faint = (p: Primitive): Primitive => {
  if (p.kind === 'symbol') return { ...p, role: 'ink-faint', broken: true };
  if (p.kind === 'text') return { ...p, role: 'ink-faint' };
  if (p.kind === 'image') return { ...p, opacity: p.opacity / 3 };
  const { fill: _fill, ...rest } = p;
  return p.stroke ? { ...rest, stroke: { ...p.stroke, role: 'ink-faint', dashMm: [1, 0.8] } } : rest;
};

const itemOfRecord = (ctx: DrawContext, id: Id): DisplayItem | undefined => {
  const r = ctx.plan.records.get(id);
  switch (r?.type) {
    case 'fixture':
      return fixtureItem(ctx, r);
    case 'device':
      return deviceItem(ctx, r);
    case 'box':
    case 'charger':
    case 'pack':
    case 'source':
      return placedItem(ctx, r);
    case 'mark':
      return markItem(ctx, r);
    case 'setPiece':
      return setPieceItem(ctx, r);
    case 'grip':
    case 'rigging':
      return gripItems(ctx).find((i) => i?.recordId === id);
    default:
      return undefined;
  }
};

/** Where a record is by a plan of one setup, for telling places apart. A unit on a stand is where its stand is. */
const placeKey = (plan: Plan, id: Id): string => {
  const r = plan.records.get(id);
  if (!isMovable(r)) return '';
  const stand =
    r.type === 'fixture' && r.support.on === 'stand' ? recordOf(plan, 'stand', r.support.standId) : undefined;
  return JSON.stringify([movePlaceOf(r), stand?.at]);
};

/**
 * What moves between setups, faintly and broken, at the places it has in the other setups, each with the scenes it is
 * there in. Not to be picked: the items belong to no record that can be.
 */
export const ghostItems = (ctx: DrawContext): readonly DisplayItem[] => {
  const moving = movingRecords(ctx.whole);
  if (moving.size === 0) return [];
  const out: DisplayItem[] = [];
  const places = new Map<string, { readonly item: DisplayItem; readonly words: string[] }>();
  for (const s of setupsOf(ctx.whole)) {
    if (s.id === ctx.setupId) continue;
    const plan = planInSetup(ctx.whole, s.id);
    const there: DrawContext = { ...ctx, plan, setupId: s.id, index: floorIndex(plan, ctx.floorId) };
    for (const id of moving) {
      const r = plan.records.get(id);
      if (!isMovable(r) || r.floorId !== ctx.floorId || r.hidden) continue;
      const key = placeKey(plan, id);
      if (key === placeKey(ctx.plan, id)) continue;
      const known = places.get(`${id}${key}`);
      if (known) known.words.push(s.scene || s.name);
      else {
        const item = itemOfRecord(there, id);
        if (item) places.set(`${id}${key}`, { item, words: [s.scene || s.name] });
      }
    }
  }
  let n = 0;
  for (const { item, words } of places.values()) {
    const r = ctx.plan.records.get(item.recordId);
    const unit = r?.type === 'fixture' ? `${r.unit} in ` : '';
    out.push({
      ...item,
      key: `ghost:${n++}:${item.recordId}`,
      recordId: `ghost:${item.recordId}`,
      layer: 'stands',
      primitives: [
        ...item.primitives.map(faint),
        {
          kind: 'text',
          xMm: (item.box.minX + item.box.maxX) / 2,
          yMm: item.box.maxY,
          dxPaperMm: 0,
          dyPaperMm: 2.6,
          text: `${unit}${words.join(', ')}`,
          capMm: 1.8,
          weight: 'regular',
          align: 'center',
          role: 'ink-faint',
        },
      ],
      box: { ...item.box, maxY: item.box.maxY + 4 * ctx.nominalScale },
    });
  }
  return out;
};

/** Whether anything on the plan stands elsewhere in another setup. */
export const hasGhosts = (plan: Plan): boolean => recordsOf(plan, 'move').length > 0;
