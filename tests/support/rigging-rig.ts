import type { GripKind, RiggingKind, StandKind } from '../../src/plan/kinds/kinds.ts';
import type { RecordOf } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

type Give<T> = Partial<T>;

const common = (slug: string, massKg: number) => ({
  id: slug,
  type: 'kind' as const,
  slug,
  name: slug,
  also: [],
  sizeMm: { lengthMm: 50, widthMm: 1000, heightMm: 1000 },
  massKg,
  symbol: slug,
  basis: {},
  origin: { book: 'user' as const, version: '1' },
});

/** A plan builder that also makes stands, frames and rigging. Everything stands at the origin, three legs, on one floor. */
export class RiggingRig extends PlanBuilder {
  #count = 0;

  #next(prefix: string): string {
    this.#count++;
    return `${prefix}-${String(this.#count).padStart(3, '0')}`;
  }

  standKind(slug: string, k: Give<StandKind> = {}): StandKind {
    return this.put({
      ...common(slug, k.massKg ?? 6),
      family: 'stand',
      receives: ['spigot-28', 'pin-16', 'grip-head'],
      ratedLoadKg: 20,
      heightMinMm: 1000,
      heightMaxMm: 4000,
      legCircleMm: 1000,
      ...k,
    });
  }

  gripKind(slug: string, k: Give<GripKind> = {}): GripKind {
    return this.put({
      ...common(slug, k.massKg ?? 2),
      family: 'grip',
      what: 'flag',
      fits: ['grip-head'],
      areaM2: 1,
      windShare: 1,
      stands: 1,
      guys: 0,
      ...k,
    });
  }

  riggingKind(slug: string, k: Give<RiggingKind> = {}): RiggingKind {
    return this.put({
      ...common(slug, k.massKg ?? 1),
      family: 'rigging',
      what: 'pipe',
      fits: [],
      receives: ['clamp', 'hung'],
      ...k,
    });
  }

  stand(kindId: string, s: Give<RecordOf<'stand'>> = {}): RecordOf<'stand'> {
    return this.put({
      id: this.#next('stand'),
      type: 'stand',
      floorId: 'floor',
      kindId,
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      heightMm: 2000,
      ...s,
    });
  }

  grip(kindId: string, g: Give<RecordOf<'grip'>> = {}): RecordOf<'grip'> {
    return this.put({
      id: this.#next('grip'),
      type: 'grip',
      floorId: 'floor',
      kindId,
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      heightMm: 2000,
      supports: [],
      guys: 0,
      ...g,
    });
  }

  hung(kindId: string, r: Give<RecordOf<'rigging'>> = {}): RecordOf<'rigging'> {
    return this.put({
      id: this.#next('rigging'),
      type: 'rigging',
      floorId: 'floor',
      kindId,
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      label: 'R1',
      heightMm: 3000,
      people: 0,
      operator: 'Rigging grip',
      ...r,
    });
  }

  /** A fixture of so many kilograms on a stand. */
  on(standId: string, massKg: number, f: Give<RecordOf<'fixture'>> = {}): RecordOf<'fixture'> {
    const kind = this.fixtureKind(`lamp-${massKg}`, {}, { massKg, mount: { fits: ['spigot-28'] } });
    return this.fixture(kind.id, { support: { on: 'stand', standId }, ...f });
  }
}
