import { useState } from 'react';
import { wordsFor } from '../../editor/words.ts';
import { problemText } from '../../kernel/result.ts';
import { replaceChosen } from '../../plan/edits/kinds.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { Modal } from '../common/Modal.tsx';
import { SymbolIcon } from '../common/SymbolIcon.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';

/** Another kind for what is selected: place, aim, plug and address stay where they fit. */
export const ReplaceDialog = () => {
  const { session, searchGear } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const [query, setQuery] = useState('');
  const [problem, setProblem] = useState('');
  const families = new Set([...selection].map((id) => plan.records.get(id)?.type as string));
  const wanted: readonly string[] = families.has('fixture') ? ['fixture'] : [...families];
  const found = searchGear(query, 60)
    .filter((k) => wanted.includes(k.family))
    .slice(0, 14);

  const replace = (kind: Kind): void => {
    const made = replaceChosen(plan, selection, kind);
    if (!made.ok) return setProblem(problemText(made.error));
    const { records, unfit } = made.value;
    session.commit(`Replace ${wordsFor(plan, records)} by ${kind.name}`, made.value.changes);
    session.set({
      message:
        unfit.length > 0
          ? `Left as it was: ${unfit.slice(0, 3).join('; ')}${unfit.length > 3 ? ` and ${unfit.length - 3} more` : ''}.`
          : `${records.length} replaced by ${kind.name}.`,
    });
    closeAsk(session);
  };

  return (
    <Modal title={`Replace ${wordsFor(plan, selection)} by`} open onClose={() => closeAsk(session)}>
      <input
        className="input"
        type="search"
        aria-label="Find the new kind"
        placeholder="Find gear"
        ref={(el) => {
          if (el && document.activeElement?.closest('[role="dialog"]') === null) el.focus();
        }}
        value={query}
        onChange={(e) => {
          setQuery(e.target.value);
          setProblem('');
        }}
        onKeyDown={(e) => {
          const [first] = found;
          if (e.key === 'Enter' && first) replace(first);
        }}
      />
      {problem ? (
        <p className="field-error" role="alert">
          {problem}
        </p>
      ) : null}
      <ul className="replace-list">
        {found.map((k) => (
          <li key={k.slug}>
            <button type="button" className="shelf-item" onClick={() => replace(k)}>
              <SymbolIcon symbolId={k.symbol} />
              <span className="shelf-text">
                <span className="strong">{k.name}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
      {found.length === 0 ? <p className="soft">No kind of this family has these words.</p> : null}
    </Modal>
  );
};
