import { describe, expect, test } from 'vitest';
import { gearBook } from '../../../src/gear/index.ts';
import { kindFigure, kindLine } from '../../../src/ui/floor/kind-line.ts';

describe('the shelf', () => {
  test('says something of every kind but scenery, without an id of the data', () => {
    for (const practice of ['north-america', 'europe'] as const)
      for (const k of gearBook(practice)) {
        const line = kindLine(k, practice === 'europe' ? 'metric' : 'imperial');
        if (!['camera', 'furniture', 'vehicle', 'ballast'].includes(k.family))
          expect(line, k.slug).not.toBe('');
        expect(line, k.slug).not.toMatch(/undefined|NaN|pin-16|spigot-28|grip-head/);
      }
  });

  test('gives a figure for everything that draws power', () => {
    for (const k of gearBook('europe'))
      if (['transmitter', 'receiver', 'repeater', 'node', 'dataSplitter', 'charger'].includes(k.family))
        expect(kindFigure(k), k.slug).toMatch(/\d.* (W|kW)$/);
  });

  test('speaks of mounts and lengths in the plan’s units', () => {
    const stand = gearBook('europe').find((k) => k.slug === 'c-stand-40');
    const panel = gearBook('europe').find((k) => k.slug === 'led-panel-60x60');
    if (!stand || !panel) throw new Error('not in the book');
    expect(kindLine(stand, 'metric')).toMatch(/10 kg · 1\.35 m–3\.20 m · 16 mm pin/);
    expect(kindLine(stand, 'imperial')).toMatch(/5\/8 in pin/);
    expect(kindLine(panel, 'metric')).toContain('28 mm spigot');
    expect(kindLine(panel, 'imperial')).toContain('1-1/8 in spigot');
  });
});
