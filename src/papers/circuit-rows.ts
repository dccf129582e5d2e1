import type { SupplyEntity } from '../derive/types.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';
import type { Fixture } from '../plan/records/index.ts';
import type { Reader } from './figures.ts';

/** A load on a way, with the cable that feeds it. */
export interface CircuitLoad {
  readonly load: SupplyEntity;
  readonly cable: SupplyEntity | undefined;
  readonly fixture: Fixture | undefined;
  /** How many other loads it is plugged through: 0 straight from the outlet. */
  readonly depth: number;
  /** The wall outlet on the way, when there is one. */
  readonly outlet: SupplyEntity | undefined;
}

/** One protected way with what hangs on it. */
export interface Circuit {
  readonly way: SupplyEntity;
  readonly wayLabel: string;
  readonly breaker: string;
  readonly loads: readonly CircuitLoad[];
  readonly boxes: readonly { readonly box: SupplyEntity; readonly cable: SupplyEntity | undefined }[];
}

/** A source or box with its ways; `feed` is the cable it is fed by. */
export interface Panel {
  readonly owner: SupplyEntity;
  readonly source: SupplyEntity;
  readonly feed: SupplyEntity | undefined;
  readonly circuits: readonly Circuit[];
  readonly spare: readonly Circuit[];
}

const fixtureOf = (plan: Plan, load: SupplyEntity): Fixture | undefined => {
  const ballast = recordOf(plan, 'ballast', load.recordId);
  return recordOf(plan, 'fixture', ballast ? ballast.fixtureId : load.recordId);
};

const collect = (plan: Plan, r: Reader, start: SupplyEntity): Pick<Circuit, 'loads' | 'boxes'> => {
  const loads: CircuitLoad[] = [];
  const boxes: { box: SupplyEntity; cable: SupplyEntity | undefined }[] = [];
  const walk = (
    e: SupplyEntity,
    cable: SupplyEntity | undefined,
    outlet: SupplyEntity | undefined,
    depth: number,
  ): void => {
    for (const child of r.children(e.key)) {
      if (child.what === 'box') boxes.push({ box: child, cable });
      else if (child.what === 'cable') walk(child, child, outlet, depth);
      else if (child.what === 'outlet') walk(child, cable, child, depth);
      else if (child.what === 'load') {
        loads.push({ load: child, cable, fixture: fixtureOf(plan, child), depth, outlet });
        walk(child, undefined, outlet, depth + 1);
      }
    }
  };
  walk(start, undefined, undefined, 0);
  return { loads, boxes };
};

const circuitOf = (plan: Plan, r: Reader, way: SupplyEntity): Circuit => {
  const w = waysOf(plan, way.recordId).find((x) => x.id === way.wayId);
  return {
    way,
    wayLabel: w?.label ?? way.wayId ?? '',
    breaker: w ? `${w.breakerA} A ${w.poles}P${w.curve === 'na' ? '' : ` ${w.curve}`}` : '',
    ...collect(plan, r, way),
  };
};

/** Sources and boxes of the supply in tree order, each with its ways. */
export const panelsOf = (plan: Plan, r: Reader): readonly Panel[] => {
  const panels: Panel[] = [];
  const visit = (owner: SupplyEntity, source: SupplyEntity, feed: SupplyEntity | undefined): void => {
    const ways = r.children(owner.key).filter((e) => e.what === 'way');
    const circuits = ways.map((w) => circuitOf(plan, r, w));
    const used = circuits.filter((c) => c.loads.length > 0 || c.boxes.length > 0);
    const straight = collect(plan, r, { ...owner });
    const direct = straight.loads.filter((l) => !used.some((c) => c.loads.some((x) => x.load === l.load)));
    panels.push({
      owner,
      source,
      feed,
      circuits:
        direct.length > 0
          ? [...used, { way: owner, wayLabel: '–', breaker: 'none', loads: direct, boxes: [] }]
          : used,
      spare: circuits.filter((c) => !used.includes(c)),
    });
    const next = [
      ...used.flatMap((c) => c.boxes),
      ...straight.boxes.filter((b) => !used.some((c) => c.boxes.some((x) => x.box === b.box))),
    ];
    for (const b of next) visit(b.box, source, b.cable);
  };
  for (const s of r.roots()) visit(s, s, undefined);
  return panels;
};

/** Name of the kind behind a source or box, and what its parts are rated. */
export const panelKindName = (plan: Plan, e: SupplyEntity): string => {
  const rec = plan.records.get(e.recordId);
  return rec && 'kindId' in rec && typeof rec.kindId === 'string'
    ? (kindOf(plan, rec.kindId)?.name ?? '')
    : '';
};
