import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { DisplayList } from '../../../src/drawing/display-list.ts';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { displayListToDxf } from '../../../src/output/dxf.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const list = drawFloor(plan, { floorId: 'fl-1', setupId: 'su-1', nominalScale: 48 });
const text = displayListToDxf(list);
const read = (dxf: string) => {
  const drawing = new DxfParser().parseSync(dxf);
  if (!drawing) throw new Error('the reader gave nothing');
  return drawing;
};
const one = (primitive: DisplayList['items'][number]['primitives'][number]): DisplayList => ({
  floorId: 'f',
  nominalScale: 50,
  items: [
    {
      key: 'k',
      recordId: 'r',
      layer: 'gear',
      primitives: [primitive],
      box: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
    },
  ],
});

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly { x: number; y: number }[];
  readonly text?: string;
  readonly textHeight?: number;
  readonly position?: { x: number; y: number };
  readonly startPoint?: { x: number; y: number };
  readonly rotation?: number;
  readonly name?: string;
}
const entitiesOf = (dxf: string): readonly Entity[] => read(dxf).entities as unknown as readonly Entity[];

describe('the plot as DXF, read back by an independent reader', () => {
  it('is of release 12, with a layer for each subject', () => {
    const drawing = read(text);
    expect(drawing.header.$ACADVER).toBe('AC1009');
    const layers = Object.keys(drawing.tables.layer.layers);
    for (const l of ['ARCHITECTURE', 'GEAR', 'CABLES', 'LABELS', 'DIMENSIONS']) expect(layers).toContain(l);
    for (const e of entitiesOf(text)) expect(layers).toContain(e.layer);
  });

  it('has one symbol per fixture, at its place with y up, its block defined', () => {
    const inserts = entitiesOf(text).filter((e) => e.type === 'INSERT' && e.layer === 'GEAR');
    const blocks = Object.keys(read(text).blocks);
    for (const e of inserts) expect(blocks).toContain(e.name);
    for (const f of recordsOf(plan, 'fixture')) {
      const symbol = list.items
        .filter((i) => i.recordId === f.id && i.layer === 'gear')
        .flatMap((i) => i.primitives)
        .find((p) => p.kind === 'symbol');
      if (symbol?.kind !== 'symbol') throw new Error(`unit ${f.unit} has no symbol`);
      const hits = inserts.filter(
        (e) => Math.hypot((e.position?.x ?? 0) - symbol.xMm, (e.position?.y ?? 0) + symbol.yMm) < 0.001,
      );
      expect(hits.length, f.unit).toBe(1);
    }
  });

  it('keeps lengths in millimetres: a wall of the sample is as long as it is', () => {
    const wall = recordsOf(plan, 'wall')[0];
    if (!wall) throw new Error('no wall');
    const xs = entitiesOf(text)
      .filter((e) => e.layer === 'ARCHITECTURE')
      .flatMap((e) => e.vertices ?? [])
      .map((v) => v.x);
    const walls = recordsOf(plan, 'wall').flatMap((w) => [w.from.xMm, w.to.xMm]);
    expect(Math.min(...xs)).toBeCloseTo(Math.min(...walls) - wall.thicknessMm / 2, 3);
    expect(Math.max(...xs)).toBeCloseTo(Math.max(...walls) + wall.thicknessMm / 2, 3);
  });

  it('sets texts as texts, their capitals as high as on paper at the scale', () => {
    const texts = entitiesOf(text).filter((e) => e.type === 'TEXT');
    expect(texts.length).toBeGreaterThan(30);
    const unit = texts.find((t) => t.text === '7');
    expect(unit?.textHeight).toBeCloseTo(2.3 * 48, 3);
  });

  it('writes what is not ASCII by its code point, and no line breaks', () => {
    const dxf = displayListToDxf(
      one({
        kind: 'text',
        xMm: 0,
        yMm: 0,
        dxPaperMm: 0,
        dyPaperMm: 0,
        text: '½″ é\nLicht',
        capMm: 2,
        weight: 'regular',
        align: 'left',
        role: 'ink',
      }),
    );
    expect(dxf).toContain('\\U+00BD\\U+2033 \\U+00E9 Licht');
    expect([...dxf].every((c) => c === '\r' || c === '\n' || (c >= ' ' && c <= '~'))).toBe(true);
  });

  it('turns curves into short straight pieces no further than a hundredth of their size from the curve', () => {
    const k = 0.5522847498307936 * 1000;
    const dxf = displayListToDxf(
      one({
        kind: 'path',
        d: [
          ['M', 1000, 0],
          ['C', 1000, k, k, 1000, 0, 1000],
        ],
        stroke: { role: 'ink', weightMm: 0.25 },
      }),
    );
    const points = entitiesOf(dxf)[0]?.vertices ?? [];
    expect(points.length).toBe(9);
    for (const [i, p] of points.entries()) {
      expect(Math.hypot(p.x, p.y)).toBeCloseTo(1000, -1);
      const next = points[i + 1];
      if (next) expect(Math.hypot((p.x + next.x) / 2, (p.y + next.y) / 2)).toBeGreaterThan(990);
    }
  });

  it('in inches is the same drawing, 25.4 times smaller: lines, circles, texts and symbols where they were', () => {
    const [mm, inches] = [entitiesOf(text), entitiesOf(displayListToDxf(list, 'in'))];
    expect(inches.map((e) => e.type)).toEqual(mm.map((e) => e.type));
    const close = (have: number | undefined, want: number | undefined): void =>
      expect(have ?? 0).toBeCloseTo((want ?? 0) / 25.4, 4);
    mm.forEach((e, i) => {
      const f = inches[i];
      e.vertices?.forEach((v, k) => {
        close(f?.vertices?.[k]?.x, v.x);
        close(f?.vertices?.[k]?.y, v.y);
      });
      close(f?.textHeight, e.textHeight);
      close(f?.position?.x, e.position?.x);
      close(f?.position?.y, e.position?.y);
      expect(f?.rotation).toBe(e.rotation);
      expect(f?.text).toBe(e.text);
    });
    const width = (dxf: string): number => {
      const { $EXTMIN, $EXTMAX } = read(dxf).header as unknown as Record<string, { x: number } | undefined>;
      return ($EXTMAX?.x ?? Number.NaN) - ($EXTMIN?.x ?? Number.NaN);
    };
    close(width(displayListToDxf(list, 'in')), width(text));
    expect(displayListToDxf(list, 'in')).toContain('Lengths in inches');
    // Blocks too: the longest stroke of each is 25.4 times shorter.
    const reachOf = (dxf: string): readonly number[] =>
      Object.values(read(dxf).blocks).map((b) =>
        Math.max(
          ...(b.entities as unknown as readonly Entity[])
            .flatMap((e) => e.vertices ?? [])
            .map((v) => Math.abs(v.x)),
          0,
        ),
      );
    reachOf(displayListToDxf(list, 'in')).forEach((r, i) => {
      close(r, reachOf(text)[i]);
    });
  });

  it('is the same text twice, and opens where nothing is drawn', () => {
    expect(displayListToDxf(drawFloor(plan, { floorId: 'fl-1', setupId: 'su-1', nominalScale: 48 }))).toBe(
      text,
    );
    expect(entitiesOf(displayListToDxf({ floorId: 'f', nominalScale: 50, items: [] }))).toEqual([]);
  });
});
