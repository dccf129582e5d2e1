import { describe, expect, it } from 'vitest';
import {
  assignAddresses,
  bandwidthKbps,
  DEFAULT_ASSIGN,
  dipSwitches,
  multicastGroup,
  packetBytes,
  packetUs,
  RECEIVE,
  refreshHz,
  TRANSMIT,
  universesOnLink,
  wireBytes,
} from '../../src/engines/control/index.ts';
import { absoluteOf, fromAbsolute, parseAddress, printAddress } from '../../src/plan/address.ts';
import { footprintOf, spansOf } from '../../src/plan/footprint.ts';
import { patchRig, placesBy } from '../support/patch-rig.ts';

const on = (r: ReturnType<typeof dipSwitches>): readonly number[] | string => (r.ok ? r.value : r.error.what);

describe('data lines against published figures', () => {
  // ANSI E1.11 as a unit's manual prints it: 22 668 µs and 44 Hz for 512 slots, 1196 µs and 836 Hz for 24; transmitters
  // 1204 µs (about 830 packets a second, an open library's read-me); the rest recomputed from 92/12/44 µs.
  it.each([
    [512, TRANSMIT, 22_676, 44.099],
    [24, TRANSMIT, 1204, 830.56],
    [24, RECEIVE, 1196, 836.12],
    [512, RECEIVE, 22_668, 44.115],
    [64, TRANSMIT, 2964, 337.4],
    [128, TRANSMIT, 5780, 173.0],
    [256, TRANSMIT, 11_412, 87.6],
    // 170 parts of red, green and blue.
    [510, TRANSMIT, 22_588, 44.27],
    // Fewer than 24 slots are stretched to the least time.
    [1, TRANSMIT, 1204, 830.56],
  ])('control-timing: %d slots', (slots, timing, us, hz) => {
    expect(packetUs(slots, timing)).toBe(us);
    expect(Math.abs(refreshHz(slots, timing) - hz)).toBeLessThan(0.06);
  });

  it('control-timing: a typical break of 176 µs', () => {
    // Typical break of an open library for ANSI E1.11.
    const typical = { ...TRANSMIT, breakUs: 176 };
    expect(packetUs(512, typical)).toBe(22_760);
    expect(refreshHz(512, typical)).toBeCloseTo(43.937, 2);
  });

  it.each([
    // ANSI E1.31: 239.255.high.low, as automation documentation prints it.
    [1, '239.255.0.1'],
    [255, '239.255.0.255'],
    [256, '239.255.1.0'],
    [1000, '239.255.3.232'],
    [63_999, '239.255.249.255'],
  ])('control-network: multicast group of universe %d', (universe, group) => {
    expect(multicastGroup(universe)).toEqual({ ok: true, value: group });
  });

  it.each([0, 64_000, 1.5, -1])('control-network: there is no universe %d', (universe) => {
    expect(multicastGroup(universe).ok).toBe(false);
  });

  it('control-network: packet size and bandwidth', () => {
    // Root 38, framing 77, DMP 523: the header comments of an open E1.31 library. Wire sizes and rates recomputed.
    expect(packetBytes(512)).toBe(38 + 77 + 523);
    expect(wireBytes(512)).toBe(704);
    expect(bandwidthKbps(1)).toBeCloseTo(247.8, 1);
    expect(bandwidthKbps(10) / 1000).toBeCloseTo(2.48, 2);
    expect(universesOnLink(100)).toBe(403);
  });

  it.each([
    // Wiki of a stage lighting forum and units' manuals.
    [247, [1, 2, 3, 5, 6, 7, 8]],
    [233, [1, 4, 6, 7, 8]],
    [10, [2, 4]],
    [24, [4, 5]],
    [511, [1, 2, 3, 4, 5, 6, 7, 8, 9]],
  ])('control-dip: address %d', (address, switches) => {
    expect(on(dipSwitches(address, 'sum'))).toEqual(switches);
  });

  it('control-dip: the two ends of the other convention', () => {
    expect(on(dipSwitches(1, 'sum-less-one'))).toEqual([]);
    expect(on(dipSwitches(512, 'sum-less-one'))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(dipSwitches(512, 'sum').ok).toBe(false);
  });

  it.each([
    // Table 51 of the open exchange format MVR (DIN SPEC 15801), which writes universe.address.
    [1, 'U1 1'],
    [45, 'U1 45'],
    [512, 'U1 512'],
    [513, 'U2 1'],
    [1025, 'U3 1'],
    [1300, 'U3 276'],
  ])('control-absolute: %d is %s', (absolute, printed) => {
    expect(printAddress(fromAbsolute(absolute))).toBe(printed);
    expect(absoluteOf(fromAbsolute(absolute))).toBe(absolute);
    const [u = '', a = ''] = printed.slice(1).split(' ');
    expect(parseAddress(`${u}.${a}`)).toEqual({ ok: true, value: fromAbsolute(absolute) });
  });
});

describe('packing against worked examples', () => {
  it('assign-order: 200, 200, 200 and 112 slots', () => {
    // Worked by hand: 1–200, 201–400, then the next universe.
    const { plan } = patchRig([200, 200, 200, 112]);
    expect(placesBy(plan, DEFAULT_ASSIGN)).toEqual(['U1 1', 'U1 201', 'U2 1', 'U2 201']);
  });

  it('assign-order: of fourteen units of 39 slots thirteen fit a universe', () => {
    const places = placesBy(patchRig(new Array(14).fill(39)).plan, DEFAULT_ASSIGN);
    expect(places[12]).toBe('U1 469');
    expect(places[13]).toBe('U2 1');
  });

  it.each([
    [1, 512],
    [4, 128],
    [5, 102],
    [12, 42],
    [16, 32],
    [24, 21],
    [39, 13],
    [60, 8],
    [123, 4],
    [170, 3],
  ])('assign-order: units of %d slots, %d to a universe', (slots, count) => {
    const places = placesBy(patchRig(new Array(count + 1).fill(slots)).plan, DEFAULT_ASSIGN);
    expect(places.filter((p) => p.startsWith('U1 '))).toHaveLength(count);
    expect(places.at(-1)).toBe('U2 1');
  });

  it('assign-order: four equal units from slot 418 fit up to 23 slots each, and not at 24', () => {
    // Common practice, no published source; the arithmetic is 418 + 4 n − 1 ≤ 512.
    const from = { ...DEFAULT_ASSIGN, start: { universe: 1, address: 418 } };
    expect(placesBy(patchRig([23, 23, 23, 23]).plan, from).at(-1)).toBe('U1 487');
    expect(placesBy(patchRig([24, 24, 24, 24]).plan, from).at(-1)).toBe('U2 1');
  });

  it.each([
    // Cells of red, green and blue per universe, floor(512 / 3) = 170; of four colours 128; fine ones 85.
    [170, 3, 1],
    [171, 3, 2],
    [300, 3, 2],
    [1000, 3, 6],
    [500, 4, 4],
    [85, 6, 1],
    [86, 6, 2],
  ])('control-footprint: %d parts of %d slots take %d universes', (parts, partSlots, universes) => {
    const spans = spansOf(footprintOf({ id: 'm', name: '', slots: parts * partSlots, parts }));
    expect(spans).toHaveLength(universes);
    for (const s of spans ?? []) expect((s.fromSlot - 1) % partSlots).toBe(0);
  });

  it('control-address: 48 slots from 501 would end at 548', () => {
    const rig = patchRig([48]);
    const r = assignAddresses(rig.plan, { ...DEFAULT_ASSIGN, start: { universe: 1, address: 501 } });
    expect(r.ok && r.value.rows[0]?.after).toEqual([{ universe: 2, address: 1, fromSlot: 1 }]);
  });
});
