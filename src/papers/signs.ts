export { severitySign, severityTag } from '../drawing/marks.ts';
