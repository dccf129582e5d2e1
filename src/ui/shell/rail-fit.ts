/** One block of the meter rail: how wide it is at least, and how near its fullest wire is to its limit. */
export interface RailPanel {
  readonly id: string;
  readonly widthPx: number;
  /** Per cent of the limit in the worst setup; NaN where it is not known or the block is no source. */
  readonly pct: number;
}

const GAP_PX = 16;
/** Entries of the switch that stand above one another, and the width of such a column. */
const ROWS = 4;
const SWITCH_PX = 138;

/** Room the switch takes for so many entries. */
export const switchWidth = (entries: number): number =>
  Math.ceil(entries / ROWS) * SWITCH_PX + (Math.ceil(entries / ROWS) - 1) * 4;

/**
 * Which blocks of the rail are shown at a width, so that nothing has to be scrolled sideways: all where there is room, else the
 * picked one, then sources, the fullest first, then the rest in their order, beside a switch between them. One is always shown.
 */
export const fitRail = (
  panels: readonly RailPanel[],
  widthPx: number,
  picked: string | undefined,
): { readonly shown: ReadonlySet<string>; readonly folded: boolean } => {
  const all = panels.reduce((sum, p) => sum + p.widthPx, 0) + Math.max(0, panels.length - 1) * GAP_PX;
  if (all <= widthPx) return { shown: new Set(panels.map((p) => p.id)), folded: false };
  const rank = (p: RailPanel): number => (p.id === picked ? 1e9 : Number.isFinite(p.pct) ? p.pct : -1);
  const order = [...panels].sort((a, b) => rank(b) - rank(a));
  const shown = new Set<string>();
  let used = switchWidth(panels.length);
  for (const p of order) {
    if (shown.size > 0 && used + GAP_PX + p.widthPx > widthPx) continue;
    shown.add(p.id);
    used += GAP_PX + p.widthPx;
  }
  return { shown, folded: true };
};
