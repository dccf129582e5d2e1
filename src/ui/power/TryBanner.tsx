import { problemText } from '../../kernel/result.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { useTried, useTriedOnDrawing } from './trying.ts';
import './try-banner.css';

/** Over every workspace while something is tried: what it is, what it would do, and the way out. */
export const TryBanner = () => {
  const { session } = useServices();
  const tried = useTried();
  const readOnly = useSessionSlice((s) => s.readOnly);
  const setTrying = useUi((u) => u.setTrying);
  const setPowerTab = useUi((u) => u.setPowerTab);
  useTriedOnDrawing(tried);
  if (!tried) return null;
  const end = (): void => setTrying(undefined);
  if (!tried.result.ok)
    return (
      <section className="try-banner" aria-label="Trying">
        <p>{problemText(tried.result.error)}</p>
        <button type="button" className="button" onClick={end}>
          End
        </button>
      </section>
    );
  const see = (): void => {
    setPowerTab('what-if');
    session.set({ workspace: 'power' });
  };
  const keep = (): void => {
    if (tried.what !== 'swap' || !tried.result.ok) return;
    session.commit(`Swap ${tried.result.value.title}`, tried.result.value.changes);
    session.set({ message: `${tried.result.value.title}. Undo takes it back.` });
    end();
  };
  return (
    <section className="try-banner" aria-label="Trying" aria-live="polite">
      <p>
        <span className="strong">What if: {tried.result.value.title}</span>{' '}
        <span className="soft">{tried.what === 'fault' ? faultWords(tried) : swapWords(tried)}</span>
      </p>
      <span className="soft small">Only tried: the plan is as it was.</span>
      <button type="button" className="button" onClick={see}>
        Figures
      </button>
      {tried.what === 'swap' ? (
        <button type="button" className="button primary" disabled={readOnly} onClick={keep}>
          Keep: change the plan
        </button>
      ) : null}
      <button type="button" className="button" onClick={end}>
        {tried.what === 'swap' ? 'Discard' : 'End'}
      </button>
    </section>
  );
};

const faultWords = (tried: Extract<ReturnType<typeof useTried>, { what: 'fault' }>): string => {
  if (!tried.result.ok) return '';
  const { loads, setup } = tried.result.value;
  const n = (state: string): number => loads.filter((l) => l.state === state).length;
  const parts = [
    [n('dark'), 'dark'],
    [n('wrong volts'), 'outside their volts'],
    [n('fewer legs'), 'on fewer legs'],
  ]
    .filter(([k]) => k !== 0)
    .map(([k, w]) => `${k} ${w}`);
  return `in ${setup || 'the plan'}: ${parts.join(', ') || 'no load is hit'}, of ${loads.length}.`;
};

const swapWords = (tried: Extract<ReturnType<typeof useTried>, { what: 'swap' }>): string => {
  if (!tried.result.ok) return '';
  const { appear, go, unfed } = tried.result.value;
  const of = (list: typeof appear, level: string): number => list.filter((f) => f.severity === level).length;
  return `stops ${signed(of(appear, 'stop') - of(go, 'stop'))}, warns ${signed(of(appear, 'warn') - of(go, 'warn'))}${
    unfed.length > 0 ? `, ${unfed.length} loads no longer fed as they should be` : ''
  }.`;
};

const signed = (n: number): string => (n > 0 ? `+${n}` : n < 0 ? `−${-n}` : 'as before');
