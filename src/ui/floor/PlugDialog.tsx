import { useMemo, useState } from 'react';
import { legNames } from '../../derive/systems.ts';
import type { Book } from '../../editor/book.ts';
import { formatAmps, formatCableLength } from '../../kernel/units.ts';
import { type Bridge, bridgeWords, plugByBridge } from '../../plan/edits/adapters.ts';
import { outletsFor } from '../../plan/edits/outlets-for.ts';
import { portName, recordName } from '../../plan/names.ts';
import { type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import { isFeeder, pluggedInto } from '../../plan/ports.ts';
import type { PortRef } from '../../plan/records/index.ts';
import { roomLeft } from '../../report/room.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const SHOWN = 40;

/** All outlets this inlet can take, the nearest first, with what the plan leaves free on each. */
export const PlugDialog = ({ inlet, onClose }: { readonly inlet: PortRef; readonly onClose: () => void }) => {
  const { session, book } = useServices();
  const { plan, assessment } = useSessionSlice((s) => ({ plan: s.plan, assessment: s.assessment }));
  const [filter, setFilter] = useState('');
  const outlets = useMemo(() => choices(plan, inlet, book), [plan, inlet, book]);
  const { practice, lengthUnits } = planRecord(plan);
  const wanted = filter.trim().toLowerCase();
  const shown = outlets.filter((o) => o.name.toLowerCase().includes(wanted)).slice(0, SHOWN);

  const choose = (o: Choice): void => {
    session.commit(
      `Plug ${recordName(plan, inlet.recordId)} into ${o.name}`,
      plugByBridge(plan, o.ref, inlet, o.bridge, session.newId),
    );
    onClose();
  };

  return (
    <Modal title={`Plug in ${recordName(plan, inlet.recordId)}`} open onClose={onClose} wide>
      <input
        className="input"
        aria-label="Find an outlet"
        placeholder="Find an outlet"
        value={filter}
        onChange={(e) => setFilter(e.target.value)}
      />
      {outlets.length === 0 ? (
        <p className="soft plug-empty">
          No outlet on this floor takes its plug by any cable or adapter of the gear book. Add a wall outlet
          or a distribution box first.
        </p>
      ) : null}
      <ul className="plug-list">
        {shown.map((o) => {
          const entity = assessment?.entities.find((e) => e.key === o.entityKey);
          const room = assessment ? roomLeft(assessment, o.entityKey) : undefined;
          return (
            <li key={`${o.ref.recordId}/${o.ref.portId}`}>
              <button
                type="button"
                className="plug-item"
                disabled={o.takenBy !== undefined}
                onClick={() => choose(o)}
              >
                <span className="strong">{o.name}</span>
                <span className="soft">
                  {entity && entity.legs.length > 0
                    ? `leg ${legNames(practice, entity.system, entity.legs)} · `
                    : ''}
                  {o.takenBy === undefined ? bridgeWords(o.bridge) : `taken by ${o.takenBy}`}
                </span>
                <span className="plug-figures">
                  {formatCableLength(o.distanceMm, lengthUnits)} away
                  <span className={room && room.freeA < 0 ? 'over' : undefined}>
                    {room
                      ? `${formatAmps(Math.max(0, room.freeA))} free of ${formatAmps(room.limitA)} at ${room.setBy}`
                      : 'room not known'}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
      <p className="soft small">
        Free is what this plan leaves in its worst setup, here and on everything upstream; other loads are not
        known.
      </p>
    </Modal>
  );
};

interface Choice {
  readonly ref: PortRef;
  readonly bridge: Bridge;
  readonly name: string;
  readonly distanceMm: number;
  readonly takenBy: string | undefined;
  /** The node of the supply whose room counts: the way, the wall outlet or the unit it goes through. */
  readonly entityKey: string;
}

/** Outlets for an inlet: free ones first, those of boxes and walls before those through another unit, then by distance. */
const choices = (plan: Plan, inlet: PortRef, book: Book): readonly Choice[] =>
  outletsFor(plan, inlet, book.cables(), book.adapters())
    .map((o): Choice => {
      const inWall = recordOf(plan, 'outlet', o.ref.recordId) !== undefined;
      // A wall outlet has room for several plugs; a port on gear takes one.
      const cable = inWall ? undefined : pluggedInto(plan, o.ref)[0];
      const onWay = o.port.wayId !== undefined && !inWall;
      return {
        ref: o.ref,
        bridge: o.bridge,
        name: portName(plan, o.ref),
        distanceMm: o.distanceMm,
        takenBy: cable ? recordName(plan, cable.to.recordId) : undefined,
        entityKey: onWay ? `${o.ref.recordId}/${o.port.wayId}` : o.ref.recordId,
      };
    })
    .sort(
      (a, b) =>
        Number(a.takenBy !== undefined) - Number(b.takenBy !== undefined) ||
        Number(!isFeeder(plan, a.ref.recordId)) - Number(!isFeeder(plan, b.ref.recordId)) ||
        a.distanceMm - b.distanceMm,
    );
