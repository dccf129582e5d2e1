import { useMemo, useState } from 'react';
import {
  type AssignOptions,
  assignAddresses,
  type Common,
  DEFAULT_ASSIGN,
  ORDERS,
} from '../../engines/control/index.ts';
import { fail, ok, problemText, type Result } from '../../kernel/result.ts';
import { parseAddress, printAddress } from '../../plan/address.ts';
import { recordOf } from '../../plan/plan.ts';
import { Field, Row } from '../common/Field.tsx';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { AssignPreview } from './AssignPreview.tsx';

export const ORDER_WORDS: Readonly<Record<AssignOptions['order'], string>> = {
  unit: 'unit number',
  channel: 'channel',
  'left-right': 'position, left to right',
  'top-bottom': 'position, top to bottom',
  path: 'a short path from unit to unit',
  line: 'line by line, stop by stop',
};

const COMMON_WORDS: Readonly<Record<Common, string>> = {
  nothing: 'nothing',
  group: 'group',
  kind: 'kind',
  floor: 'floor',
  rigging: 'pipe or truss',
  link: 'link (line, radio)',
  line: 'data line or transmitter',
};

const whole =
  (from: number, to: number) =>
  (t: string): Result<number> => {
    const n = /^\d+$/.test(t.trim()) ? Number(t.trim()) : Number.NaN;
    return n >= from && n <= to ? ok(n) : fail({ what: `Write a whole number from ${from} to ${to}.` });
  };

/** Options on the left, who would get which address on the right; accepted as a whole, as one undo step. */
export const AssignDialog = ({ onClose }: { readonly onClose: () => void }) => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const chosen = useMemo(
    () => new Set([...selection].filter((id) => recordOf(plan, 'fixture', id))),
    [plan, selection],
  );
  const [only, setOnly] = useState(chosen.size > 1);
  const [o, setOptions] = useState<AssignOptions>(DEFAULT_ASSIGN);
  const set = (patch: Partial<AssignOptions>): void => setOptions({ ...o, ...patch });
  const made = useMemo(
    () => assignAddresses(plan, { ...o, ...(only ? { fixtureIds: chosen } : {}) }),
    [plan, o, only, chosen],
  );
  const changed = made.ok ? made.value.rows.filter((r) => r.changed).length : 0;

  const accept = (): void => {
    if (!made.ok) return;
    session.commit(`Assign addresses to ${changed} units`, made.value.changes);
    session.set({ message: `${changed} units have new addresses. Undo brings the old ones back.` });
    onClose();
  };

  return (
    <Modal
      title="Assign addresses"
      open
      onClose={onClose}
      wide
      foot={
        <button type="button" className="button primary" disabled={changed === 0} onClick={accept}>
          {changed === 0 ? 'Nothing would change' : `Change ${changed} ${changed === 1 ? 'unit' : 'units'}`}
        </button>
      }
    >
      <div className="assign">
        <div className="assign-options">
          <Row label="Units">
            <select
              className="inline-input"
              aria-label="Units"
              value={only ? 'chosen' : 'all'}
              onChange={(e) => setOnly(e.target.value === 'chosen')}
            >
              <option value="all">all on control data</option>
              <option value="chosen" disabled={chosen.size === 0}>
                the {chosen.size} chosen
              </option>
            </select>
          </Row>
          <Choice
            label="Order"
            value={o.order}
            words={ORDER_WORDS}
            of={ORDERS}
            onChange={(order) => set({ order })}
          />
          <Field
            label="Start at"
            value={o.start}
            format={printAddress}
            parse={(t) => parseAddress(t)}
            onCommit={(start) => set({ start })}
          />
          <Field
            label="Step"
            value={o.step}
            format={String}
            parse={whole(1, 512)}
            hint={o.step > 1 ? `at 1, ${1 + o.step}, ${1 + 2 * o.step} …` : 'any address'}
            onCommit={(step) => set({ step })}
          />
          <Field
            label="Gap"
            value={o.gapSlots}
            format={String}
            parse={whole(0, 256)}
            hint="slots free after each"
            onCommit={(gapSlots) => set({ gapSlots })}
          />
          <Field
            label="Spare"
            value={o.spareSlots}
            format={String}
            parse={whole(0, 256)}
            hint="slots at each end; 51 is a tenth"
            onCommit={(spareSlots) => set({ spareSlots })}
          />
          <Choice
            label="Together"
            value={o.together}
            words={COMMON_WORDS}
            of={['nothing', 'group', 'rigging', 'kind', 'line']}
            onChange={(together) => set({ together })}
          />
          <Choice
            label="Apart"
            value={o.ownUniverse}
            words={COMMON_WORDS}
            of={['nothing', 'line', 'group', 'rigging', 'floor', 'kind', 'link']}
            onChange={(ownUniverse) => set({ ownUniverse })}
          />
          <Check
            words="Units with an address keep it"
            value={o.keepPatched}
            onChange={(keepPatched) => set({ keepPatched })}
          />
          <Check
            words="Fewest universes, not one after the other"
            value={o.fewest}
            onChange={(fewest) => set({ fewest })}
          />
          <Check
            words="Part units of several parts at a universe’s end"
            value={o.part}
            disabled={o.fewest}
            onChange={(part) => set({ part })}
          />
          <Check
            words="Number the channels from 1 in this order"
            value={o.channelsFrom !== undefined}
            onChange={(on) => set({ channelsFrom: on ? 1 : undefined })}
          />
          <p className="soft small">
            Together: what has this in common lies side by side in one universe. Apart: each gets universes of
            its own; by data line, the universe its port carries. Locked units stay. Paired units stay on one
            address.
          </p>
        </div>
        {made.ok ? (
          <AssignPreview plan={plan} made={made.value} fewest={o.fewest} />
        ) : (
          <div className="assign-preview">
            <p className="field-error" role="alert">
              {problemText(made.error)}
            </p>
          </div>
        )}
      </div>
    </Modal>
  );
};

const Choice = <K extends string>(p: {
  readonly label: string;
  readonly value: K;
  readonly words: Readonly<Record<K, string>>;
  readonly of: readonly K[];
  readonly onChange: (k: K) => void;
}) => (
  <Row label={p.label}>
    <select
      className="inline-input"
      aria-label={p.label}
      value={p.value}
      onChange={(e) => p.onChange(e.target.value as K)}
    >
      {p.of.map((k) => (
        <option key={k} value={k}>
          {p.words[k]}
        </option>
      ))}
    </select>
  </Row>
);

const Check = (p: {
  readonly words: string;
  readonly value: boolean;
  readonly disabled?: boolean;
  readonly onChange: (on: boolean) => void;
}) => (
  <label className="assign-check">
    <input
      type="checkbox"
      checked={p.value}
      disabled={p.disabled}
      onChange={(e) => p.onChange(e.target.checked)}
    />{' '}
    {p.words}
  </label>
);
