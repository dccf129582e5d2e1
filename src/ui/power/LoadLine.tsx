import { useState } from 'react';
import { figureKey } from '../../derive/types.ts';
import { formatAmps, formatCableLength, formatPct, formatVolts, formatWatts } from '../../kernel/units.ts';
import { setLevels } from '../../plan/edits/document.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import { inletsOf } from '../../plan/ports.ts';
import type { LoadRow } from '../../report/summary.ts';
import { Figure } from '../common/Figure.tsx';
import { worstKey } from '../common/figure-keys.ts';
import { formatLevel, parseLevel } from '../common/parse.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { PlugDialog } from '../floor/PlugDialog.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { FindingMarks, SelectName, TriedMark } from './circuit-parts.tsx';
import { DRAGGED } from './use-move.ts';

/** One load on a way: to drag to another way, to move by keyboard, and its level in this setup typed in place. */
export const LoadLine = ({ load }: { readonly load: LoadRow }) => {
  const { session } = useServices();
  const { units, readOnly, chosen, movable, fixtureId, setupId } = useSessionSlice((s) => {
    const r = s.plan.records.get(load.recordId);
    const fixture = r?.type === 'ballast' ? recordOf(s.plan, 'fixture', r.fixtureId) : r;
    return {
      units: planRecord(s.plan).lengthUnits,
      readOnly: s.readOnly,
      chosen: s.selection.has(load.recordId),
      movable: inletsOf(s.plan, load.recordId).length > 0,
      fixtureId: fixture?.type === 'fixture' ? fixture.id : undefined,
      setupId: s.setupId,
    };
  });
  const openSettings = useUi((u) => u.openSettings);
  const [moving, setMoving] = useState(false);
  const inlet = moving ? inletsOf(session.getState().plan, load.recordId)[0] : undefined;
  const key = (q: 'usePct' | 'loadW' | 'voltsV' | 'dropPct'): string | undefined =>
    setupId === undefined ? undefined : figureKey(q, load.key, setupId);
  return (
    <tr
      className={chosen ? 'chosen' : undefined}
      draggable={movable && !readOnly}
      onDragStart={(e) => {
        e.dataTransfer.setData(DRAGGED, load.recordId);
        e.dataTransfer.effectAllowed = 'move';
      }}
    >
      <td />
      <td />
      <td />
      <td>
        <SelectName load={load} />
        <TriedMark recordId={load.recordId} />
        {movable ? (
          <button
            type="button"
            className="link power-move"
            disabled={readOnly}
            aria-label={`Move ${load.label} to another way`}
            onClick={() => setMoving(true)}
          >
            move…
          </button>
        ) : null}
        {inlet ? (
          <PlugDialog
            inlet={{ recordId: load.recordId, portId: inlet.id }}
            onClose={() => setMoving(false)}
          />
        ) : null}
      </td>
      <td className="soft">
        {load.cableId !== undefined && load.cableMm > 0 ? (
          <button
            type="button"
            className="link"
            title={`${load.cable}: show it on the floor`}
            onClick={() => session.set({ selection: new Set([load.cableId ?? '']), workspace: 'floor' })}
          >
            {formatCableLength(load.cableMm, units)}
          </button>
        ) : (
          'own lead'
        )}
      </td>
      <td className="num">
        <Figure figureKey={key('loadW')}>{formatWatts(load.nowW)}</Figure>
        {fixtureId !== undefined && setupId !== undefined && load.levelPct !== undefined ? (
          <span className="soft power-level">
            {' at '}
            <TypedCell
              label={`Level of ${load.label} in this setup`}
              value={load.levelPct}
              format={formatLevel}
              parse={parseLevel}
              disabled={readOnly}
              onCommit={(pct) =>
                session.commit(
                  `Level of ${load.label}`,
                  setLevels(session.getState().plan, setupId, [fixtureId], pct),
                )
              }
            />
          </span>
        ) : null}
      </td>
      <td className="num">
        <Figure figureKey={load.figureKey}>{formatAmps(load.nowA)}</Figure>
      </td>
      <td className="num">
        <Figure figureKey={worstKey(load)}>{formatAmps(load.worstA)}</Figure>
      </td>
      <td />
      <td />
      <td className="num">
        {Number.isFinite(load.voltsV) ? (
          <Figure figureKey={key('voltsV')}>{formatVolts(load.voltsV)}</Figure>
        ) : (
          <button
            type="button"
            className="link"
            title="Volts of the source are not known: measure and write them into the plan settings"
            onClick={() => openSettings('sources')}
          >
            measure
          </button>
        )}
      </td>
      <td className="num">
        {Number.isFinite(load.dropPct) ? (
          <Figure figureKey={key('dropPct')}>{formatPct(load.dropPct)}</Figure>
        ) : (
          '–'
        )}
      </td>
      <td>
        <FindingMarks
          recordIds={[load.recordId, ...(load.cableId ? [load.cableId] : [])]}
          wayKey={undefined}
        />
      </td>
    </tr>
  );
};
