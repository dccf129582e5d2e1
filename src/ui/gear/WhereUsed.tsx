import { useState } from 'react';
import { kindDifferences } from '../../gear/index.ts';
import { problemText } from '../../kernel/result.ts';
import { replaceKind } from '../../plan/edits/kinds.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { recordName } from '../../plan/names.ts';
import { recordsOf } from '../../plan/plan.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const LISTED = 12;

/** Whether a record is of one of these kinds, carries one as an accessory, or has one as its cloth. */
const usesKind = (r: AnyRecord, ids: ReadonlySet<string>): boolean =>
  ('kindId' in r && ids.has(String(r.kindId))) ||
  (r.type === 'fixture' && (r.accessories ?? []).some((a) => ids.has(a))) ||
  (r.type === 'grip' && r.clothId !== undefined && ids.has(r.clothId));

/** What in the plan is of this kind, and whether the plan carries another version of it. */
export const WhereUsed = ({ kind }: { readonly kind: Kind }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [reviewing, setReviewing] = useState<Kind | undefined>(undefined);
  const carried = recordsOf(plan, 'kind').filter((k) => k.slug === kind.slug && k.family === kind.family);
  const ids = new Set(carried.map((k) => k.id));
  const users = [...plan.records.values()].filter((r) => usesKind(r, ids));
  const others = carried.filter((k) => k.id !== kind.id);
  if (users.length === 0 && others.length === 0) return <span className="soft">not used</span>;
  return (
    <>
      <button
        type="button"
        className="link"
        onClick={() => session.set({ selection: new Set(users.map((u) => u.id)), workspace: 'floor' })}
      >
        {users.length} placed
      </button>
      <span className="compare-basis">
        {users
          .slice(0, LISTED)
          .map((u) => recordName(plan, u))
          .join(', ')}
        {users.length > LISTED ? ` and ${users.length - LISTED} more` : ''}
      </span>
      {others.map((k) => (
        <p key={k.id}>
          The plan carries another version.{' '}
          <button type="button" className="link" disabled={readOnly} onClick={() => setReviewing(k)}>
            Review the update
          </button>
        </p>
      ))}
      {reviewing ? <UpdateDialog from={reviewing} to={kind} onClose={() => setReviewing(undefined)} /> : null}
    </>
  );
};

/** Looks at what giving the plan the book's version of a kind would change, before it is done. */
const UpdateDialog = ({
  from,
  to,
  onClose,
}: {
  readonly from: Kind;
  readonly to: Kind;
  readonly onClose: () => void;
}) => {
  const { session } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const made = replaceKind(plan, from.id, to);
  return (
    <Modal
      title={`Update ${to.name} in this plan`}
      open
      onClose={onClose}
      foot={
        <button
          type="button"
          className="button primary"
          disabled={!made.ok}
          onClick={() => {
            if (made.ok) session.commit(`Update kind ${to.name}`, made.value.changes);
            onClose();
          }}
        >
          Update {made.ok ? made.value.records.length : 0} placed
        </button>
      }
    >
      {made.ok ? (
        <>
          <h3 className="inspector-head">What differs</h3>
          <ul className="assumptions">
            {kindDifferences(from, to).map((d) => (
              <li key={d}>{d}</li>
            ))}
          </ul>
          {made.value.unfit.length > 0 ? (
            <>
              <h3 className="inspector-head">What will no longer fit, and stays as it is</h3>
              <ul className="assumptions">
                {made.value.unfit.map((u) => (
                  <li key={u}>{u}</li>
                ))}
              </ul>
            </>
          ) : null}
        </>
      ) : (
        <p>{problemText(made.error)}</p>
      )}
    </Modal>
  );
};
