export {
  cell,
  LEG_QUANTITIES,
  largestLegA,
  legsText,
  pctOf,
  type Reader,
  readerOf,
} from '../report/reader.ts';
