import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { distanceMm, point } from '../../../src/kernel/geometry.ts';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import { pageToSvg } from '../../../src/output/svg.ts';
import type { Page, PageItem } from '../../../src/papers/page.ts';
import { blobOf } from '../../../src/plan/blobs.ts';
import { applyChanges, Draft } from '../../../src/plan/change-set.ts';
import { addUnderlay, turned } from '../../../src/plan/edits/underlays.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { floorRig } from '../../support/floor.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { pngOf } from '../../support/pictures.ts';
import { need } from '../../support/storage-world.ts';

const MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Upper left, upper right and lower right corner of each picture of a page in its millimetres, and its opacity. */
const picturesOf = async (bytes: Uint8Array, heightMm: number) => {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const page = await (await task.promise).getPage(1);
  const ops = await page.getOperatorList();
  const stack: { m: Matrix; alpha: number }[] = [];
  let now = { m: [1, 0, 0, 1, 0, 0] as Matrix, alpha: 1 };
  const found: { corners: readonly { xMm: number; yMm: number }[]; alpha: number }[] = [];
  ops.fnArray.forEach((fn, i) => {
    const args = (ops.argsArray[i] ?? []) as unknown[];
    if (fn === OPS.save) stack.push(now);
    else if (fn === OPS.restore) now = stack.pop() ?? now;
    else if (fn === OPS.transform) now = { ...now, m: times(now.m, args as unknown as Matrix) };
    else if (fn === OPS.setGState) {
      for (const [key, value] of args[0] as readonly (readonly [string, unknown])[])
        if (key === 'ca') now = { ...now, alpha: Number(value) };
    } else if (fn === OPS.paintImageXObject || fn === OPS.paintInlineImageXObject) {
      const { m } = now;
      // A picture fills the unit square, its upper edge at 1.
      const at = (x: number, y: number) =>
        point((m[0] * x + m[2] * y + m[4]) * MM, heightMm - (m[1] * x + m[3] * y + m[5]) * MM);
      found.push({ corners: [at(0, 1), at(1, 1), at(1, 0)], alpha: now.alpha });
    }
  });
  await task.destroy();
  return found;
};

const page = (items: readonly PageItem[]): Page => ({ title: 'P', widthMm: 297, heightMm: 210, items });

describe('an underlay on paper', () => {
  const blob = blobOf(pngOf(40, 30), 'image/png');
  const image = (rotationDeg: number, opacity: number): PageItem => ({
    kind: 'image',
    blobId: blob.id,
    mediaType: 'image/png',
    base64: blob.base64,
    xMm: 60,
    yMm: 50,
    rotationDeg,
    widthMm: 80,
    heightMm: 60,
    opacity,
  });

  test.each([0, 20, 90, 213])(
    'turned by %s° it lies in the PDF where it belongs, faded, in a clipped part too',
    async (deg) => {
      const clip: PageItem = {
        kind: 'clip',
        xMm: 10,
        yMm: 10,
        widthMm: 250,
        heightMm: 180,
        items: [image(deg, 0.4)],
      };
      for (const items of [[image(deg, 0.4)], [clip]]) {
        const [p, ...more] = await picturesOf(
          pagesToPdf([page(items)], paperFonts(), { title: 'T', subject: '', author: '' }),
          210,
        );
        expect(more).toEqual([]);
        const rad = (deg * Math.PI) / 180;
        const right = point(60 + 80 * Math.cos(rad), 50 + 80 * Math.sin(rad));
        const low = point(right.xMm - 60 * Math.sin(rad), right.yMm + 60 * Math.cos(rad));
        const want = [point(60, 50), right, low];
        want.forEach((w, i) => {
          expect(distanceMm(w, p?.corners[i] ?? point(0, 0))).toBeLessThan(0.01);
        });
        expect(p?.alpha).toBeCloseTo(0.4, 3);
      }
    },
  );

  test('in SVG it is placed and turned about its upper left corner, and faded', () => {
    const svg = pageToSvg(page([image(20, 0.4)]));
    expect(svg).toMatch(/<image [^>]*x="60"[^>]*y="50"[^>]*width="80"[^>]*height="60"/);
    expect(svg).toMatch(/rotate\(20[ ,]60[ ,]50\)/);
    expect(svg).toMatch(/opacity="0\.4"/);
  });

  test('prints unless it is told not to; on the screen it shows either way', () => {
    const rig = floorRig(undefined, 'metric');
    const source = { name: 'scan', what: 'image' as const, blob, widthUnits: 40, heightUnits: 30 };
    const what = { source, floorId: rig.floorId, centre: point(0, 0), guessWidthMm: 4000 };
    const made = need(addUnderlay(rig.session.getState().plan, what, rig.session.newId));
    rig.add(made.changes);
    const drawn = (forPaper: boolean): number =>
      drawFloor(rig.session.getState().plan, {
        floorId: rig.floorId,
        setupId: undefined,
        nominalScale: 50,
        options: { forPaper },
      }).items.filter((i) => i.layer === 'underlay').length;
    expect([drawn(false), drawn(true)]).toEqual([1, 1]);
    const { plan } = rig.session.getState();
    const u = recordOf(plan, 'underlay', made.underlay.id);
    if (!u) throw new Error('gone');
    rig.session.load(applyChanges(plan, new Draft(plan).put({ ...turned(u, 10), onPaper: false }).changes()));
    expect([drawn(false), drawn(true)]).toEqual([1, 0]);
  });
});
