import { useMemo, useState } from 'react';
import { legNames } from '../../derive/systems.ts';
import { formatAmps, formatCableLength } from '../../kernel/units.ts';
import { outletsFor, plug } from '../../plan/edits/plug.ts';
import { portName, recordName } from '../../plan/names.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import { pluggedInto } from '../../plan/ports.ts';
import type { PortRef } from '../../plan/records/index.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { worstLeg } from './LoadFigures.tsx';

const SHOWN = 40;

/** All outlets this inlet can take, the nearest first, with what the plan leaves free on each. */
export const PlugDialog = ({ inlet, onClose }: { readonly inlet: PortRef; readonly onClose: () => void }) => {
  const { session, book } = useServices();
  const { plan, assessment } = useSessionSlice((s) => ({ plan: s.plan, assessment: s.assessment }));
  const [filter, setFilter] = useState('');
  const outlets = useMemo(() => outletsFor(plan, inlet, book.cables()), [plan, inlet, book]);
  const { practice, lengthUnits } = planRecord(plan);
  const shown = outlets
    .filter((o) => portName(plan, o.ref).toLowerCase().includes(filter.trim().toLowerCase()))
    .slice(0, SHOWN);

  const wayEntity = (ref: PortRef, wayId: string | undefined) => {
    const outlet = recordOf(plan, 'outlet', ref.recordId);
    const owner = outlet?.sourceId ?? ref.recordId;
    const way = outlet?.wayId ?? wayId;
    return assessment?.entities.find((e) => e.key === (way === undefined ? owner : `${owner}/${way}`));
  };

  return (
    <Modal title={`Plug in ${recordName(plan, inlet.recordId)}`} open onClose={onClose}>
      <input
        className="input"
        aria-label="Find an outlet"
        placeholder="Find an outlet"
        value={filter}
        onChange={(e) => setFilter(e.target.value)}
      />
      {outlets.length === 0 ? (
        <p className="soft plug-empty">
          No outlet on this floor takes its plug by any cable of the gear book. Add a wall outlet or a
          distribution box first.
        </p>
      ) : null}
      <ul className="plug-list">
        {shown.map((o) => {
          const entity = wayEntity(o.ref, o.port.wayId);
          const limit = entity?.legLimit;
          const used =
            assessment && entity ? worstLeg(assessment, entity.key, entity.legs).value : Number.NaN;
          const free = limit && Number.isFinite(used) ? limit.limitA - used : undefined;
          const taken = pluggedInto(plan, o.ref).length;
          return (
            <li key={`${o.ref.recordId}/${o.ref.portId}`}>
              <button
                type="button"
                className="plug-item"
                onClick={() => {
                  session.commit(
                    `Plug ${recordName(plan, inlet.recordId)} into ${portName(plan, o.ref)}`,
                    plug(plan, o.ref, inlet, o.kind, session.newId),
                  );
                  onClose();
                }}
              >
                <span className="strong">{portName(plan, o.ref)}</span>
                <span className="soft">
                  {entity ? `leg ${legNames(practice, entity.system, entity.legs)} · ` : ''}
                  {o.kind.name}
                  {taken ? ` · ${taken} plugged` : ''}
                </span>
                <span className="plug-figures">
                  {formatCableLength(o.distanceMm, lengthUnits)} away
                  <span className={free !== undefined && free < 0 ? 'over' : undefined}>
                    {free === undefined
                      ? 'room not known'
                      : `${formatAmps(Math.max(0, free))} free of ${formatAmps(limit?.limitA ?? 0)}`}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
      <p className="soft small">
        Free is what this plan leaves in its worst setup; other loads on the circuit are not known.
      </p>
    </Modal>
  );
};
