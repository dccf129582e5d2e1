import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hitsOn } from '../../src/engines/radio/path.ts';
import { sceneOf } from '../../src/engines/radio/scene.ts';
import { RadioRig } from '../support/radio-rig.ts';

const metres = fc.double({ min: 0, max: 40, noNaN: true });
const spot = fc.tuple(metres, metres);

/** Whether a path meets a wall nowhere exactly at an end: there, a hair decides. */
const clear = (path: Flatten.Segment, w: Flatten.Segment): boolean =>
  w.length > 0.01 &&
  [w.start, w.end].every((p) => p.distanceTo(path)[0] > 1e-6) &&
  [path.start, path.end].every((p) => p.distanceTo(w)[0] > 1e-6);

test('radio-wall: crosses as many walls as an independent geometry library finds, on random floors', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(spot, spot), { minLength: 1, maxLength: 60 }),
      spot,
      spot,
      (any, from, to) => {
        const path = Flatten.segment(from[0], from[1], to[0], to[1]);
        fc.pre(path.length > 0.01);
        const segmentOf = ([a, b]: (typeof any)[number]): Flatten.Segment =>
          Flatten.segment(a[0], a[1], b[0], b[1]);
        const walls = any.filter((w) => clear(path, segmentOf(w)));
        const segments = walls.map(segmentOf);
        const b = new RadioRig();
        for (const [a, c] of walls) b.wall(a, c);
        const found = hitsOn(
          sceneOf(b.plan(), 2400),
          { x: from[0], y: from[1], z: 1.5 },
          { x: to[0], y: to[1], z: 1.5 },
        );
        const counted = segments.filter((w) => w.intersect(path).length > 0).length;
        expect(found.length).toBe(counted);
        // And at the same places, in order from the start.
        const places = segments
          .flatMap((w) => w.intersect(path))
          .map((p) => p.distanceTo(path.start)[0] / path.length)
          .sort((x, y) => x - y);
        found.forEach((h, i) => {
          expect(h.t).toBeCloseTo(places[i] ?? Number.NaN, 5);
        });
      },
    ),
    { numRuns: 300 },
  );
});

test('radio-piece: meets as many set pieces as an independent geometry library finds, on random floors', () => {
  const piece = fc.record({
    at: spot,
    turn: fc.double({ min: 0, max: 360, noNaN: true }),
    length: fc.double({ min: 0.2, max: 6, noNaN: true }),
    width: fc.double({ min: 0.2, max: 6, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 25 }), spot, spot, (any, from, to) => {
      const path = Flatten.segment(from[0], from[1], to[0], to[1]);
      fc.pre(path.length > 0.01);
      const b = new RadioRig();
      const polygons = any.flatMap((p) => {
        const c = Flatten.point(p.at[0], p.at[1]);
        const angle = (p.turn * Math.PI) / 180;
        const polygon = new Flatten.Polygon(
          [
            [-1, -1],
            [1, -1],
            [1, 1],
            [-1, 1],
          ].map(([u, v]) =>
            Flatten.point(c.x + ((u ?? 0) * p.length) / 2, c.y + ((v ?? 0) * p.width) / 2).rotate(angle, c),
          ),
        );
        if (![...polygon.edges].every((e) => clear(path, e.shape as Flatten.Segment))) return [];
        b.piece(p.at[0], p.at[1], {
          rotationDeg: p.turn,
          outline: { shape: 'rect', lengthMm: p.length * 1000, widthMm: p.width * 1000 },
        });
        return [polygon];
      });
      const found = hitsOn(
        sceneOf(b.plan(), 2400),
        { x: from[0], y: from[1], z: 1.5 },
        { x: to[0], y: to[1], z: 1.5 },
      );
      const counted = polygons.filter((g) =>
        [...g.edges].some((e) => (e.shape as Flatten.Segment).intersect(path).length > 0),
      ).length;
      expect(found.length).toBe(counted);
    }),
    { numRuns: 200 },
  );
});
