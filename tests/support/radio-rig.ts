import type { ReceiverKind, RepeaterKind, TransmitterKind } from '../../src/plan/kinds/kinds.ts';
import type { RecordOf, WallMaterial } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

type Give<T> = Partial<T>;

const common = (slug: string) => ({
  id: slug,
  type: 'kind' as const,
  slug,
  name: slug,
  also: [],
  sizeMm: { lengthMm: 100, widthMm: 100 },
  massKg: 1,
  symbol: slug,
  basis: {},
  origin: { book: 'user' as const, version: '1' },
});

const radio = {
  inlets: [],
  outlets: [],
  dataIn: [],
  dataOut: [],
  bands: [{ fromMhz: 2390, toMhz: 2410, eirpDbm: 20 }],
  universes: 4,
  antenna: 'inside' as const,
  antennaGainDbi: 0,
  sensitivityDbm: -92,
  supplyW: 4,
  rdm: false,
};

/**
 * A plan with one universe, no people and no Wi-Fi, so that a margin is power, distance and what is in the way. Transmitters
 * work at 2400 MHz (the middle of their band) and have no direction.
 */
export class RadioRig extends PlanBuilder {
  #count = 0;
  readonly universeId = 'u1';

  constructor(settings: Give<RecordOf<'plan'>> = {}) {
    super({ radio: { crowd: 'none', wifiChannels: [] }, ...settings });
    this.put({ id: 'u1', type: 'universe', number: 1, name: '', color: 0 } as never);
    this.put({ ...common('tx'), ...radio, family: 'transmitter', conductedDbm: 20 });
    this.put({ ...common('rx'), ...radio, family: 'receiver', fits: 'line' });
    this.put({ ...common('rp'), ...radio, family: 'repeater', conductedDbm: 20, delayMs: 10 });
    this.fixtureKind('lamp', {}, { modes: [{ id: 'm', name: 'm', slots: 4, parts: 1 }] });
  }

  #next(prefix: string): string {
    this.#count++;
    return `${prefix}${this.#count}`;
  }

  transmitterKind(slug: string, k: Give<TransmitterKind> = {}): TransmitterKind {
    return this.put({ ...common(slug), ...radio, family: 'transmitter', conductedDbm: 20, ...k });
  }

  receiverKind(slug: string, k: Give<ReceiverKind> = {}): ReceiverKind {
    return this.put({ ...common(slug), ...radio, family: 'receiver', fits: 'fixture', ...k });
  }

  repeaterKind(slug: string, k: Give<RepeaterKind> = {}): RepeaterKind {
    return this.put({
      ...common(slug),
      ...radio,
      family: 'repeater',
      conductedDbm: 20,
      delayMs: 10,
      ...k,
    });
  }

  /** A device at so many metres, 2.5 m up; a transmitter that carries the universe unless said otherwise. */
  device(xM: number, yM: number, d: Give<RecordOf<'device'>> = {}): RecordOf<'device'> {
    const id = this.#next('d');
    const kindId = d.kindId ?? 'tx';
    return this.put({
      id,
      type: 'device',
      floorId: 'floor',
      kindId,
      at: { xMm: xM * 1000, yMm: yM * 1000 },
      rotationDeg: 0,
      heightMm: 2500,
      label: id.toUpperCase(),
      ports: kindId === 'tx' ? [{ portId: 'in', universeId: 'u1' }] : [],
      band: 0,
      ...d,
    });
  }

  /** A unit linked by radio at so many metres, 2.5 m up, patched in the universe. */
  unit(xM: number, yM: number, f: Give<RecordOf<'fixture'>> = {}): RecordOf<'fixture'> {
    return this.fixture('lamp', {
      at: { xMm: xM * 1000, yMm: yM * 1000 },
      heightMm: 2500,
      link: 'radio',
      patch: { modeId: 'm', universeId: 'u1', address: 1, paired: true },
      ...f,
    });
  }

  wall(
    from: readonly [number, number],
    to: readonly [number, number],
    material: WallMaterial = 'plasterboard',
    w: Give<RecordOf<'wall'>> = {},
  ): RecordOf<'wall'> {
    return this.put({
      id: this.#next('w'),
      type: 'wall',
      floorId: 'floor',
      from: { xMm: from[0] * 1000, yMm: from[1] * 1000 },
      to: { xMm: to[0] * 1000, yMm: to[1] * 1000 },
      thicknessMm: 100,
      heightMm: 3000,
      material,
      ...w,
    });
  }

  opening(wallId: string, o: Give<RecordOf<'opening'>> = {}): RecordOf<'opening'> {
    return this.put({
      id: this.#next('o'),
      type: 'opening',
      wallId,
      what: 'archway',
      offsetMm: 0,
      widthMm: 1000,
      heightMm: 2800,
      sillMm: 0,
      ...o,
    });
  }

  piece(xM: number, yM: number, s: Give<RecordOf<'setPiece'>> = {}): RecordOf<'setPiece'> {
    return this.put({
      id: this.#next('s'),
      type: 'setPiece',
      floorId: 'floor',
      at: { xMm: xM * 1000, yMm: yM * 1000 },
      rotationDeg: 0,
      outline: { shape: 'rect', lengthMm: 1000, widthMm: 1000 },
      heightMm: 3000,
      label: '',
      material: 'metal',
      line: 'solid',
      ...s,
    });
  }
}
