import { setOnPacks } from '../../plan/edits/day.ts';
import { kindOf, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import type { SessionState } from '../session.ts';
import { wordsFor } from '../words.ts';
import type { Command } from './command.ts';

/** Selected units that could run on packs or on their own cells, or do. */
const packed = (s: SessionState, onPacks: boolean): readonly Fixture[] =>
  [...s.selection].flatMap((id) => {
    const f = recordOf(s.plan, 'fixture', id);
    const kind = f && kindOf(s.plan, f.kindId, 'fixture');
    const can = onPacks || kind?.ownCellsWh !== undefined || kind?.packIn !== undefined;
    return f && !f.locked && f.onPacks === onPacks && can ? [f] : [];
  });

const change = (id: string, label: string, to: boolean): Command => ({
  id,
  label,
  keys: [],
  enabled: (s) => !s.readOnly && packed(s, !to).length > 0,
  perform: ({ session }) => {
    const { plan, ...s } = session.getState();
    const ids = packed({ plan, ...s }, !to).map((f) => f.id);
    const words = wordsFor(plan, ids);
    session.commit(to ? `Put ${words} on packs` : `Put ${words} back to mains`, setOnPacks(plan, ids, to));
    session.set({
      message: to ? 'Which packs, and what is done when they are empty, is chosen in Day, Packs.' : '',
    });
  },
});

/** Puts units on packs or their own cells and back. */
export const packCommands: readonly Command[] = [
  change('on-packs', 'Run on packs or own cells', true),
  change('to-mains', 'Back to mains', false),
];
