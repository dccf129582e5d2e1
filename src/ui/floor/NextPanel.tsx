import { circuitFor } from '../../editor/tools/outlet.ts';
import { formatLength } from '../../kernel/units.ts';
import { kindOf, planRecord, recordsOf } from '../../plan/plan.ts';
import { waysOf } from '../../plan/ports.ts';
import { wallMaterials } from '../../plan/records/place.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseHeight, parseThickness } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { NextCrossing, NextFeature } from '../scout/NextScout.tsx';
import { useServices } from '../services.ts';

/** What the tool in use will make next: how walls are, which opening, which circuit. */
export const NextPanel = () => {
  const tool = useSessionSlice((s) => s.tool);
  if (tool === 'wall') return <NextWalls />;
  if (tool === 'opening') return <NextOpening />;
  if (tool === 'outlet') return <NextOutlet />;
  if (tool === 'feature') return <NextFeature />;
  if (tool === 'crossing') return <NextCrossing />;
  return null;
};

const NextWalls = () => {
  const { session } = useServices();
  const { view, plan } = useSessionSlice((s) => ({ view: s.floorView, plan: s.plan }));
  const units = planRecord(plan).lengthUnits;
  const set = (patch: Partial<typeof view.wall>): void =>
    session.set({ floorView: { ...session.getState().floorView, wall: { ...view.wall, ...patch } } });
  return (
    <section aria-label="Next walls">
      <h3 className="inspector-head">Next walls</h3>
      <Row label="Measure">
        <select
          className="inline-input"
          aria-label="Measure along"
          value={view.wall.along}
          onChange={(e) => set({ along: e.target.value === 'centre' ? 'centre' : 'inside' })}
        >
          <option value="inside">along the inside</option>
          <option value="centre">along the centre line</option>
        </select>
      </Row>
      <Field
        label="Thickness"
        value={view.wall.thicknessMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseThickness(t, units)}
        onCommit={(thicknessMm) => set({ thicknessMm })}
      />
      <Field
        label="Height"
        value={view.wall.heightMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseHeight(t, units)}
        onCommit={(heightMm) => set({ heightMm })}
      />
      <Row label="Material">
        <MaterialSelect value={view.wall.material} onChange={(material) => set({ material })} />
      </Row>
    </section>
  );
};

type Material = (typeof wallMaterials)[number];

export const MaterialSelect = ({
  value,
  onChange,
  disabled = false,
}: {
  readonly value: Material;
  readonly onChange: (m: Material) => void;
  readonly disabled?: boolean;
}) => (
  <select
    className="inline-input"
    aria-label="Material"
    disabled={disabled}
    value={value}
    onChange={(e) => {
      const m = wallMaterials.find((x) => x === e.target.value);
      if (m) onChange(m);
    }}
  >
    {wallMaterials.map((m) => (
      <option key={m} value={m}>
        {m}
      </option>
    ))}
  </select>
);

const WHATS = ['door', 'window', 'archway'] as const;

const NextOpening = () => {
  const { session } = useServices();
  const what = useSessionSlice((s) => s.floorView.opening.what);
  return (
    <section aria-label="Next opening">
      <h3 className="inspector-head">Next opening</h3>
      <Row label="What">
        <select
          className="inline-input"
          aria-label="Next opening is a"
          value={what}
          onChange={(e) => {
            const w = WHATS.find((x) => x === e.target.value);
            if (w) session.set({ floorView: { ...session.getState().floorView, opening: { what: w } } });
          }}
        >
          {WHATS.map((w) => (
            <option key={w} value={w}>
              {w}
            </option>
          ))}
        </select>
      </Row>
      <p className="soft small">Type a width over the drawing, then press on a wall.</p>
    </section>
  );
};

const NextOutlet = () => {
  const { session } = useServices();
  const s = useSessionSlice((x) => ({ plan: x.plan, floorId: x.floorId, floorView: x.floorView }));
  const now = circuitFor(s);
  const choices = recordsOf(s.plan, 'source')
    .filter((source) => source.floorId === s.floorId)
    .flatMap((source) =>
      waysOf(s.plan, source.id).map((w) => ({
        key: JSON.stringify([source.id, w.id]),
        words: `${source.label} ${kindOf(s.plan, source.kindId, 'source')?.what === 'house-panel' ? `circuit ${w.label}` : ''}, ${w.breakerA} A`,
        circuit: { sourceId: source.id, wayId: w.id },
      })),
    );
  const set = (patch: Partial<typeof s.floorView>): void =>
    session.set({ floorView: { ...session.getState().floorView, ...patch } });
  return (
    <section aria-label="Next wall outlets">
      <h3 className="inspector-head">Next wall outlets</h3>
      <Row label="Circuit">
        <select
          className="inline-input"
          aria-label="Circuit of the next outlets"
          value={now ? JSON.stringify([now.sourceId, now.wayId]) : ''}
          onChange={(e) => set({ circuit: choices.find((c) => c.key === e.target.value)?.circuit })}
        >
          {now ? null : <option value="">none yet</option>}
          {choices.map((c) => (
            <option key={c.key} value={c.key}>
              {c.words}
            </option>
          ))}
        </select>
      </Row>
      <p>
        <button type="button" className="button" onClick={() => set({ ask: 'circuit' })}>
          New circuit…
        </button>
      </p>
    </section>
  );
};
