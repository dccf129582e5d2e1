import { useState } from 'react';
import { bookOfKinds, readKindSheet, writeKindSheet } from '../../gear/index.ts';
import { problemText } from '../../kernel/result.ts';
import { connectors } from '../../plan/connectors.ts';
import type { FixtureKind, Kind } from '../../plan/kinds/kinds.ts';
import { mountWords } from '../../plan/kinds/mount-words.ts';
import { planRecord } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { DrawingPreview } from './DrawingPreview.tsx';
import { useOwnBook } from './own-book.ts';

/** The columns of the spreadsheet, so that form and list check a kind by the same rules. */
const FIELDS = [
  ['name', 'Name, a description', 'LED panel 60×60, 300 W'],
  ['also', 'Also called', 'soft panel; square'],
  ['watts', 'Input watts at full', '300'],
  ['power factor', 'Power factor', '0.95'],
  ['volts min', 'Least volts', '100'],
  ['volts max', 'Most volts', '240'],
  ['mass kg', 'Mass, kg', '10'],
  ['length mm', 'Length along the throw, mm', '150'],
  ['width mm', 'Width across it, mm', '640'],
  ['beam deg', 'Beam, degrees', '110'],
  ['field deg', 'Field, degrees', '120'],
  ['modes', 'Modes: name:slots', '8-bit:4;16-bit:8'],
] as const;

const MOUNTS = ['pin-16', 'spigot-28', 'clamp', 'clip', 'socket', 'hung', 'floor', 'held'] as const;

/** What a basis speaks of, in words. */
const ASSUMED_WORDS: Readonly<Record<string, string>> = {
  'load.behaviour': 'standby, inrush, leakage and harmonics',
  'load.powerFactor': 'power factor',
  'load.volts': 'range of volts',
  massKg: 'mass',
  sizeMm: 'size',
  inlets: 'power connector',
  mount: 'mount',
  source: 'sort of light source',
};

type Draft = Readonly<Record<string, string>>;

const cell = (s: string): string => (/[",\r\n]/.test(s) ? `"${s.replaceAll('"', '""')}"` : s);

/** A form for one own fixture kind, checked as it is typed and shown as it will be drawn. */
export const KindForm = ({
  from,
  onClose,
}: {
  /** A kind to begin from: it is copied, never changed. */
  readonly from: Kind | undefined;
  readonly onClose: (slug?: string) => void;
}) => {
  const { ownBook } = useServices();
  const own = useOwnBook();
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const [draft, setDraft] = useState<Draft>(() =>
    from?.family === 'fixture' ? draftOf(from) : { source: 'led', mount: 'spigot-28' },
  );
  const [problem, setProblem] = useState('');
  const set = (name: string, value: string): void => setDraft({ ...draft, [name]: value });
  const names = [...FIELDS.map(([id]) => id), 'slug', 'source', 'connector', 'mount'];
  const csv = `${names.join(',')}\n${names.map((n) => cell(draft[n] ?? '')).join(',')}\n`;
  const read = readKindSheet(csv, 'the form');
  const row = read.ok ? read.value.rows[0] : undefined;
  const problems = read.ok ? (row?.problems ?? []).map(problemText) : [problemText(read.error)];
  const kind = row?.kind;
  const known = kind ? own.kinds.some((k) => k.slug === kind.slug) : false;

  const keep = async (): Promise<void> => {
    if (!kind) return;
    const r = await ownBook.set(bookOfKinds([...own.kinds, kind], own));
    if (r.ok) onClose(kind.slug);
    else setProblem(problemText(r.error));
  };

  return (
    <Modal
      title="Own kind"
      open
      onClose={() => onClose()}
      wide
      foot={
        <button type="button" className="button primary" disabled={!kind} onClick={() => void keep()}>
          {known ? 'Change the own kind' : 'Keep in the own book'}
        </button>
      }
    >
      <div className="kind-form">
        <div className="form-grid">
          {FIELDS.map(([id, label, example]) => (
            <label key={id}>
              {label}
              <input
                className="input"
                value={draft[id] ?? ''}
                placeholder={example}
                onChange={(e) => set(id, e.target.value)}
              />
            </label>
          ))}
          <label>
            Source of light
            <select
              className="input"
              value={draft.source ?? 'led'}
              onChange={(e) => set('source', e.target.value)}
            >
              {['led', 'tungsten', 'discharge', 'fluorescent'].map((s) => (
                <option key={s}>{s}</option>
              ))}
            </select>
          </label>
          <label>
            Inlet
            <select
              className="input"
              value={draft.connector ?? ''}
              onChange={(e) => set('connector', e.target.value)}
            >
              <option value="">not known</option>
              {connectors.map((c) => (
                <option key={c.id} value={c.id}>
                  {c.name}
                </option>
              ))}
            </select>
          </label>
          <fieldset className="mount-choice">
            <legend>Goes on</legend>
            {MOUNTS.map((m) => {
              const chosen = (draft.mount ?? '').split(';').map((x) => x.trim());
              return (
                <label key={m}>
                  <input
                    type="checkbox"
                    checked={chosen.includes(m)}
                    onChange={(e) =>
                      set(
                        'mount',
                        MOUNTS.filter((x) => (x === m ? e.target.checked : chosen.includes(x))).join(';'),
                      )
                    }
                  />{' '}
                  {mountWords(m, units)}
                </label>
              );
            })}
          </fieldset>
        </div>
        <div className="kind-preview" aria-live="polite">
          {kind ? (
            <>
              <DrawingPreview kind={kind} units={units} />
              <p className="strong">{kind.name}</p>
              <p className="soft">
                {Object.entries(kind.basis)
                  .filter(([, b]) => /assumed/.test(b))
                  .map(([f]) => ASSUMED_WORDS[f] ?? f)
                  .join(', ')
                  .replace(/^(.+)$/, 'Assumed: $1')}
              </p>
            </>
          ) : null}
          {draft.name ? (
            <ul>
              {problems.map((p) => (
                <li key={p} className="field-error">
                  {p}
                </li>
              ))}
            </ul>
          ) : (
            <p className="soft">Give it a name: what it is, its size and its watts.</p>
          )}
          {problem ? (
            <p className="field-error" role="alert">
              {problem}
            </p>
          ) : null}
        </div>
      </div>
    </Modal>
  );
};

/** The form's cells for a kind, by way of the spreadsheet, so that nothing is spelled twice. */
const draftOf = (kind: FixtureKind): Draft => {
  const [head = '', line = ''] = writeKindSheet([kind])
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/);
  const cells = splitCsv(line);
  const draft = Object.fromEntries(splitCsv(head).map((name, i) => [name.toLowerCase(), cells[i] ?? '']));
  return { ...draft, slug: '', name: `${kind.name}, own` };
};

const splitCsv = (line: string): string[] =>
  [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map((m) =>
    (m[1] ?? '').replace(/^"|"$/g, '').replaceAll('""', '"'),
  );
