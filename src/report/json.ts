import { QUANTITIES } from '../derive/types.ts';
import { frameRows, riggingRows, standRows } from '../engines/rigging/index.ts';
import { canonicalJson } from '../kernel/canonical.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { openStops } from './assess.ts';
import { findingText } from './text.ts';
import type { Assessment } from './types.ts';

/** Digits after the point kept in the document: far below what any figure is worth. */
const DIGITS = 6;

const rounded = (n: number): number | null => (Number.isFinite(n) ? Number(n.toFixed(DIGITS)) + 0 : null);

/** A row with its numbers to the digits kept, what is not known as null. */
const plainRow = (row: object): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(row).map(([k, v]) => [k, typeof v === 'number' ? rounded(v) : v === undefined ? null : v]),
  );

/**
 * The assessment as one JSON document, the same bytes for the same plan. Its keys:
 * - `format` `lampwright-assessment`, `version` 1.
 * - `plan`: `title`, `practice`.
 * - `status`: `stopsOpen` (stop findings that no one has acknowledged), `stops`, `warns`, `notes`.
 * - `setups`: `[{id, name}]`, in order. Lists by setup follow this order.
 * - `entities`: the supply tree in tree order: `key`, `what`, `recordId`, `wayId`, `label`, `parent` (a key), `sourceId`,
 *   `system`, `legs` (0-based), `neutral`, `legLimit` and `neutralLimit` (`limitA`, `ratingA`, `setBy`, `rule`),
 *   `notComputed` (words) and `figures`: quantity → one number for each setup, null where not computed.
 * - `rigging`: `stands`, `carriers` (tube, truss, points, lifts, cranes) and `frames`, a row each as `standRows`, `riggingRows`
 *   and `frameRows` of the stands engine give them: load, rating, use, tip-over figures, bags; null is not known or, of a
 *   factor, nothing that tips. They hold in every setup.
 * - `findings`: `number`, `id`, `rule`, `severity`, `recordIds`, `worstSetup`, `setups` (ids), `params`, `figureKey`,
 *   `text` (`head`, `body`, `todo`, `citation`), `remedies` (labels), `acknowledged`.
 * - `assumptions`: `id`, `text`, `recordIds`.
 * Quantities are described with `QUANTITIES`; their names end in their unit.
 */
export const assessmentJson = (plan: Plan, a: Assessment): string => {
  const { title, practice } = planRecord(plan);
  const count = (s: string): number => a.findings.filter((f) => f.severity === s).length;
  return canonicalJson({
    format: 'lampwright-assessment',
    version: 1,
    plan: { title, practice },
    status: {
      stopsOpen: openStops(a).length,
      stops: count('stop'),
      warns: count('warn'),
      notes: count('note'),
    },
    setups: a.setups.map((s) => ({ id: s.id, name: s.name })),
    entities: a.entities.map((e) => ({
      key: e.key,
      what: e.what,
      recordId: e.recordId,
      wayId: e.wayId,
      label: e.label,
      parent: e.parentKey,
      sourceId: e.sourceId,
      system: e.system,
      legs: e.legs,
      neutral: e.neutral,
      legLimit: e.legLimit,
      neutralLimit: e.neutralLimit,
      notComputed: e.notComputed,
      figures: Object.fromEntries(
        QUANTITIES.map((q) => [q, a.setups.map((_, s) => rounded(a.figures.get(e.key, q, s)))]),
      ),
    })),
    rigging: {
      stands: standRows(plan).map(plainRow),
      carriers: riggingRows(plan).map(plainRow),
      frames: frameRows(plan).map((f) => ({ ...plainRow(f), table: f.table.map(plainRow) })),
    },
    findings: a.findings.map((f) => ({
      number: f.number,
      id: f.id,
      rule: f.rule,
      severity: f.severity,
      recordIds: f.recordIds,
      worstSetup: f.worstSetupId,
      setups: f.setupIds,
      params: Object.fromEntries(
        Object.entries(f.params).map(([k, v]) => [k, typeof v === 'number' ? rounded(v) : v]),
      ),
      figureKey: f.figureKey,
      text: findingText(plan, f),
      remedies: f.remedies.map((r) => r.label),
      acknowledged: f.acknowledged,
    })),
    assumptions: a.assumptions,
  });
};
