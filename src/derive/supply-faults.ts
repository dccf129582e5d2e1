import { connector, mates } from '../plan/connectors.ts';
import type { CableKind } from '../plan/kinds/kinds.ts';
import type { InletPort, LoadSpec, OutletPort } from '../plan/kinds/ports.ts';
import { kindOf, type Plan } from '../plan/plan.ts';
import { boxFamilies } from '../plan/ports.ts';
import type { Ballast, Box, Cable, Fixture } from '../plan/records/index.ts';
import { conductor } from './conductors.ts';
import { always } from './findings.ts';
import { recordLabel } from './labels.ts';
import type { CableLength } from './lengths.ts';
import { badLevelsOf, loadProblem } from './loads.ts';
import type { SupplyIndex } from './supply-checks.ts';
import { takesSeveralFeeds } from './supply-circuits.ts';

const connectorName = (id: string): string => connector(id)?.name ?? id;

/** What is wrong with a run that no pieces make up. */
const lengthProblem = (l: CableLength): string | undefined => {
  if (!Number.isFinite(l.neededMm)) return 'its length is not a number';
  if (l.piecesMm.length > 0) return undefined;
  return l.neededMm > 1e9 ? 'its run is longer than 1000 km' : 'its kind has no stock length above nothing';
};

/** Checks one cable: its kind, both ends, what else feeds the same inlet. */
export const cableFault = (
  plan: Plan,
  index: SupplyIndex,
  c: Cable,
  kind: CableKind | undefined,
  from: OutletPort | undefined,
  inlet: InletPort | undefined,
  length: CableLength | undefined,
): string | undefined => {
  const label = recordLabel(plan, c);
  if (!kind) return index.kindFault(c, c.kindId);
  if (!conductor(kind.conductor)) {
    index.stop('power-value', c.id, [c.id], {
      label,
      problem: `its conductor ${kind.conductor} is not in the table`,
    });
    return `its conductor ${kind.conductor} is not in the table`;
  }
  if (kind.neutralConductor !== undefined && !conductor(kind.neutralConductor)) {
    const problem = `its neutral conductor ${kind.neutralConductor} is not in the table`;
    index.stop('power-value', c.id, [c.id], { label, problem });
    return problem;
  }
  if (!(kind.ampacityA > 0) || !Number.isFinite(kind.ampacityA)) {
    index.stop('power-value', c.id, [c.id], { label, problem: `its ampacity is ${kind.ampacityA} A` });
    return `its ampacity is ${kind.ampacityA} A`;
  }
  const badPiece = c.piecesMm?.find((mm) => !(mm >= 0 && Number.isFinite(mm)));
  if (badPiece !== undefined) {
    index.stop('power-value', c.id, [c.id], { label, problem: `one of its pieces is ${badPiece} mm long` });
    return `one of its pieces is ${badPiece} mm long`;
  }
  const long = c.piecesMm === undefined && length ? lengthProblem(length) : undefined;
  if (long !== undefined) {
    index.stop('power-value', c.id, [c.id], { label, problem: long });
    return long;
  }
  const to = plan.records.get(c.to.recordId);
  if (!to || !inlet) {
    index.stop('power-cable-end', `${c.id}/to`, [c.id, ...(to ? [to.id] : [])], {
      label,
      end: to
        ? `an inlet ${c.to.portId} that ${recordLabel(plan, to)} does not have`
        : 'something that is not in the plan',
      which: 'goes to',
    });
    return 'it goes to an inlet that is not there';
  }
  const all = index.feeds(to.id);
  const several = to.type === 'box' && takesSeveralFeeds(plan, to);
  const feeds = several ? all.filter((f) => f.to.portId === c.to.portId) : all;
  if (to.type === 'box' && to.plugsInto && !several) {
    index.stop('power-second-feed', to.id, [to.id, ...feeds.map((f) => f.id)], {
      label: recordLabel(plan, to),
      inlet: inlet.label ?? inlet.id,
      cables: feeds.map((f) => recordLabel(plan, f)).join(', '),
    });
    return `${recordLabel(plan, to)} is fed twice`;
  }
  if (feeds.length > 1) {
    const same = feeds.filter((f) => f.to.portId === c.to.portId).length > 1;
    const rule = same ? 'power-two-into-one' : 'power-second-feed';
    const about = same ? `${to.id}/${c.to.portId}` : to.id;
    if (!index.defects.some((d) => d.rule === rule && d.about === about))
      index.stop(rule, about, [to.id, ...feeds.map((f) => f.id)], {
        label: recordLabel(plan, to),
        inlet: inlet.label ?? inlet.id,
        cables: feeds.map((f) => recordLabel(plan, f)).join(', '),
      });
    return same ? 'another cable goes into the same inlet' : `${recordLabel(plan, to)} is fed twice`;
  }
  if (from && !mates(from.connector, kind.plug)) {
    index.stop('power-mate', `${c.id}/from`, [c.id, c.from.recordId], {
      label,
      other: recordLabel(plan, plan.records.get(c.from.recordId)),
      outlet: connectorName(from.connector),
      plug: connectorName(kind.plug),
    });
    return 'its plug does not go into the outlet';
  }
  if (!mates(kind.socket, inlet.connector)) {
    index.stop('power-mate', `${c.id}/to`, [c.id, to.id], {
      label,
      other: recordLabel(plan, to),
      outlet: connectorName(kind.socket),
      plug: connectorName(inlet.connector),
    });
    return 'its socket does not take the inlet';
  }
  return undefined;
};

/** Checks an adapter plugged straight into an outlet: whether it goes in there. */
export const straightFault = (
  plan: Plan,
  index: SupplyIndex,
  b: Box,
  from: OutletPort,
  inlet: InletPort | undefined,
): string | undefined => {
  if (!kindOf(plan, b.kindId, ...boxFamilies)) return index.kindFault(b, b.kindId);
  const label = recordLabel(plan, b);
  if (!inlet) {
    index.stop('power-value', b.id, [b.id], { label, problem: 'it has no inlet' });
    return 'it has no inlet';
  }
  if (mates(from.connector, inlet.connector)) return undefined;
  const at = plan.records.get(b.plugsInto?.recordId ?? '');
  index.stop('power-mate', `${b.id}/from`, [b.id, ...(at ? [at.id] : [])], {
    label,
    other: recordLabel(plan, at),
    outlet: connectorName(from.connector),
    plug: connectorName(inlet.connector),
  });
  return 'it does not go into the outlet';
};

/** Checks one load: its kind, its values, its levels, its connection. */
export const loadFault = (
  plan: Plan,
  index: SupplyIndex,
  r: Fixture | Ballast,
  spec: LoadSpec | undefined,
  connection: string | undefined,
): string | undefined => {
  const label = recordLabel(plan, r);
  if (!kindOf(plan, r.kindId, r.type)) return index.kindFault(r, r.kindId);
  const problem = spec && loadProblem(spec);
  if (problem) {
    index.stop('power-value', r.id, [r.id], { label, problem });
    return problem;
  }
  const bad = badLevelsOf(plan).get(r.type === 'ballast' ? r.fixtureId : r.id);
  if (spec && bad) {
    index.stop('power-level', r.id, [r.id], {
      label,
      levelPct: bad.levelPct,
      setup: recordLabel(plan, plan.records.get(bad.setupId)),
    });
    return `its level is ${bad.levelPct} %`;
  }
  if (connection) return index.legsFault(r, connection);
  if (spec?.wattsW === 0) index.defects.push(always('power-zero-watts', 'note', r.id, [r.id], { label }));
  return undefined;
};
