import { poseOf } from '../../editor/handles.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { selectionCentre } from '../../plan/edits/align.ts';
import { aimAtMark, moveRecords, tiltOf } from '../../plan/edits/arrange.ts';
import { setLevels } from '../../plan/edits/document.ts';
import {
  heightOf,
  letGoOfMarks,
  setFacings,
  setFixtureText,
  setHeights,
  setTilts,
} from '../../plan/edits/many.ts';
import { kindOf, levelOf, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import { useCommands } from '../commands.ts';
import { Row } from '../common/Field.tsx';
import {
  anyText,
  formatLevel,
  formatTilt,
  parseDegrees,
  parseHeight,
  parseLevel,
  parseTilt,
  text,
} from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ManyField } from './ManyField.tsx';

/** Several things at once: what they share can be set for all, and mixed values say so. */
export const SeveralInspector = ({ ids }: { readonly ids: readonly string[] }) => {
  const { session } = useServices();
  const { run } = useCommands();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const units = planRecord(plan).lengthUnits;
  const records = ids.flatMap((id) => plan.records.get(id) ?? []);
  const fixtures = ids.flatMap((id) => recordOf(plan, 'fixture', id) ?? []);
  const unitIds = fixtures.map((f) => f.id);
  const levels = setupId ? fixtures.map((f) => levelOf(plan, setupId, f.id).levelPct) : [];
  const heights = records.flatMap((r) => heightOf(plan, r) ?? []);
  const facings = records.flatMap((r) => poseOf(plan, r.id)?.facingDeg ?? []);
  const kinds = new Set(records.flatMap((r) => kindNameOf(r)));
  const middle = selectionCentre(plan, new Set(ids));
  const marks = recordsOf(plan, 'mark').filter((m) => m.what !== 'note');
  const aims = new Set(fixtures.map((f) => (f.aim.at === 'mark' ? f.aim.markId : '')));
  const many = fixtures.length === 1 ? 'unit' : 'units';

  function kindNameOf(r: AnyRecord): readonly string[] {
    return 'kindId' in r && typeof r.kindId === 'string'
      ? [kindOf(plan, r.kindId)?.name ?? 'kind missing']
      : [];
  }
  const commit = (label: string, changes: ChangeSet): void => session.commit(label, changes);
  const length = { format: (mm: number) => formatLength(mm, units), disabled: readOnly };
  const words = { format: text, parse: anyText, disabled: readOnly };

  return (
    <section aria-label="Several selected">
      <h2 className="inspector-title">{ids.length} selected</h2>
      <p className="soft">
        {fixtures.length} {fixtures.length === 1 ? 'fixture' : 'fixtures'}
        {fixtures.length < ids.length ? `, ${ids.length - fixtures.length} other` : ''}
      </p>
      {kinds.size > 0 ? (
        <Row label="Kind">
          {kinds.size === 1 ? [...kinds][0] : <span className="soft">mixed</span>}
          <button type="button" className="link row-hint" disabled={readOnly} onClick={() => run('replace')}>
            replace…
          </button>
        </Row>
      ) : null}
      {fixtures.length > 0 ? (
        <>
          <Row label="Unit">
            <span className="soft">{fixtures.length === 1 ? fixtures[0]?.unit : 'each its own'}</span>
            <button
              type="button"
              className="link row-hint"
              disabled={readOnly}
              onClick={() => run('renumber')}
            >
              number by a rule…
            </button>
          </Row>
          <ManyField
            label="Use"
            values={fixtures.map((f) => f.use)}
            {...words}
            onCommit={(v) => commit('Change use', setFixtureText(plan, unitIds, 'use', v))}
          />
          <ManyField
            label="Gel"
            values={fixtures.map((f) => f.gel)}
            {...words}
            onCommit={(v) => commit('Change gel', setFixtureText(plan, unitIds, 'gel', v))}
          />
          <ManyField
            label="Channel"
            values={fixtures.map((f) => f.channel)}
            {...words}
            onCommit={(v) => commit('Change channel', setFixtureText(plan, unitIds, 'channel', v))}
          />
        </>
      ) : null}
      {middle ? (
        <>
          <ManyField
            label="Across"
            values={[middle.xMm]}
            {...length}
            parse={(t) => parseLengthMm(t, units)}
            hint="of their middle"
            onCommit={(mm) =>
              commit('Move by number', moveRecords(plan, new Set(ids), { xMm: mm - middle.xMm, yMm: 0 }))
            }
          />
          <ManyField
            label="Down"
            values={[middle.yMm]}
            {...length}
            parse={(t) => parseLengthMm(t, units)}
            hint="of their middle"
            onCommit={(mm) =>
              commit('Move by number', moveRecords(plan, new Set(ids), { xMm: 0, yMm: mm - middle.yMm }))
            }
          />
        </>
      ) : null}
      <ManyField
        label="Height"
        values={heights}
        {...length}
        parse={(t) => parseHeight(t, units)}
        onCommit={(mm) => commit('Change height', setHeights(plan, ids, mm))}
      />
      <ManyField
        label="Facing"
        values={facings}
        format={(d) => `${Math.round(d)}°`}
        parse={parseDegrees}
        disabled={readOnly}
        onCommit={(d) => commit('Turn', setFacings(plan, ids, d))}
      />
      {fixtures.length > 0 ? (
        <>
          <ManyField
            label="Tilt"
            values={fixtures.map((f) => tiltOf(plan, f))}
            format={formatTilt}
            parse={parseTilt}
            disabled={readOnly}
            onCommit={(d) => commit('Tilt', setTilts(plan, unitIds, d))}
          />
          <Row label="Aim">
            <select
              className="inline-input"
              aria-label="Aim"
              disabled={readOnly}
              value={aims.size === 1 ? [...aims][0] : 'mixed'}
              onChange={(e) =>
                commit(
                  e.target.value === '' ? 'Let go of the mark' : 'Aim at mark',
                  e.target.value === ''
                    ? letGoOfMarks(plan, unitIds)
                    : aimAtMark(plan, unitIds, e.target.value),
                )
              }
            >
              {aims.size > 1 ? (
                <option value="mixed" disabled>
                  mixed
                </option>
              ) : null}
              <option value="">by facing</option>
              {marks.map((m) => (
                <option key={m.id} value={m.id}>
                  {m.name}
                </option>
              ))}
            </select>
          </Row>
          <Row label="On">
            <span className="soft">{supportsOf()}</span>
            <button
              type="button"
              className="link row-hint"
              disabled={readOnly}
              onClick={() => run('put-on-stand')}
            >
              on stands
            </button>
            <button
              type="button"
              className="link row-hint"
              disabled={readOnly}
              onClick={() => run('take-off-stand')}
            >
              off
            </button>
          </Row>
        </>
      ) : null}
      {fixtures.length > 0 && setupId ? (
        <>
          <h3 className="inspector-head">In this setup</h3>
          <ManyField
            label="Level"
            values={levels}
            format={formatLevel}
            parse={parseLevel}
            disabled={readOnly}
            onCommit={(v) =>
              commit(`Level of ${fixtures.length} ${many}`, setLevels(plan, setupId, unitIds, v))
            }
          />
        </>
      ) : null}
    </section>
  );

  function supportsOf(): string {
    const all = new Set(fixtures.map((f) => f.support.on));
    const [one] = all;
    return all.size > 1 ? 'mixed' : one === undefined ? '' : SUPPORT[one];
  }
};

const SUPPORT = { stand: 'stands', floor: 'the floor', rigged: 'rigged', held: 'held' } as const;
