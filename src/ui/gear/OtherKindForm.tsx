import { useState } from 'react';
import { bookOfKinds, figureOf, ownFigures, ownKindFrom } from '../../gear/index.ts';
import { problemText } from '../../kernel/result.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { planRecord } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { DrawingPreview } from './DrawingPreview.tsx';
import { useOwnBook } from './own-book.ts';

/** A form for one own kind of any family but lights: a kind of the book under a new name with figures changed. */
export const OtherKindForm = ({
  from,
  onClose,
}: {
  readonly from: Kind;
  readonly onClose: (slug?: string) => void;
}) => {
  const { ownBook } = useServices();
  const own = useOwnBook();
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const mine = from.origin.book !== 'built-in';
  const [name, setName] = useState(mine ? from.name : `${from.name}, own`);
  const [figures, setFigures] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState('');
  const made = ownKindFrom(from, name, figures);
  const known = made.ok && own.kinds.some((k) => k.slug === made.value.slug);

  const keep = async (): Promise<void> => {
    if (!made.ok) return;
    const r = await ownBook.set(bookOfKinds([...own.kinds, made.value], own));
    if (r.ok) onClose(made.value.slug);
    else setProblem(problemText(r.error));
  };

  return (
    <Modal
      title={`Own kind from ${from.name}`}
      open
      onClose={() => onClose()}
      wide
      foot={
        <button type="button" className="button primary" disabled={!made.ok} onClick={() => void keep()}>
          {known ? 'Change the own kind' : 'Keep in the own book'}
        </button>
      }
    >
      <div className="kind-form">
        <div className="form-grid">
          <label>
            Name, a description
            <input className="input" value={name} onChange={(e) => setName(e.target.value)} />
          </label>
          {ownFigures(from).map(({ field, label }) => (
            <label key={field}>
              {label}
              <input
                className="input"
                inputMode="decimal"
                value={figures[field] ?? String(figureOf(from, field) ?? '')}
                onChange={(e) => setFigures({ ...figures, [field]: e.target.value })}
              />
            </label>
          ))}
        </div>
        <div className="kind-preview" aria-live="polite">
          <DrawingPreview kind={made.ok ? made.value : from} units={units} />
          <p className="soft">
            Connectors, ways and ports stay those of {from.name}. Figures changed here are marked as entered
            by hand.
          </p>
          {made.ok ? null : (
            <ul>
              {made.error.map((p) => (
                <li key={problemText(p)} className="field-error">
                  {problemText(p)}
                </li>
              ))}
            </ul>
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
