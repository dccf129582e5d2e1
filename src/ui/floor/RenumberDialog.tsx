import { useState } from 'react';
import { problemText } from '../../kernel/result.ts';
import { renumberUnits, type UnitOrder, type UnitRule } from '../../plan/edits/renumber.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';
import { focusOnce } from './focus.ts';

const ORDERS: readonly { readonly order: UnitOrder; readonly words: string }[] = [
  { order: 'across', words: 'left to right' },
  { order: 'rows', words: 'row by row, as one reads' },
  { order: 'path', words: 'along a path: the nearest one next' },
  { order: 'position', words: 'by position: tubes and points by label, stands, floor' },
  { order: 'group', words: 'by group' },
  { order: 'number', words: 'in the order they have now' },
];

const whole = (t: string): number => (/^\d+$/.test(t.trim()) ? Number(t.trim()) : Number.NaN);

/** New numbers for the chosen units by a rule, shown before they are taken. */
export const RenumberDialog = () => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const [order, setOrder] = useState<UnitOrder>('across');
  const [prefix, setPrefix] = useState('');
  const [start, setStart] = useState('1');
  const [step, setStep] = useState('1');
  const [round, setRound] = useState(0);
  const rule: UnitRule = { order, prefix: prefix.trim(), start: whole(start), step: whole(step), round };
  const made = renumberUnits(plan, selection, rule);
  const inParts = order === 'position' || order === 'group';

  const apply = (): void => {
    if (!made.ok) return;
    session.commit(`Number ${made.value.numbers.length} units`, made.value.changes);
    session.set({ message: `${made.value.numbers.length} units numbered.` });
    closeAsk(session);
  };

  const text = (label: string, value: string, set: (v: string) => void, hint?: string) => (
    <label>
      {label}
      <input
        className="input"
        ref={label === 'First number' ? focusOnce : undefined}
        value={value}
        placeholder={hint}
        onChange={(e) => set(e.target.value)}
      />
    </label>
  );
  return (
    <Modal title="Number units by a rule" open aside onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          apply();
        }}
      >
        <label>
          In which order
          <select className="input" value={order} onChange={(e) => setOrder(e.target.value as UnitOrder)}>
            {ORDERS.map((o) => (
              <option key={o.order} value={o.order}>
                {o.words}
              </option>
            ))}
          </select>
        </label>
        <div className="ask-side">
          {text('Letters before it', prefix, setPrefix, 'none')}
          {text('First number', start, setStart)}
          {text('Step', step, setStep)}
        </div>
        {inParts ? (
          <label>
            Each {order === 'group' ? 'group' : 'position'} begins
            <select className="input" value={round} onChange={(e) => setRound(Number(e.target.value))}>
              <option value={0}>where the last one ended</option>
              <option value={10}>a new ten</option>
              <option value={100}>a new hundred</option>
            </select>
          </label>
        ) : null}
        {made.ok ? (
          <>
            <p className="soft">
              Numbers of units that are not selected are passed over, so that each stays the only one.
            </p>
            <ul className="renumber-list" aria-label="New numbers">
              {made.value.numbers.map((n) => (
                <li key={n.id} data-same={n.from === n.to}>
                  {n.from} → <span className="strong">{n.to}</span>
                </li>
              ))}
            </ul>
          </>
        ) : (
          <p className="field-error" role="alert">
            {problemText(made.error)}
          </p>
        )}
        <button type="submit" className="button primary" disabled={!made.ok}>
          Number them
        </button>
      </form>
    </Modal>
  );
};
