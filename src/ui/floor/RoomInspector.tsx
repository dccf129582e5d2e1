import { distanceMm } from '../../kernel/geometry.ts';
import { problemText, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { anchorPoint } from '../../plan/edits/dimensions.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { changeOpening } from '../../plan/edits/openings.ts';
import { setWallLength } from '../../plan/edits/walls.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Dimension, Opening, Wall } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseHeight, parseThickness } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { MaterialSelect } from './NextPanel.tsx';

const useEdit = () => {
  const { session } = useServices();
  return (label: string, r: Result<ChangeSet>): void => {
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: problemText(r.error) });
  };
};

const useUnits = () => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  return { plan, readOnly, units, format: (mm: number) => formatLength(mm, units) };
};

/** Length, thickness, height and material of a wall. */
export const WallRows = ({ wall }: { readonly wall: Wall }) => {
  const edit = useEdit();
  const { plan, readOnly, units, format } = useUnits();
  return (
    <>
      <Field
        label="Length"
        value={distanceMm(wall.from, wall.to)}
        format={format}
        parse={(t) => parseLengthMm(t, units)}
        disabled={readOnly}
        hint="centre line"
        onCommit={(mm) => edit('Change wall length', setWallLength(plan, wall.id, mm))}
      />
      <Field
        label="Thickness"
        value={wall.thicknessMm}
        format={format}
        parse={(t) => parseThickness(t, units)}
        disabled={readOnly}
        onCommit={(thicknessMm) => edit('Change wall thickness', changeRecord(plan, wall, { thicknessMm }))}
      />
      <Field
        label="Height"
        value={wall.heightMm}
        format={format}
        parse={(t) => parseHeight(t, units)}
        disabled={readOnly}
        onCommit={(heightMm) => edit('Change wall height', changeRecord(plan, wall, { heightMm }))}
      />
      <Row label="Material">
        <MaterialSelect
          value={wall.material}
          disabled={readOnly}
          onChange={(material) => edit('Change wall material', changeRecord(plan, wall, { material }))}
        />
      </Row>
      <p className="soft small">Drag a corner’s square to move both walls that meet there.</p>
    </>
  );
};

const SWINGS = [
  ['', 'no leaf'],
  ['left-start', 'left, hinged at the start'],
  ['left-end', 'left, hinged at the end'],
  ['right-start', 'right, hinged at the start'],
  ['right-end', 'right, hinged at the end'],
] as const;

/** Measures, place and swing of a door, window or archway. */
export const OpeningRows = ({ opening }: { readonly opening: Opening }) => {
  const edit = useEdit();
  const { plan, readOnly, units, format } = useUnits();
  const measure = (label: string, field: 'widthMm' | 'heightMm' | 'sillMm' | 'offsetMm') => (
    <Field
      label={label}
      value={opening[field]}
      format={format}
      parse={(t) => parseLengthMm(t, units)}
      disabled={readOnly}
      onCommit={(mm) =>
        edit(`Change ${opening.what} ${label.toLowerCase()}`, changeOpening(plan, opening, { [field]: mm }))
      }
    />
  );
  return (
    <>
      {measure('Width', 'widthMm')}
      {measure('Height', 'heightMm')}
      {measure('Sill', 'sillMm')}
      {measure('From start', 'offsetMm')}
      {opening.what === 'door' ? (
        <Row label="Swing">
          <select
            className="inline-input"
            aria-label="Swing"
            disabled={readOnly}
            value={opening.swing ?? ''}
            onChange={(e) => {
              const swing = SWINGS.map(([v]) => v).find((v) => v === e.target.value);
              const { swing: _old, ...bare } = opening;
              edit(
                'Change swing',
                swing ? changeOpening(plan, opening, { swing }) : changeOpening(plan, bare as Opening, {}),
              );
            }}
          >
            {SWINGS.map(([v, words]) => (
              <option key={v} value={v}>
                {words}
              </option>
            ))}
          </select>
        </Row>
      ) : null}
    </>
  );
};

/** What a kept dimension line measures, and how far off it stands. */
export const DimensionRows = ({ dimension }: { readonly dimension: Dimension }) => {
  const edit = useEdit();
  const { plan, readOnly, units, format } = useUnits();
  const held = [dimension.from, dimension.to].filter(
    (a) => a.recordId && plan.records.has(a.recordId),
  ).length;
  return (
    <>
      <Row label="Measures">
        {format(distanceMm(anchorPoint(plan, dimension.from), anchorPoint(plan, dimension.to)))}
        <span className="row-hint">
          {held === 2 ? 'follows both ends' : held === 1 ? 'follows one end' : 'stands by itself'}
        </span>
      </Row>
      <Field
        label="Set off"
        value={dimension.offsetMm}
        format={format}
        parse={(t) => parseLengthMm(t, units)}
        disabled={readOnly}
        onCommit={(offsetMm) => edit('Set a dimension line off', changeRecord(plan, dimension, { offsetMm }))}
      />
    </>
  );
};
