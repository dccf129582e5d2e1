import type { RecordType } from '../../plan/records/index.ts';
import type { Command } from './command.ts';

const GEAR: readonly RecordType[] = [
  'fixture',
  'ballast',
  'stand',
  'grip',
  'rigging',
  'box',
  'charger',
  'pack',
  'device',
  'source',
  'outlet',
  'mark',
];

/** All gear and marks of the floor; the room stays out of it. */
export const selectAll: Command = {
  id: 'select-all',
  label: 'Select all gear',
  keys: ['$mod+KeyA'],
  enabled: (s) => s.plan.records.size > 0,
  perform: ({ session }) => {
    const { plan, floorId } = session.getState();
    const ids = [...plan.records.values()]
      .filter((r) => GEAR.includes(r.type) && 'floorId' in r && r.floorId === floorId)
      .map((r) => r.id);
    session.set({ selection: new Set(ids) });
  },
};
