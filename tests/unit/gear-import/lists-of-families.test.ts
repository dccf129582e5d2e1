import { describe, expect, test } from 'vitest';
import { readKindSheet, sheetColumns, writeKindSheet } from '../../../src/gear/index.ts';
import type { Result } from '../../../src/kernel/result.ts';

const need = <T>(r: Result<T>): T => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};
const told = (text: string): readonly string[] =>
  need(readKindSheet(text)).rows.flatMap((r) => r.problems.map((p) => `${p.where}: ${p.what} ${p.todo}`));

describe('lists of other gear than lights', () => {
  test('a stand, a frame, an arm, a pack and a cable in one list with a light', () => {
    const { kinds, rows, notices } = need(
      readKindSheet(
        [
          'Family;Name;Watts;Offers;Rated load kg;Lowest m;Highest m;Leg circle m;Mass kg;Sort;Width mm;Height mm;Reach m;Plate;Energy Wh;Volts;Amps;Conductor;Ampacity A;Plug;Socket;Lengths m',
          'stand;House stand;;pin-16|grip head;12,5;1,2;3;1;7,5',
          'frame;Grey cloth 2x2;;;;;;;4;diffusion;2000;2000',
          'rigging;Long arm;;;6;;;;3;arm;;;1,5',
          'pack;Big brick;;;;;;;;;;;;v-plate;150;14,4;10',
          'cable;Blue lead;;;;;;;;;;;;;;;;mm2:2.5;16;iec-16-1;iec-16-1;"5|10|25"',
          ';Own panel;120',
        ].join('\n'),
      ),
    );
    expect(rows.flatMap((r) => r.problems)).toEqual([]);
    expect(notices).toEqual([]);
    expect(kinds.map((k) => k.family)).toEqual(['stand', 'grip', 'rigging', 'pack', 'cable', 'fixture']);
    expect(kinds[0]).toMatchObject({
      receives: ['pin-16', 'grip-head'],
      ratedLoadKg: 12.5,
      heightMinMm: 1200,
      heightMaxMm: 3000,
      legCircleMm: 1000,
      massKg: 7.5,
      slug: 'own-house-stand',
      origin: { book: 'user' },
    });
    expect(kinds[1]).toMatchObject({
      what: 'diffusion',
      areaM2: 4,
      windShare: 1,
      stands: 1,
      symbol: 'diffusion',
    });
    expect(kinds[1]?.basis.areaM2).toMatch(/^assumed/);
    expect(kinds[1]?.basis.massKg).toBeUndefined();
    expect(kinds[2]).toMatchObject({ what: 'arm', ratedLoadKg: 6, reachMm: 1500 });
    expect(kinds[3]).toMatchObject({ cells: 4, fullV: 16.8, emptyV: 12, capacityAh: 10.42, continuousA: 10 });
    expect(kinds[3]?.basis.fullV).toMatch(/^assumed/);
    expect(kinds[4]).toMatchObject({ legs: 1, neutral: true, stockLengthsMm: [5000, 10000, 25000] });
  });

  test('what is entered in pounds, feet and inches is read as such', () => {
    const { kinds } = need(
      readKindSheet(
        'family,name,offers,rated load lb,lowest ft,highest ft,leg circle in,mass lb\nstand,A,5/8,40 lb,4,10,40,12\n',
      ),
    );
    expect(kinds[0]).toMatchObject({
      ratedLoadKg: 18.144,
      heightMinMm: 1219.2,
      heightMaxMm: 3048,
      legCircleMm: 1016,
      massKg: 5.443,
      receives: ['pin-16'],
    });
  });

  test('a figure that holds or carries is asked for, not assumed; each mistake has line, column and what to do', () => {
    expect(
      told(
        [
          'family,name,offers,rated load kg,lowest mm,highest mm,leg circle mm,mass kg,legs',
          'stand,A,pin-16,,1000,2000,900,5,',
          'stand,B,glue,10,1000,2000,900,5,',
          'stand,C,pin-16,heavy,1000,2000,900,5,',
          'stand,D,pin-16,10,1000,2000,900,-5,',
          'stand,E,pin-16,10,3000,2000,900,5,',
          'stand,F,pin-16,10,1000,2000,900,5,2.5',
          'tree,G,pin-16,10,1000,2000,900,5,',
          'stand,H,pin-16,10,1000,2000,900,5,',
          'stand,H,pin-16,11,1000,2000,900,5,',
          'stand,,pin-16,11,1000,2000,900,5,',
        ].join('\n'),
      ),
    ).toEqual([
      'line 2, column “rated load kg”: A stand needs “rated load kg”; the cell is empty. Write a number like 12.5.',
      'line 3, column “offers”: “glue” cannot be read. Use pin-16, spigot-28, grip-head, clamp, between semicolons.',
      'line 4, column “rated load kg”: “heavy” is no number. Write a number like 12.5.',
      'line 5, column “mass kg”: -5 is below zero. Write a number like 12.5.',
      'line 6: “E”: its least height is above its greatest. Correct the row.',
      'line 7, column “legs”: 2.5 is no whole number. Write a whole number.',
      'line 8, column “family”: “tree” is no family of gear that a list may hold. Use light, stand, grip, rigging, pack or cable.',
      'line 10: “H” has the same slug as line 9 (own-h). Give it another name or slug.',
      'line 11, column “name”: The row has no name. Give it one that describes the unit.',
    ]);
  });

  test('figures that cannot go together are told', () => {
    expect(
      told(
        'family,name,conductor,ampacity a,plug,socket,lengths m\ncable,A,mm2:2.5,16,iec-16-1,iec-32-3,10\ncable,B,mm2:9,16,iec-16-1,iec-16-1,10\ncable,C,mm2:2.5,0,iec-16-1,iec-16-1,0\n',
      ).map((t) => t.slice(0, 60)),
    ).toEqual([
      expect.stringMatching(/^line 2: “A”: its plug and socket carry different/),
      expect.stringMatching(/^line 3, column “conductor”: “mm2:9” cannot be read/),
      expect.stringMatching(/^line 4, column “lengths m”: “0” cannot be read/),
    ]);
    expect(
      told('family,name,plate,energy wh,volts,amps,volts full\npack,A,v-plate,98,14.4,8,12\n')[0],
    ).toMatch(/volts empty, nominal and full are .* not rising/);
  });

  test('a filled cell that says nothing of the row’s family is told', () => {
    const { kinds, notices } = need(
      readKindSheet(
        'family,name,watts,sort,width mm,height mm,mass kg\ngrip,A,500,flag,600,900,2\nlight,B,500,flag,,,\n',
      ),
    );
    expect(kinds).toHaveLength(2);
    expect(notices).toEqual([
      'Line 2: “watts” says nothing of its family and was left out.',
      'Line 3: “sort” says nothing of its family and was left out.',
    ]);
  });

  test('many such lines are told up to a screenful, and counted', () => {
    const { notices } = need(
      readKindSheet(
        `family,name,watts,sort\n${Array.from({ length: 50 }, (_, i) => `light,U${i},5,flag`).join('\n')}\n`,
      ),
    );
    expect(notices).toHaveLength(21);
    expect(notices.at(-1)).toBe('30 more lines have cells that say nothing of their family.');
  });

  test('a list written of them reads back the same, formulas and all', () => {
    const { kinds } = need(
      readKindSheet(
        'family,name,also,notes,offers,rated load kg,lowest mm,highest mm,leg circle mm,mass kg,watts,sort,width mm,height mm\n' +
          'stand,=A,old one;other,"a, b",pin-16;clamp,10,1000,2000,900,5,,,,\ngrip,B,,,,,,,,2,,flag,600,900\nlight,C,,,,,,,,,300,,,\n',
      ),
    );
    expect(kinds).toHaveLength(3);
    expect(need(readKindSheet(writeKindSheet(kinds))).kinds).toEqual(kinds);
  });

  test('every column is described, and those a row needs are marked', () => {
    const columns = sheetColumns();
    expect(columns.map((c) => c.family)).toEqual(['stand', 'grip', 'rigging', 'pack', 'cable']);
    for (const { family, columns: of } of columns)
      for (const c of of) expect(c.words, `${family} ${c.heading}`).not.toBe('');
    expect(columns[0]?.columns.filter((c) => c.need).map((c) => c.heading)).toContain('rated load kg');
  });
});
