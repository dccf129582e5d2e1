export { loadBar } from '../drawing/marks.ts';
