import { useRef, useState } from 'react';
import {
  importGdtf,
  type MergeChoice,
  mergeBook,
  readBook,
  readKindSheet,
  resolveMerge,
} from '../../gear/index.ts';
import { problemText } from '../../kernel/result.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { planRecord } from '../../plan/plan.ts';
import { kindFacts } from '../../report/kind-facts.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ConflictView } from './ConflictView.tsx';
import { DrawingPreview } from './DrawingPreview.tsx';
import { useOwnBook } from './own-book.ts';
import { SheetColumns } from './SheetColumns.tsx';

/** What a file holds, read but not yet kept. */
interface Read {
  readonly file: string;
  readonly kinds: readonly Kind[];
  readonly notices: readonly string[];
  readonly problems: readonly string[];
}

const MAX_FILE_BYTES = 100 * 1024 * 1024;

/** Brings kinds from a fixture file, a spreadsheet or another book into the own book; looked at before they are kept. */
export const ImportDialog = ({ onClose }: { readonly onClose: () => void }) => {
  const { ownBook } = useServices();
  const own = useOwnBook();
  const practice = useSessionSlice((s) => planRecord(s.plan).practice);
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const [read, setRead] = useState<Read | undefined>(undefined);
  const [choices, setChoices] = useState<ReadonlyMap<string, MergeChoice>>(new Map());
  const [problem, setProblem] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const merge = read ? mergeBook(own, read.kinds) : undefined;

  const take = async (file: File): Promise<void> => {
    setProblem('');
    setChoices(new Map());
    if (file.size > MAX_FILE_BYTES) {
      setRead(undefined);
      return setProblem(
        `${file.name} is too large (${Math.round(file.size / 1e6)} MB). Choose a fixture file, a list or a gear book.`,
      );
    }
    const result = await readFile(file, practice);
    setRead(result.ok ? result.value : undefined);
    if (!result.ok) setProblem(result.error);
  };

  const keep = async (): Promise<void> => {
    if (!merge) return;
    const r = await ownBook.set(resolveMerge(own, merge, choices));
    if (r.ok) onClose();
    else setProblem(problemText(r.error));
  };

  const count = merge ? merge.added.length + [...choices.values()].filter((c) => c !== 'mine').length : 0;
  return (
    <Modal
      title="Import kinds"
      open
      onClose={onClose}
      wide
      foot={
        <button type="button" className="button primary" disabled={count === 0} onClick={() => void keep()}>
          Keep {count} in the own book
        </button>
      }
    >
      <p className="soft">
        An open fixture file (.gdtf), a spreadsheet saved as CSV (lights, stands, frames, rigging, packs,
        cables), or a gear book saved by this program. Nothing is kept until you say so.
      </p>
      <p>
        <input
          ref={input}
          type="file"
          aria-label="File with kinds"
          accept=".gdtf,.csv,.txt,.json"
          onChange={(e) => {
            const file = e.target.files?.[0];
            if (file) void take(file);
          }}
        />
      </p>
      {read ? null : <SheetColumns />}
      {problem ? (
        <p className="field-error" role="alert">
          {problem}
        </p>
      ) : null}
      {read?.problems.map((p) => (
        <p key={p} className="field-error">
          {p}
        </p>
      ))}
      {merge?.added.map((k) => (
        <article key={k.slug} className="import-kind">
          <DrawingPreview kind={k} units={units} />
          <div>
            <p className="strong">{k.name}</p>
            <p className="soft">
              {kindFacts(k, units)
                .filter((f) => f.value !== '–')
                .map((f) => `${f.name} ${f.value}${/assumed/.test(f.basis) ? ' (assumed)' : ''}`)
                .join(' · ')}
            </p>
          </div>
        </article>
      ))}
      {merge && merge.same.length > 0 ? (
        <p className="soft">{merge.same.length} are in the book already, unchanged.</p>
      ) : null}
      {merge?.conflicts.map((c) => (
        <ConflictView
          key={c.slug}
          conflict={c}
          choice={choices.get(c.slug) ?? 'mine'}
          units={units}
          onChoose={(choice) => setChoices(new Map(choices).set(c.slug, choice))}
        />
      ))}
      {read && read.notices.length > 0 ? (
        <>
          <h3 className="inspector-head">Notes on the file</h3>
          <ul className="assumptions">
            {read.notices.map((n) => (
              <li key={n}>{n}</li>
            ))}
          </ul>
        </>
      ) : null}
    </Modal>
  );
};

const readFile = async (
  file: File,
  practice: 'north-america' | 'europe',
): Promise<{ ok: true; value: Read } | { ok: false; error: string }> => {
  const name = file.name;
  if (/\.gdtf$/i.test(name)) {
    const r = importGdtf(new Uint8Array(await file.arrayBuffer()), name, { practice });
    if (!r.ok) return { ok: false, error: problemText(r.error) };
    const { kind, notices, problems } = r.value;
    return { ok: true, value: { file: name, kinds: [kind], notices, problems: problems.map(problemText) } };
  }
  const text = await file.text();
  if (/\.json$/i.test(name)) {
    const r = readBook(text, name);
    if (!r.ok) return { ok: false, error: problemText(r.error) };
    return {
      ok: true,
      value: { file: name, kinds: r.value.book.kinds, notices: r.value.notices, problems: [] },
    };
  }
  const r = readKindSheet(text, name);
  if (!r.ok) return { ok: false, error: problemText(r.error) };
  const problems = r.value.rows.flatMap((row) => row.problems.map(problemText));
  return { ok: true, value: { file: name, kinds: r.value.kinds, notices: r.value.notices, problems } };
};
