import { describe, expect, it } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { displayListToSvg, pageToSvg } from '../../../src/output/svg.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { textsOf } from '../../support/page-texts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

describe('SVG previews', () => {
  const plan = samplePlan();
  const set = paperSet(plan, assess(plan, { revision: 1 }), { revision: 'A', date: '', programVersion: '0' });

  it('carry the same texts as the page', () => {
    for (const page of set.pages) {
      const svg = pageToSvg(page);
      const shown = [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map((m) =>
        (m[1] ?? '')
          .replaceAll('&lt;', '<')
          .replaceAll('&gt;', '>')
          .replaceAll('&quot;', '"')
          .replaceAll('&amp;', '&'),
      );
      expect(shown).toEqual(textsOf(page).map((t) => t.text));
    }
  });

  it('need no style that a strict policy would refuse', () => {
    for (const page of set.pages) {
      const svg = pageToSvg(page);
      expect(svg).not.toMatch(/style=|<style|<script|\son\w+=|href=/);
    }
  });

  it('escape what a name might carry', () => {
    const page = {
      title: '<b>',
      widthMm: 10,
      heightMm: 10,
      items: [
        {
          kind: 'text',
          xMm: 1,
          yMm: 1,
          text: '<script>alert("x")</script> & more',
          capMm: 2,
          weight: 'regular',
          align: 'left',
          role: 'ink',
        },
      ],
    } as const;
    const svg = pageToSvg(page);
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; more');
    expect(svg).toContain('<title>&lt;b&gt;</title>');
  });

  it('show a display list at its scale', () => {
    const list = drawFloor(plan, { floorId: 'fl-1', setupId: 'su-1', nominalScale: 50 });
    const svg = displayListToSvg(list);
    const [, , w] = /viewBox="([^"]+)"/.exec(svg)?.[1]?.split(' ').map(Number) ?? [];
    const xs = list.items.flatMap((i) => [i.box.minX, i.box.maxX]);
    expect(w).toBeCloseTo((Math.max(...xs) - Math.min(...xs)) / 50 + 10, 1);
  });
});
