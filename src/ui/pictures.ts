import type { Result } from '../kernel/result.ts';
import type { Blob as PlanBlob } from '../plan/records/index.ts';

/** What pictures are made ready for: an underlay is drawn over, a photo is looked at. */
export type PictureUse = 'underlay' | 'photo';

/** A picture as the plan keeps it: decoded once, made smaller where it was large, written anew without its location data. */
export interface BakedPicture {
  readonly blob: PlanBlob;
  readonly widthPx: number;
  readonly heightPx: number;
  /** What was done to it, for the person; empty when nothing worth telling was. */
  readonly notice: string;
}

/** An opened PDF, of which one page is taken. */
export interface PdfPages {
  readonly count: number;
  bake(page: number): Promise<Result<BakedPicture>>;
  close(): void;
}

/** What only a browser can do: decode pictures and draw PDF pages. Lent by the composition root. */
export interface PictureService {
  picture(file: File, use: PictureUse): Promise<Result<BakedPicture>>;
  pdf(file: File): Promise<Result<PdfPages>>;
}
