import { setupsOf } from '../../plan/plan.ts';
import type { Command } from './command.ts';

const step = (id: string, label: string, key: string, by: number): Command => ({
  id,
  label,
  keys: [key],
  enabled: (s) => setupsOf(s.plan).length > 1,
  perform: ({ session }) => {
    const { plan, setupId } = session.getState();
    const setups = setupsOf(plan);
    const at = setups.findIndex((x) => x.id === setupId);
    const next = setups[(at + by + setups.length) % setups.length];
    if (next) session.set({ setupId: next.id, message: `Setup ${next.name}.` });
  },
});

export const nextSetup = step('next-setup', 'Next setup', 'PageDown', 1);
export const previousSetup = step('previous-setup', 'Previous setup', 'PageUp', -1);
