import { type ColorNote, colorFault, colorNoteText, readColorNote } from '../../plan/color-note.ts';
import { setColorCells } from '../../plan/edits/day.ts';
import { kindOf, levelId, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Colour of a unit in the chosen setup: a temperature, words, or both. */
export const LevelColor = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  if (setupId === undefined) return null;
  const level = recordOf(plan, 'level', levelId(setupId, fixture.id));
  return (
    <Field<ColorNote | undefined>
      label="Colour"
      value={level}
      format={colorNoteText}
      parse={readColorNote}
      disabled={readOnly}
      hint={colorFault(level, kindOf(plan, fixture.kindId, 'fixture'))}
      onCommit={(note) =>
        session.commit(
          `Colour of unit ${fixture.unit}`,
          setColorCells(plan, [{ setupId, fixtureId: fixture.id, note }]),
        )
      }
    />
  );
};
