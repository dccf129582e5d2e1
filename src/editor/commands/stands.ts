import { putOnStand, takeOffStand } from '../../plan/edits/arrange.ts';
import { kindOf, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { chainEdits } from '../chain.ts';
import type { SessionState } from '../session.ts';
import { standFor } from '../stand-choice.ts';
import { capital, wordsFor } from '../words.ts';
import type { Command } from './command.ts';

const units = (s: SessionState, onStand: boolean): readonly Fixture[] =>
  [...s.selection]
    .flatMap((id) => recordOf(s.plan, 'fixture', id) ?? [])
    .filter((f) => !f.locked && (f.support.on === 'stand') === onStand);

/** Puts each selected unit on the lightest stand of the book that takes it. */
export const putOnStands: Command = {
  id: 'put-on-stand',
  label: 'Put on a stand',
  keys: ['KeyT'],
  enabled: (s) => !s.readOnly && units(s, false).length > 0,
  perform: ({ session, book }) => {
    const s = session.getState();
    const fits = units(s, false).flatMap((fixture) => {
      const kind = kindOf(s.plan, fixture.kindId, 'fixture');
      const stand = kind && standFor(kind, book.stands(), fixture.heightMm);
      return stand ? [{ id: fixture.id, stand }] : [];
    });
    if (fits.length === 0) {
      const words = capital(
        wordsFor(
          s.plan,
          units(s, false).map((f) => f.id),
        ),
      );
      session.set({ message: `${words}: no stand in the gear book takes its mount and weight.` });
      return;
    }
    const changes = chainEdits(s.plan, fits, (plan, f) => putOnStand(plan, f.id, f.stand, session.newId));
    const left = units(s, false).length - fits.length;
    session.commit(
      `Put ${wordsFor(
        s.plan,
        fits.map((f) => f.id),
      )} on a stand`,
      changes,
    );
    session.set({
      message: left > 0 ? `${left} of them fit no stand in the gear book and stay where they are.` : '',
    });
  },
};

export const takeOffStands: Command = {
  id: 'take-off-stand',
  label: 'Take off its stand',
  keys: ['Shift+KeyT'],
  enabled: (s) => !s.readOnly && units(s, true).length > 0,
  perform: ({ session }) => {
    const s = session.getState();
    const ids = units(s, true).map((f) => f.id);
    const changes = chainEdits(s.plan, ids, (plan, id) => takeOffStand(plan, id, 'floor'));
    session.commit(`Take ${wordsFor(s.plan, ids)} off its stand`, changes);
  },
};
