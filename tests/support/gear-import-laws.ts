import { expect } from 'vitest';
import { importGdtf } from '../../src/gear/import/index.ts';
import { problemText } from '../../src/kernel/result.ts';
import { fixtureKindSchema } from '../../src/plan/kinds/kinds.ts';
import { CELL_BAR, channel, description, fixtureFile, mode, reference } from './fixture-files.ts';
import { CARELESS, MOVING_RING, PLAIN_WASH } from './realistic-files.ts';

const MOVING = description({
  version: '1.1',
  physical:
    '<Connectors><Connector Name="A" Type="XLR5" DMXBreak="1" Gender="1" Length="0"/></Connectors><Properties><Weight Value="21.5"/><PowerConsumption Value="480" PowerFactor="0.97" Connector="CEE 7/7" VoltageLow="200" VoltageHigh="240"/></Properties>',
  models:
    '<Model Name="Base" Length="0.4" Width="0.3" Height="0.2" File="base"/><Model Name="Head" Length="0.3" Width="0.3" Height="0.4"/>',
  geometries: `<Geometry Name="Base" Model="Base" Position="{1,0,0,0}{0,1,0,0}{0,0,1,0}{0,0,0,1}"><Axis Name="Yoke"><Axis Name="Head" Model="Head" Position="{1,0,0,0}{0,1,0,0}{0,0,1,-0.4}{0,0,0,1}"><Beam Name="Lamp" LampType="Discharge" PowerConsumption="300" BeamAngle="12"/></Axis></Axis>${reference('Ring 1', 'Cell', ['1', '30'], ['2', '1'])}${reference('Ring 2', 'Cell', ['1', '31'], ['2', '4'])}</Geometry><Beam Name="Cell" LampType="LED"/>`,
  modes:
    mode('Small', 'Base', channel('Yoke', '1', 'Pan'), channel('Head', '2', 'Tilt'), channel('Lamp', '5,6')) +
    mode(
      'Large',
      'Base',
      channel('Yoke', '1,2', 'Pan'),
      channel('Head', '3,4', 'Tilt'),
      channel('Cell', '1'),
      channel('Cell', '1', 'ColorAdd_R', 'Overwrite'),
      channel('Lamp', 'None'),
    ),
});

export const DESCRIPTIONS = [CELL_BAR, MOVING, MOVING_RING, PLAIN_WASH, CARELESS];
export const FILES = DESCRIPTIONS.map((d) =>
  fixtureFile(d, {
    'models/svg/base.svg': new TextEncoder().encode('<svg viewBox="0 0 4 3"><path d="M0 0h4v3z"/></svg>'),
  }),
);

/** An import is an answer that holds together or a clear refusal; it never throws. */
export const importLaws = (bytes: Uint8Array): 'kind' | 'refused' => {
  const read = importGdtf(bytes, 'mutated.gdtf');
  if (!read.ok) {
    expect(problemText(read.error).length).toBeGreaterThan(20);
    expect(read.error.where).toContain('mutated.gdtf');
    expect(read.error.todo).toBeTruthy();
    return 'refused';
  }
  const { kind, notices, problems } = read.value;
  expect(fixtureKindSchema.parse(JSON.parse(JSON.stringify(kind)))).toEqual(kind);
  expect(kind.massKg).toBeGreaterThan(0);
  expect(Math.min(kind.sizeMm.lengthMm, kind.sizeMm.widthMm)).toBeGreaterThan(0);
  const { load } = kind;
  expect(load && (load.unknown === true || load.wattsW > 0)).toBe(true);
  expect(load && load.powerFactor > 0 && load.powerFactor <= 1 && load.voltsMinV <= load.voltsMaxV).toBe(
    true,
  );
  expect(new Set(kind.modes.map((m) => m.id)).size).toBe(kind.modes.length);
  for (const m of kind.modes) {
    const breaks = m.breaks as readonly { slots: number; occupied: number }[];
    expect(m.slots).toBe(breaks[0]?.slots ?? 0);
    for (const b of breaks) expect(b.occupied).toBeLessThanOrEqual(b.slots);
  }
  for (const line of notices) expect(line.length).toBeGreaterThan(10);
  for (const p of problems) expect(p.todo).toBeTruthy();
  return 'kind';
};
