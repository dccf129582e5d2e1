/** Line weights and measures of the one-line diagram in paper millimetres. */
export const LINE = { bus: 1, feeder: 0.5, device: 0.5, cable: 0.35, frame: 0.25, thin: 0.18 } as const;
/** Room of one load or way: the conductor, then its texts to the right. */
export const COLUMN_MM = 33;
/** Widths tried where the sheet has room to spare, the widest first. */
export const WIDER_MM = [46, 42, 38, 35] as const;
/** Conductor from the left of a column, and texts from the conductor. */
export const TRUNK_MM = 5;
export const TEXT_MM = 5.8;
export const ROW_MM = 3.4;
export const TAG_ROW_MM = 3.9;
/** Dashed frame to what is in it. */
export const PAD_MM = 2.5;
export const GAP_MM = 4;
export const BREAKER_MM = 7.5;
export const SOURCE_R_MM = 6;
