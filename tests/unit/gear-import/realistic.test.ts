import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../../src/drawing/outline.ts';
import { importGdtf } from '../../../src/gear/import/index.ts';
import { footprintOf } from '../../../src/plan/footprint.ts';
import { CARELESS, MOVING_RING, PLAIN_WASH, utf16, zipOf } from '../../support/realistic-files.ts';

const read = (bytes: Uint8Array, name = 'unit.gdtf') => {
  const r = importGdtf(bytes, name);
  if (!r.ok) throw new Error(`${r.error.what} ${r.error.where ?? ''}`);
  return r.value;
};
const refused = (bytes: Uint8Array) => {
  const r = importGdtf(bytes, 'unit.gdtf');
  if (r.ok) throw new Error(`not refused: ${r.value.kind.name}`);
  expect(r.error.todo).toBeTruthy();
  return [r.error.what, r.error.where].join(' ');
};
const zipped = (text: string, parts: Record<string, Uint8Array> = {}) =>
  zipSync({ 'description.xml': strToU8(text), ...parts });

describe('files as builders write them', () => {
  test('1.1: a moving head with wheels, emitters and a pixel ring on a second break', () => {
    const { kind, problems } = read(zipped(MOVING_RING));
    expect(problems).toEqual([]);
    expect(kind.massKg).toBe(21.4);
    expect(kind.load).toMatchObject({ wattsW: 620, powerFactor: 0.97, voltsMinV: 100, voltsMaxV: 240 });
    expect(kind.sizeMm).toMatchObject({ widthMm: 420, lengthMm: 320 });
    const [mode] = kind.modes;
    if (!mode) throw new Error('no mode');
    expect(mode.breaks?.map((b) => [b.number, b.slots])).toEqual([
      [1, 6],
      [2, 36],
    ]);
    expect(mode.parts).toBe(12);
    // All of it is patched; the ring may lie elsewhere than the head.
    expect(footprintOf(mode)).toMatchObject({ slots: 42, parts: 12 });
    expect(footprintOf(mode).cuts).toContain(6);
    expect(mode.slotNames?.[1]?.slice(0, 4)).toEqual([
      'Pixel 1: R',
      'Pixel 1: G',
      'Pixel 1: B',
      'Pixel 2: R',
    ]);
  });

  test('1.0: power from its properties, gaps counted, a virtual dimmer without slots', () => {
    const { kind } = read(zipped(PLAIN_WASH));
    expect(kind.load?.wattsW).toBe(180);
    expect(kind.inlets[0]?.connector).toMatch(/iec|c13|c14/i);
    expect(kind.modes[0]).toMatchObject({ slots: 8, virtual: 1 });
    expect(kind.modes[0]?.breaks?.[0]).toMatchObject({ slots: 8, occupied: 6 });
    expect(kind.basis['load.powerFactor']).toMatch(/^assumed/);
  });

  test('a careless one: other case, a byte-order mark, attributes missing or empty', () => {
    const { kind, notices } = read(zipped(CARELESS));
    expect(kind.load?.wattsW).toBe(180);
    expect(kind.massKg).toBe(6.5);
    expect(kind.sizeMm).toMatchObject({ widthMm: 300, lengthMm: 250 });
    expect(kind.modes[0]).toMatchObject({ name: 'Mode 1', slots: 3 });
    expect(notices.join(' ')).toMatch(/does not say which version/);
  });

  test('the top views of its models stand where they are, as plain paths in millimetres', () => {
    const square = (w: number, h: number): Uint8Array =>
      strToU8(
        `<svg viewBox="0 0 ${w} ${h}"><g transform="translate(${w / 2} ${h / 2})"><rect x="${-w / 2}" y="${-h / 2}" width="${w}" height="${h}"/></g></svg>`,
      );
    const { kind } = read(
      zipped(MOVING_RING, {
        'models/svg/base.svg': square(380, 320),
        'models/svg/yoke.svg': square(420, 180),
      }),
    );
    const o = outlineOf(kind);
    expect([o?.widthMm, o?.lengthMm, o?.paths.length]).toEqual([420, 320, 2]);
  });
});

describe('texts in other letters', () => {
  test.each([
    ['UTF-16, little end first, with a mark', utf16(PLAIN_WASH, true)],
    ['UTF-16, big end first, with a mark', utf16(PLAIN_WASH, true, true)],
    ['UTF-16 without a mark', utf16(PLAIN_WASH, false)],
    ['UTF-16, big end first, without a mark', utf16(PLAIN_WASH, false, true)],
    ['UTF-8 with a mark', strToU8(`\uFEFF${PLAIN_WASH}`)],
    ['filled up with zero bytes', strToU8(`${PLAIN_WASH}\0\0\0\0`)],
  ])('%s', (_name, bytes) => {
    expect(read(zipSync({ 'description.xml': bytes })).kind.modes[0]?.slots).toBe(8);
    expect(read(bytes).kind.modes[0]?.slots).toBe(8);
  });
});

describe('containers as programs write them', () => {
  const xml = strToU8(PLAIN_WASH);
  const folder = { name: 'models/', bytes: new Uint8Array(0), method: 0 };
  test.each([
    ['stored', zipOf([{ name: 'description.xml', bytes: xml, method: 0 }])],
    [
      'with folders before it',
      zipOf([
        folder,
        { name: 'models/3ds/', bytes: new Uint8Array(0), method: 0 },
        { name: 'description.xml', bytes: xml },
      ]),
    ],
    ['with sizes after the data', zipOf([{ name: 'description.xml', bytes: xml, descriptor: true }])],
    ['with a 64-bit end record', zipOf([folder, { name: 'description.xml', bytes: xml }], true)],
    ['in a folder of its own', zipOf([{ name: 'Plain Wash/description.xml', bytes: xml }])],
    ['in capitals', zipOf([{ name: 'DESCRIPTION.XML', bytes: xml }])],
    [
      'with a resource fork beside it',
      zipOf([
        { name: 'description.xml', bytes: xml },
        { name: '__MACOSX/._description.xml', bytes: strToU8('x') },
      ]),
    ],
    [
      'around the fixture file',
      zipOf([{ name: 'Wash.gdtf', bytes: zipOf([{ name: 'description.xml', bytes: xml }]) }]),
    ],
  ])('%s', (_name, bytes) => {
    expect(read(bytes).kind.load?.wattsW).toBe(180);
  });

  test.each([
    ['packed as Deflate64', zipOf([{ name: 'description.xml', bytes: xml, method: 9 }]), /Deflate64/],
    ['packed as LZMA', zipOf([{ name: 'description.xml', bytes: xml, method: 14 }]), /LZMA/],
    ['encrypted', zipOf([{ name: 'description.xml', bytes: xml, flags: 1 }]), /encrypted/],
    ['without a description', zipOf([{ name: 'wheels/dots.png', bytes: xml }]), /no description\.xml/],
    [
      'a whole scene',
      zipOf([
        { name: 'GeneralSceneDescription.xml', bytes: xml },
        { name: 'A.gdtf', bytes: xml },
      ]),
      /whole scene/,
    ],
    [
      'several fixture files',
      zipOf([
        { name: 'A.gdtf', bytes: xml },
        { name: 'B.gdtf', bytes: xml },
      ]),
      /2 fixture files.*“A\.gdtf”, “B\.gdtf”/,
    ],
    [
      'a zip in a zip in a zip',
      zipOf([
        {
          name: 'A.gdtf',
          bytes: zipOf([{ name: 'B.gdtf', bytes: zipOf([{ name: 'description.xml', bytes: xml }]) }]),
        },
      ]),
      /no description\.xml/,
    ],
    [
      'a 64-bit end record that is gone',
      zipOf([{ name: 'description.xml', bytes: xml }], true).map((b, i, all) =>
        i === all.length - 98 ? 0 : b,
      ),
      /damaged/,
    ],
  ])('%s is refused in words', (_name, bytes, words) => {
    expect(refused(bytes)).toMatch(words);
  });
});

describe('large descriptions', () => {
  test('a hundred modes of two hundred channels with sets are read', () => {
    const channels = Array.from(
      { length: 200 },
      (_, i) =>
        `<DMXChannel Offset="${i + 1}" Geometry="Body"><LogicalChannel Attribute="Dimmer"><ChannelFunction DMXFrom="0/1" Default="0/1"><ChannelSet Name="a" DMXFrom="0/1"/><ChannelSet Name="b" DMXFrom="128/1"/></ChannelFunction></LogicalChannel></DMXChannel>`,
    ).join('');
    const modes = Array.from(
      { length: 100 },
      (_, i) => `<DMXMode Name="M${i}" Geometry="Body"><DMXChannels>${channels}</DMXChannels></DMXMode>`,
    ).join('');
    const { kind, problems } = read(
      zipped(PLAIN_WASH.replace(/<DMXModes>[\s\S]*<\/DMXModes>/, `<DMXModes>${modes}</DMXModes>`)),
    );
    expect(kind.modes).toHaveLength(100);
    expect(kind.modes.every((m) => m.slots === 200)).toBe(true);
    expect(problems).toEqual([]);
  });
});
