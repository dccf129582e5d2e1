import { useState, useSyncExternalStore } from 'react';
import { problemText } from '../../kernel/result.ts';
import { useServices } from '../services.ts';

/** Says at once when edits are not being kept, and what can be done. */
export const SaveBanner = ({ onSaveFile }: { readonly onSaveFile: () => void }) => {
  const { saveState, onSaveState, takeOver } = useServices();
  const [problem, setProblem] = useState('');
  const s = useSyncExternalStore(onSaveState, saveState);
  if (s.state === 'failed') {
    return (
      <div className="banner stop" role="alert">
        <span>
          {s.what} {s.todo}
        </span>
        <button type="button" className="button" onClick={onSaveFile}>
          Save plan file…
        </button>
      </div>
    );
  }
  if (s.state !== 'read-only') return null;
  return (
    <div className="banner" role="status">
      <span>
        {s.reason === 'other-tab'
          ? 'Another tab is working on this plan. What it does shows here; this tab only looks on.'
          : 'This plan was saved by a newer version of the program. It can be looked at and printed, not changed.'}{' '}
        {problem}
      </span>
      {s.reason === 'other-tab' ? (
        <button
          type="button"
          className="button"
          onClick={async () => {
            const r = await takeOver();
            setProblem(r.ok ? '' : problemText(r.error));
          }}
        >
          Take over
        </button>
      ) : null}
    </div>
  );
};
