import type { Command } from './command.ts';

const MODIFIERS = ['$mod', 'Control', 'Meta', 'Alt', 'Shift'];

/** A key binding with its modifiers in one order, so that two spellings of one key compare equal. */
const normalKeys = (binding: string): string => {
  const parts = binding.trim().split('+');
  const key = parts.at(-1) ?? '';
  const mods = parts.slice(0, -1).sort((a, b) => MODIFIERS.indexOf(a) - MODIFIERS.indexOf(b));
  return [...mods, key].join('+');
};

/** The commands as given, after checking that no id and no key is claimed twice. Throws where one is. */
export const registerCommands = (list: readonly Command[]): readonly Command[] => {
  const ids = new Set<string>();
  const keys = new Map<string, string>();
  for (const c of list) {
    if (ids.has(c.id)) throw new Error(`two commands are called ${c.id}`);
    ids.add(c.id);
    for (const k of c.keys) {
      const key = normalKeys(k);
      const other = keys.get(key);
      if (other !== undefined) throw new Error(`${c.id} and ${other} both claim ${key}`);
      keys.set(key, c.id);
    }
  }
  return list;
};
