import { serialiseBook, sheetColumns, writeKindSheet } from '../../gear/index.ts';
import { useServices } from '../services.ts';
import { useOwnBook } from './own-book.ts';

/** The own book: what is in it, and the ways in and out. */
export const OwnBookTools = ({
  onImport,
  onForm,
}: {
  readonly onImport: () => void;
  readonly onForm: () => void;
}) => {
  const { deliver, ownBook } = useServices();
  const own = useOwnBook();
  const listed = new Set(['fixture', ...sheetColumns().map((f) => f.family)]);
  const unlisted = own.kinds.filter((k) => !listed.has(k.family)).length;
  const text = (s: string): Uint8Array => new TextEncoder().encode(s);
  return (
    <div className="gear-own">
      <p className="soft">
        {own.kinds.length === 0
          ? 'Own kinds are kept apart from the built-in book. None yet.'
          : `${own.kinds.length} own kinds.`}
        {unlisted > 0 ? ` ${unlisted} of families that a list cannot hold go into the book file only.` : ''}
      </p>
      {ownBook.notices.map((n) => (
        <p key={n} className="field-error">
          {n}
        </p>
      ))}
      <div className="gear-own-tools">
        <button type="button" className="button" onClick={onForm}>
          New kind…
        </button>
        <button type="button" className="button" onClick={onImport}>
          Import…
        </button>
        {own.kinds.length > 0 ? (
          <>
            <button
              type="button"
              className="button"
              onClick={() => void deliver('own-gear.json', text(serialiseBook(own)), 'application/json')}
            >
              Export book
            </button>
            <button
              type="button"
              className="button"
              onClick={() => void deliver('own-gear.csv', text(writeKindSheet(own.kinds)), 'text/csv')}
            >
              Export list
            </button>
          </>
        ) : null}
      </div>
    </div>
  );
};
