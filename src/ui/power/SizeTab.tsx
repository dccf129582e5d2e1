import { useMemo, useState } from 'react';
import { planRecord } from '../../plan/plan.ts';
import { type Sized, sizePlan } from '../../report/size.ts';
import { SIZED_NOW_WORDS } from '../../report/size-types.ts';
import { ChangeEffect } from '../common/ChangeEffect.tsx';
import { TriedFigure } from '../common/Figure.tsx';
import { useSessionSlice, useSettled } from '../hooks.ts';
import { useServices } from '../services.ts';
import { RunForm } from './RunForm.tsx';
import './size.css';
import { type SizedChange, sizedChange } from './size-changes.ts';

/** What asks for something comes first. */
const ORDER: readonly Sized['now'][] = ['too small', 'loses too much', 'larger', 'fits'];

const HEADROOMS = [0, 10, 20, 30, 50] as const;

type Shown = 'all' | Exclude<Sized['now'], 'fits'>;

/** The smallest standard set, box and cable that carries the plan with a chosen headroom, with the reasons; taken in whole or in part. */
export const SizeTab = () => {
  const { session, book } = useServices();
  const { plan, readOnly, assessment, setupId } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    assessment: s.assessment,
    setupId: s.setupId,
  }));
  const [headroomPct, setHeadroom] = useState(20);
  const [shown, setShown] = useState<Shown>('all');
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const settled = useSettled(plan, 150);
  const rows = useMemo(
    () => sizePlan(settled, { headroomPct, book: book.kinds() }),
    [settled, headroomPct, book],
  );
  const listed = [...rows]
    .sort((a, b) => ORDER.indexOf(a.now) - ORDER.indexOf(b.now))
    .filter((r) => shown === 'all' || r.now === shown);
  const chosen = useMemo(() => rows.filter((r) => taken.has(r.recordId) && canTake(r)), [rows, taken]);
  const offer: SizedChange | undefined = useMemo(
    () => (chosen.length === 0 ? undefined : sizedChange(settled, chosen)),
    [settled, chosen],
  );
  const accept = (): void => {
    if (!offer) return;
    const words = `${chosen.length} ${chosen.length === 1 ? 'thing' : 'things'}`;
    session.commit(`Size ${words}`, offer.changes);
    session.set({ message: `${words} given another size; undo takes all of it back.` });
    setTaken(new Set());
  };
  return (
    <section className="power-ask" aria-label="Size it">
      <div className="power-head">
        <label>
          Headroom over the largest load{' '}
          <select className="input" value={headroomPct} onChange={(e) => setHeadroom(Number(e.target.value))}>
            {HEADROOMS.map((h) => (
              <option key={h} value={h}>
                {h} %
              </option>
            ))}
          </select>
        </label>
        <label>
          Show{' '}
          <select className="input" value={shown} onChange={(e) => setShown(e.target.value as Shown)}>
            <option value="all">all that carries load</option>
            <option value="too small">what is too small</option>
            <option value="loses too much">what loses too many volts</option>
            <option value="larger">what is larger than needed</option>
          </select>
        </label>
        <p className="soft">
          The smallest of the gear book that carries every setup. Headroom of 20 % is common practice.
        </p>
      </div>
      {rows.length === 0 ? (
        <p>Nothing carries a load yet. Plug units in, and each set, box and cable is sized here.</p>
      ) : (
        <SizeTable
          rows={listed}
          taken={taken}
          onTake={(id) => {
            const next = new Set(taken);
            if (!next.delete(id)) next.add(id);
            setTaken(next);
          }}
        />
      )}
      {listed.length === 0 && rows.length > 0 ? <p className="soft">Nothing of that sort.</p> : null}
      {offer ? (
        <>
          {offer.unfit.length > 0 ? (
            <>
              <h3 className="power-source">What no longer fits and stays as it is</h3>
              <ul className="assumptions">
                {offer.unfit.map((u) => (
                  <li key={u}>{u}</li>
                ))}
              </ul>
            </>
          ) : null}
          <ChangeEffect plan={settled} changes={offer.changes} assessment={assessment} setupId={setupId} />
          <p className="power-accept">
            <button
              type="button"
              className="button primary"
              disabled={readOnly || settled !== plan}
              onClick={accept}
            >
              Change {chosen.length} in the plan
            </button>
            <button type="button" className="button" onClick={() => setTaken(new Set())}>
              Take none
            </button>
          </p>
        </>
      ) : null}
      <RunForm practice={planRecord(plan).practice} headroomPct={headroomPct} />
      <p className="soft small">
        Computed from this plan; other loads are not known. A planning aid: what is rented, and how it is
        connected, is for a qualified person to decide. Local codes and the authority having jurisdiction
        prevail.
      </p>
    </section>
  );
};

/** Side-by-side sets are laid by hand: one cable record cannot become several. */
const canTake = (r: Sized): boolean =>
  r.kind !== undefined && r.now !== 'fits' && (r.sets === undefined || r.sets === 1);

const SizeTable = ({
  rows,
  taken,
  onTake,
}: {
  readonly rows: readonly Sized[];
  readonly taken: ReadonlySet<string>;
  readonly onTake: (id: string) => void;
}) => {
  const { session } = useServices();
  return (
    <table className="table power-table size-table">
      <thead>
        <tr>
          <th scope="col">Take it</th>
          <th scope="col">What</th>
          <th scope="col">Now</th>
          <th scope="col">Smallest that carries it</th>
          <th scope="col">So</th>
          <th scope="col">Why</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((r) => (
          <tr key={r.recordId}>
            <td>
              {canTake(r) ? (
                <input
                  type="checkbox"
                  aria-label={`Take ${r.kind?.name ?? ''} for ${r.label}`}
                  checked={taken.has(r.recordId)}
                  onChange={() => onTake(r.recordId)}
                />
              ) : null}
            </td>
            <th scope="row">
              <button
                type="button"
                className="link"
                onClick={() => session.set({ selection: new Set([r.recordId]), workspace: 'floor' })}
              >
                {r.label}
              </button>
            </th>
            <td>{r.nowName}</td>
            <td>
              {r.sets !== undefined && r.sets > 1 ? `${r.sets} × ` : ''}
              {r.now === 'fits' ? 'the same' : (r.kind?.name ?? 'nothing in the book')}
            </td>
            <td className={r.now === 'too small' ? 'over' : r.now === 'fits' ? 'soft' : undefined}>
              {SIZED_NOW_WORDS[r.now]}
            </td>
            <td>
              <TriedFigure className="link power-why" working={() => r.working}>
                {r.reasons.join('; ')}
              </TriedFigure>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};
