import { setLevels } from '../../plan/edits/document.ts';
import { levelOf, recordOf } from '../../plan/plan.ts';
import { Field } from '../common/Field.tsx';
import { formatLevel, parseLevel } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Several things at once: what they share can be set for all, and mixed values say so. */
export const SeveralInspector = ({ ids }: { readonly ids: readonly string[] }) => {
  const { session } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const fixtures = ids.flatMap((id) => recordOf(plan, 'fixture', id) ?? []);
  const levels = setupId ? fixtures.map((f) => levelOf(plan, setupId, f.id).levelPct) : [];
  const first = levels[0] ?? 100;
  return (
    <section aria-label="Several selected">
      <h2 className="inspector-title">{ids.length} selected</h2>
      <p className="soft">
        {fixtures.length} {fixtures.length === 1 ? 'fixture' : 'fixtures'}
        {fixtures.length < ids.length ? `, ${ids.length - fixtures.length} other` : ''}
      </p>
      {fixtures.length > 0 && setupId ? (
        <>
          <h3 className="inspector-head">In this setup</h3>
          <Field
            label="Level"
            value={first}
            mixed={levels.some((l) => l !== first)}
            format={formatLevel}
            parse={parseLevel}
            disabled={readOnly}
            onCommit={(v) =>
              session.commit(
                `Level of ${fixtures.length} units`,
                setLevels(
                  plan,
                  setupId,
                  fixtures.map((f) => f.id),
                  v,
                ),
              )
            }
          />
        </>
      ) : null}
      <p className="soft">Arrow keys move them, Delete removes them; both can be undone.</p>
    </section>
  );
};
