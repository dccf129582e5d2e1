import { formatLength } from '../../kernel/units.ts';
import { applyChanges, compose, Draft } from '../../plan/change-set.ts';
import { setPackFrom } from '../../plan/edits/floor-packs.ts';
import { ensureKind } from '../../plan/edits/shared.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Fixture, PackFrom } from '../../plan/records/index.ts';
import type { DaySummary } from '../../report/day.ts';
import { floorPackRows, outletsLeft } from '../../report/floor-packs.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { LeadConductor } from './LeadConductor.tsx';
import { readLeadLength, usualConductor } from './leads.ts';
import { useConverterKinds } from './pack-kinds.ts';

/** The lead of a unit that is fed from a pack on the floor: which outlet, how long, of what, with a converter at its end. */
export const FloorLead = ({
  fixture: f,
  use,
  summary,
}: {
  readonly fixture: Fixture;
  readonly use: PackFrom;
  readonly summary: DaySummary;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const converters = useConverterKinds();
  const units = planRecord(plan).lengthUnits;
  const row = floorPackRows(plan).find((p) => p.record.id === use.packId);
  const drawn = summary.sharedPacks.find((p) => p.id === use.packId)?.units.find((u) => u.fixtureId === f.id);
  const set = (label: string, next: PackFrom): void => session.commit(label, setPackFrom(plan, [f.id], next));
  const without = <K extends keyof PackFrom>(key: K): PackFrom => {
    const { [key]: _gone, ...rest } = use;
    return rest as PackFrom;
  };
  const taken = new Set(row?.fed.filter((x) => x.id !== f.id).map((x) => x.outletId));
  const ids = [...new Map((row?.outlets ?? []).map((o) => [o.id, o])).values()];
  const drop =
    drawn?.dropPct === undefined
      ? undefined
      : `${drawn.dropPct.toFixed(1)} % of the volts lost at full level`;
  return (
    <>
      <Row label="Outlet">
        <select
          className="inline-input"
          aria-label="Outlet of the pack"
          disabled={readOnly}
          value={use.outletId ?? ''}
          onChange={(e) =>
            set(
              'Outlet of the pack',
              e.target.value ? { ...use, outletId: e.target.value } : without('outletId'),
            )
          }
        >
          <option value="">the next free one</option>
          {ids.map((o) => (
            <option key={o.id} value={o.id}>
              {`${o.label ?? o.id}, to ${o.maxA} A${taken.has(o.id) && row?.record.count === 1 ? ' (taken)' : ''}`}
            </option>
          ))}
        </select>
        {row ? <span className="soft row-hint">{outletsLeft(row)}</span> : null}
      </Row>
      <Field
        label="Lead"
        value={use.lead?.lengthMm}
        format={(mm) => (mm === undefined ? '' : formatLength(mm, units))}
        parse={readLeadLength(units)}
        disabled={readOnly}
        hint={[
          use.lead ? '' : `${formatLength(drawn?.leadMm ?? 0, units)} by the way on the floor, assumed`,
          drop ?? '',
        ]
          .filter(Boolean)
          .join('; ')}
        onCommit={(mm) =>
          set(
            'Lead of the packs',
            mm && mm > 0
              ? { ...use, lead: { conductor: usualConductor(units, true), ...use.lead, lengthMm: mm } }
              : without('lead'),
          )
        }
      />
      {use.lead ? (
        <Row label="Its conductor">
          <LeadConductor
            value={use.lead.conductor}
            disabled={readOnly}
            onChange={(conductor) =>
              use.lead && set('Lead of the packs', { ...use, lead: { ...use.lead, conductor } })
            }
          />
        </Row>
      ) : null}
      <Row label="Between">
        <select
          className="inline-input"
          aria-label="Converter at the end of the lead"
          disabled={readOnly}
          value={use.converterId ?? ''}
          onChange={(e) => {
            const c = converters.find((x) => x.id === e.target.value);
            if (!c) return set('Converter', without('converterId'));
            const draft = new Draft(plan);
            ensureKind(draft, c);
            const kinds = draft.changes();
            session.commit(
              'Converter',
              compose(kinds, setPackFrom(applyChanges(plan, kinds), [f.id], { ...use, converterId: c.id })),
            );
          }}
        >
          <option value="">nothing: straight on the lead</option>
          {converters.map((c) => (
            <option key={c.id} value={c.id}>
              {c.name}
            </option>
          ))}
        </select>
      </Row>
    </>
  );
};
