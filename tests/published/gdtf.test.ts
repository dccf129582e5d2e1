// Footprints by the rules of the open fixture file: DIN SPEC 15800 (GDTF 1.2, public specification page), tables for
// DMXValue, DMXAddress, GeometryReference, Break, DMXMode and DMXChannel. The files are written here by hand.
import { describe, expect, test } from 'vitest';
import { dmxInBytes, dmxValueOf, importGdtf } from '../../src/gear/import/index.ts';
import { CELL_BAR, channel, description, fixtureFile, mode, reference } from '../support/fixture-files.ts';

interface Break {
  readonly number: number;
  readonly slots: number;
  readonly occupied: number;
  readonly clashes?: readonly number[];
}

const imported = (xml: string) => {
  const read = importGdtf(fixtureFile(xml), 'unit.gdtf');
  if (!read.ok) throw new Error(read.error.what);
  return read.value;
};

/** Breaks of the only mode of a file, as number:slots:occupied. */
const breaks = (geometries: string, ...channels: readonly string[]): readonly string[] => {
  const { kind } = imported(description({ geometries, modes: mode('M', 'Root', ...channels) }));
  const [m] = kind.modes;
  if (!m) throw new Error('no mode');
  const list = m.breaks as readonly Break[];
  expect(m.slots).toBe(list[0]?.slots ?? 0);
  return list.map((b) => `${b.number}:${b.slots}:${b.occupied}`);
};

const ROOT = '<Geometry Name="Root"/>';

describe('DMX values (DIN SPEC 15800, table 1)', () => {
  test.each([
    ['255/1', 2, 65535],
    ['255/1s', 2, 65280],
    ['128/1', 2, 32896],
    ['32768/2', 1, 128],
    ['1/1', 4, 16843009],
  ])('%s in %i bytes is %i', (text, bytes, expected) => {
    const value = dmxValueOf(text);
    expect(value && dmxInBytes(value, bytes)).toBe(expected);
  });

  test.each(['256/1', '1/0', '1/5', '-1/1', 'x/1', '1/1q', '', '1.5/1'])('“%s” is no DMX value', (text) => {
    expect(dmxValueOf(text)).toBeUndefined();
  });
});

describe('channels on geometries met directly (DMXChannel)', () => {
  test('a coarse and fine pair takes two slots', () => {
    expect(breaks(ROOT, channel('Root', '1,2'))).toEqual(['1:2:2']);
  });

  test('bytes need be neither adjacent nor ascending', () => {
    expect(breaks(ROOT, channel('Root', '3,1,2'))).toEqual(['1:3:3']);
  });

  test('gaps count: the footprint is the highest slot', () => {
    expect(breaks(ROOT, channel('Root', '1'), channel('Root', '7,8'))).toEqual(['1:8:3']);
  });

  test.each(['None', '', undefined])(
    'a channel with the offset %j is virtual and takes no slot',
    (offset) => {
      expect(breaks(ROOT, channel('Root', offset))).toEqual([]);
    },
  );

  test('bytes are named coarse first', () => {
    const { kind } = imported(
      description({ geometries: ROOT, modes: mode('M', 'Root', channel('Root', '3,1')) }),
    );
    expect(kind.modes[0]?.slotNames).toEqual([['Dim fine', '', 'Dim']]);
  });

  test('an absent break is break 1', () => {
    const text = channel('Root', '4').replace(' DMXBreak="1"', '');
    expect(breaks(ROOT, text)).toEqual(['1:4:1']);
  });

  test('each break has a range of its own', () => {
    expect(
      breaks(
        ROOT,
        channel('Root', '1,2', 'Dimmer', '1'),
        channel('Root', '1', 'Dimmer', '3'),
        channel('Root', '5', 'Dimmer', '2'),
      ),
    ).toEqual(['1:2:2', '2:5:1', '3:1:1']);
  });

  test('two channels on one slot are a clash, and the slot counts once', () => {
    const { kind, notices } = imported(
      description({
        geometries: ROOT,
        modes: mode('M', 'Root', channel('Root', '1'), channel('Root', '1,2')),
      }),
    );
    expect(kind.modes[0]?.breaks).toEqual([{ number: 1, slots: 2, occupied: 2, clashes: [1] }]);
    expect(notices.join(' ')).toMatch(/two channels claim slot 1/);
  });

  test('a channel whose geometry is not in the mode is not counted, and told', () => {
    const geometries = `${ROOT}<Geometry Name="Other"/>`;
    const { kind, notices } = imported(
      description({ geometries, modes: mode('M', 'Root', channel('Root', '1'), channel('Other', '9')) }),
    );
    expect(kind.modes[0]?.slots).toBe(1);
    expect(notices.join(' ')).toContain('“Other”');
  });
});

describe('channels on geometries that references stand for (GeometryReference, Break)', () => {
  const cell = '<Beam Name="Cell"/>';
  const rgb = ['1', '2', '3'].map((o) => channel('Cell', o));

  test('two references at 1 and 4 of three slots each take six', () => {
    const refs = reference('A', 'Cell', ['1', '1']) + reference('B', 'Cell', ['1', '4']);
    expect(breaks(`<Geometry Name="Root">${refs}</Geometry>${cell}`, ...rgb)).toEqual(['1:6:6']);
  });

  test('a reference without breaks begins at 1', () => {
    expect(breaks(`<Geometry Name="Root">${reference('A', 'Cell')}</Geometry>${cell}`, ...rgb)).toEqual([
      '1:3:3',
    ]);
  });

  test('an offset may be written as universe and address', () => {
    const refs = reference('A', 'Cell', ['1', '1.101']);
    expect(breaks(`<Geometry Name="Root">${refs}</Geometry>${cell}`, ...rgb)).toEqual(['1:103:3']);
  });

  test('each break of a channel takes the break of its number', () => {
    const refs =
      reference('A', 'Cell', ['1', '11'], ['2', '5']) + reference('B', 'Cell', ['1', '12'], ['2', '8']);
    expect(
      breaks(
        `<Geometry Name="Root">${refs}</Geometry>${cell}`,
        channel('Cell', '1', 'Dimmer', '1'),
        channel('Cell', '1', 'ColorAdd_R', '2'),
        channel('Cell', '2', 'ColorAdd_G', '2'),
      ),
    ).toEqual(['1:12:2', '2:9:4']);
  });

  test('Overwrite takes number and offset of the last break, others the first of their number', () => {
    // The same number twice: ordinary channels take the first, Overwrite the last.
    const refs = reference('A', 'Cell', ['1', '1'], ['1', '101']);
    expect(
      breaks(
        `<Geometry Name="Root">${refs}</Geometry>${cell}`,
        channel('Cell', '1', 'Dimmer', '1'),
        channel('Cell', '1', 'ColorAdd_R', 'Overwrite'),
      ),
    ).toEqual(['1:101:2']);
    const other = reference('A', 'Cell', ['1', '3'], ['2', '7']);
    expect(
      breaks(
        `<Geometry Name="Root">${other}</Geometry>${cell}`,
        channel('Cell', '1', 'Dimmer', '1'),
        channel('Cell', '2', 'ColorAdd_R', 'Overwrite'),
      ),
    ).toEqual(['1:3:1', '2:8:1']);
  });

  test('channels below the target are there once for each reference', () => {
    const head = '<Geometry Name="Head"><Axis Name="Tilt"><Beam Name="Lamp"/></Axis></Geometry>';
    const refs = reference('A', 'Head', ['1', '1']) + reference('B', 'Head', ['1', '21']);
    expect(
      breaks(
        `<Geometry Name="Root">${refs}</Geometry>${head}`,
        channel('Tilt', '1,2', 'Tilt'),
        channel('Lamp', '3', 'Dimmer'),
      ),
    ).toEqual(['1:23:6']);
  });

  test('a multi-part unit: master of two bytes and four cells', () => {
    const { kind } = imported(CELL_BAR);
    const [m] = kind.modes;
    expect(m).toMatchObject({
      slots: 14,
      parts: 4,
      breaks: [{ number: 1, slots: 14, occupied: 14 }],
    });
    const [names] = (m?.slotNames ?? []) as readonly string[][];
    expect(names?.slice(0, 5)).toEqual(['Dim', 'Dim fine', 'Cell 1: R', 'Cell 1: G', 'Cell 1: B']);
    expect(names?.slice(11)).toEqual(['Cell 4: R', 'Cell 4: G', 'Cell 4: B']);
  });

  test('without the master and two of the colours only every third slot is taken', () => {
    const only = CELL_BAR.replace(/<DMXChannel(?:(?!<\/DMXChannel>).)*ColorAdd_[GB].*?<\/DMXChannel>/gs, '');
    const [m] = imported(only).kind.modes;
    expect(m?.breaks).toEqual([{ number: 1, slots: 12, occupied: 6 }]);
  });
});

describe('power by the order of sources', () => {
  test('consumers of the wiring: watts add up, VA = W / cos φ', () => {
    // 135 W at 0.95 and 60 W at 0.5: 195 W, 142.105 + 120 = 262.105 VA, power factor 0.7440.
    const more =
      '<WiringObject Name="Fan" ComponentType="Consumer" SignalType="Power" ElectricalPayLoad="60" CosPhi="0.5"/></Geometry>';
    const { kind } = imported(CELL_BAR.replace(/<\/Geometry>/, more));
    expect(kind.load?.wattsW).toBe(195);
    expect(kind.load?.powerFactor).toBeCloseTo(0.744, 4);
    expect(kind.load).toMatchObject({ voltsMinV: 100, voltsMaxV: 240 });
  });

  const beam = (more: string): string =>
    description({
      geometries: `<Geometry Name="Root"><Beam Name="A" ${more}/><Beam Name="B" ${more}/></Geometry>`,
      physical: '<Properties/>',
      modes: mode('M', 'Root', channel('Root', '1')),
    });

  test('then the power consumption among the properties', () => {
    const listed =
      '<Properties><PowerConsumption Value="320" PowerFactor="0.9" Connector="16A-CEE" VoltageLow="200" VoltageHigh="240"/></Properties>';
    const { kind } = imported(beam('PowerConsumption="100"').replace('<Properties/>', listed));
    expect(kind.load).toMatchObject({ wattsW: 320, powerFactor: 0.9, voltsMinV: 200, voltsMaxV: 240 });
    expect(kind.inlets).toEqual([
      { id: 'in', connector: 'iec-16-1', legs: 1, neutral: true, connectorGiven: '16A-CEE' },
    ]);
  });

  test('then the light sources, marked as without losses', () => {
    const { kind, notices } = imported(beam('PowerConsumption="75"'));
    expect(kind.load?.wattsW).toBe(150);
    expect(kind.basis['load.wattsW']).toMatch(/light sources alone/);
    expect(notices.join(' ')).toMatch(/rating plate/);
  });

  test('an absent figure is unknown, never the default of 1000 W', () => {
    for (const more of ['', 'PowerConsumption="1000" LuminousFlux="10000"', 'PowerConsumption="0"']) {
      const { kind } = imported(beam(more));
      expect(kind.load).toMatchObject({ wattsW: 0, unknown: true });
      expect(kind.basis['load.wattsW']).toMatch(/not known/);
    }
  });
});

describe('mass and size', () => {
  test('mass in kilograms, size of the models in metres', () => {
    const { kind } = imported(CELL_BAR);
    expect(kind.massKg).toBe(3.2);
    expect(kind.sizeMm).toEqual({ widthMm: 1000, lengthMm: 80, heightMm: 100 });
    expect(kind).toMatchObject({ beamDeg: 60, fieldDeg: 90, source: 'led' });
  });

  test('models stand where their matrix puts them, shift in the fourth column', () => {
    // Two boxes of 0.2 × 0.1 m, one turned by 90° about the vertical and moved 1 m to the right:
    // from −0.1 to 1 + 0.05 across, from −0.1 to 0.1 along.
    const models = '<Model Name="Box" Length="0.2" Width="0.1" Height="0.3"/>';
    const geometries =
      '<Geometry Name="Root" Model="Box"><Geometry Name="Arm" Model="Box" Position="{0,-1,0,1}{1,0,0,0}{0,0,1,0}{0,0,0,1}"/></Geometry>';
    const { kind } = imported(
      description({ models, geometries, modes: mode('M', 'Root', channel('Root', '1')) }),
    );
    expect(kind.sizeMm).toEqual({ widthMm: 1150, lengthMm: 200, heightMm: 300 });
  });

  test('0 stands for not known, and is then assumed and marked', () => {
    const { kind } = imported(
      CELL_BAR.replace('Value="3.2"', 'Value="0"').replace(
        'Length="1.0" Width="0.08"',
        'Length="0" Width="0"',
      ),
    );
    expect(kind.basis.massKg).toMatch(/^assumed/);
    expect(kind.basis.sizeMm).toMatch(/^assumed/);
    expect(kind.massKg).toBe(5.4);
  });
});
