import { DEFAULT_SHEETS, SHEET_CHOICES } from './sheet-kinds.ts';

/** A choice of sheets for one of the crew. */
export interface SheetPreset {
  readonly id: string;
  readonly name: string;
  readonly sheets: readonly string[];
}

export const SHEET_PRESETS: readonly SheetPreset[] = [
  { id: 'all', name: 'Everything', sheets: DEFAULT_SHEETS },
  {
    id: 'gaffer',
    name: 'Gaffer',
    sheets: [
      'cover',
      'plot',
      'changes',
      'one-line',
      'legs',
      'circuits',
      'units',
      'setups',
      'day',
      'site',
      'workings',
    ],
  },
  {
    id: 'best-boy',
    name: 'Best boy',
    sheets: [
      'cover',
      'plot',
      'changes',
      'one-line',
      'legs',
      'circuits',
      'boxes',
      'runs',
      'cables',
      'tests',
      'day',
      'packs',
      'rigging',
      'site',
      'truck',
    ],
  },
  {
    id: 'console',
    name: 'Console',
    sheets: [
      'cover',
      'plot',
      'changes',
      'units',
      'setups',
      'patch',
      'universes',
      'parts',
      'lines',
      'radio',
      'setup-list',
      'cards',
    ],
  },
  { id: 'rental', name: 'Rental order', sheets: ['cover', 'gear', 'cables', 'truck', 'units'] },
];

export const presetOf = (id: string): SheetPreset | undefined => SHEET_PRESETS.find((p) => p.id === id);

/**
 * Sheets by a list as it is typed: ids and preset names with commas between, `best-boy` or `plot,circuits`. The words that
 * name nothing are given back apart.
 */
export const readSheetChoice = (
  text: string,
): { readonly sheets: readonly string[]; readonly unknown: readonly string[] } => {
  const words = text
    .split(',')
    .map((w) => w.trim().toLowerCase())
    .filter(Boolean);
  const known = new Set(SHEET_CHOICES.map((s) => s.id));
  const sheets = words.flatMap((w) => (known.has(w) ? [w] : (presetOf(w)?.sheets ?? [])));
  return {
    sheets: [...new Set(sheets)],
    unknown: words.filter((w) => !known.has(w) && presetOf(w) === undefined),
  };
};
