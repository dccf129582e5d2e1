import type { Id } from '../kernel/ids.ts';
import type { DrawContext } from './context.ts';
import type { DisplayItem } from './display-list.ts';

/** What became of the labels: full ones, those cut to the number, and those that found no clear place. */
export interface LabelReport {
  readonly full: number;
  readonly numberOnly: readonly Id[];
  readonly crowded: readonly Id[];
}

export interface Labels {
  readonly items: readonly DisplayItem[];
  readonly report: LabelReport;
}

export const noLabels: Labels = { items: [], report: { full: 0, numberOnly: [], crowded: [] } };

export const labelItems = (_ctx: DrawContext, _items: readonly DisplayItem[]): Labels => noLabels;
