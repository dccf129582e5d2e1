import { limitCitation, limitsOf } from '../derive/limits.ts';
import { shootingDays } from '../derive/schedule.ts';
import { hasLines } from '../engines/control/index.ts';
import { type PowerResult, sourceRating, sourceVolts } from '../engines/power/index.ts';
import { kindOf, type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import { radioAssumptions } from './radio-assumptions.ts';
import type { Assumption } from './types.ts';

/** A field of a kind as people say it: its unit left off, `powerFactor` as `power factor`. */
const fieldWord = (field: string): string =>
  field
    .replace(/(?<=[a-z])(Mm|Kg|Ma|Ms|Min|Pct|Deg|Ohm|Wh|Ah|Kw|Kva|Va|L|W|V|A|K)$/, '')
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/** What the program took from elsewhere because the plan does not say; each in one line, with the records it is about. */
export const assumptionsOf = (plan: Plan, power: PowerResult): readonly Assumption[] => {
  const out: Assumption[] = [];
  const add = (id: string, text: string, recordIds: readonly string[] = []): void => {
    if (!out.some((a) => a.id === id)) out.push({ id, text, recordIds });
  };
  const { practice } = planRecord(plan);
  for (const l of limitsOf(plan).values())
    if (l.override) add(`limit:${l.id}`, `Limit “${l.id}” ${limitCitation(l)}.`, ['plan']);
  const loads = power.tree.nodes.filter((n) => n.branches.length > 0);
  if (loads.length > 0) {
    const factor = limitsOf(plan).get('breaker-load-factor');
    if (practice === 'north-america' && factor && !factor.override)
      add(
        'continuous',
        shootingDays(plan).length > 0
          ? 'Loads count as continuous (three hours or more) but on circuits that the shooting day shows loaded for well under that at a stretch.'
          : 'Every load counts as continuous (three hours or more), since no shooting day is given.',
      );
    const unset = power.assumedLevels;
    if (unset.length > 0)
      add(
        'level-full',
        `${unset.length} ${unset.length === 1 ? 'load has' : 'loads have'} no level in at least one setup: counted at full there.`,
        unset,
      );
    add(
      'level-linear',
      'Watts follow the level in a straight line from standby to rated; the power factor stays as rated.',
    );
  }
  for (const s of recordsOf(plan, 'source')) {
    const name = s.label || 'A source';
    const { basis, volts } = sourceVolts(plan, s.id);
    if (basis === 'set-nominal') add(`volts:${s.id}`, `${name}: set to its nominal ${volts} V.`, [s.id]);
    if (basis === 'unknown')
      add(
        `volts:${s.id}`,
        `${name}: volts not known; currents are reckoned at nominal ${volts} V, volts at the ends are not computed.`,
        [s.id],
      );
    const rating = sourceRating(plan, s.id);
    if (rating.derived)
      add(
        `rating:${s.id}`,
        `${name}: rated ${rating.derived === 'kw' ? 'kW' : 'kVA'} taken from the other at a power factor of ${limitsOf(plan).get('generator-rating-pf')?.value}.`,
        [s.id],
      );
  }
  for (const s of recordsOf(plan, 'source')) {
    const rating = sourceRating(plan, s.id);
    if (rating.shareFrom === 'table')
      add(
        `derating:${s.id}`,
        `${s.label || 'A set'}: gives ${Math.round(rating.share * 100)} % of its rating at this height and heat, by the derating table.`,
        [s.id],
      );
  }
  for (const n of power.tree.nodes) {
    const t = n.transformer;
    if (!t || n.notComputed !== undefined) continue;
    const pct = limitsOf(plan).get('transformer-impedance')?.value ?? Number.NaN;
    add(
      `transformer:${n.recordId}`,
      `${n.label}: ${t.impedancePct === undefined ? `impedance ${pct} % of its rating, its plate is not known; ` : ''}half of its losses at full load are drawn always.`,
      [n.recordId],
    );
  }
  if (power.tree.nodes.some((n) => n.dimmer && (power.tree.children[n.index] ?? []).length > 0))
    add(
      'dimmers',
      'Lamps on phase-cut dimmers draw the root of their share of full watts as amps, with the third harmonic of a cut wave; a dimmer’s loss is a share of what is on it.',
    );
  if (
    planRecord(plan).altitudeM === undefined &&
    recordsOf(plan, 'source').some((s) => kindOf(plan, s.kindId, 'source')?.what === 'generator')
  )
    add('altitude', 'No height above the sea is given: sets are not derated for height.');
  if (loads.some((n) => (n.load?.thirdHarmonicPct ?? 0) > 0))
    add(
      'third-harmonic',
      'Third harmonics in the neutral are planning values of the kinds, taken as in step.',
    );
  const patched = recordsOf(plan, 'fixture').filter((f) => f.patch);
  if (patched.length > 0 && !hasLines(plan))
    add(
      'lines',
      `No data lines and no control gear are drawn: how ${patched.length} ${patched.length === 1 ? 'unit gets its' : 'units get their'} data is not judged.`,
    );
  const cables = recordsOf(plan, 'cable');
  if (cables.some((c) => c.slackPct === undefined && c.piecesMm === undefined)) {
    const pct = limitsOf(plan).get('slack-pct')?.value ?? 0;
    const min = (limitsOf(plan).get('slack-min')?.value ?? 0) / 1000;
    add('slack', `Cable runs: ${pct} % slack, at least ${min} m (common practice, no published source).`);
  }
  if (cables.length > 0) {
    const celsius = (id: string): number => limitsOf(plan).get(id)?.value ?? Number.NaN;
    add(
      'conductor-temperature',
      `Conductors at operating temperature (${celsius('conductor-temp-awg')} °C for AWG, ${celsius('conductor-temp-mm2')} °C for metric); reactance is an estimate.`,
    );
    add('connector-loss', 'Connectors, couplings and breakers add no resistance.');
  }
  out.push(...radioAssumptions(plan));
  const assumedKinds = recordsOf(plan, 'kind').filter((k) => Object.values(k.basis).includes('assumed'));
  for (const k of assumedKinds) {
    const fields = Object.entries(k.basis)
      .filter(([, v]) => v === 'assumed')
      .map(([f]) => f);
    add(
      `kind:${k.id}`,
      `${k.name}: ${fields.includes('all') ? 'figures' : fields.map(fieldWord).join(', ')} assumed.`,
      [k.id],
    );
  }
  return out;
};
