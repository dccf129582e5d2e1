import type { KindConflict, MergeChoice } from '../../gear/index.ts';
import type { LengthUnits } from '../../kernel/units.ts';
import { connector } from '../../plan/connectors.ts';
import { mountsWords } from '../../plan/kinds/mount-words.ts';

/** `figure: mine → theirs` as three cells; a text that is no such pair stands in the first. */
const cellsOf = (difference: string): readonly [string, string, string] => {
  const colon = difference.indexOf(': ');
  const arrow = difference.indexOf(' → ', colon);
  return colon > 0 && arrow > 0
    ? [difference.slice(0, colon), difference.slice(colon + 2, arrow), difference.slice(arrow + 3)]
    : [difference, '', ''];
};

/** Ids of connectors and mounts by their names. */
const worded = (name: string, value: string, units: LengthUnits): string =>
  name === 'mount'
    ? mountsWords(value.split(', '), units)
    : name.endsWith('connector')
      ? (connector(value)?.name ?? value)
      : value;

const CHOICES: readonly (readonly [MergeChoice, string])[] = [
  ['mine', 'mine stays'],
  ['theirs', 'take the file’s'],
  ['both', 'keep both'],
];

/** Two kinds of one name that differ: figure by figure, mine beside the file's, and what is to become of them. */
export const ConflictView = ({
  conflict: c,
  choice,
  units,
  onChoose,
}: {
  readonly conflict: KindConflict;
  readonly choice: MergeChoice;
  readonly units: LengthUnits;
  readonly onChoose: (choice: MergeChoice) => void;
}) => (
  <article className="import-conflict">
    <div className="conflict-head">
      <p className="strong">{c.mine.name}: the book’s own differs</p>
      <fieldset className="mount-choice" aria-label={`What becomes of ${c.mine.name}`}>
        {CHOICES.map(([id, words]) => (
          <label key={id}>
            <input
              type="radio"
              name={`choice-${c.slug}`}
              checked={choice === id}
              onChange={() => onChoose(id)}
            />{' '}
            {words}
          </label>
        ))}
      </fieldset>
    </div>
    <table className="table conflict-table">
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">Mine</th>
          <th scope="col">The file’s</th>
        </tr>
      </thead>
      <tbody>
        {c.differences.map((d) => {
          const [name, mine, theirs] = cellsOf(d);
          return (
            <tr key={d}>
              <th scope="row">{name}</th>
              <td className={choice === 'theirs' ? 'soft' : 'strong'}>{worded(name, mine, units)}</td>
              <td className={choice === 'mine' ? 'soft' : 'strong'}>{worded(name, theirs, units)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  </article>
);
