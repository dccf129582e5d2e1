import type { Result } from '../kernel/result.ts';
import type { Spots, SpotsAsk } from '../report/radio.ts';

/** What is computed about radio away from the screen's own thread, when it is asked for. */
export interface RadioService {
  /** The best places for transmitters. Stopped by the signal. */
  spots(ask: SpotsAsk, signal: AbortSignal): Promise<Result<Spots>>;
}
