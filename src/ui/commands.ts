import { useEffect, useMemo } from 'react';
import { tinykeys } from 'tinykeys';
import { type Command, type CommandContext, commands } from '../editor/commands/index.ts';
import { onSetup } from '../editor/on-setup.ts';
import { useServices } from './services.ts';
import { useUi } from './ui-state.ts';

/** The editor's commands, bound to the open plan. */
export const useCommands = () => {
  const { session: whole, book } = useServices();
  // Commands work on what the floor shows.
  const session = onSetup(whole);
  return useMemo(() => {
    const context: CommandContext = { session, book };
    const byId = new Map<string, Command>(commands.map((c) => [c.id, c]));
    return {
      all: commands,
      run: (id: string): void => {
        const c = byId.get(id);
        if (!c) throw new Error(`no command ${id}`);
        if (c.enabled(session.getState())) c.perform(context);
      },
      enabled: (c: Command): boolean => c.enabled(session.getState()),
      keysOf: (id: string): string =>
        [...(byId.get(id)?.keys ?? []), ...(byId.get(id)?.platformKeys ?? [])].map(keyWords).join(', '),
    };
  }, [session, book]);
};

const MAC = typeof navigator !== 'undefined' && /mac/i.test(navigator.userAgent);

/** A key binding as it is said: `$mod+Shift+KeyZ` is Ctrl+Shift+Z. */
export const keyWords = (binding: string): string =>
  binding
    .split('+')
    .map((k) => KEY_WORDS[k] ?? k.replace(/^Key|^Digit/, ''))
    .join('+');

const KEY_WORDS: Readonly<Record<string, string>> = {
  $mod: MAC ? '⌘' : 'Ctrl',
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Escape: 'Esc',
  BracketLeft: '[',
  BracketRight: ']',
  Equal: '=',
  Minus: '−',
  Slash: '/',
};

/** Whether keys typed here belong to what is being typed, not to the editor. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName) ||
    target.closest('[role="dialog"],[role="menu"]') !== null);

/** Binds every command's keys, and `/` and `?`, while a plan is open. */
export const useKeys = (): void => {
  const { run, all } = useCommands();
  const open = useUi((u) => u.open);
  useEffect(() => {
    const bindings: Record<string, (e: KeyboardEvent) => void> = {};
    const bind = (keys: string, act: () => void): void => {
      bindings[keys] = (e) => {
        if (isTyping(e.target)) return;
        e.preventDefault();
        act();
      };
    };
    for (const c of all) for (const k of c.keys) bind(k, () => run(c.id));
    bind('/', () => open('commands'));
    bind('Shift+?', () => open('shortcuts'));
    return tinykeys(window, bindings);
  }, [run, all, open]);
};
