import { formatLength } from '../../kernel/units.ts';
import {
  aimAtMark,
  facingOf,
  putOnStand,
  setHeight,
  takeOffStand,
  throwMm,
  tiltOf,
} from '../../plan/edits/arrange.ts';
import { changeRecord, setLevels } from '../../plan/edits/document.ts';
import { setTilts } from '../../plan/edits/many.ts';
import { fixturePlace, kindOf, levelOf, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { runsOnWords } from '../../report/floor-packs.ts';
import { Field, Row } from '../common/Field.tsx';
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
import { PatchFields } from '../control/PatchFields.tsx';
import { FixtureRadioRows } from '../control/RadioRows.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { BeamRows } from './BeamRows.tsx';
import { FixturePower } from './FixturePower.tsx';
import { freeUnit } from './fields.ts';
import { LevelColor } from './LevelColor.tsx';
import { PlaceRows } from './PlaceRows.tsx';
import { RiggingFigures } from './RiggingFigures.tsx';

export const FixtureInspector = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session, book } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const kind = kindOf(plan, fixture.kindId, 'fixture');
  const units = planRecord(plan).lengthUnits;
  const place = fixturePlace(plan, fixture);
  const level = setupId ? levelOf(plan, setupId, fixture.id) : { levelPct: 100, assumed: true };
  const stand = fixture.support.on === 'stand' ? recordOf(plan, 'stand', fixture.support.standId) : undefined;
  const standKind = stand ? kindOf(plan, stand.kindId, 'stand') : undefined;
  const marks = recordsOf(plan, 'mark').filter((m) => m.what !== 'note' && m.floorId === fixture.floorId);
  const reach = throwMm(plan, fixture);

  const mounts: readonly string[] = kind?.mount.fits ?? [];
  const fitting = book.stands().filter((k) => k.receives.some((m) => mounts.includes(m)));

  const change = (label: string, patch: Partial<Fixture>): void => {
    const r = changeRecord(plan, fixture, patch);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };

  const support = (value: string): void => {
    if (value === 'floor' || value === 'rigged' || value === 'held') {
      session.commit('Change support', takeOffStand(plan, fixture.id, value));
      return;
    }
    const wanted = book.stands().find((k) => k.slug === value);
    if (wanted)
      session.commit(
        `Put unit ${fixture.unit} on a stand`,
        putOnStand(plan, fixture.id, wanted, session.newId),
      );
  };

  return (
    <section aria-label={`Unit ${fixture.unit}`}>
      <h2 className="inspector-title">
        {fixture.unit} · {kind?.name ?? 'kind missing'}
      </h2>
      <p className="soft">
        {fixture.aim.at === 'mark'
          ? `follows mark “${recordOf(plan, 'mark', fixture.aim.markId)?.name ?? 'missing'}”`
          : fixture.onPacks
            ? `runs on ${runsOnWords(plan, fixture)}`
            : (kind?.notes ?? (kind?.fieldDeg ? `field ${Math.round(kind.fieldDeg)}°` : ''))}
      </p>

      <h3 className="inspector-head">Place</h3>
      <Field
        label="Unit"
        value={fixture.unit}
        format={text}
        parse={(t) => freeUnit(plan, fixture.id, t)}
        disabled={readOnly}
        onCommit={(unit) => change('Renumber unit', { unit })}
      />
      <Field
        label="Use"
        value={fixture.use}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(use) => change('Change use', { use })}
      />
      <Field
        label="Gel"
        value={fixture.gel}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(gel) => change('Change gel', { gel })}
      />
      <PlaceRows record={fixture} />
      <Field
        label="Height"
        value={place.heightMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseHeight(t, units)}
        disabled={readOnly}
        hint={
          standKind
            ? `stand ${formatLength(standKind.heightMinMm, units)} to ${formatLength(standKind.heightMaxMm, units)}`
            : undefined
        }
        onCommit={(mm) => session.commit('Change height', setHeight(plan, fixture.id, mm))}
      />
      <Field
        label="Facing"
        value={facingOf(plan, fixture)}
        format={(d) => `${Math.round(d)}°`}
        parse={parseDegrees}
        disabled={readOnly}
        onCommit={(facingDeg) =>
          change('Turn unit', { aim: { at: 'facing', facingDeg, tiltDeg: tiltOf(plan, fixture) } })
        }
      />
      <Field
        label="Tilt"
        value={tiltOf(plan, fixture)}
        format={formatTilt}
        parse={parseTilt}
        disabled={readOnly}
        hint={fixture.aim.at === 'mark' ? 'to the mark' : undefined}
        onCommit={(tiltDeg) => session.commit('Tilt unit', setTilts(plan, [fixture.id], tiltDeg))}
      />
      <Row label="Aim">
        <select
          className="inline-input"
          aria-label="Aim"
          disabled={readOnly}
          value={fixture.aim.at === 'mark' ? fixture.aim.markId : ''}
          onChange={(e) =>
            e.target.value === ''
              ? change('Let go of the mark', {
                  aim: { at: 'facing', facingDeg: facingOf(plan, fixture), tiltDeg: tiltOf(plan, fixture) },
                })
              : session.commit('Aim at mark', aimAtMark(plan, [fixture.id], e.target.value))
          }
        >
          <option value="">by facing</option>
          {marks.map((m) => (
            <option key={m.id} value={m.id}>
              {m.name}
            </option>
          ))}
        </select>
        {reach !== undefined ? <span className="row-hint">{formatLength(reach, units)} throw</span> : null}
      </Row>
      <Row label="On">
        <select
          className="inline-input"
          aria-label="Support"
          disabled={readOnly}
          value={standKind ? standKind.slug : fixture.support.on}
          onChange={(e) => support(e.target.value)}
        >
          <option value="floor">the floor</option>
          <option value="rigged">rigged above</option>
          <option value="held">held by hand</option>
          {standKind && !book.stands().some((k) => k.slug === standKind.slug) ? (
            <option value={standKind.slug}>{standKind.name}</option>
          ) : null}
          {[
            { label: 'Stands that take its mount', stands: fitting },
            { label: 'Other stands', stands: book.stands().filter((k) => !fitting.includes(k)) },
          ].map((g) => (
            <optgroup key={g.label} label={g.label}>
              {g.stands.map((k) => (
                <option key={k.slug} value={k.slug}>
                  {k.name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
        {standKind && kind ? (
          <span className="row-hint">
            {Math.round(kind.massKg)} of {Math.round(standKind.ratedLoadKg)} kg
          </span>
        ) : null}
      </Row>

      <BeamRows fixture={fixture} />
      <RiggingFigures record={fixture} />
      <FixturePower fixture={fixture} />

      <h3 className="inspector-head">In this setup</h3>
      <Field
        label="Level"
        value={level.levelPct}
        format={formatLevel}
        parse={parseLevel}
        disabled={readOnly || !setupId}
        hint={level.assumed ? 'assumed full' : undefined}
        onCommit={(v) =>
          setupId &&
          session.commit(`Level of unit ${fixture.unit}`, setLevels(plan, setupId, [fixture.id], v))
        }
      />
      <LevelColor fixture={fixture} />

      <h3 className="inspector-head">Control</h3>
      <PatchFields fixture={fixture} />
      <FixtureRadioRows fixture={fixture} />
      <Field
        label="Channel"
        value={fixture.channel}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(channel) => change('Change channel', { channel })}
      />
    </section>
  );
};
