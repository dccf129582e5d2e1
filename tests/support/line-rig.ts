import { controlFindings } from '../../src/engines/control/index.ts';
import { dataGearKinds } from '../../src/gear/data/data-gear.ts';
import { findKind } from '../../src/gear/index.ts';
import type { Kind } from '../../src/plan/kinds/kinds.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { DataLine, Device, Fixture } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

export { dataGearKinds };

/** A metric plan to lay data lines in: units of ten slots in universe 1 unless told otherwise, gear of the built-in book. */
export class LineRig {
  readonly b = new PlanBuilder({ practice: 'europe', lengthUnits: 'metric', frequencyHz: 50 });
  #units = 0;

  constructor() {
    this.b.fixtureKind('f', {}, { modes: [{ id: 'm', name: 'ten', slots: 10, parts: 1 }] });
    this.b.fixtureKind('plain', {}, { modes: [] });
    for (const n of [1, 2, 3])
      this.b.put({ id: `u${n}`, type: 'universe', number: n, name: '', colorIndex: n - 1 });
  }

  unit(xM = 0, more: Partial<Fixture> & { readonly u?: number } = {}): Fixture {
    const n = ++this.#units;
    const { u = 1, ...rest } = more;
    return this.b.fixture('f', {
      id: `f${n}`,
      unit: String(n),
      at: { xMm: xM * 1000, yMm: 0 },
      heightMm: 0,
      link: 'line',
      patch: { modeId: 'm', universeId: `u${u}`, address: ((n - 1) % 51) * 10 + 1, paired: false },
      ...rest,
    });
  }

  device(
    label: string,
    slug: string,
    ports: Readonly<Record<string, number>> = {},
    more: Partial<Device> = {},
  ): Device {
    const kind = findKind('europe', slug) as Kind;
    this.b.put(kind);
    return this.b.put({
      id: `d-${label}`,
      type: 'device',
      floorId: 'floor',
      kindId: kind.id,
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      heightMm: 0,
      label,
      ports: Object.entries(ports).map(([portId, u]) => ({ portId, universeId: `u${u}` })),
      band: 0,
      ...more,
    });
  }

  line(
    label: string,
    from: string,
    portId: string,
    stops: readonly { readonly id: string }[],
    more: Partial<DataLine> = {},
  ): DataLine {
    return this.b.put({
      id: `l-${label}`,
      type: 'line',
      label,
      from: { recordId: from, portId },
      stops: stops.map((s) => s.id),
      routes: [],
      terminated: true,
      ...more,
    });
  }

  plan(): Plan {
    return this.b.plan();
  }

  /** Findings as `rule severity` with the records they are about, those of the patch left out. */
  found(): string[] {
    return controlFindings(this.plan()).map((f) => `${f.severity} ${f.rule} ${f.recordIds.join(' ')}`);
  }
}
