import { sheetColumns, writeKindSheet } from '../../gear/index.ts';
import { FAMILY_WORDS } from '../../report/kind-words.ts';
import { useServices } from '../services.ts';

/** Columns of a row for a light; what each may hold is checked row by row. */
const LIGHT: readonly (readonly [heading: string, words: string])[] = [
  ['source', 'led, tungsten, discharge or fluorescent'],
  ['watts, power factor, volts min, volts max', 'at the inlet; no watts: not known'],
  ['connector', 'id or name of a connector'],
  ['mass kg, length mm, width mm, height mm', 'or mass lb, length in …'],
  ['mount', 'pin-16, spigot-28, clamp, clip, socket, hung, floor, held, between semicolons'],
  ['beam deg, field deg', 'degrees'],
  ['modes', '8-bit:4;16-bit:8, with parts behind a stroke: pixels:36/12'],
];

/** What columns a list may have, family by family, and an empty list with all of them to fill in. */
export const SheetColumns = () => {
  const { deliver } = useServices();
  const families = sheetColumns();
  const headings = [
    ...new Set([
      'family',
      'name',
      ...families.flatMap((f) => f.columns.map((c) => c.heading)),
      'also',
      'notes',
    ]),
  ];
  const lights = writeKindSheet([])
    .replace(/^\uFEFF/, '')
    .trim()
    .split(',');
  return (
    <details className="sheet-columns">
      <summary>Columns of a list</summary>
      <p className="soft">
        The first row names the columns, in any order. <b>family</b> says what a row is: light (when empty),
        stand, grip, rigging, pack or cable. <b>name</b> is needed in every row; <b>also</b>, <b>notes</b> and{' '}
        <b>slug</b> may be given. What holds or carries is never assumed.
      </p>
      <button
        type="button"
        className="button"
        onClick={() =>
          void deliver(
            'own-gear-empty.csv',
            new TextEncoder().encode(`\uFEFF${[...new Set([...headings, ...lights])].join(',')}\r\n`),
            'text/csv',
          )
        }
      >
        Save an empty list
      </button>
      <h4>Lights</h4>
      <dl>
        {LIGHT.map(([heading, words]) => (
          <div key={heading}>
            <dt>{heading}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {families.map((f) => (
        <section key={f.family}>
          <h4>
            {FAMILY_WORDS[f.family] ?? f.family} <span className="soft">· family {f.family}</span>
          </h4>
          <dl>
            {f.columns.map((c) => (
              <div key={c.heading}>
                <dt>
                  {c.heading}
                  {c.need ? <span className="sheet-need"> needed</span> : null}
                </dt>
                <dd>{c.words}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </details>
  );
};
