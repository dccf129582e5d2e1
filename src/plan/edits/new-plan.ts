import type { NewId } from '../../kernel/ids.ts';
import { emptyPlan, type Plan } from '../plan.ts';
import type { AnyRecord, Country, Practice, RecordOf } from '../records/index.ts';

export interface NewPlan {
  readonly title: string;
  readonly production: string;
  readonly practice: Practice;
  /** Whose own rules and colours lie over the practice's; absent: none. */
  readonly country?: Country | undefined;
  readonly lengthUnits: RecordOf<'plan'>['lengthUnits'];
  /** Inside length and width of one rectangular room; absent for an empty floor. */
  readonly roomMm?: { readonly lengthMm: number; readonly widthMm: number } | undefined;
}

/** A new plan: one floor, one setup and, when sizes are given, one room whose inside measures them. */
export const newPlan = (what: NewPlan, newId: NewId): Plan => {
  const north = what.practice === 'north-america';
  const floorId = newId('fl');
  const records: AnyRecord[] = [
    {
      id: 'plan',
      type: 'plan',
      title: what.title,
      production: what.production,
      scene: '',
      location: '',
      drawingNumber: '',
      owner: '',
      dates: [],
      people: {},
      practice: what.practice,
      ...(what.country === undefined ? {} : { country: what.country }),
      lengthUnits: what.lengthUnits,
      frequencyHz: north ? 60 : 50,
      ambientC: 30,
      limits: [],
      paper: { sheet: what.lengthUnits === 'imperial' ? 'ANSI B' : 'A3', landscape: true },
    },
    { id: floorId, type: 'floor', name: 'Ground', levelMm: 0, northDeg: 270 },
    { id: newId('su'), type: 'setup', order: 1, name: 'Setup 1', scene: '' },
  ];
  if (what.roomMm) records.push(...roomWalls(floorId, what.roomMm, newId));
  return { ...emptyPlan, records: new Map(records.map((r) => [r.id, r])) };
};

const THICKNESS_MM = 150;

const roomWalls = (
  floorId: string,
  { lengthMm, widthMm }: { lengthMm: number; widthMm: number },
  newId: NewId,
): AnyRecord[] => {
  const t = THICKNESS_MM / 2;
  const corners = [
    { xMm: -t, yMm: -t },
    { xMm: lengthMm + t, yMm: -t },
    { xMm: lengthMm + t, yMm: widthMm + t },
    { xMm: -t, yMm: widthMm + t },
  ];
  return corners.map((from, i) => ({
    id: newId('wl'),
    type: 'wall' as const,
    floorId,
    from,
    to: corners[(i + 1) % 4] ?? from,
    thicknessMm: THICKNESS_MM,
    heightMm: 2700,
    material: 'plasterboard' as const,
  }));
};
