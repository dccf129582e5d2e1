import { useState } from 'react';
import { cableLength } from '../../derive/lengths.ts';
import { formatCableLength } from '../../kernel/units.ts';
import { setOnPacks } from '../../plan/edits/day.ts';
import { unplug } from '../../plan/edits/plug.ts';
import { portName } from '../../plan/names.ts';
import { kindOf, planRecord, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { runsOnWords } from '../../report/floor-packs.ts';
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
  const kind = kindOf(plan, fixture.kindId, 'fixture');
  const cells = kind?.ownCellsWh ? 'run on its own cells' : kind?.packIn ? 'run on packs' : undefined;
  const length = cable ? cableLength(plan, cable) : undefined;
  const cableKind = cable ? kindOf(plan, cable.kindId, 'cable') : undefined;
  return (
    <>
      <h3 className="inspector-head">Power</h3>
      <Row label="Plugged">
        {fixture.onPacks ? (
          <>
            {runsOnWords(plan, fixture)}
            <button
              type="button"
              className="link soft row-hint"
              disabled={readOnly || fixture.locked === true}
              onClick={() =>
                session.commit(
                  `Put unit ${fixture.unit} back to mains`,
                  setOnPacks(plan, [fixture.id], false),
                )
              }
            >
              back to mains
            </button>
          </>
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
            {cells ? (
              <button
                type="button"
                className="link soft row-hint"
                disabled={readOnly || fixture.locked === true}
                onClick={() =>
                  session.commit(`Put unit ${fixture.unit} on packs`, setOnPacks(plan, [fixture.id], true))
                }
              >
                {cells}
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
          <button
            type="button"
            className="link soft row-hint"
            onClick={() => session.set({ selection: new Set([cable.id]) })}
          >
            its cable
          </button>
        </Row>
      ) : null}
      {inlet ? <LoadFigures recordId={inlet.recordId} /> : null}

      {plugging && inlet ? <PlugDialog inlet={inlet} onClose={() => setPlugging(false)} /> : null}
    </>
  );
};
