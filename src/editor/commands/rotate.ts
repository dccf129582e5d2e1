import { rotateRecords } from '../../plan/edits/arrange.ts';
import { OPTIONS } from '../options.ts';
import { wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

const turn = (id: string, label: string, key: string, byDeg: number): Command => ({
  id,
  label,
  keys: [key],
  enabled: canEditSelection,
  perform: ({ session }) => {
    const { plan, selection } = session.getState();
    session.commit(`Turn ${wordsFor(plan, selection)}`, rotateRecords(plan, selection, byDeg));
  },
});

const { rotateLargeDeg: large, rotateSmallDeg: small } = OPTIONS;

/** Brackets turn the selection, with shift by a fine step. */
export const rotations: readonly Command[] = [
  turn('rotate-left', `Turn left ${large}°`, 'BracketLeft', -large),
  turn('rotate-right', `Turn right ${large}°`, 'BracketRight', large),
  turn('rotate-left-fine', `Turn left ${small}°`, 'Shift+BracketLeft', -small),
  turn('rotate-right-fine', `Turn right ${small}°`, 'Shift+BracketRight', small),
];
