import { useVirtualizer } from '@tanstack/react-virtual';
import { useRef } from 'react';
import type { Assignment, PatchPlace } from '../../engines/control/index.ts';
import { printAddress } from '../../plan/address.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';

const ROW_PX = 25;

const places = (list: readonly PatchPlace[]): string => list.map(printAddress).join(' + ') || 'none';

/** Who would get which address. Only the rows in sight are there, however many units there are. */
export const AssignPreview = ({
  plan,
  made,
  fewest,
}: {
  readonly plan: Plan;
  readonly made: Assignment;
  readonly fewest: boolean;
}) => {
  const scroll = useRef<HTMLDivElement>(null);
  const list = useVirtualizer({
    count: made.rows.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => ROW_PX,
    overscan: 16,
  });
  const items = list.getVirtualItems();
  const top = items[0]?.start ?? 0;
  const bottom = list.getTotalSize() - (items.at(-1)?.end ?? 0);
  return (
    <div ref={scroll} className="assign-preview">
      <p role="status">
        {made.rows.length} units in {made.universes.length}{' '}
        {made.universes.length === 1 ? 'universe' : 'universes'}
        {made.newUniverses.length > 0 ? `, ${made.newUniverses.map((n) => `U${n}`).join(', ')} new` : ''}.{' '}
        {made.universes.length <= made.lowerBound || (fewest && made.proved)
          ? 'Nothing takes fewer.'
          : `Nothing takes fewer than ${made.lowerBound}.`}
        {made.kept.length > 0 ? ` ${made.kept.length} stay as they are.` : ''}
      </p>
      {made.notices.slice(0, 8).map((n) => (
        <p key={n} className="field-error">
          {n}
        </p>
      ))}
      {made.notices.length > 8 ? (
        <p className="field-error">and {made.notices.length - 8} more like these</p>
      ) : null}
      <table className="table assign-table" aria-rowcount={made.rows.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">Unit</th>
            <th scope="col" className="num">
              Slots
            </th>
            <th scope="col">Now</th>
            <th scope="col">Then</th>
            <th scope="col">Remarks</th>
          </tr>
        </thead>
        <tbody>
          {top > 0 ? <tr style={{ height: top }} /> : null}
          {items.map((item) => {
            const r = made.rows[item.index];
            if (!r) return null;
            return (
              <tr key={r.fixtureId} aria-rowindex={item.index + 2} className={r.changed ? undefined : 'soft'}>
                <th scope="row">{recordOf(plan, 'fixture', r.fixtureId)?.unit}</th>
                <td className="num">{r.slots}</td>
                <td>{places(r.before)}</td>
                <td className={r.changed ? 'strong' : undefined}>{places(r.after)}</td>
                <td className="soft">
                  {[
                    r.changed ? '' : 'as it is',
                    r.modeAssumed ? 'first mode of its kind' : '',
                    r.channelAfter !== r.channelBefore ? `channel ${r.channelAfter}` : '',
                  ]
                    .filter(Boolean)
                    .join(', ')}
                </td>
              </tr>
            );
          })}
          {bottom > 0 ? <tr style={{ height: bottom }} /> : null}
        </tbody>
      </table>
    </div>
  );
};
