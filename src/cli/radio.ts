import { recordLabel } from '../derive/labels.ts';
import { canonicalJson } from '../kernel/canonical.ts';
import { formatLength } from '../kernel/units.ts';
import { type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { assess } from '../report/assess.ts';
import {
  backupOf,
  bestSpots,
  computeRadio,
  formatDb,
  HINT,
  hopsOf,
  type Link,
  type Listener,
  type RadioResult,
  radioKey,
  type SpotChoice,
  type Spots,
  VERDICT_WORDS,
} from '../report/radio.ts';
import { findingText } from '../report/text.ts';
import type { Finding } from '../report/types.ts';

export interface RadioCommandOptions {
  readonly json: boolean;
  /** Look for the best places, for so many transmitters. */
  readonly place: 1 | 2 | undefined;
  readonly floorId?: string | undefined;
}

const digits = (n: number): number | null => (Number.isFinite(n) ? Number(n.toFixed(2)) : null);

/** Units in the order of their numbers, receivers and repeaters after them. */
const ordered = (r: RadioResult): readonly Listener[] =>
  [...r.model.listeners.values()].sort(
    (a, b) =>
      Number(a.what !== 'fixture') - Number(b.what !== 'fixture') ||
      a.label.localeCompare(b.label, 'en', { numeric: true }),
  );

const radioFindings = (plan: Plan): readonly Finding[] =>
  assess(plan, { revision: 0 }).findings.filter((f) => f.rule.startsWith('radio-'));

const spotsOf = (plan: Plan, o: RadioCommandOptions): Spots | undefined => {
  const floorId = o.floorId ?? recordsOf(plan, 'floor')[0]?.id;
  if (o.place === undefined || floorId === undefined) return undefined;
  const first = [...computeRadio(plan).model.senders.values()].find((s) => s.role === 'transmitter');
  return bestSpots(plan, { floorId, count: o.place, ...(first ? { senderId: first.id } : {}) });
};

/** Margins of all radio links, the findings about them, and the best places where asked for. */
export const radioCommand = (plan: Plan, o: RadioCommandOptions): string => {
  const r = computeRadio(plan);
  const spots = spotsOf(plan, o);
  return o.json ? jsonOf(plan, r, spots) : textOf(plan, r, spots);
};

const linkJson = (plan: Plan, r: RadioResult, l: Listener, link: Link | undefined) => ({
  id: l.id,
  label: l.label,
  what: l.what,
  universes: l.universeIds.flatMap((u) => recordOf(plan, 'universe', u)?.number ?? []),
  receiver: {
    sensitivityDbm: l.sensitivityDbm,
    gainDbi: l.gainDbi,
    heightM: digits(l.heightM),
    from: l.from,
    assumed: l.assumed,
  },
  link: link
    ? {
        senderId: link.senderId,
        sender: r.model.senders.get(link.senderId)?.label ?? '',
        via: link.viaIds.map((id) => recordLabel(plan, plan.records.get(id))),
        marginDb: digits(link.marginDb),
        verdict: link.verdict,
        notComputed: link.notComputed ?? null,
        key: radioKey('radioMarginDb', link.listenerId, link.senderId),
        hops: hopsOf(r, link).map((h) => ({
          from: h.from.label,
          to: h.to.label,
          marginDb: digits(h.marginDb),
          terms: h.terms.map((t) => ({
            id: t.id,
            name: t.name,
            db: digits(t.db),
            from: t.from,
            assumed: t.assumed,
            recordId: t.recordId ?? null,
          })),
        })),
      }
    : null,
  choices: (r.choices.get(l.id) ?? []).map((k) => ({
    sender: r.model.senders.get(k.senderId)?.label ?? '',
    marginDb: digits(k.marginDb),
  })),
});

const jsonOf = (plan: Plan, r: RadioResult, spots: Spots | undefined): string =>
  canonicalJson({
    format: 'lampwright-radio',
    version: 1,
    hint: HINT,
    air: r.model.air,
    transmitters: [...r.model.senders.values()].map((s) => {
      const d = recordOf(plan, 'device', s.id);
      const backup = d && backupOf(plan, d);
      return {
        id: s.id,
        label: s.label,
        role: s.role,
        fMhz: s.fMhz,
        eirpDbm: s.eirpDbm,
        heightM: digits(s.heightM),
        universes: (r.carried.get(s.id) ?? []).flatMap((u) => recordOf(plan, 'universe', u)?.number ?? []),
        backupMin: backup ? Math.round(backup.minutes) : null,
      };
    }),
    links: ordered(r).map((l) => linkJson(plan, r, l, r.links.get(l.id))),
    findings: radioFindings(plan).map((f) => ({
      number: f.number,
      rule: f.rule,
      severity: f.severity,
      recordIds: f.recordIds,
      text: findingText(plan, f),
    })),
    places: spots
      ? {
          why: spots.why ?? null,
          placesTried: spots.placesTried,
          nowDb: spots.nowDb === undefined ? null : digits(spots.nowDb),
          choices: spots.choices.map((c) => ({
            places: c.places,
            worstDb: digits(c.worstDb),
            worst: recordLabel(plan, plan.records.get(c.worstId)),
            meanDb: digits(c.meanDb),
            verdict: c.verdict,
          })),
        }
      : null,
  });

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string[] => {
  const width = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    `  ${cells.map((c, i) => (/^[+−-]?\d/.test(c) && i > 1 ? c.padStart(width[i] ?? 0) : c.padEnd(width[i] ?? 0))).join('  ')}`.trimEnd();
  return [line(head), ...rows.map(line)];
};

const placeText = (plan: Plan, c: SpotChoice, i: number): string => {
  const { lengthUnits } = planRecord(plan);
  const where = c.places
    .map(
      (p) =>
        `${formatLength(p.xMm, lengthUnits)} across, ${formatLength(p.yMm, lengthUnits)} down, ${formatLength(p.heightMm, lengthUnits)} up${
          p.standId === undefined ? '' : ', on a stand that is there'
        }`,
    )
    .join(' and ');
  return `  ${i === 0 ? 'best' : `then`}: ${where}; worst is ${recordLabel(plan, plan.records.get(c.worstId))} with ${formatDb(c.worstDb)} (${VERDICT_WORDS[c.verdict]})`;
};

const textOf = (plan: Plan, r: RadioResult, spots: Spots | undefined): string => {
  const rows = ordered(r).map((l) => {
    const link = r.links.get(l.id);
    return [
      l.label,
      l.universeIds.map((u) => `U${recordOf(plan, 'universe', u)?.number ?? '?'}`).join(' ') || '–',
      link ? link.viaIds.map((id) => recordLabel(plan, plan.records.get(id))).join(' > ') : '–',
      link ? formatDb(link.marginDb) : '–',
      link ? (link.notComputed ?? VERDICT_WORDS[link.verdict]) : 'no link',
      l.assumed ? 'receiver assumed' : '',
    ];
  });
  const findings = radioFindings(plan);
  return [
    ...(rows.length === 0
      ? ['Nothing is linked by radio.']
      : table(['receiver', 'universe', 'over', 'margin', 'by estimate', ''], rows)),
    '',
    ...findings.flatMap((f) => {
      const t = findingText(plan, f);
      return [`${f.number} ${f.severity}: ${t.head}`, `    ${t.body} ${t.todo}`];
    }),
    ...(findings.length > 0 ? [''] : []),
    ...(spots
      ? [
          spots.why ??
            `Best of ${spots.placesTried} free places for ${spots.listenerIds.length} receivers${
              spots.nowDb === undefined ? '' : `; now the worst has ${formatDb(spots.nowDb)}`
            }:`,
          ...spots.choices.map((c, i) => placeText(plan, c, i)),
          '',
        ]
      : []),
    HINT,
    '',
  ].join('\n');
};
