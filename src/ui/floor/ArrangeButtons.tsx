import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';

const ONE = ['lock', 'unlock', 'row', 'replace'] as const;
const SEVERAL = [
  'group',
  'ungroup',
  'align-left',
  'align-centre-across',
  'align-right',
  'align-top',
  'align-centre-down',
  'align-bottom',
  'distribute-across',
  'distribute-down',
  'mirror-upright',
  'mirror-level',
  'turn-together-left',
  'turn-together-right',
] as const;

/** What can be done with the selection as a whole, each with its key. */
export const ArrangeButtons = () => {
  const { all, run, keysOf } = useCommands();
  const { several, readOnly } = useSessionSlice((s) => ({
    several: s.selection.size > 1,
    readOnly: s.readOnly,
  }));
  const ids: readonly string[] = several ? [...SEVERAL, ...ONE] : ONE;
  return (
    <details className="arrange" open={several}>
      <summary>Arrange</summary>
      <div className="arrange-buttons">
        {ids.map((id) => {
          const keys = keysOf(id);
          return (
            <button
              key={id}
              type="button"
              className="button"
              disabled={readOnly}
              title={keys === '' ? undefined : keys}
              onClick={() => run(id)}
            >
              {all.find((c) => c.id === id)?.label}
            </button>
          );
        })}
      </div>
    </details>
  );
};
