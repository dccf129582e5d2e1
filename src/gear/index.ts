export { BOOK_VERSION, findKind, gearBook, isBuiltIn, kindHash, kindRecord, needKind } from './book.ts';
export { type ImportedKind, type ImportOptions, importGdtf } from './import/index.ts';
export { kindDifferences } from './kind-differences.ts';
export { kindFaults } from './kind-faults.ts';
export { type KindUpdate, kindUpdates } from './kind-updates.ts';
export { figureOf, type OwnFigure, ownFigures, ownKindFrom } from './own-figures.ts';
export { gearBookPage } from './page.ts';
export { type SearchOptions, searchGear, searchKinds } from './search.ts';
export { sheetColumns } from './sheet-more.ts';
export {
  BOOK_FORMAT,
  bookOfKinds,
  emptyBook,
  type ReadBook,
  readBook,
  serialiseBook,
  type UserBook,
} from './user-book.ts';
export {
  type BookMerge,
  type KindConflict,
  type MergeChoice,
  mergeBook,
  resolveMerge,
} from './user-book-merge.ts';
export { readKindSheet, type SheetImport, type SheetRow, writeKindSheet } from './user-book-sheet.ts';
