import type { DxfDrawing } from '../../import/dxf/dxf.ts';
import { DRAWING_UNITS, type DrawingUnit } from '../../import/dxf/units.ts';
import { formatLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import type { WaitingLines } from './waiting.ts';

/** Asks for the unit of a drawing that names none, with how large it would be in each. */
export const UnitChoice = ({
  lines,
  onChange,
  onTake,
}: {
  readonly lines: WaitingLines;
  readonly onChange: (unit: DrawingUnit) => void;
  readonly onTake: (file: string, drawing: DxfDrawing, mmPerUnit: number, unit: string) => void;
}) => {
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const { widthUnits, heightUnits } = lines.drawing;
  const chosen = DRAWING_UNITS.find((u) => u.id === lines.unit) ?? DRAWING_UNITS[0];
  const size = (mm: number): string =>
    `${formatLength(widthUnits * mm, units)} × ${formatLength(heightUnits * mm, units)}`;
  return (
    <>
      <p>
        {lines.name} does not say in what unit it is drawn. In {chosen.name} it is {size(chosen.mm)}.
      </p>
      <label>
        Unit of the drawing
        <select
          className="input"
          value={lines.unit}
          onChange={(e) => {
            const unit = DRAWING_UNITS.find((u) => u.id === e.target.value);
            if (unit) onChange(unit.id);
          }}
        >
          {DRAWING_UNITS.map((u) => (
            <option key={u.id} value={u.id}>
              {u.name}: {size(u.mm)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="button primary"
        onClick={() => onTake(lines.name, lines.drawing, chosen.mm, chosen.name)}
      >
        Lay it under the floor
      </button>
    </>
  );
};
