import type { SupplyEntity } from '../../derive/types.ts';
import type { Box } from '../../kernel/geometry.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Reader } from '../../report/reader.ts';
import type { Finding } from '../../report/types.ts';
import type { DisplayItem } from '../display-list.ts';
import type { Sketch } from '../sketch.ts';

/** Room for a diagram, millimetres on paper. */
export interface Room {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Words for a diagram that goes on elsewhere; the sheet's name is known only when the pages are numbered. */
export interface SheetReference {
  readonly xMm: number;
  readonly yMm: number;
  /** Position of the sheet it names among the sheets of the one-line diagram. */
  readonly toSheet: number;
}

/** One sheet of the one-line diagram: items in paper millimetres at a nominal scale of 1, from the room's upper left corner. */
export interface OneLineSheet {
  readonly items: readonly DisplayItem[];
  readonly references: readonly SheetReference[];
  /** Figures on it, for a screen; none on paper. */
  readonly figures: readonly FigureZone[];
  /** What is on it, like `G1` or `K4, K5`. */
  readonly subjects: readonly string[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What stands at the top of one diagram: a source, a box with the run that feeds it, or what hangs on a way or a load. */
export type Root =
  | { readonly what: 'source'; readonly entity: SupplyEntity }
  | { readonly what: 'box'; readonly entity: SupplyEntity; readonly cable: SupplyEntity | undefined }
  | { readonly what: 'under'; readonly entity: SupplyEntity };

/** Draws into the diagram. `item` groups what belongs to one record, so that it can be picked. */
export interface Painter {
  item(entity: SupplyEntity, draw: (sketch: Sketch) => void, part?: string): void;
  /** A place where the sheet of another diagram is named. `back` names the sheet a diagram comes from. */
  reference(root: Root, xMm: number, yMm: number, back: boolean): void;
}

/** A piece of the diagram with its size, and where the conductor that feeds it comes in from above. */
export interface Block {
  readonly w: number;
  readonly h: number;
  /** Of the incoming conductor, from the block's left. */
  readonly trunkX: number;
  /** Diagrams it leaves to other sheets. */
  readonly cuts: readonly Root[];
  draw(p: Painter, x: number, y: number): void;
}

export interface OneLineContext {
  readonly plan: Plan;
  readonly r: Reader;
  /** Room of one load or way, and of the texts in it. */
  readonly columnMm: number;
  readonly textMm: number;
  /** The setup shown. */
  readonly setupId: string | undefined;
  readonly findingsOf: (entity: SupplyEntity) => readonly Finding[];
  /** Boxes that are drawn without what hangs on them; undefined where nothing can be folded, as on paper. */
  readonly folded: ReadonlySet<string> | undefined;
  /** Told of every figure that is drawn, with its place; undefined on paper. */
  readonly onFigure: ((figure: FigureZone) => void) | undefined;
}

/** Where a figure stands in the diagram, and the key of its working. */
export interface FigureZone {
  readonly key: string;
  readonly entityKey: string;
  readonly recordId: string;
  readonly text: string;
  readonly box: Box;
}

/** What a screen shows of the network: all of it or what hangs on one source or box, and which boxes are folded. */
export interface OneLineView {
  /** Record of the source or box at the top; absent: every source. */
  readonly topId?: string | undefined;
  readonly folded: ReadonlySet<string>;
}

/** How blocks are made: chains drawn tight, boxes left to other sheets. */
export interface How {
  readonly compact: boolean;
  readonly collapse: boolean;
  /** A box with all that hangs on it, from the end of its run; undefined where it needs more room. */
  readonly box: (c: OneLineContext, e: SupplyEntity, room: Room, how: How) => Block | undefined;
}
