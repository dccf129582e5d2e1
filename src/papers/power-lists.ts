import { legName } from '../derive/systems.ts';
import { connector } from '../plan/connectors.ts';
import { recordName } from '../plan/names.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../plan/plan.ts';
import { outletsOf, pluggedInto, waysOf } from '../plan/ports.ts';
import { bundlesOf } from './bundles.ts';
import { LEG_QUANTITIES, largestLegA, legsText, pctOf, readerOf } from './figures.ts';
import type { ListTable } from './lists.ts';
import { runsOf } from './runs.ts';
import type { SetInfo } from './sheet-info.ts';

/** A figure rounded for a file; NaN stays an empty cell. */
export const rounded = (v: number, decimals: number): number =>
  Number.isFinite(v) ? Number(v.toFixed(decimals)) : Number.NaN;

/** Amps on every leg and the neutral of every source and box, setup by setup, against the limit there. */
export const legList = (info: SetInfo): ListTable => {
  const { practice } = planRecord(info.plan);
  const { figures, setups, entities } = info.assessment;
  const owners = entities.filter((e) => e.what === 'source' || e.what === 'box');
  const rows = owners.flatMap((e) =>
    [
      ...e.legs.map((l) => ({
        name: legName(practice, e.system, l),
        q: LEG_QUANTITIES[l] ?? ('leg0A' as const),
        limit: e.legLimit?.limitA,
      })),
      ...(e.neutral ? [{ name: 'N', q: 'neutralA' as const, limit: e.neutralLimit?.limitA }] : []),
    ].flatMap((w) =>
      setups.map((s, i) => {
        const a = figures.get(e.key, w.q, i);
        const worst = figures.worst(e.key, w.q).setupIndex === i;
        return [
          e.label,
          w.name,
          s.name,
          rounded(a, 2),
          w.limit ?? Number.NaN,
          rounded(pctOf(a, w.limit), 1),
          worst ? 'worst' : '',
        ];
      }),
    ),
  );
  return {
    name: 'legs',
    head: ['source or box', 'leg', 'setup', 'amps', 'limit A', '% of limit', 'worst'],
    rows,
  };
};

const pluggedName = (plan: Plan, recordId: string): string => {
  const ballast = recordOf(plan, 'ballast', recordId);
  const f = recordOf(plan, 'fixture', ballast ? ballast.fixtureId : recordId);
  return f ? `Unit ${f.unit}${ballast ? ', ballast' : ''}` : recordName(plan, recordId);
};

/** Every outlet of every box with what plugs in; an empty outlet says so. */
export const boxList = (info: SetInfo): ListTable => {
  const { plan } = info;
  const { practice } = planRecord(plan);
  const r = readerOf(info.assessment, info.setupId);
  const rows = info.assessment.entities
    .filter((e) => e.what === 'box')
    .flatMap((e) => {
      const ways = waysOf(plan, e.recordId);
      return outletsOf(plan, e.recordId).flatMap((port) => {
        const way = ways.find((w) => w.id === port.wayId);
        const entity = way && r.entity(`${e.recordId}/${way.id}`);
        const lead = [
          e.label,
          port.label ?? (way ? `Way ${way.label}` : port.id),
          way ? way.breakerA : Number.NaN,
          way ? way.poles : Number.NaN,
          legsText(practice, entity ?? { ...e, legs: e.legs.slice(0, port.legs) }),
          connector(port.connector)?.name ?? port.connector,
        ];
        const limit = entity?.legLimit?.limitA ?? Number.NaN;
        const cables = pluggedInto(plan, { recordId: e.recordId, portId: port.id });
        if (cables.length === 0) return [[...lead, 'free', '', Number.NaN, limit]];
        return cables.map((c) => {
          const run = r.entity(c.id);
          return [
            ...lead,
            pluggedName(plan, c.to.recordId),
            kindOf(plan, c.kindId)?.name ?? '',
            run ? rounded(largestLegA(r, run, 'worst'), 2) : Number.NaN,
            limit,
          ];
        });
      });
    });
  return {
    name: 'boxes',
    head: [
      'box',
      'outlet',
      'breaker A',
      'poles',
      'legs',
      'connector',
      'plugged in',
      'cable',
      'worst amps',
      'limit A',
    ],
    rows,
  };
};

/** Every run in the order of pulling, with its bundle and tape. */
export const runList = (info: SetInfo): ListTable => {
  const { practice } = planRecord(info.plan);
  const runs = runsOf(info);
  const bundles = bundlesOf(info, runs);
  return {
    name: 'runs',
    head: [
      ...['run', 'from', 'to', 'legs', 'cable', 'pieces', 'joints', 'route m'],
      ...['plug at the source end', 'socket at the load end', 'bundle', 'tape', 'pull', 'strike'],
    ],
    rows: runs.map((run, i) => {
      const bundle = bundles.get(run.cable.from.recordId);
      return [
        run.number,
        run.from,
        run.to,
        run.entity?.sourceId === undefined ? '' : legsText(practice, run.entity),
        run.kindName,
        run.pieces,
        run.couplings,
        rounded(run.routeMm / 1000, 2),
        run.plug,
        run.socket,
        bundle?.tag ?? '',
        bundle?.tape ?? '',
        i + 1,
        runs.length - i,
      ];
    }),
  };
};

/** Coils to drop where runs start. */
export const coilList = (info: SetInfo): ListTable => {
  const counts = new Map<string, { at: string; kind: string; mm: number; count: number; runs: string[] }>();
  for (const run of runsOf(info))
    for (const mm of run.piecesMm) {
      const key = `${run.cable.from.recordId}|${run.kindId}|${mm}`;
      const row = counts.get(key) ?? {
        at: recordName(info.plan, run.cable.from.recordId),
        kind: run.kindName,
        mm,
        count: 0,
        runs: [],
      };
      row.count += 1;
      if (row.runs.at(-1) !== run.number) row.runs.push(run.number);
      counts.set(key, row);
    }
  return {
    name: 'coils',
    head: ['position', 'cable', 'length m', 'count', 'for runs'],
    rows: [...counts.values()].map((c) => [c.at, c.kind, rounded(c.mm / 1000, 3), c.count, c.runs.join(' ')]),
  };
};
