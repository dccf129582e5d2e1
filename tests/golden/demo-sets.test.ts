import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demoPlans } from '../../demo-sets/index.ts';
import { demoMakers } from '../../demo-sets/make/all.ts';
import { isBuiltIn } from '../../src/gear/index.ts';
import { distanceMm } from '../../src/kernel/geometry.ts';
import { referenceProblems } from '../../src/plan/checks.ts';
import { mates } from '../../src/plan/connectors.ts';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { fixturePlace, kindOf, levelId, type Plan, recordsOf, setupsOf } from '../../src/plan/plan.ts';
import { inletsOf, outletsOf } from '../../src/plan/ports.ts';
import { assess } from '../../src/report/assess.ts';
import { assessmentJson } from '../../src/report/json.ts';

const folder = new URL('../../demo-sets/', import.meta.url);
const fileOf = (slug: string): URL => new URL(`${slug}.plan.json`, folder);

const assessmentOf = (plan: Plan): string => `${assessmentJson(plan, assess(plan, { revision: 0 }))}\n`;

/** What each demo is meant to show: its findings by rule and the records they are about, and nothing besides. */
const MEANT: Readonly<Record<string, readonly string[]>> = {
  study: ['note power-close source-p1', 'warn battery-dark unit-13', 'warn power-cable-short cable-unit-2'],
  street: [
    'note power-close box-k1',
    'stop power-breaker box-k1',
    'stop power-connector adapter-ballast-6',
    'warn power-volts-low unit-9',
    'warn power-drop unit-9',
    'warn control-line-end line-l3',
  ],
  stage: [
    'note control-line-chain unit-25',
    'note radio-receiver unit-60',
    'warn power-drop unit-3',
    'note power-leakage box-k4',
    'note power-inrush box-k6',
    'note power-inrush box-k6',
    'note power-inrush box-k6',
  ],
};

const plans = new Map<string, Plan>();
for (const [slug, make] of Object.entries(demoMakers)) {
  const text = serialisePlan(make());
  if (process.env.UPDATE_DEMOS) {
    writeFileSync(fileOf(slug), text);
    writeFileSync(new URL(`${slug}.assessment.json`, folder), assessmentOf(make()));
  }
  const read = readPlan(existsSync(fileOf(slug)) ? readFileSync(fileOf(slug), 'utf8') : text);
  if (read.ok) plans.set(slug, read.value.plan);
}

describe('demo sets', () => {
  it('lists every plan of the folder, each with a title and a story', async () => {
    const files = readdirSync(folder).filter((f) => f.endsWith('.plan.json'));
    expect(demoPlans.map((d) => `${d.slug}.plan.json`).sort()).toEqual(files.sort());
    expect(Object.keys(demoMakers).sort()).toEqual(demoPlans.map((d) => d.slug).sort());
    for (const d of demoPlans) {
      expect(d.title && d.story).toBeTruthy();
      expect(await d.load()).toEqual(JSON.parse(readFileSync(fileOf(d.slug), 'utf8')));
    }
  });
});

for (const [slug, make] of Object.entries(demoMakers)) {
  const plan = plans.get(slug);
  describe(`demo ${slug}`, () => {
    it('is what its source makes (UPDATE_DEMOS=1 writes it) and reads back without notices', () => {
      const text = readFileSync(fileOf(slug), 'utf8');
      expect(text).toBe(serialisePlan(make()));
      const read = readPlan(text);
      expect(read.ok && read.value.notices).toEqual([]);
    });
    if (!plan) return;

    it('has no broken reference, and only gear of the built-in book', () => {
      expect(referenceProblems(plan)).toEqual([]);
      for (const k of recordsOf(plan, 'kind')) expect(isBuiltIn(k), k.slug).toBe(true);
    });

    it('is assessed as accepted (UPDATE_DEMOS=1 accepts anew)', () => {
      expect(assessmentOf(plan)).toBe(readFileSync(new URL(`${slug}.assessment.json`, folder), 'utf8'));
    });

    it('shows the findings it is meant to show and computes everything else', () => {
      const a = assess(plan, { revision: 0 });
      expect(a.findings.map((f) => `${f.severity} ${f.rule} ${f.recordIds[0]}`).sort()).toEqual(
        [...(MEANT[slug] ?? [])].sort(),
      );
      for (const e of a.entities) expect(e.notComputed, e.label).toBeUndefined();
    });

    it('joins only what mates, feeds each inlet once, and uses each outlet once', () => {
      const taken = new Set<string>();
      for (const c of recordsOf(plan, 'cable')) {
        const kind = kindOf(plan, c.kindId, 'cable');
        const outlet = outletsOf(plan, c.from.recordId).find((o) => o.id === c.from.portId);
        const inlet = inletsOf(plan, c.to.recordId).find((i) => i.id === c.to.portId);
        expect(outlet && kind && mates(outlet.connector, kind.plug), c.id).toBe(true);
        expect(inlet && kind && mates(kind.socket, inlet.connector), c.id).toBe(true);
        for (const end of [c.from, c.to]) {
          const key = `${end.recordId}/${end.portId}`;
          expect(taken.has(key), key).toBe(false);
          taken.add(key);
        }
      }
      for (const f of recordsOf(plan, 'fixture')) {
        const needs = kindOf(plan, f.kindId, 'fixture')?.needsBallast;
        const load = needs ? recordsOf(plan, 'ballast').find((b) => b.fixtureId === f.id)?.id : f.id;
        expect(load, f.unit).toBeDefined();
        if (!f.onPacks) expect(taken.has(`${load}/in`), `unit ${f.unit} is fed`).toBe(true);
      }
    });

    it('stands every unit on something that carries it, at a height it reaches', () => {
      for (const f of recordsOf(plan, 'fixture')) {
        if (f.support.on !== 'stand') continue;
        const standId = f.support.standId;
        const stand = recordsOf(plan, 'stand').find((s) => s.id === standId);
        const kind = stand && kindOf(plan, stand.kindId, 'stand');
        const own = kindOf(plan, f.kindId, 'fixture');
        expect(own?.massKg, f.unit).toBeLessThanOrEqual(kind?.ratedLoadKg ?? 0);
        expect(
          own?.mount.fits.some((m) => kind?.receives.some((r) => r === m)),
          `unit ${f.unit} mount`,
        ).toBe(true);
        expect(stand?.heightMm, f.unit).toBeGreaterThanOrEqual(kind?.heightMinMm ?? 0);
        expect(stand?.heightMm, f.unit).toBeLessThanOrEqual(kind?.heightMaxMm ?? 0);
      }
    });

    it('keeps units, ballasts and boxes apart on the floor', () => {
      const things = [
        ...recordsOf(plan, 'fixture').map((f) => ({
          id: f.id,
          at: fixturePlace(plan, f).at,
          kindId: f.kindId,
        })),
        ...[...recordsOf(plan, 'ballast'), ...recordsOf(plan, 'box'), ...recordsOf(plan, 'source')],
      ];
      const half = (kindId: string): number => {
        const s = kindOf(plan, kindId)?.sizeMm;
        return s ? Math.min(s.lengthMm, s.widthMm) / 2 : 0;
      };
      things.forEach((a, i) => {
        for (const b of things.slice(i + 1))
          expect(distanceMm(a.at, b.at), `${a.id} and ${b.id}`).toBeGreaterThan(
            half(a.kindId) + half(b.kindId),
          );
      });
    });

    it('gives every unit a number once, a use, and a level in every setup', () => {
      const fixtures = recordsOf(plan, 'fixture');
      expect(new Set(fixtures.map((f) => f.unit)).size).toBe(fixtures.length);
      expect(setupsOf(plan).length).toBeGreaterThanOrEqual(3);
      for (const f of fixtures) {
        expect(f.use, f.unit).toBeTruthy();
        for (const s of setupsOf(plan))
          expect(plan.records.has(levelId(s.id, f.id)), `${s.name} ${f.unit}`).toBe(true);
      }
    });

    it('patches within universes, without an overlap', () => {
      const used = new Map<string, string>();
      for (const f of recordsOf(plan, 'fixture')) {
        if (!f.patch) continue;
        const mode = kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === f.patch?.modeId);
        for (let i = 0; i < (mode?.slots ?? 0); i++) {
          const slot = f.patch.address + i;
          expect(slot, f.unit).toBeLessThanOrEqual(512);
          const key = `${f.patch.universeId}/${slot}`;
          expect(used.get(key), `unit ${f.unit} at ${key}`).toBeUndefined();
          used.set(key, f.unit);
        }
      }
    });
  });
}
