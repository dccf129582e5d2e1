import { useEffect, useMemo, useRef, useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { recordsOf, setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import type { Facet } from './facets.ts';
import { actOf } from './grid-keys.ts';
import {
  type Cell,
  type CellValue,
  type Choice,
  cellsIn,
  cellsOfAll,
  choose,
  copyText,
  drawnOut,
  fillCells,
  fillOut,
  holds,
  pasteCells,
  step,
} from './grid-model.ts';

/** What is chosen and typed in the grid of setups, and what keys, mouse and clipboard do to it. */
export const useLevelGrid = <V>(facet: Facet<V>, scrollTo: (row: number) => void) => {
  const { session } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const setups = setupsOf(plan);
  const list = recordsOf(plan, 'fixture');
  const fixtures = useMemo(() => [...list].sort((a, b) => compareNatural(a.unit, b.unit)), [list]);
  const size = { rows: fixtures.length, cols: setups.length };
  const [kept, setChoice] = useState<Choice>({ from: { row: 0, col: 0 }, to: { row: 0, col: 0 } });
  /** Choices made before, to which Ctrl and a press added another. */
  const [also, setAlso] = useState<readonly Choice[]>([]);
  const [draft, setDraft] = useState<string | undefined>(undefined);
  /** Where the corner of the choice is drawn out to. */
  const [out, setOut] = useState<Cell | undefined>(undefined);
  const grid = useRef<HTMLDivElement>(null);
  const dragging = useRef<'choice' | 'fill' | undefined>(undefined);
  const choice: Choice = { from: choose(kept.from, size).from, to: choose(kept.to, size).to };
  const all = [...also, choice];

  const at = (cell: Cell): V | undefined => {
    const [f, s] = [fixtures[cell.row], setups[cell.col]];
    return f && s ? facet.at(plan, s.id, f.id) : undefined;
  };
  const commit = (label: string, cells: readonly CellValue<V>[]): void => {
    const values = cells.flatMap(({ row, col, value }) => {
      const [f, s] = [fixtures[row], setups[col]];
      return f && s ? [{ fixtureId: f.id, setupId: s.id, value }] : [];
    });
    session.commit(label, facet.edit(plan, values));
  };
  const say = (message: string): void => session.set({ message });
  const count = (n: number): string => `${n} ${n === 1 ? facet.one : facet.many}`;
  const showSetup = (col: number): void => {
    const s = setups[col];
    if (s && s.id !== session.getState().setupId) session.set({ setupId: s.id });
  };
  const go = (to: Choice, keep = false): void => {
    setAlso(keep ? also : []);
    setChoice(to);
    scrollTo(to.to.row);
    showSetup(to.to.col);
  };
  const setAll = (value: V | undefined): void =>
    commit(
      value === undefined ? `Clear ${facet.one}` : `Set ${facet.one}`,
      cellsOfAll(all).map((c) => ({ ...c, value })),
    );
  /** Puts what was typed into everything that is chosen. */
  const enter = (typed: string): boolean => {
    const r = facet.read(typed);
    if (!r.ok) {
      say(problemText(r.error));
      return false;
    }
    setAll(r.value);
    say('');
    return true;
  };
  const endTyping = (keep: boolean): boolean => {
    const done = draft === undefined || !keep || enter(draft);
    if (done) setDraft(undefined);
    if (done) grid.current?.focus();
    return done;
  };
  const open = (cell: Cell): void => {
    if (readOnly) return;
    const [f, s] = [fixtures[cell.row], setups[cell.col]];
    if (facet.id === 'place' && f && s) {
      const { floorView } = session.getState();
      session.set({
        setupId: s.id,
        selection: new Set([f.id]),
        floorId: f.floorId,
        floorView: { ...floorView, ghosts: true },
        workspace: 'floor',
        message: `Move unit ${f.unit}, then choose “Only in ${s.scene || s.name}”.`,
      });
      return;
    }
    const now = at(cell);
    setDraft(now === undefined ? '' : facet.text(now));
  };
  const fill = (way: 'down' | 'right'): void =>
    commit(way === 'down' ? 'Fill down' : 'Fill right', fillCells(choice, way, at));

  // A button let go outside the grid ends the drag as well.
  const drop = useRef<() => void>(() => {});
  drop.current = () => {
    if (dragging.current === 'fill' && out) {
      const cells = fillOut(choice, out, at);
      if (cells.length > 0) {
        commit(`Fill ${facet.many}`, cells);
        setChoice(drawnOut(choice, out));
        say(`${count(cells.length)} filled.`);
      }
    }
    dragging.current = undefined;
    setOut(undefined);
  };
  useEffect(() => {
    const onUp = (): void => drop.current();
    window.addEventListener('pointerup', onUp);
    return () => window.removeEventListener('pointerup', onUp);
  }, []);

  const onTyping = (e: React.KeyboardEvent): void => {
    if (e.key === 'Escape') endTyping(false);
    else if (e.key === 'Enter' || e.key === 'Tab') {
      e.preventDefault();
      const back = e.shiftKey ? -1 : 1;
      if (endTyping(true))
        go(step(choice, e.key === 'Tab' ? { row: 0, col: back } : { row: back, col: 0 }, size, false));
    }
  };
  const onKeyDown = (e: React.KeyboardEvent): void => {
    if (draft !== undefined) return onTyping(e);
    if (e.key === 'Escape') {
      dragging.current = undefined;
      setOut(undefined);
      setAlso([]);
      return;
    }
    const act = actOf(e, choice, size, facet.begins);
    if (!act) return;
    e.preventDefault();
    if (act.do === 'go') go(act.to, e.shiftKey);
    else if (act.do === 'choose') {
      setAlso([]);
      setChoice(act.to);
    } else if (readOnly) return;
    else if (act.do === 'fill') fill(act.way);
    else if (act.do === 'open') open(choice.to);
    else if (act.do === 'type') setDraft(act.text);
    else setAll(undefined);
  };
  const copy = (e: React.ClipboardEvent, cut: boolean): void => {
    if (draft !== undefined) return;
    e.preventDefault();
    e.clipboardData.setData('text/plain', copyText(choice, at, facet.text));
    if (cut && !readOnly)
      commit(
        `Cut ${facet.many}`,
        cellsIn(choice).map((c) => ({ ...c, value: undefined })),
      );
    const some = also.length > 0 ? ' The last of the choices, that is.' : '';
    say(`${count(cellsIn(choice).length)} ${cut ? 'cut' : 'copied'}.${some}`);
  };
  const paste = (e: React.ClipboardEvent): void => {
    if (draft !== undefined || readOnly) return;
    e.preventDefault();
    const cells = pasteCells(e.clipboardData.getData('text/plain'), choice, size, facet.read);
    if (cells.ok) commit(`Paste ${facet.many}`, cells.value);
    say(cells.ok ? `${count(cells.value.length)} pasted.` : problemText(cells.error));
  };
  const press = (cell: Cell, e: React.PointerEvent): void => {
    if (draft !== undefined && choice.to.row === cell.row && choice.to.col === cell.col) return;
    e.preventDefault();
    if (!endTyping(true)) return;
    grid.current?.focus();
    dragging.current = 'choice';
    const add = e.ctrlKey || e.metaKey;
    if (add) setAlso([...also, choice]);
    else if (!e.shiftKey) setAlso([]);
    setChoice(e.shiftKey ? { from: choice.from, to: cell } : { from: cell, to: cell });
    showSetup(cell.col);
  };
  const chooseRange = (from: Cell, to: Cell): void => {
    if (!endTyping(true)) return;
    grid.current?.focus();
    go({ from: choose(to, size).to, to: choose(from, size).to });
  };

  return {
    plan,
    setupId,
    readOnly,
    setups,
    fixtures,
    size,
    choice,
    grid,
    draft,
    setDraft,
    fill,
    open,
    onKeyDown,
    copy,
    paste,
    press,
    chooseRange,
    /** The corner of the choice is taken hold of. */
    grip: (e: React.PointerEvent): void => {
      e.preventDefault();
      e.stopPropagation();
      if (readOnly || also.length > 0 || !endTyping(true)) return;
      dragging.current = 'fill';
      setOut(choice.to);
    },
    enterCell: (cell: Cell): void => {
      if (dragging.current === 'choice') setChoice({ from: choice.from, to: cell });
      else if (dragging.current === 'fill') setOut(cell);
      if (dragging.current) scrollTo(cell.row);
    },
    isChosen: (cell: Cell): boolean => all.some((c) => holds(c, cell)),
    isFilled: (cell: Cell): boolean =>
      out !== undefined && holds(drawnOut(choice, out), cell) && !holds(choice, cell),
    canGrip: also.length === 0 && draft === undefined && !readOnly,
  };
};
