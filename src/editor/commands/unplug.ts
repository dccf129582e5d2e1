import type { Id } from '../../kernel/ids.ts';
import { unplug } from '../../plan/edits/plug.ts';
import { feedOf, inletsOf } from '../../plan/ports.ts';
import type { PortRef } from '../../plan/records/index.ts';
import { chainEdits } from '../chain.ts';
import { takerOf } from '../connect.ts';
import type { SessionState } from '../session.ts';
import { wordsFor } from '../words.ts';
import type { Command } from './command.ts';

/** Inlets of the selection that have a feed; a selected cable stands for the inlet it feeds. */
const fedInlets = (s: SessionState): readonly { readonly ref: PortRef; readonly id: Id }[] =>
  [...s.selection].flatMap((id) => {
    const r = s.plan.records.get(id);
    if (r?.type === 'cable') return [{ ref: r.to, id: r.to.recordId }];
    const recordId = takerOf(s.plan, id);
    return inletsOf(s.plan, recordId)
      .map((i) => ({ ref: { recordId, portId: i.id }, id }))
      .filter(({ ref }) => feedOf(s.plan, ref) !== undefined);
  });

export const unplugSelection: Command = {
  id: 'unplug',
  label: 'Unplug',
  keys: ['Shift+KeyC'],
  enabled: (s) => !s.readOnly && fedInlets(s).length > 0,
  perform: ({ session }) => {
    const s = session.getState();
    const inlets = fedInlets(s);
    const words = wordsFor(s.plan, new Set(inlets.map((i) => i.id)));
    session.commit(
      `Unplug ${words}`,
      chainEdits(s.plan, inlets, (plan, i) => unplug(plan, i.ref)),
    );
  },
};
