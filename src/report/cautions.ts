import type { Practice } from '../plan/records/index.ts';

/** A standing caution: a short title and a text of a sentence or two. */
export interface Caution {
  readonly id: string;
  readonly title: string;
  readonly text: string;
}

const caution = (id: string, title: string, text: string): Caution => ({ id, title, text });

/** One line for every sheet and screen that shows figures. */
export const CAUTION_LINE =
  'Computed from this plan; other loads are not known. Local codes, the authority having jurisdiction, the makers’ instructions and licensed people come first.';

/** What is done with earth and metal parts, as the practice calls it. */
export const bondingWord = (practice: Practice): string =>
  practice === 'europe' ? 'Earthing and bonding' : 'Grounding and bonding';

/** Cautions that stand on the papers and on screen, whatever the plan says. Own words; they give no permission. */
export const cautions = (practice: Practice): readonly Caution[] => [
  caution(
    'plan-only',
    'A plan, not permission',
    'This document reports what was computed from a plan. It is not leave to connect or to energize anything.',
  ),
  caution(
    'qualified',
    'Qualified people',
    'Tie-ins, generator bonding, single-pole connectors and anything energized are for people who are qualified and, where the law asks, licensed.',
  ),
  caution(
    'local-rules',
    'Local rules first',
    'The adopted electrical code, the authority having jurisdiction and the makers’ instructions come first. Where a figure here differs from theirs, theirs holds.',
  ),
  caution(
    'other-loads',
    'Other loads',
    'What else hangs on a circuit is not known here. Find out, measure, and keep room.',
  ),
  caution(
    'ground',
    practice === 'europe' ? 'Earth first' : 'Ground first',
    `${bondingWord(practice)} of sources and frames are as the qualified person directs. A lost ${practice === 'europe' ? 'earth' : 'ground'} or neutral can put dangerous volts on metal or on small loads.`,
  ),
  caution(
    'set-fault',
    'Sets and faults',
    'A set gives only a few times its rated current into a fault, and less after a moment: breakers that would open at once on the mains may take seconds behind a set.',
  ),
  caution(
    'transformers',
    'Transformers',
    practice === 'europe'
      ? 'The output of a transformer is a supply of its own: how its neutral and earth are joined is as the qualified person directs. A breaker ahead of it need not guard what hangs behind it.'
      : 'The output of a transformer is a supply of its own: how its neutral and ground are joined is as the qualified person directs. A breaker ahead of it need not guard what hangs behind it.',
  ),
  caution(
    'order',
    'Connecting order',
    `Single-pole connectors go together ${practice === 'europe' ? 'earth' : 'ground'} first, then neutral, then the legs; apart in the reverse order; never under load.`,
  ),
  caution(
    'neutral',
    'Neutral',
    'An open neutral can nearly double the volts on the lighter side. Check it before the legs are closed. Harmonic currents add to the neutral.',
  ),
  caution(
    'dead',
    'Dead before hands',
    'Isolate, lock, try and prove dead before working. De-energize before re-plugging.',
  ),
  caution(
    'leakage',
    practice === 'europe' ? 'Residual-current devices' : 'Ground-fault protection',
    practice === 'europe'
      ? 'Outdoors, in wet places and for temporary outlets use residual-current devices (30 mA for people) and test them before use.'
      : 'Outdoors, in wet places and for temporary outlets use ground-fault protection for people and test it before use.',
  ),
  caution(
    'water',
    'Water',
    'Keep distribution raised, covered and off wet ground; use gear made for outdoors.',
  ),
  caution(
    'cable',
    'Cable',
    'Do not load a coil or a drum as if it lay free. Ramp it where people walk or drive. Look it over before use.',
  ),
  caution(
    'overhead',
    'Overhead and rigging',
    'Overhead work is for qualified riggers, lifts and cranes for people trained for them. Stand, wind and load figures are computed from this plan; the label, the rigger, the engineer and the authority having jurisdiction decide. Everything above people has a second bond.',
  ),
  ...(practice === 'europe'
    ? [
        caution(
          'colours',
          'Old colours',
          'Blue was a line conductor in old installations and is the neutral now; black was the neutral and is a line now. Test, do not trust colour.',
        ),
      ]
    : []),
];
