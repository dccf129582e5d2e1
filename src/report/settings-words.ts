import { colourLine } from '../derive/colours.ts';
import { type LimitRow, limitsOf } from '../derive/limits.ts';
import { legName, systemShape } from '../derive/systems.ts';
import { kindOf, type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import type { Practice } from '../plan/records/index.ts';

const PRACTICES: Readonly<Record<Practice, string>> = { 'north-america': 'North America', europe: 'Europe' };

const legsOf = (plan: Plan, sourceId: string): { readonly label: string; readonly legs: string } => {
  const s = recordsOf(plan, 'source').find((x) => x.id === sourceId);
  const system = s && kindOf(plan, s.kindId, 'source')?.system;
  const { practice } = planRecord(plan);
  const count = (system && systemShape(system)?.legs) ?? 0;
  return {
    label: s?.label || 'A source',
    legs: Array.from({ length: count }, (_, i) => legName(practice, system, i)).join(' '),
  };
};

const figure = (l: LimitRow): string => `${l.value} ${l.unit}`;

/** Limits that say something else under the new settings, one line each: from, to, and the words of the new one. */
const limitWords = (before: Plan, after: Plan): readonly string[] => {
  const [was, is] = [limitsOf(before), limitsOf(after)];
  const out: string[] = [];
  for (const [id, l] of is) {
    const old = was.get(id);
    if (!old) out.push(`Now asked: ${l.text} (${figure(l)})`);
    else if (old.value !== l.value) out.push(`${l.text} Was ${old.value}, is ${figure(l)}.`);
    else if (old.text !== l.text) out.push(`Worded otherwise, ${figure(l)}: ${l.text}`);
  }
  for (const [id, l] of was) if (!is.has(id)) out.push(`No longer asked: ${l.text} (${figure(l)})`);
  return out;
};

/**
 * What other settings of a plan change besides themselves, in plain sentences: names of legs, colours of conductors, rules,
 * limits of its own that no longer apply. What depends on figures is left to the findings.
 */
export const settingsWords = (before: Plan, after: Plan): readonly string[] => {
  const [b, a] = [planRecord(before), planRecord(after)];
  const out: string[] = [];
  if (b.practice !== a.practice) {
    out.push(
      `The plan follows the practice of ${PRACTICES[a.practice]} in place of that of ${PRACTICES[b.practice]}.`,
    );
    out.push(
      'Gear stays as it is: volts, plugs and breakers of what is in the plan do not change. What no longer fits shows among the findings.',
    );
  }
  for (const s of recordsOf(after, 'source')) {
    const [old, now] = [legsOf(before, s.id), legsOf(after, s.id)];
    if (old.legs !== now.legs && now.legs !== '')
      out.push(`Legs of ${now.label} are called ${now.legs} in place of ${old.legs}.`);
    const system = kindOf(after, s.kindId, 'source')?.system;
    const [was, is] = [colourLine(before, system), colourLine(after, system)];
    if (was !== is)
      out.push(`Conductors of ${now.label} by custom or rule: ${is}. Test, do not trust colour.`);
  }
  out.push(...limitWords(before, after));
  const known = limitsOf(after);
  for (const o of a.limits)
    if (!known.has(o.limit))
      out.push(`The plan’s own limit “${o.limit}” has no place in this practice and rests.`);
  if (b.lengthUnits !== a.lengthUnits)
    out.push(
      `Lengths and cable are told in ${a.lengthUnits === 'imperial' ? 'feet' : 'metres'}; what is drawn keeps its size, and stock lengths of cables stay those of their kinds.`,
    );
  if (b.frequencyHz !== a.frequencyHz)
    out.push(
      `Inrush is reckoned with half waves of ${a.frequencyHz} Hz. Gear for ${b.frequencyHz} Hz only is not told apart.`,
    );
  return out;
};
