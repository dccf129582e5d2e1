import type { Id } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import {
  type AlignSide,
  alignRecords,
  distributeRecords,
  mirrorRecords,
  rotateAbout,
  selectionCentre,
} from '../../plan/edits/align.ts';
import type { Plan } from '../../plan/plan.ts';
import { clipOf, pasteClip } from '../clipboard.ts';
import type { FloorAsk } from '../floor-view.ts';
import { OPTIONS } from '../options.ts';
import type { SessionState } from '../session.ts';
import { capital, wordsFor } from '../words.ts';
import { type Command, canEdit, canEditSelection } from './command.ts';

const several = (s: SessionState): boolean => canEditSelection(s) && s.selection.size > 1;

const change = (
  id: string,
  label: string,
  keys: readonly string[],
  words: string,
  make: (s: SessionState) => ChangeSet,
): Command => ({
  id,
  label,
  keys,
  enabled: several,
  perform: ({ session }) => {
    const s = session.getState();
    session.commit(`${words} ${wordsFor(s.plan, s.selection)}`, make(s));
  },
});

const align = (side: AlignSide, label: string, key?: string): Command =>
  change(`align-${side}`, label, key ? [key] : [], 'Align', (s) => alignRecords(s.plan, s.selection, side));

const about = (id: string, label: string, key: string, byDeg: number): Command =>
  change(id, label, [key], 'Turn', (s) => {
    const c = selectionCentre(s.plan, s.selection);
    return rotateAbout(s.plan, s.selection, c ?? { xMm: 0, yMm: 0 }, byDeg);
  });

const mirror = (line: 'upright' | 'level', label: string, key: string): Command =>
  change(`mirror-${line}`, label, [key], 'Mirror', (s) => {
    const c = selectionCentre(s.plan, s.selection);
    return mirrorRecords(s.plan, s.selection, c ?? { xMm: 0, yMm: 0 }, line);
  });

const asks = (id: string, ask: FloorAsk, label: string, key: string): Command => ({
  id,
  label,
  keys: [key],
  enabled: canEditSelection,
  perform: ({ session }) => session.set({ floorView: { ...session.getState().floorView, ask } }),
});

const paste = (id: string, label: string, keys: readonly string[], offMm: number): Command => ({
  id,
  label,
  keys: [],
  platformKeys: keys,
  enabled: (s) => canEdit(s) && s.floorId !== undefined && s.clip !== '',
  perform: ({ session }) => {
    const s = session.getState();
    if (s.floorId === undefined) return;
    const by = { xMm: offMm, yMm: offMm };
    const made = pasteClip(s.plan, s.clip, s.floorId, by, session.newId);
    if (!made.ok) return session.set({ message: problemText(made.error) });
    session.commit('Paste', made.value.changes);
    session.set({
      selection: made.value.ids,
      message:
        made.value.left > 0
          ? `${made.value.left} of what was copied make no sense here without their circuit and were left out.`
          : `${made.value.ids.size} pasted.`,
    });
  },
});

/** What was copied, and what was left behind, in words. */
export const copiedWords = (plan: Plan, ids: Iterable<Id>, left: readonly Id[]): string => {
  const kept = new Set([...ids].filter((id) => !left.includes(id)));
  const behind =
    left.length > 0
      ? `${capital(wordsFor(plan, left))} cannot be copied: too large, or nothing by itself.`
      : '';
  return [kept.size > 0 ? `Copied ${wordsFor(plan, kept)}.` : '', behind].filter(Boolean).join(' ');
};

const copy: Command = {
  id: 'copy',
  label: 'Copy',
  keys: [],
  platformKeys: ['$mod+KeyC'],
  enabled: (s) => s.selection.size > 0,
  perform: ({ session }) => {
    const s = session.getState();
    const { text, left } = clipOf(s.plan, s.selection);
    session.set({ clip: text, message: copiedWords(s.plan, s.selection, left) });
  },
};

/** Lining things up, copies of them, and what a dialog is needed for. */
export const arrangeCommands: readonly Command[] = [
  copy,
  paste('paste', 'Paste', ['$mod+KeyV'], OPTIONS.duplicateMm),
  paste('paste-in-place', 'Paste where it was', [], 0),
  align('left', 'Align left', 'Alt+ArrowLeft'),
  align('right', 'Align right', 'Alt+ArrowRight'),
  align('top', 'Align top', 'Alt+ArrowUp'),
  align('bottom', 'Align bottom', 'Alt+ArrowDown'),
  align('centre-across', 'Align centres in one upright line'),
  align('centre-down', 'Align centres in one level line'),
  change('distribute-across', 'Space evenly across', ['Alt+KeyH'], 'Space', (s) =>
    distributeRecords(s.plan, s.selection, 'across'),
  ),
  change('distribute-down', 'Space evenly down', ['Alt+KeyJ'], 'Space', (s) =>
    distributeRecords(s.plan, s.selection, 'down'),
  ),
  mirror('upright', 'Mirror left to right', 'Shift+KeyH'),
  mirror('level', 'Mirror top to bottom', 'Shift+KeyJ'),
  about('turn-together-left', 'Turn together left 15°', 'Alt+BracketLeft', -15),
  about('turn-together-right', 'Turn together right 15°', 'Alt+BracketRight', 15),
  asks('row', 'row', 'Repeat in a row, grid, line or arc…', 'KeyG'),
  asks('replace', 'replace', 'Replace by another kind…', 'KeyX'),
];
