import { sourceRating } from '../../../engines/power/index.ts';
import { formatFuel } from '../../../kernel/units.ts';
import { kindOf, planRecord, recordsOf } from '../../../plan/plan.ts';
import type { Source } from '../../../plan/records/index.ts';
import { Field } from '../../common/Field.tsx';
import { optionalNumber } from './numbers.ts';
import type { SectionProps } from './sections.ts';

/** What is known of each source itself: volts, ratings, impedance. What is left empty is its kind's, or not known. */
export const SourcesSection = ({ draft, disabled, onSet }: SectionProps) => {
  const sources = recordsOf(draft, 'source');
  if (sources.length === 0)
    return (
      <p className="soft">No source is in the plan yet. Place a generator, a panel or a wall circuit.</p>
    );
  return (
    <>
      {sources.map((s) => (
        <SourceForm key={s.id} source={s} draft={draft} disabled={disabled} onSet={onSet} />
      ))}
      <p className="soft small">
        How far a set’s volts sag from no load to its rating holds for all sets: “generator-regulation” under
        Rules and margins. Measuring, tie-ins, generator bonding and single-pole connectors are for qualified
        people.
      </p>
    </>
  );
};

const SourceForm = ({
  source: s,
  draft,
  disabled,
  onSet,
}: Pick<SectionProps, 'draft' | 'disabled' | 'onSet'> & { readonly source: Source }) => {
  const kind = kindOf(draft, s.kindId, 'source');
  const set = kind?.what === 'generator';
  const rating = sourceRating(draft, s.id);
  const units = planRecord(draft).lengthUnits;
  const field = (
    label: string,
    key: 'voltsV' | 'ratedKw' | 'ratedKva' | 'mainBreakerA' | 'loopOhm' | 'ratingShare' | 'tankL',
    unit: string,
    range: readonly [number, number],
    example: string,
    hint: string,
    per = 1,
  ) => (
    <Field
      key={key}
      label={label}
      value={s[key]}
      format={(v) => (v === undefined ? '' : `${Math.round(v * per * 1000) / 1000} ${unit}`)}
      parse={optionalNumber(unit, range[0], range[1], example)}
      disabled={disabled}
      hint={hint}
      onCommit={(v) => onSet(s.id, { [key]: v === undefined ? undefined : v / per })}
    />
  );
  const own = (v: number | undefined, unit: string): string =>
    v === undefined ? 'not known' : `empty: its kind’s ${v} ${unit}`;
  const gallon = units === 'imperial' ? 1 / 3.785411784 : 1;
  return (
    <section className="settings-source" aria-label={`Source ${s.label}`}>
      <h3 className="inspector-head">
        {s.label} <span className="soft">{kind?.name}</span>
      </h3>
      {field(
        'Volts',
        'voltsV',
        'V',
        [1, 700],
        '118.5 V',
        s.voltsV !== undefined
          ? 'leg to neutral'
          : set
            ? 'leg to neutral, as set; empty: its nominal, assumed'
            : 'leg to neutral, measured; never assumed',
      )}
      {set || s.ratedKw !== undefined
        ? field('Rated kW', 'ratedKw', 'kW', [0.1, 5000], '100 kW', own(kind?.ratedKw, 'kW'))
        : null}
      {set || s.ratedKva !== undefined
        ? field('Rated kVA', 'ratedKva', 'kVA', [0.1, 6000], '125 kVA', own(kind?.ratedKva, 'kVA'))
        : null}
      {set
        ? field(
            'Gives',
            'ratingShare',
            '%',
            [10, 100],
            '92 %',
            s.ratingShare === undefined
              ? `of its rating; empty: ${Math.round(rating.share * 100)} % ${rating.shareFrom === 'table' ? 'by the derating table' : 'where it stands'}`
              : 'of its rating, by its maker',
            100,
          )
        : null}
      {field('Main', 'mainBreakerA', 'A', [1, 4000], '400 A', own(kind?.mainBreakerA, 'A'))}
      {field(
        'Impedance',
        'loopOhm',
        'Ω',
        [0.0001, 20],
        '0.12 Ω',
        'at its outlets, leg and return together, as measured; empty: not known',
      )}
      {set
        ? field(
            'Tank',
            'tankL',
            units === 'imperial' ? 'gal' : 'l',
            [0.1, 5000],
            units === 'imperial' ? '60 gal' : '230 l',
            kind?.tankL === undefined ? 'not known' : `empty: its kind’s ${formatFuel(kind.tankL, units)}`,
            gallon,
          )
        : null}
    </section>
  );
};
