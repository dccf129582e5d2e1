import { useMemo } from 'react';
import { changeRecord } from '../../plan/edits/document.ts';
import { planInSetup } from '../../plan/moves.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import {
  formatDb,
  type Link,
  type Listener,
  type RadioResult,
  radioKey,
  VERDICT_WORDS,
} from '../../report/radio.ts';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { RadioVerdict } from './RadioVerdict.tsx';

const worth = (r: RadioResult, l: Listener): number => {
  const m = r.links.get(l.id)?.marginDb;
  return m !== undefined && Number.isFinite(m) ? m : Number.NEGATIVE_INFINITY;
};

/** Thin links first, so that what needs a look stands on top. */
const rowsOf = (r: RadioResult): readonly Listener[] =>
  [...r.model.listeners.values()].sort(
    (a, b) => worth(r, a) - worth(r, b) || a.label.localeCompare(b.label, 'en', { numeric: true }),
  );

const universes = (plan: Plan, l: Listener): string =>
  l.universeIds.map((u) => `U${recordOf(plan, 'universe', u)?.number ?? '?'}`).join(', ') || 'none';

/** Every receiver with its link, margin and verdict; choosing a margin opens its sum, term by term. */
export const RadioLinks = ({ result }: { readonly result: RadioResult }) => {
  const rows = useMemo(() => rowsOf(result), [result]);
  const { plan } = result.model;
  if (rows.length === 0)
    return (
      <p className="radio-none soft">
        Nothing is linked by radio yet. Set a unit’s link to radio in the patch or the inspector, or place a
        receiver on the floor.
      </p>
    );
  return (
    <table className="table radio-links">
      <thead>
        <tr>
          <th scope="col">Receiver</th>
          <th scope="col">Universe</th>
          <th scope="col">Linked to</th>
          <th scope="col" className="num">
            Margin
          </th>
          <th scope="col">By estimate</th>
          <th scope="col">Next best</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((l) => (
          <LinkRow key={l.id} plan={plan} result={result} listener={l} link={result.links.get(l.id)} />
        ))}
      </tbody>
    </table>
  );
};

const LinkRow = ({
  plan,
  result,
  listener,
  link,
}: {
  readonly plan: Plan;
  readonly result: RadioResult;
  readonly listener: Listener;
  readonly link: Link | undefined;
}) => {
  const { session } = useServices();
  const { chosen, setupId } = useSessionSlice((s) => ({
    chosen: s.selection.has(listener.id),
    setupId: planInSetup(s.plan, s.setupId) === s.plan ? undefined : s.setupId,
  }));
  const name = (id: string): string =>
    result.model.senders.get(id)?.label ?? result.model.listeners.get(id)?.label ?? id;
  const record = plan.records.get(listener.id);
  const named = record?.type === 'fixture' ? record.linkId : undefined;
  const other = result.choices.get(listener.id)?.find((k) => k.senderId !== link?.senderId);
  return (
    <tr className={chosen ? 'chosen' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="link"
          title="Choose it on the floor"
          onClick={() => session.set({ selection: new Set([listener.id]) })}
        >
          {listener.label}
        </button>
        {listener.assumed ? <span className="row-hint">receiver assumed</span> : null}
      </th>
      <td>{universes(plan, listener)}</td>
      <td>
        <LinkSelect listenerId={listener.id} result={result} />
        {link && (link.viaIds.length > 1 || (named !== undefined && named !== link.senderId)) ? (
          <span className="row-hint">over {link.viaIds.map(name).join(', ')}</span>
        ) : null}
      </td>
      <td className="num">
        {link && Number.isFinite(link.marginDb) ? (
          <Figure figureKey={radioKey('radioMarginDb', listener.id, link.senderId, setupId)}>
            {formatDb(link.marginDb)}
          </Figure>
        ) : (
          '–'
        )}
      </td>
      <td>
        {link ? (
          link.notComputed === undefined ? (
            <RadioVerdict verdict={link.verdict} />
          ) : (
            <span className="soft">not computed: {link.notComputed}</span>
          )
        ) : (
          <span className="soft">no link</span>
        )}
      </td>
      <td className="soft">
        {other && Number.isFinite(other.marginDb)
          ? `${name(other.senderId)} ${formatDb(other.marginDb)}, ${VERDICT_WORDS[other.verdict]}`
          : ''}
      </td>
    </tr>
  );
};

/** Which transmitter or repeater a unit or receiver is linked to; without a choice the best that carries its universe. */
export const LinkSelect = ({
  listenerId,
  result,
}: {
  readonly listenerId: string;
  readonly result: RadioResult;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const record = plan.records.get(listenerId);
  const listener = result.model.listeners.get(listenerId);
  if (record?.type !== 'fixture' && record?.type !== 'device') return null;
  const own = record.type === 'fixture' ? record.linkId : record.listensToId;
  const taken = result.links.get(listenerId);
  const auto = own === undefined && taken ? result.model.senders.get(taken.senderId)?.label : undefined;
  const known = own !== undefined && result.model.senders.has(own);
  const set = (id: string | undefined): void => {
    const label = `Link of ${listener?.label ?? 'unit'}`;
    const r =
      record.type === 'fixture'
        ? changeRecord(plan, record, { linkId: id } as Partial<typeof record>)
        : changeRecord(plan, record, { listensToId: id } as Partial<typeof record>);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  return (
    <select
      className="inline-input"
      aria-label={`Link of ${listener?.label ?? 'unit'}`}
      disabled={readOnly}
      value={own ?? ''}
      onChange={(e) => set(e.target.value === '' ? undefined : e.target.value)}
    >
      <option value="">
        {auto ? `best: ${auto}` : record.type === 'device' ? 'nothing' : 'best there is'}
      </option>
      {own !== undefined && !known ? (
        <option value={own}>
          {(plan.records.get(own) as { label?: string } | undefined)?.label ?? 'gone'}
        </option>
      ) : null}
      {[...result.model.senders.values()]
        .filter((s) => s.id !== listenerId)
        .map((s) => (
          <option key={s.id} value={s.id}>
            {s.label}
          </option>
        ))}
    </select>
  );
};
