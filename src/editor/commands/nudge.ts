import { moveRecords } from '../../plan/edits/arrange.ts';
import { planRecord } from '../../plan/plan.ts';
import { nudgeMm } from '../options.ts';
import { wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

const WAYS = [
  { id: 'left', label: 'left', key: 'ArrowLeft', x: -1, y: 0 },
  { id: 'right', label: 'right', key: 'ArrowRight', x: 1, y: 0 },
  { id: 'up', label: 'up', key: 'ArrowUp', x: 0, y: -1 },
  { id: 'down', label: 'down', key: 'ArrowDown', x: 0, y: 1 },
] as const;

/** Arrow keys move the selection by a small step, with shift by a large one. */
export const nudges: readonly Command[] = WAYS.flatMap((w) =>
  (['small', 'large'] as const).map((size) => ({
    id: size === 'small' ? `nudge-${w.id}` : `nudge-${w.id}-far`,
    label: size === 'small' ? `Move ${w.label}` : `Move far ${w.label}`,
    keys: [size === 'small' ? w.key : `Shift+${w.key}`],
    enabled: canEditSelection,
    perform: ({ session }) => {
      const { plan, selection } = session.getState();
      const step = nudgeMm(planRecord(plan).lengthUnits)[size];
      session.commit(
        `Move ${wordsFor(plan, selection)} ${w.label}`,
        moveRecords(plan, selection, { xMm: w.x * step, yMm: w.y * step }),
      );
    },
  })),
);
