import { useMemo, useState } from 'react';
import { type Problem, problemText } from '../../kernel/result.ts';
import { PATCH_COLUMNS, readPatchCsv } from '../../plan/edits/patch-csv.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const MAX_FILE_BYTES = 64 * 1024 * 1024;
/** Rows shown of each sort; a list may have a hundred thousand. */
const SHOWN = 200;

/** Reads a patch list and shows what it would change and which rows are bad; nothing is applied until agreed. */
export const CsvDialog = ({ onClose }: { readonly onClose: () => void }) => {
  const { session } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const [file, setFile] = useState<{ readonly name: string; readonly text: string } | undefined>(undefined);
  const [problem, setProblem] = useState<Problem | undefined>(undefined);
  const read = useMemo(() => (file ? readPatchCsv(plan, file.text, file.name) : undefined), [plan, file]);
  const error = problem ?? (read && !read.ok ? read.error : undefined);
  const list = read?.ok ? read.value : undefined;

  const take = async (f: File): Promise<void> => {
    setFile(undefined);
    setProblem(undefined);
    if (f.size > MAX_FILE_BYTES)
      setProblem({ what: `${f.name} is too large for a patch list.`, todo: 'Choose a CSV file.' });
    else setFile({ name: f.name, text: await f.text() });
  };

  const apply = (): void => {
    if (!list) return;
    session.commit(`Import patch of ${list.changed} units`, list.changes);
    session.set({ message: `${list.changed} units changed from the list. Undo brings the old patch back.` });
    onClose();
  };

  return (
    <Modal
      title="Import patch"
      open
      onClose={onClose}
      wide
      foot={
        <button
          type="button"
          className="button primary"
          disabled={!list || list.changed === 0}
          onClick={apply}
        >
          Apply {list?.changed ?? 0} {list?.changed === 1 ? 'change' : 'changes'}
          {list && list.bad > 0 ? `, leave ${list.bad} bad ${list.bad === 1 ? 'row' : 'rows'} out` : ''}
        </button>
      }
    >
      <p className="soft">
        A list saved as CSV. Its first line names the columns: {PATCH_COLUMNS.join(', ')}. Unit and address
        are needed; an address may carry its universe (U3 418, 3/418). Nothing changes until you say so.
      </p>
      <p>
        <input
          type="file"
          aria-label="File with a patch"
          accept=".csv,.txt,text/csv"
          onChange={(e) => {
            const f = e.target.files?.[0];
            if (f) void take(f);
          }}
        />
      </p>
      {error ? (
        <p className="field-error" role="alert">
          {problemText(error)}
        </p>
      ) : null}
      {list ? (
        <>
          <p role="status">
            {list.rows.length} rows: {list.changed} change a unit,{' '}
            {list.rows.length - list.changed - list.bad} change nothing, {list.bad} cannot be used.
          </p>
          <table className="table">
            <thead>
              <tr>
                <th scope="col" className="num">
                  Line
                </th>
                <th scope="col">Unit</th>
                <th scope="col">Now</th>
                <th scope="col">Then</th>
                <th scope="col">Remarks</th>
              </tr>
            </thead>
            <tbody>
              {[
                ...list.rows.filter((r) => r.problem !== undefined).slice(0, SHOWN),
                ...list.rows.filter((r) => r.changed).slice(0, SHOWN),
              ].map((r) => (
                <tr key={r.line}>
                  <td className="num">{r.line}</td>
                  <th scope="row">{r.unit}</th>
                  <td className="soft">{r.before || 'none'}</td>
                  <td>{r.problem === undefined ? r.after || 'none' : ''}</td>
                  <td className={r.problem ? 'field-error' : undefined}>{r.problem ?? ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {Math.max(list.bad, list.changed) > SHOWN ? (
            <p className="soft">Only the first {SHOWN} of each sort are shown.</p>
          ) : null}
        </>
      ) : null}
    </Modal>
  );
};
