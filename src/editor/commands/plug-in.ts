import { inletsOf } from '../../plan/ports.ts';
import type { PortRef } from '../../plan/records/index.ts';
import { takerOf } from '../connect.ts';
import type { SessionState } from '../session.ts';
import type { Command } from './command.ts';

/** The inlet of the one selected thing that takes power: its own, or its ballast's. */
export const chosenInlet = (s: Pick<SessionState, 'plan' | 'selection'>): PortRef | undefined => {
  const [id, more] = s.selection;
  if (id === undefined || more !== undefined) return undefined;
  const recordId = takerOf(s.plan, id);
  const inlet = inletsOf(s.plan, recordId)[0];
  return inlet ? { recordId, portId: inlet.id } : undefined;
};

export const plugIn: Command = {
  id: 'plug-in',
  label: 'Plug in…',
  keys: ['Alt+KeyC'],
  enabled: (s) => !s.readOnly && chosenInlet(s) !== undefined,
  perform: ({ session }) => session.set({ floorView: { ...session.getState().floorView, ask: 'plug' } }),
};
