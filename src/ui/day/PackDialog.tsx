import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { setOwnCells, setPacks } from '../../plan/edits/day.ts';
import type { ConverterKind, FixtureKind, Kind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import type { PackUse } from '../../plan/records/index.ts';
import type { DaySummary } from '../../report/day.ts';
import { packAir } from '../../report/pack-air.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { Modal } from '../common/Modal.tsx';
import { FindingList } from '../floor/FindingList.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { FloorLead } from './FloorLead.tsx';
import { LeadConductor } from './LeadConductor.tsx';
import { readLeadLength, usualConductor } from './leads.ts';
import { PackCurrents } from './PackCurrents.tsx';
import { useConverterKinds } from './pack-kinds.ts';
import { RunsOn } from './RunsOn.tsx';

const count = (t: string): Result<number> => {
  const n = Number(t.trim());
  return Number.isInteger(n) && n >= 1 && n <= 12 ? ok(n) : fail({ what: 'One to twelve packs at once.' });
};

const chargeTime = (t: string): Result<number | undefined> => {
  if (t.trim() === '') return ok(undefined);
  const n = Number(t.replace(/min/i, '').trim());
  return n >= 5 && n <= 2000 ? ok(n) : fail({ what: 'From 5 to 2000 minutes.' });
};

/** What is between the packs and the unit, in a few words. */
export const betweenText = (plan: Plan, use: PackUse, kind: FixtureKind | undefined): string => {
  const units = planRecord(plan).lengthUnits;
  const converter = use.converterId === undefined ? undefined : kindOf(plan, use.converterId, 'converter');
  const hot = use.hotSwap ?? kind?.packIn?.hotSwap;
  return [
    use.count > 1 ? `in ${use.joined}` : '',
    use.converterId === undefined ? '' : (converter?.name ?? 'converter not in the plan'),
    use.lead && use.lead.lengthMm > 0 ? `lead ${formatLength(use.lead.lengthMm, units)}` : '',
    hot ? 'changed while it runs' : '',
  ]
    .filter(Boolean)
    .join(', ');
};

/** The packs of one unit and all that is between: how they are joined, converter, lead, a second plate. */
export const PackDialog = ({
  fixtureId,
  summary,
  onClose,
}: {
  readonly fixtureId: string;
  readonly summary: DaySummary;
  readonly onClose: () => void;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const converters = useConverterKinds();
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return null;
  const kind = kindOf(plan, f.kindId, 'fixture');
  const units = planRecord(plan).lengthUnits;
  const usual = kind?.packIn;
  const use = f.packs;
  const lane = summary.lanes.find((l) => l.fixtureId === fixtureId);
  const air = packAir(plan, f);
  const set = (label: string, next: PackUse | undefined, kinds: readonly Kind[] = []): void =>
    session.commit(label, setPacks(plan, [f.id], next, kinds));
  const convert = (c: ConverterKind | undefined): void => {
    if (!use) return;
    const { converterId: _old, ...rest } = use;
    set('Converter', c ? { ...rest, converterId: c.id } : rest, c ? [c] : []);
  };
  const lead = (patch: Partial<NonNullable<PackUse['lead']>>): void => {
    if (!use) return;
    const { lead: old, ...rest } = use;
    const next = {
      lengthMm: 0,
      conductor: usualConductor(units, false),
      ...old,
      ...patch,
    };
    set('Lead of the packs', next.lengthMm > 0 ? { ...rest, lead: next } : rest);
  };
  const hotSwap = (value: string): void => {
    if (!use) return;
    const { hotSwap: _old, ...rest } = use;
    set('Second plate', value === '' ? rest : { ...rest, hotSwap: value === 'yes' });
  };
  return (
    <Modal title={`Packs of unit ${f.unit}`} open onClose={onClose}>
      <p className="soft">
        {kind?.name}
        {usual
          ? ` · takes ${usual.packs === 1 ? 'a pack' : `${usual.packs} packs in ${usual.joined}`}, ${usual.minV} to ${usual.maxV} V`
          : ' · no plate or inlet for packs of its own'}
      </p>
      <Row label="Runs on">
        <RunsOn fixture={f} label="Runs on" className="inline-input" />
      </Row>
      {f.packFrom ? (
        <FloorLead fixture={f} use={f.packFrom} summary={summary} />
      ) : use ? (
        <>
          <Field
            label="Packs at once"
            value={use.count}
            format={String}
            parse={count}
            disabled={readOnly}
            onCommit={(n) => set('Packs at once', { ...use, count: n })}
          />
          <Row label="Joined">
            <select
              className="inline-input"
              aria-label="Joined"
              disabled={readOnly || use.count < 2}
              value={use.joined}
              onChange={(e) => set('Join packs', { ...use, joined: e.target.value as PackUse['joined'] })}
            >
              <option value="parallel">in parallel: more hours</option>
              <option value="series">in series: more volts</option>
            </select>
          </Row>
          <Row label="Between">
            <select
              className="inline-input"
              aria-label="Converter between packs and unit"
              disabled={readOnly}
              value={use.converterId ?? ''}
              onChange={(e) => convert(converters.find((c) => c.id === e.target.value))}
            >
              <option value="">nothing: straight on its plate or lead</option>
              {converters.map((c) => (
                <option key={c.id} value={c.id}>
                  {c.name}
                </option>
              ))}
            </select>
          </Row>
          <Field
            label="Lead"
            value={use.lead?.lengthMm ?? 0}
            format={(mm) => (mm > 0 ? formatLength(mm, units) : '')}
            parse={readLeadLength(units)}
            disabled={readOnly}
            hint={use.lead ? undefined : 'none: on the plate'}
            onCommit={(lengthMm) => lead({ lengthMm })}
          />
          {use.lead ? (
            <Row label="Conductor">
              <LeadConductor
                value={use.lead.conductor}
                disabled={readOnly}
                onChange={(conductor) => lead({ conductor })}
              />
            </Row>
          ) : null}
          <Row label="Change">
            <select
              className="inline-input"
              aria-label="Changing packs"
              disabled={readOnly}
              value={use.hotSwap === undefined ? '' : use.hotSwap ? 'yes' : 'no'}
              onChange={(e) => hotSwap(e.target.value)}
            >
              <option value="">as its kind: {usual?.hotSwap ? 'while it runs' : 'dark while changed'}</option>
              <option value="yes">while it runs: a second plate holds it</option>
              <option value="no">dark while changed</option>
            </select>
          </Row>
        </>
      ) : kind?.ownCellsWh ? (
        <>
          <Row label="When empty">
            <select
              className="inline-input"
              aria-label="When its cells are empty"
              disabled={readOnly}
              value={f.ownCells?.when ?? 'none'}
              onChange={(e) =>
                session.commit(
                  'Own cells',
                  setOwnCells(plan, f.id, { ...f.ownCells, when: e.target.value as 'none' }),
                )
              }
            >
              <option value="none">goes dark</option>
              <option value="recharge">charged when it is off</option>
              <option value="exchange">exchanged for another</option>
            </select>
          </Row>
          <Field
            label="Charges in"
            value={f.ownCells?.chargeMin}
            format={(v) => (v === undefined ? '' : `${v} min`)}
            parse={chargeTime}
            disabled={readOnly}
            hint={f.ownCells?.chargeMin === undefined ? 'from empty; assumed' : 'from empty'}
            onCommit={(chargeMin) => {
              const { chargeMin: _old, ...rest } = f.ownCells ?? { when: 'none' as const };
              session.commit(
                'Charging of own cells',
                setOwnCells(plan, f.id, chargeMin === undefined ? rest : { ...rest, chargeMin }),
              );
            }}
          />
        </>
      ) : null}
      <h3 className="pack-dialog-head">Runtime, worst to best</h3>
      {lane?.problem ? <p className="day-fault">Not computed: {lane.problem}.</p> : null}
      {lane && lane.problem === undefined && lane.runtimes.length === 0 ? (
        <p className="soft">It burns in no block of this day.</p>
      ) : null}
      {lane?.runtimes.map((r) => (
        <div key={r.setupId} className="packs-runtime">
          <span className="soft">
            {r.setupName}, {r.levelPct} %
          </span>{' '}
          <Figure figureKey={r.key}>{r.text}</Figure>
        </div>
      ))}
      <PackCurrents id={f.packFrom?.packId ?? f.id} />
      {air ? (
        <>
          <h3 className="pack-dialog-head">By air</h3>
          <p>{air.text}</p>
          <p className="soft small">{air.source}</p>
        </>
      ) : null}
      <FindingList title="Findings on this unit" about={new Set([f.id])} limit={6} />
    </Modal>
  );
};
