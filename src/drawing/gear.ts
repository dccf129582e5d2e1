import { add, direction, type Point, scale } from '../kernel/geometry.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { outletSockets, outletSymbol } from '../plan/outlet-sockets.ts';
import { partsOf } from '../plan/part-levels.ts';
import { armDirectionDeg, armOf, fixturePlace, kindOf, recordOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type {
  Ballast,
  Box,
  Charger,
  Device,
  Fixture,
  FloorPack,
  Outlet,
  Source,
  Stand,
} from '../plan/records/index.ts';
import { burns } from './beams.ts';
import { type DrawContext, kindLook, memoItem } from './context.ts';
import type { ColorRole, DisplayItem, Primitive } from './display-list.ts';
import { outlineOf, outlinePrims } from './outline.ts';
import { partColumns, partPrims } from './parts.ts';
import { itemOf, linePrim, pen, WEIGHT } from './prims.ts';
import { symbolShape } from './symbols.ts';

interface Placement {
  readonly symbolId: string;
  readonly at: Point;
  readonly rotationDeg: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly broken?: boolean;
  readonly role?: ColorRole;
}

const symbolPrim = (p: Placement): Primitive => ({
  kind: 'symbol',
  symbolId: p.symbolId,
  xMm: p.at.xMm,
  yMm: p.at.yMm,
  rotationDeg: p.rotationDeg,
  lengthMm: p.lengthMm,
  widthMm: p.widthMm,
  broken: p.broken ?? false,
  role: p.role ?? 'gear',
});

/** Least size of a fixture on paper, across either way and over all, in millimetres. */
const LEAST_MM = 1.3;
const LEAST_OVERALL_MM = 2.4;

/**
 * The size a fixture is drawn at: its true size, except that bulbs and thin tubes are kept large enough to be read.
 */
export const drawnSize = (
  look: { readonly lengthMm: number; readonly widthMm: number },
  nominal: number,
): { readonly lengthMm: number; readonly widthMm: number } => {
  const lengthMm = Math.max(1, look.lengthMm);
  const widthMm = Math.max(1, look.widthMm);
  const k = Math.max(1, (LEAST_OVERALL_MM * nominal) / Math.max(lengthMm, widthMm));
  return {
    lengthMm: Math.max(lengthMm * k, LEAST_MM * nominal),
    widthMm: Math.max(widthMm * k, LEAST_MM * nominal),
  };
};

/** A fixture as its symbol, or the top view it brought along, at true size; broken where it is off in the shown setup. */
export const fixtureItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const { at } = fixturePlace(ctx.plan, f);
  const facing = facingOf(ctx.plan, f);
  const broken = !burns(ctx, f);
  const kind = kindOf(ctx.plan, f.kindId);
  const look = kindLook(ctx.plan, f.kindId);
  const parts = ctx.setupId === undefined ? undefined : partsOf(ctx.plan, ctx.setupId, f.id);
  return memoItem(f, `fixture|${ctx.nominalScale}`, [at.xMm, at.yMm, facing, broken, kind, parts], () => {
    const outline = outlineOf(kind);
    const size = drawnSize(look, ctx.nominalScale);
    const prims = outline
      ? outlinePrims(outline, at, facing, size.widthMm / Math.max(1, look.widthMm), broken)
      : [symbolPrim({ ...look, ...size, at, rotationDeg: facing, broken })];
    const columns = parts && partColumns(ctx, f);
    const lit = columns ? partPrims(columns, at, facing, size) : [];
    return itemOf(`fixture:${f.id}`, f.id, 'gear', ctx.nominalScale, [...prims, ...lit]);
  });
};

/** A stand as the circle its legs take up, with its middle. */
export const standItem = (ctx: DrawContext, s: Stand): DisplayItem | undefined => {
  const kind = kindOf(ctx.plan, s.kindId, 'stand');
  return memoItem(s, `stand|${ctx.nominalScale}`, [kind], () => {
    const r = (kind?.legCircleMm ?? 1000) / 2;
    const ring: Primitive = {
      kind: 'circle',
      xMm: s.at.xMm,
      yMm: s.at.yMm,
      rMm: r,
      space: 'floor',
      stroke: pen('stand', WEIGHT.thin, [1.2, 0.8]),
    };
    const legs = [0, 120, 240].map((deg) => {
      const d = direction(s.rotationDeg + deg);
      return linePrim(add(s.at, scale(d, r * 0.86)), add(s.at, scale(d, r)), pen('stand', WEIGHT.thin));
    });
    return itemOf(`stand:${s.id}`, s.id, 'stands', ctx.nominalScale, [ring, ...legs]);
  });
};

/** The arm that puts a fixture out from its stand, with its counterweight. */
export const armItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const stand = f.support.on === 'stand' ? recordOf(ctx.plan, 'stand', f.support.standId) : undefined;
  const arm = f.accessories?.length ? armOf(ctx.plan, f) : undefined;
  if (!stand || !arm || !(arm.outMm > 0)) return undefined;
  const deg = armDirectionDeg(ctx.plan, f, stand.at);
  return memoItem(f, `arm|${ctx.nominalScale}`, [stand, arm.kind, deg], () => {
    const shape = symbolShape(arm.kind.symbol);
    const { counterKg = 0, counterMm = 0 } = f.arm ?? {};
    const weight = add(stand.at, scale(direction(deg), -Math.max(0, counterMm)));
    return itemOf(`arm:${f.id}`, f.id, 'stands', ctx.nominalScale, [
      symbolPrim({
        symbolId: arm.kind.symbol,
        at: stand.at,
        rotationDeg: deg,
        // The symbol's tip comes to the fixture; what lies behind its mounting point goes along.
        lengthMm: (arm.outMm * shape.lengthMm) / Math.max(1, shape.box[2]),
        widthMm: Math.max(arm.kind.sizeMm.widthMm, LEAST_MM * ctx.nominalScale),
        role: 'stand',
      }),
      ...(counterKg > 0 && counterMm > 0
        ? [
            linePrim(stand.at, weight, pen('stand', WEIGHT.tick)),
            {
              kind: 'circle' as const,
              xMm: weight.xMm,
              yMm: weight.yMm,
              rMm: Math.max(90, 0.7 * ctx.nominalScale),
              space: 'floor' as const,
              fill: { role: 'stand' as const },
            },
          ]
        : []),
    ]);
  });
};

/** A ballast with the head cable to its fixture. */
export const ballastItem = (ctx: DrawContext, b: Ballast): DisplayItem | undefined => {
  const head = recordOf(ctx.plan, 'fixture', b.fixtureId);
  const to = head ? fixturePlace(ctx.plan, head).at : undefined;
  const kind = kindOf(ctx.plan, b.kindId);
  return memoItem(b, `ballast|${ctx.nominalScale}`, [kind, to?.xMm, to?.yMm], () =>
    itemOf(`ballast:${b.id}`, b.id, 'gear', ctx.nominalScale, [
      symbolPrim({ ...kindLook(ctx.plan, b.kindId), at: b.at, rotationDeg: b.rotationDeg }),
    ]),
  );
};

/** The head cable of a ballast, on the cable layer so that symbols stand over it. */
export const headCableItem = (ctx: DrawContext, b: Ballast): DisplayItem | undefined => {
  const head = recordOf(ctx.plan, 'fixture', b.fixtureId);
  if (!head || head.floorId !== ctx.floorId) return undefined;
  const to = fixturePlace(ctx.plan, head).at;
  return memoItem(b, `head-cable|${ctx.nominalScale}`, [to.xMm, to.yMm], () =>
    itemOf(`head-cable:${b.id}`, b.id, 'cables', ctx.nominalScale, [
      linePrim(b.at, to, pen('cable', WEIGHT.cable)),
    ]),
  );
};

/** The lead from a pack on the floor to a unit it feeds: direct current, so dashed. */
export const packLeadItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const pack = f.packFrom && recordOf(ctx.plan, 'pack', f.packFrom.packId);
  if (!f.onPacks || !pack || pack.floorId !== ctx.floorId || f.floorId !== ctx.floorId) return undefined;
  const to = fixturePlace(ctx.plan, f).at;
  return memoItem(f, `pack-lead|${ctx.nominalScale}`, [pack.at.xMm, pack.at.yMm, to.xMm, to.yMm], () =>
    itemOf(`pack-lead:${f.id}`, f.id, 'cables', ctx.nominalScale, [
      linePrim(pack.at, to, pen('cable', WEIGHT.cable, [1.6, 0.8])),
    ]),
  );
};

/** A distribution box, a charger, a pack or a source at true size. */
export const placedItem = (
  ctx: DrawContext,
  r: Box | Charger | FloorPack | Source,
): DisplayItem | undefined => {
  const kind = kindOf(ctx.plan, r.kindId);
  return memoItem(r, `placed|${ctx.nominalScale}`, [kind], () =>
    itemOf(`${r.type}:${r.id}`, r.id, 'gear', ctx.nominalScale, [
      symbolPrim({ ...kindLook(ctx.plan, r.kindId), at: r.at, rotationDeg: r.rotationDeg }),
    ]),
  );
};

/** A wall outlet, single or duplex, its back on the wall: a sign, so never smaller than readable on paper. */
export const outletItem = (ctx: DrawContext, o: Outlet): DisplayItem | undefined =>
  memoItem(o, `outlet|${ctx.nominalScale}`, [], () => {
    const symbolId = outletSymbol(outletSockets(o).count);
    const shape = symbolShape(symbolId);
    const k = Math.max(135, 2 * ctx.nominalScale) / shape.lengthMm;
    const back = scale(direction(o.rotationDeg), -shape.box[0] * k);
    return itemOf(`outlet:${o.id}`, o.id, 'gear', ctx.nominalScale, [
      symbolPrim({
        symbolId,
        at: add(o.at, back),
        rotationDeg: o.rotationDeg,
        lengthMm: shape.lengthMm * k,
        widthMm: shape.widthMm * k,
      }),
    ]);
  });

/** A piece of control gear where it stands, on its stand or its fixture. */
export const deviceItem = (ctx: DrawContext, d: Device): DisplayItem | undefined => {
  const at = placeOf(ctx.plan, d.id)?.at ?? d.at;
  const kind = kindOf(ctx.plan, d.kindId);
  const look = kindLook(ctx.plan, d.kindId);
  return memoItem(d, `device|${ctx.nominalScale}`, [kind, at.xMm, at.yMm], () =>
    itemOf(`device:${d.id}`, d.id, 'gear', ctx.nominalScale, [
      symbolPrim({ ...look, ...drawnSize(look, ctx.nominalScale), at, rotationDeg: d.rotationDeg }),
    ]),
  );
};
