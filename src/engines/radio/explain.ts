import { recordLabel } from '../../derive/labels.ts';
import { limitCitation, limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { formatWatts } from '../../kernel/units.ts';
import { planInSetup } from '../../plan/moves.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { verdictOf } from './budget.ts';
import { fresnelM } from './calc.ts';
import { parseRadioKey } from './keys.ts';
import { computeRadio, type RadioResult, relayOf } from './links.ts';
import { hitsOn } from './path.ts';
import { backupOf } from './supply.ts';
import { hopTerms } from './terms.ts';
import type { Link, Listener, Sender, Term, Verdict } from './types.ts';

/** Said with every margin. */
export const HINT = 'Hint, not a guarantee; test on the day.';

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  good: 'good',
  fair: 'fair, watch it',
  weak: 'weak',
  none: 'not expected to reach',
};

/** A number of dB for people: one digit after the point, with a true minus sign. */
export const formatDb = (db: number): string =>
  Number.isFinite(db) ? `${db.toFixed(1).replace('-', '−').replace('−0.0', '0.0')} dB` : '–';

/** The arithmetic behind one figure, as data. Same shape as the report's working. */
export interface RadioWorking {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly {
    readonly name: string;
    readonly value: string;
    readonly from: string;
    readonly assumed: boolean;
  }[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

/** One hop of a link with its sum, term by term. */
export interface HopSum {
  readonly from: Sender;
  readonly to: Listener;
  readonly terms: readonly Term[];
  readonly marginDb: number;
}

/** The hops of a link, each with its terms; the margin of the link is the least of them. */
export const hopsOf = (r: RadioResult, link: Link): readonly HopSum[] => {
  const { plan, senders, listeners } = r.model;
  const label = (id: Id): string => {
    const x = plan.records.get(id);
    return x?.type === 'setPiece' ? x.label || 'set piece' : recordLabel(plan, x);
  };
  const head = senders.get(link.viaIds[0] ?? link.senderId);
  const out: HopSum[] = [];
  link.viaIds.forEach((id, i) => {
    const unit = listeners.get(id);
    const from = senders.get(id) ?? (head && unit ? relayOf(head, unit) : undefined);
    const to = listeners.get(link.viaIds[i + 1] ?? link.listenerId);
    if (!from || !to) return;
    const terms = hopTerms(r.grounds(from.fMhz), from, to, label);
    out.push({ from, to, terms, marginDb: terms.reduce((sum, t) => sum + t.db, 0) });
  });
  return out;
};

/** The link between a listener and a sender, whether it is the one in use or not. */
export const linkBetween = (r: RadioResult, listenerId: Id, senderId: Id): Link | undefined =>
  r.choices.get(listenerId)?.find((k) => k.senderId === senderId);

const zoneStep = (r: RadioResult, hop: HopSum): string => {
  const { from, to } = hop;
  const g = r.grounds(from.fMhz);
  const d = Math.hypot(to.spot.x - from.spot.x, to.spot.y - from.spot.y, to.spot.z - from.spot.z);
  const share = limitOf(r.model.plan, 'radio-fresnel-share').value;
  const radius = fresnelM(from.fMhz, Math.max(d / 2, 0.05), Math.max(d / 2, 0.05));
  const edges = hitsOn(g.scene, from.spot, to.spot, new Set([from.floorId, to.floorId])).filter(
    (h) => h.topAboveM <= 0 && h.db > 0,
  );
  const near = edges.map((h) => `${recordLabel(r.model.plan, r.model.plan.records.get(h.barrier.id))}`);
  return `First Fresnel zone half way: ${radius.toFixed(2)} m; ${Math.round(share * 100)} % of it is ${(radius * share).toFixed(2)} m. ${
    edges.length === 0 ? 'No edge reaches into it from below.' : `Edges within it: ${near.join(', ')}.`
  }`;
};

const margin = (
  r: RadioResult,
  key: string,
  listenerId: Id,
  senderId: Id,
): RadioWorking | { why: string } => {
  const { plan, listeners, senders } = r.model;
  const l = listeners.get(listenerId);
  const s = senders.get(senderId);
  const link = l && s ? linkBetween(r, l.id, s.id) : undefined;
  if (!l || !s || !link) return { why: 'There is no such radio link in this plan.' };
  if (link.notComputed !== undefined) return { why: `${l.label}: ${link.notComputed}.` };
  const hops = hopsOf(r, link);
  const worst = hops.reduce((a, h) => (h.marginDb < a.marginDb ? h : a), hops[0] as HopSum);
  const several = hops.length > 1;
  return {
    key,
    title: `Radio margin of ${l.label} from ${s.label}`,
    formula:
      'margin = radiated power − losses on the way + receiving aerial − reserve − what the receiver needs',
    inputs: worst.terms.map((t) => ({
      name: t.name,
      value: t.db > 0 ? `+${formatDb(t.db)}` : formatDb(t.db),
      from: t.from,
      assumed: t.assumed,
    })),
    steps: [
      ...(several
        ? [
            `Over ${hops.map((h) => h.from.label).join(', ')}: the least of ${hops.map((h) => `${h.from.label} to ${h.to.label} ${formatDb(h.marginDb)}`).join('; ')}. The terms are those of ${worst.from.label} to ${worst.to.label}.`,
          ]
        : []),
      zoneStep(r, worst),
      `${VERDICT_WORDS[verdictOf(plan, link.marginDb)]}: good from ${limitOf(plan, 'radio-margin-good').value} dB, fair from ${limitOf(plan, 'radio-margin-fair').value} dB, weak from 0 dB.`,
      'Reflections and ways round the side of things are not counted.',
      HINT,
    ],
    result: formatDb(link.marginDb),
    rule: 'radio-margin',
    source:
      'ITU-R P.525, P.526, P.1238, P.2040; losses of walls are estimates. Approval of equipment and local radio rules apply.',
  };
};

const backup = (r: RadioResult, key: string, id: Id): RadioWorking | { why: string } => {
  const { plan } = r.model;
  const d = recordOf(plan, 'device', id);
  const b = d && backupOf(plan, d);
  if (!d || !b) return { why: 'It has no cell of its own.' };
  const share = limitOf(plan, 'radio-backup-usable');
  return {
    key,
    title: `Time of ${recordLabel(plan, d)} on its own cell`,
    formula: 'minutes = 60 · cell · usable share ÷ draw',
    inputs: b.measured
      ? [{ name: 'minutes', value: `${b.minutes} min`, from: 'plan', assumed: false }]
      : [
          { name: 'cell', value: `${b.cellWh} Wh`, from: 'gear book', assumed: true },
          { name: 'draws', value: formatWatts(b.drawsW), from: 'gear book', assumed: true },
          { name: 'usable share', value: String(b.usable), from: limitCitation(share), assumed: true },
        ],
    steps: b.measured ? [] : [`60 · ${b.cellWh} · ${b.usable} ÷ ${b.drawsW} = ${Math.round(b.minutes)} min`],
    result: `${Math.round(b.minutes)} min`,
    rule: 'radio-backup',
    source: limitCitation(limitOf(plan, 'radio-backup-least')),
  };
};

/**
 * The arithmetic behind one figure of the radio engine, recomputed from the plan; `why` says in words why there is none.
 * Undefined for a key that is not this engine's.
 */
export const explainRadio = (
  plan: Plan,
  key: string,
): RadioWorking | { readonly why: string } | undefined => {
  const asked = parseRadioKey(key);
  if (!asked) return undefined;
  const r = computeRadio(planInSetup(plan, asked.setupId));
  return asked.quantity === 'radioBackupMin'
    ? backup(r, key, asked.id)
    : margin(r, key, asked.id, asked.senderId ?? '');
};
