import { wrapText } from '../drawing/text.ts';
import type { Working } from '../report/types.ts';
import { CAP } from './ink.ts';

/** A text at its place on a line. */
export interface LineCell {
  readonly x: number;
  readonly w: number;
  readonly text: string;
  readonly strong?: boolean;
  readonly soft?: boolean;
}

export type TextLine = readonly LineCell[];

const CAPTION_MM = 18;
/** A working longer than this is cut, with a word that it is. */
const MAX_INPUTS = 24;
const MAX_STEPS = 30;

/** The paper font has no sign for an angle between two figures. */
const onPaper = (text: string): string => text.replace(/\s*∠\s*/g, ' at ');

const wrap = (text: string, w: number, most: number): readonly string[] =>
  text === '' ? [] : wrapText(onPaper(text), CAP.note, 'regular', w, most);

/** A strong text broken over lines. */
export const wrappedLines = (text: string, x: number, w: number, most: number): readonly TextLine[] =>
  wrapText(text, CAP.note, 'semibold', w, most).map((t) => [{ x, w, text: t, strong: true }]);

/** A caption and the text beside it. */
export const captioned = (caption: string, text: string, w: number): readonly TextLine[] =>
  wrap(text, w - CAPTION_MM, 10).map((t, i) => [
    { x: 0, w: CAPTION_MM - 1, text: i === 0 ? caption : '', soft: true },
    { x: CAPTION_MM, w: w - CAPTION_MM, text: t },
  ]);

const more = (n: number, what: string, w: number): readonly TextLine[] =>
  n > 0
    ? [
        [
          {
            x: CAPTION_MM,
            w: w - CAPTION_MM,
            text: `and ${n} more ${what}, on screen at the figure`,
            soft: true,
          },
        ],
      ]
    : [];

const inputLines = (working: Working, w: number): readonly TextLine[] => {
  const nameW = (w - CAPTION_MM) * 0.34;
  const valueW = (w - CAPTION_MM) * 0.24;
  const valueX = CAPTION_MM + nameW + 2;
  const fromX = valueX + valueW + 2;
  const lines = working.inputs.slice(0, MAX_INPUTS).flatMap((input, row): readonly TextLine[] => {
    const name = wrap(input.name, nameW, 3);
    const value = wrap(input.value, valueW, 3);
    const from = wrap(`${input.from}${input.assumed ? ' (assumed)' : ''}`, w - fromX, 3);
    return Array.from({ length: Math.max(name.length, value.length, from.length) }, (_, k) => [
      { x: 0, w: CAPTION_MM - 1, text: row === 0 && k === 0 ? 'Inputs' : '', soft: true },
      { x: CAPTION_MM, w: nameW, text: name[k] ?? '' },
      { x: valueX, w: valueW, text: value[k] ?? '' },
      { x: fromX, w: w - fromX, text: from[k] ?? '', soft: true },
    ]);
  });
  return [...lines, ...more(working.inputs.length - MAX_INPUTS, 'inputs', w)];
};

/** Formula, inputs with where each is from, steps, result, rule and source of a working, in a width. */
export const workingLines = (working: Working, w: number): readonly TextLine[] => [
  ...captioned('Formula', working.formula, w),
  ...inputLines(working, w),
  ...working.steps.slice(0, MAX_STEPS).flatMap((s, i) => captioned(i === 0 ? 'Steps' : '', s, w)),
  ...more(working.steps.length - MAX_STEPS, 'steps', w),
  ...captioned('Result', working.result, w),
  ...captioned('Rule', working.rule, w),
  ...captioned('Source', working.source, w),
];
