export { BOOK_VERSION, findKind, gearBook, isBuiltIn, kindHash, kindRecord, needKind } from './book.ts';
export { gearBookPage } from './page.ts';
export { type SearchOptions, searchGear, searchKinds } from './search.ts';
