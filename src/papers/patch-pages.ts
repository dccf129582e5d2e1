import { recordsOf } from '../plan/plan.ts';
import { patchSheets } from './patch-sheet.ts';
import { setupCards } from './setup-cards.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { universeMaps } from './universe-maps.ts';

/** What the control crew gets: patch sheet, universe maps and setup cards; nothing where no unit has an address. */
export const patchPages = (info: SetInfo): readonly PageMaker[] =>
  recordsOf(info.plan, 'fixture').some((f) => f.patch)
    ? [...patchSheets(info), ...universeMaps(info), ...setupCards(info)]
    : [];
