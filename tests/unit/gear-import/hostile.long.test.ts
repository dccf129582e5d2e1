import { deflateSync, strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { importGdtf } from '../../../src/gear/import/index.ts';
import type { Problem } from '../../../src/kernel/result.ts';
import { CELL_BAR, channel, description, fixtureFile, mode, reference } from '../../support/fixture-files.ts';

const refusal = (bytes: Uint8Array): Problem => {
  const read = importGdtf(bytes, 'strange.gdtf');
  if (read.ok) throw new Error(`not refused: ${read.value.kind.name}`);
  expect(read.error.where).toContain('strange.gdtf');
  expect(read.error.todo).toBeTruthy();
  return read.error;
};

const accepted = (bytes: Uint8Array) => {
  const read = importGdtf(bytes, 'strange.gdtf');
  if (!read.ok) throw new Error(read.error.what);
  return read.value;
};

const patched = (bytes: Uint8Array, change: (view: DataView, directoryAt: number) => void): Uint8Array => {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  change(view, view.getUint32(copy.length - 6, true));
  return copy;
};

const bar = fixtureFile(CELL_BAR);

describe('containers', () => {
  test.each([
    ['an empty file', new Uint8Array(0), /empty/],
    ['text', strToU8('Name,Watts\nA,1\n'), /no zip container/],
    ['a file that is cut off', bar.subarray(0, bar.length - 30), /no zip container/],
    ['a zip without a description', zipSync({ 'scene.xml': strToU8('<a/>') }), /no description\.xml/],
    [
      'a path that leads outside',
      zipSync({ 'description.xml': strToU8(CELL_BAR), '../../etc/x': new Uint8Array(1) }),
      /leads outside/,
    ],
    [
      'the same with backslashes',
      zipSync({ 'description.xml': strToU8(CELL_BAR), '..\\x': new Uint8Array(1) }),
      /leads outside/,
    ],
    ['an absolute path', zipSync({ '/description.xml': strToU8(CELL_BAR) }), /absolute path/],
    ['a path on a drive', zipSync({ 'C:/description.xml': strToU8(CELL_BAR) }), /absolute path/],
    [
      'a name with a zero byte',
      zipSync({ 'description.xml': strToU8(CELL_BAR), 'a\0b': new Uint8Array(1) }),
      /zero byte/,
    ],
    ['100 MB', new Uint8Array(100_000_000), /too large/],
  ])('%s is refused', (_name, bytes, words) => {
    expect(refusal(bytes).what).toMatch(words);
  });

  test('too many parts are refused', () => {
    const parts = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`p${i}`, new Uint8Array(0)]));
    expect(refusal(fixtureFile(CELL_BAR, parts)).what).toMatch(/5001 parts/);
  });

  test('a part that says it is huge is refused before it is unpacked', () => {
    const large = patched(bar, (v, at) => v.setUint32(at + 24, 40_000_000, true));
    expect(refusal(large).what).toMatch(/too large unpacked/);
    const larger = patched(bar, (v, at) => v.setUint32(at + 24, 3_000_000_000, true));
    expect(refusal(larger).what).toMatch(/Unpacked, the file would be more than/);
  });

  test('a part that unpacks to more than it says is stopped at the limit', () => {
    // 60 MB of zeros in 60 kB, said to be 1 kB.
    const bomb = patched(zipSync({ 'description.xml': new Uint8Array(60_000_000) }), (v, at) =>
      v.setUint32(at + 24, 1000, true),
    );
    expect(bomb.length).toBeLessThan(100_000);
    expect(refusal(bomb).what).toMatch(/200 times/);
  });

  test('a damaged part is refused', () => {
    const at = bar.length >> 1;
    const broken = bar.slice();
    broken[at] = (broken[at] ?? 0) ^ 0xff;
    expect(refusal(broken).what).toMatch(/damaged/);
  });

  test.each([
    ['encrypted', (v: DataView, at: number) => v.setUint16(at + 8, 1, true), /encrypted/],
    [
      'packed by another method',
      (v: DataView, at: number) => v.setUint16(at + 10, 14, true),
      /method \(LZMA\)/,
    ],
    [
      'outside the file',
      (v: DataView, at: number) => v.setUint32(at + 42, 0xfffffff0, true),
      /outside the file/,
    ],
    [
      'of another size',
      (v: DataView, at: number) => v.setUint32(at + 24, 77, true),
      /size its directory says/,
    ],
    ['of another checksum', (v: DataView, at: number) => v.setUint32(at + 16, 77, true), /checksum/],
    [
      'not where the directory says',
      (v: DataView, at: number) => v.setUint32(at, 77, true),
      /not where it should be/,
    ],
  ])('a part that is %s is refused', (_name, change, words) => {
    expect(refusal(patched(bar, change)).what).toMatch(words);
  });

  test('stored parts, other cases, folders, text before the zip and a missing checksum are read', () => {
    const name = accepted(bar).kind.name;
    const stored = zipSync({ 'Description.XML': [strToU8(CELL_BAR), { level: 0 }] });
    expect(accepted(stored).kind.name).toBe(name);
    const inFolder = accepted(zipSync({ 'unit/description.xml': strToU8(CELL_BAR) }));
    expect(inFolder.kind.name).toBe(name);
    expect(inFolder.notices.join(' ')).toMatch(/inside a folder/);
    const before = new Uint8Array([...strToU8('some words first'), ...bar]);
    expect(accepted(before).kind.name).toBe(name);
    expect(accepted(patched(bar, (v, at) => v.setUint32(at + 16, 0, true))).kind.name).toBe(name);
    expect(accepted(strToU8(CELL_BAR)).kind.modes).toEqual(accepted(bar).kind.modes);
  });

  test('of two descriptions the last is read, and told', () => {
    const other = zipSync({
      'description.xml': strToU8(CELL_BAR),
      'descriptiox.xml': strToU8(CELL_BAR.replace('135', '140')),
    });
    for (let i = 0; i + 15 < other.length; i++)
      if (String.fromCharCode(...other.subarray(i, i + 15)) === 'descriptiox.xml') other[i + 10] = 0x6e;
    const read = accepted(other);
    expect(read.kind.load?.wattsW).toBe(140);
    expect(read.notices.join(' ')).toMatch(/2 descriptions/);
  });
});

describe('descriptions', () => {
  const xml = (text: string): Uint8Array => fixtureFile(text);

  test.each([
    [
      'a document type',
      `<!DOCTYPE GDTF [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>${CELL_BAR.replace(/^<\?xml.*\?>/, '')}`,
      /document type/,
    ],
    [
      'an outside entity',
      '<?xml version="1.0"?><!DOCTYPE x SYSTEM "file:///etc/passwd"><x/>',
      /document type/,
    ],
    ['an entity of its own', CELL_BAR.replace('Four cell', '&lol; cell'), /not well-formed/],
    ['the entity “constructor”', CELL_BAR.replace('Four cell', '&constructor; cell'), /not well-formed/],
    ['no end', CELL_BAR.slice(0, 900), /not well-formed/],
    ['crossed elements', CELL_BAR.replace('</Models>', '</Geometries>'), /not well-formed/],
    ['nothing', ' ', /not well-formed|empty/],
    ['another root', '<html/>', /no fixture type/],
    ['100 000 levels', `${'<a>'.repeat(100_000)}${'</a>'.repeat(100_000)}`, /nested more than/],
    ['a million elements', `<a>${'<b/>'.repeat(1_000_000)}</a>`, /more than 500000 elements/],
    [
      'ten thousand attributes',
      `<a ${Array.from({ length: 10_000 }, (_, i) => `a${i}="1"`).join(' ')}/>`,
      /attributes/,
    ],
  ])('with %s are refused', (_name, text, words) => {
    expect(refusal(xml(text)).what).toMatch(words);
  });

  test('the place of a mistake is told by line and column', () => {
    expect(refusal(xml(CELL_BAR.replace('<Wheels/>', '<Wheels>'))).where).toMatch(/line \d+, column \d+/);
  });

  test('UTF-16, Latin-1 and a byte order mark are read', () => {
    const text = CELL_BAR.replace('LongName="Four cell LED bar"', 'LongName="Größe Ø 4"');
    const wide = Uint8Array.from([
      0xff,
      0xfe,
      ...[...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]),
    ]);
    const latin = Uint8Array.from([...text.replace('UTF-8', 'ISO-8859-1')].map((c) => c.charCodeAt(0)));
    const marked = Uint8Array.from([0xef, 0xbb, 0xbf, ...strToU8(text)]);
    const filled = Uint8Array.from([...strToU8(text), 0, 0, 0]);
    for (const bytes of [wide, latin, marked, filled])
      expect(accepted(zipSync({ 'description.xml': bytes })).kind.also).toContain('Größe Ø 4');
  });

  test('names from a file are shown as text of one line', () => {
    const { kind } = accepted(
      xml(CELL_BAR.replace('Four cell LED bar', 'a&#10;&lt;b onload=x&gt; \u202e rtl')),
    );
    expect(kind.also).toContain('a <b onload=x> rtl');
  });
});

describe('fixture types with something wrong', () => {
  const unit = (geometries: string, ...channels: readonly string[]) =>
    accepted(fixtureFile(description({ geometries, modes: mode('M', 'Root', ...channels) })));
  const ROOT = '<Geometry Name="Root"/>';

  test('an empty fixture type gives a kind with everything assumed', () => {
    const { kind, notices } = accepted(fixtureFile('<GDTF><FixtureType/></GDTF>'));
    expect(kind.modes).toEqual([]);
    expect(kind.load?.unknown).toBe(true);
    expect(notices.join(' ')).toMatch(/No mode could be read/);
  });

  test.each(['0', '-1', 'abc', '1;2', '1,,2', '99999999', '1.5'])(
    'the mode of a channel at offset “%s” is left out, with a reason',
    (offset) => {
      const read = accepted(
        fixtureFile(
          description({
            geometries: ROOT,
            modes: mode('Bad', 'Root', channel('Root', offset)) + mode('Good', 'Root', channel('Root', '1')),
          }),
        ),
      );
      expect(read.kind.modes.map((m) => m.name)).toEqual(['Good']);
      expect(read.problems[0]?.what).toMatch(/“Bad” was left out.*offset/);
    },
  );

  test('a break that is no number leaves the mode out', () => {
    expect(unit(ROOT, channel('Root', '1', 'Dimmer', 'two')).problems[0]?.what).toMatch(/break/);
  });

  test('values that are no DMX values are told', () => {
    const { notices, kind } = unit(ROOT, channel('Root', '1').replaceAll('0/1', '999/1'));
    expect(notices.join(' ')).toMatch(/DMXFrom “999\/1” is no DMX value/);
    expect(kind.modes[0]?.slots).toBe(1);
  });

  test('rings of references end', () => {
    const geometries = `<Geometry Name="Root">${reference('A', 'Loop')}</Geometry><Geometry Name="Loop">${reference('B', 'Loop')}${reference('C', 'Root')}</Geometry>`;
    const { kind, notices } = unit(geometries, channel('Loop', '1'));
    expect(kind.modes[0]?.breaks).toEqual([{ number: 1, slots: 1, occupied: 1 }]);
    expect(notices.join(' ')).toMatch(/leads back/);
  });

  test('references that multiply without end are cut, and the mode left out', () => {
    const level = (n: number): string =>
      `<Geometry Name="G${n}">${n < 40 ? reference(`a${n}`, `G${n + 1}`) + reference(`b${n}`, `G${n + 1}`) : ''}</Geometry>`;
    const geometries = `<Geometry Name="Root">${reference('r', 'G1')}</Geometry>${Array.from({ length: 40 }, (_, i) => level(i + 1)).join('')}`;
    expect(unit(geometries, channel('G40', '1')).problems[0]?.what).toMatch(/multiply/);
  });

  test('a mode of a geometry that is not there is left out, unless there is only one', () => {
    expect(unit(`${ROOT.replace('Root', 'Other')}`, channel('Other', '1')).kind.modes).toHaveLength(1);
    expect(unit('<Geometry Name="A"/><Geometry Name="B"/>', channel('A', '1')).problems[0]?.what).toMatch(
      /its geometry “Root” is not in the file/,
    );
  });

  test('Overwrite without a reference is taken as break 1', () => {
    const { kind, notices } = unit(ROOT, channel('Root', '3', 'Dimmer', 'Overwrite'));
    expect(kind.modes[0]?.breaks).toEqual([{ number: 1, slots: 3, occupied: 1 }]);
    expect(notices.join(' ')).toMatch(/break 1 was taken/);
  });

  test('figures that cannot be right are left out', () => {
    const { kind, notices } = accepted(
      fixtureFile(
        CELL_BAR.replace('ElectricalPayLoad="135"', 'ElectricalPayLoad="1e300"')
          .replace('Value="3.2"', 'Value="-4"')
          .replace('Length="1.0"', 'Length="1000"'),
      ),
    );
    expect(kind.load?.wattsW).toBe(120);
    expect(kind.basis.massKg).toMatch(/^assumed/);
    expect(kind.basis.sizeMm).toMatch(/^assumed/);
    expect(notices.join(' ')).toMatch(/1e300.*cannot be right/);
  });

  test('old files with one attribute for each byte are read', () => {
    const old = description({
      version: '0.88',
      geometries: ROOT,
      modes: mode(
        'M',
        'Root',
        channel('Root', undefined, 'Dimmer', '1', 'Coarse="3" Fine="4" Ultra="None" Default="0/1"'),
      ),
    });
    const { kind, notices } = accepted(fixtureFile(old));
    expect(kind.modes[0]).toMatchObject({ slots: 4 });
    expect(notices.join(' ')).toMatch(/early version/);
  });

  test('an unknown connector is kept in words and another assumed', () => {
    const { kind, notices } = accepted(
      fixtureFile(CELL_BAR.replace('PinCount="3"', 'ConnectorType="Twist 7" PinCount="3"')),
    );
    expect(kind.inlets[0]).toMatchObject({ connector: 'appliance-lock-20', connectorGiven: 'Twist 7' });
    expect(kind.basis.inlets).toBe('assumed: the file says “Twist 7”');
    expect(notices.join(' ')).toContain('Twist 7');
  });

  test('many notices are cut to a screenful', () => {
    const many = Array.from({ length: 3000 }, (_, i) => channel('Root', '1').replace('0/1', `bad${i}`));
    expect(unit(ROOT, ...many).notices.length).toBeLessThan(50);
  });
});

describe('the top view drawing', () => {
  const withSvg = (svg: string | Uint8Array) =>
    accepted(fixtureFile(CELL_BAR, { 'models/SVG/Bar.svg': typeof svg === 'string' ? strToU8(svg) : svg }))
      .kind.outlineSvg;

  test('is kept as bare shapes', () => {
    const svg =
      '<?xml version="1.0"?><!DOCTYPE svg PUBLIC "a" "b"><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 5" onload="x()"><style>*{}</style><g id="a" style="fill:url(http://x)"><path d="M0 0 L10 5z" fill="red"/></g></svg>';
    // The drawing is not in millimetres, so it is stretched to the model: 1000 mm across, 80 mm deep.
    expect(withSvg(svg)).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-500 -40 1000 80"><path d="M-500 -40L500 40Z"/></svg>',
    );
  });

  test.each([
    ['a script', '<svg><script>alert(1)</script></svg>'],
    ['a picture', '<svg><image href="http://x/y.png"/></svg>'],
    ['a page inside', '<svg><foreignObject><path d="M0 0"/></foreignObject></svg>'],
    ['another root', '<html><path d="M0 0"/></html>'],
    ['broken text', '<svg><path'],
    ['an entity of its own', '<!DOCTYPE svg [<!ENTITY e "M0 0">]><svg><path d="&e;"/></svg>'],
    ['too much', `<svg><path d="M0 0${' L1 1'.repeat(20_000)}"/></svg>`],
  ])('with only %s is left out', (_name, svg) => {
    expect(withSvg(svg)).toBeUndefined();
  });

  test('keeps no link or handler in what it keeps', () => {
    const kept = withSvg(
      '<svg><path d="M0 0&quot; onclick=&quot;x" transform="url(#a)"/><rect x="1" y="1" width="2" height="2" onclick="x"/></svg>',
    );
    expect(kept).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-500 -40 1000 80"><path d="M-500 -40L500 -40L500 40L-500 40Z"/></svg>',
    );
  });

  test('that is damaged is left out, and the rest is read', () => {
    expect(withSvg(deflateSync(new Uint8Array(9)))).toBeUndefined();
  });
});
