import { useState } from 'react';
import { cableLength } from '../../derive/lengths.ts';
import { formatCableLength } from '../../kernel/units.ts';
import { unplug } from '../../plan/edits/plug.ts';
import { portName } from '../../plan/names.ts';
import { kindOf, planRecord, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { feedCable, powerInlet } from './feed.ts';
import { LoadFigures } from './LoadFigures.tsx';
import { PlugDialog } from './PlugDialog.tsx';

/** Where a unit is plugged, by what cable, and what it draws and sees. */
export const FixturePower = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session } = useServices();
  const [plugging, setPlugging] = useState(false);
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const cable = feedCable(plan, fixture);
  const inlet = powerInlet(plan, fixture);
  const length = cable ? cableLength(plan, cable) : undefined;
  const cableKind = cable ? kindOf(plan, cable.kindId, 'cable') : undefined;
  return (
    <>
      <h3 className="inspector-head">Power</h3>
      <Row label="Plugged">
        {fixture.onPacks ? (
          <span>own cells or packs</span>
        ) : (
          <>
            <button
              type="button"
              className="link"
              disabled={readOnly || !inlet}
              onClick={() => setPlugging(true)}
            >
              {cable ? portName(plan, cable.from) : 'Plug in…'}
            </button>
            {cable && inlet ? (
              <button
                type="button"
                className="link soft row-hint"
                disabled={readOnly}
                onClick={() => session.commit(`Unplug unit ${fixture.unit}`, unplug(plan, inlet))}
              >
                unplug
              </button>
            ) : null}
          </>
        )}
      </Row>
      {cable && length && cableKind ? (
        <Row label="Cable">
          {length.piecesMm.map((mm) => formatCableLength(mm, units).replace(/ (ft|m)$/, '')).join(' + ')}{' '}
          {units === 'imperial' ? 'ft' : 'm'}
          <span className="row-hint">
            needs {formatCableLength(length.neededMm, units)}
            {length.longestIn === undefined
              ? ''
              : ` in ${recordOf(plan, 'setup', length.longestIn)?.name ?? 'its longest setup'}`}{' '}
            · {cableKind.name}
          </span>
        </Row>
      ) : null}
      {inlet ? <LoadFigures recordId={inlet.recordId} /> : null}

      {plugging && inlet ? <PlugDialog inlet={inlet} onClose={() => setPlugging(false)} /> : null}
    </>
  );
};
