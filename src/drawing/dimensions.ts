import type { DrawContext } from './context.ts';
import type { DisplayItem } from './display-list.ts';

export const dimensionItems = (_ctx: DrawContext): readonly DisplayItem[] => [];
