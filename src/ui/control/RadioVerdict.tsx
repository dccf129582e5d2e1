import { VERDICT_WORDS, type Verdict } from '../../report/radio.ts';
import { VERDICT_BARS } from './radio-words.ts';

/** A step of the margin: bars of growing height, so many of them filled, and the word. */
export const RadioVerdict = ({ verdict }: { readonly verdict: Verdict }) => (
  <span className={`radio-verdict ${verdict}`}>
    <svg width="16" height="12" viewBox="0 0 16 12" aria-hidden="true">
      {[0, 1, 2, 3].map((i) => (
        <rect
          key={i}
          x={i * 4 + 0.5}
          y={9 - i * 3}
          width="2.6"
          height={2.5 + i * 3}
          className={i < VERDICT_BARS[verdict] ? 'bar-full' : 'bar-empty'}
        />
      ))}
    </svg>
    {VERDICT_WORDS[verdict]}
  </span>
);
