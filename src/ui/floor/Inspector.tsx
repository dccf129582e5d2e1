import { recordName } from '../../plan/names.ts';
import { kindOf, recordsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ArrangeButtons } from './ArrangeButtons.tsx';
import { FindingList } from './FindingList.tsx';
import { FixtureInspector } from './FixtureInspector.tsx';
import { NextPanel } from './NextPanel.tsx';
import { OtherInspector } from './OtherInspector.tsx';
import { SetupPlace } from './SetupPlace.tsx';
import { SeveralInspector } from './SeveralInspector.tsx';
import { StateRows } from './StateRows.tsx';

/** The right panel: what is selected, its figures, and the findings about it. */
export const Inspector = () => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const ids = [...selection];
  const only = ids.length === 1 ? plan.records.get(ids[0] ?? '') : undefined;
  return (
    <aside className="inspector" aria-label="Properties and findings">
      <NextPanel />
      {ids.length === 0 ? (
        <section className="inspector-empty">
          <h2>Nothing selected</h2>
          <p className="soft">
            Choose something on the drawing or in the list: its height, aim, plug and figures show here. Drag
            to select several.
          </p>
          <p className="soft">
            {recordsOf(plan, 'fixture').length} fixtures · {recordsOf(plan, 'box').length} boxes ·{' '}
            {recordsOf(plan, 'cable').length} cables
          </p>
        </section>
      ) : only?.type === 'fixture' ? (
        <FixtureInspector key={only.id} fixture={only} />
      ) : only ? (
        <OtherInspector key={only.id} record={only} />
      ) : (
        <SeveralInspector ids={ids} />
      )}
      {ids.length > 0 ? <StateRows key={`state:${ids.join()}`} ids={ids} /> : null}
      {ids.length > 0 ? <SetupPlace ids={ids} /> : null}
      {ids.length > 0 ? <ArrangeButtons /> : null}
      {only ? <FindingList title="Findings here" about={relatedIds(only.id)} /> : null}
      <FindingList
        title="On this plan"
        about={undefined}
        limit={only ? 4 : 12}
        exclude={only ? relatedIds(only.id) : undefined}
      />
      <p className="visually-hidden" aria-live="polite">
        {only
          ? `${recordName(plan, only)}${'kindId' in only && typeof only.kindId === 'string' ? `, ${kindOf(plan, only.kindId)?.name ?? ''}` : ''} selected`
          : ids.length > 1
            ? `${ids.length} things selected`
            : ''}
      </p>
    </aside>
  );

  /** A fixture's findings include those on its stand, ballast and feed. */
  function relatedIds(id: string): ReadonlySet<string> {
    const { plan: p } = session.getState();
    const all = new Set([id]);
    const r = p.records.get(id);
    if (r?.type === 'fixture') {
      if (r.support.on === 'stand') all.add(r.support.standId);
      for (const b of recordsOf(p, 'ballast')) if (b.fixtureId === id) all.add(b.id);
    }
    for (const c of recordsOf(p, 'cable')) if (all.has(c.to.recordId)) all.add(c.id);
    return all;
  }
};
