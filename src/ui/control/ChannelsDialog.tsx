import { useMemo, useState } from 'react';
import { type AssignOptions, ORDERS, orderFixtures } from '../../engines/control/index.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { renumberChannels } from '../../plan/edits/patch.ts';
import { kindOf, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { placesOf } from '../../report/control.ts';
import { Field, Row } from '../common/Field.tsx';
import { Modal } from '../common/Modal.tsx';
import { anyText } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ORDER_WORDS } from './AssignDialog.tsx';

type By = AssignOptions['order'] | 'address';

const BY: readonly By[] = [...ORDERS.filter((o) => o !== 'channel'), 'address'];

const whole =
  (from: number, to: number) =>
  (t: string): Result<number> => {
    const n = /^-?\d+$/.test(t.trim()) ? Number(t.trim()) : Number.NaN;
    return n >= from && n <= to ? ok(n) : fail({ what: `Write a whole number from ${from} to ${to}.` });
  };

/** Numbers the channels of units by a rule, looked at before it is taken; one undo step. */
export const ChannelsDialog = ({ onClose }: { readonly onClose: () => void }) => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const [by, setBy] = useState<By>('unit');
  const [rule, setRule] = useState({ from: 1, step: 1, prefix: '' });
  const [which, setWhich] = useState<'chosen' | 'patched' | 'all'>(selection.size > 1 ? 'chosen' : 'patched');
  const units = useMemo(() => {
    const list = recordsOf(plan, 'fixture').filter((f) =>
      which === 'chosen' ? selection.has(f.id) : which === 'all' || f.patch !== undefined,
    );
    if (by !== 'address') return orderFixtures(plan, list, by);
    const at = (f: Fixture): number => {
      const [p] = placesOf(plan, f);
      return p ? p.universe * 1000 + p.address : Number.MAX_SAFE_INTEGER;
    };
    return [...list].sort((a, b) => at(a) - at(b) || compareNatural(a.unit, b.unit));
  }, [plan, selection, which, by]);
  const changes = useMemo(
    () =>
      renumberChannels(
        plan,
        units.map((f) => f.id),
        rule,
      ),
    [plan, units, rule],
  );
  const next = new Map(
    changes.updated.map((u) => [u.to.id, u.to.type === 'fixture' ? u.to.channel : ''] as const),
  );

  return (
    <Modal
      title="Number channels"
      open
      onClose={onClose}
      foot={
        <button
          type="button"
          className="button primary"
          disabled={next.size === 0}
          onClick={() => {
            session.commit(`Number ${next.size} channels`, changes);
            session.set({ message: `${next.size} units have new channels.` });
            onClose();
          }}
        >
          {next.size === 0
            ? 'Nothing would change'
            : `Change ${next.size} ${next.size === 1 ? 'channel' : 'channels'}`}
        </button>
      }
    >
      <Row label="Units">
        <select
          className="inline-input"
          aria-label="Units"
          value={which}
          onChange={(e) => setWhich(e.target.value as typeof which)}
        >
          <option value="patched">all with an address</option>
          <option value="all">all units</option>
          <option value="chosen" disabled={selection.size === 0}>
            the chosen
          </option>
        </select>
      </Row>
      <Row label="Order">
        <select
          className="inline-input"
          aria-label="Order"
          value={by}
          onChange={(e) => setBy(e.target.value as By)}
        >
          {BY.map((o) => (
            <option key={o} value={o}>
              {o === 'address' ? 'universe and address' : ORDER_WORDS[o]}
            </option>
          ))}
        </select>
      </Row>
      <Field
        label="First"
        value={rule.from}
        format={String}
        parse={whole(0, 99_999)}
        onCommit={(from) => setRule({ ...rule, from })}
      />
      <Field
        label="Step"
        value={rule.step}
        format={String}
        parse={whole(1, 1000)}
        onCommit={(step) => setRule({ ...rule, step })}
      />
      <Field
        label="Before it"
        value={rule.prefix}
        format={(t) => t}
        parse={anyText}
        hint="letters before the number"
        onCommit={(prefix) => setRule({ ...rule, prefix: prefix.slice(0, 12) })}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls is reached by key */}
      <section className="channels-preview" aria-label="Channels now and then" tabIndex={0}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Unit</th>
              <th scope="col">Kind</th>
              <th scope="col">Now</th>
              <th scope="col">Then</th>
            </tr>
          </thead>
          <tbody>
            {units.slice(0, 200).map((f) => (
              <tr key={f.id} className={next.has(f.id) ? undefined : 'soft'}>
                <th scope="row">{f.unit}</th>
                <td>{kindOf(plan, f.kindId)?.name}</td>
                <td>{f.channel || 'none'}</td>
                <td className={next.has(f.id) ? 'strong' : undefined}>
                  {next.get(f.id) ?? (f.locked ? 'locked' : 'as it is')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        {units.length > 200 ? <p className="soft">and {units.length - 200} more in the same way</p> : null}
      </section>
      <p className="small soft">Locked units keep their channel, and its number is passed over.</p>
    </Modal>
  );
};
