import { useEffect } from 'react';
import { clipOf, isClip } from '../../editor/clipboard.ts';
import { copiedWords } from '../../editor/commands/arrange.ts';
import type { Command } from '../../editor/commands/index.ts';
import type { Session } from '../../editor/session.ts';
import { unpluggedWords, wordsFor } from '../../editor/words.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { useServices } from '../services.ts';

/** What was copied last in this tab, for the plan that is opened next. */
let kept = '';

const elsewhere = (t: EventTarget | null): boolean =>
  t instanceof HTMLElement &&
  (t.isContentEditable ||
    /^(INPUT|TEXTAREA|SELECT)$/.test(t.tagName) ||
    t.closest('[role="dialog"],[role="menu"]') !== null);

const take = (session: Session, e: ClipboardEvent, cut: boolean): void => {
  const { plan, selection, readOnly } = session.getState();
  if (elsewhere(e.target) || selection.size === 0 || !e.clipboardData) return;
  // Text that the person marked on a panel is what they mean.
  if (String(document.getSelection() ?? '') !== '') return;
  const { text, left } = clipOf(plan, selection);
  kept = text;
  e.clipboardData.setData('text/plain', kept);
  e.preventDefault();
  session.set({ clip: kept, message: copiedWords(plan, selection, left) });
  // What the clipboard does not hold is not cut away.
  const cutIds = new Set([...selection].filter((id) => !left.includes(id)));
  if (cut && !readOnly && cutIds.size > 0) {
    session.commit(`Cut ${wordsFor(plan, cutIds)}`, removeRecords(plan, cutIds));
    const off = unpluggedWords(plan, session.getState().plan);
    session.set({ message: `Cut ${wordsFor(plan, cutIds)}.${off} Undo brings it back.` });
  }
};

/** Leads the platform's copy, cut and paste to the floor while a plan is open. */
export const useClipboard = (run: (id: Command['id']) => void): void => {
  const { session } = useServices();
  useEffect(() => {
    if (kept !== '') session.set({ clip: kept });
    const copy = (e: ClipboardEvent): void => take(session, e, false);
    const cut = (e: ClipboardEvent): void => take(session, e, true);
    const paste = (e: ClipboardEvent): void => {
      if (elsewhere(e.target)) return;
      const text = e.clipboardData?.getData('text/plain') ?? '';
      if (isClip(text)) session.set({ clip: text });
      e.preventDefault();
      run('paste');
    };
    const stop = session.subscribe((now, was) => {
      if (now.clip !== was.clip && now.clip !== '') kept = now.clip;
    });
    document.addEventListener('copy', copy);
    document.addEventListener('cut', cut);
    document.addEventListener('paste', paste);
    return () => {
      stop();
      document.removeEventListener('copy', copy);
      document.removeEventListener('cut', cut);
      document.removeEventListener('paste', paste);
    };
  }, [session, run]);
};
