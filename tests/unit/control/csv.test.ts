import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignAddresses, DEFAULT_ASSIGN } from '../../../src/engines/control/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type PatchCsv, readPatchCsv, writePatchCsv } from '../../../src/plan/edits/patch-csv.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { addressOf, patchRig } from '../../support/patch-rig.ts';

const read = (plan: Plan, text: string): PatchCsv => {
  const r = readPatchCsv(plan, text, 'list.csv');
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

const assigned = (plan: Plan): Plan => {
  const r = assignAddresses(plan, { ...DEFAULT_ASSIGN, part: true });
  if (!r.ok) throw new Error(r.error.what);
  return applyChanges(plan, r.value.changes);
};

describe('the patch as CSV', () => {
  it('comes back as it was, whatever is written on the units', () => {
    const text = fc.string({ maxLength: 12 }).map((s) => s.trim());
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 2, max: 200 }), text, text), { minLength: 1, maxLength: 12 }),
        (list) => {
          const { plan } = patchRig(
            list.map(([parts, channel, use]) => ({ slots: parts * 3, parts, more: { channel, use } })),
          );
          const full = assigned(plan);
          const back = read(full, writePatchCsv(full));
          expect(back.bad).toBe(0);
          expect(back.changed).toBe(0);
          // From the same units without a patch the list gives the same addresses again.
          const bare = applyChanges(plan, read(plan, writePatchCsv(full)).changes);
          expect(recordsOf(bare, 'fixture')).toEqual(recordsOf(full, 'fixture'));
        },
      ),
    );
  });

  it('reads a byte-order mark, semicolons, quotes and line breaks in cells', () => {
    const { plan } = patchRig([10, 10]);
    const got = read(plan, '\ufeffUnit;Address;Use\r\n"1";U2 7;"key;\nleft"\r\n2;3/1;\r\n');
    expect(got.rows.map((r) => [r.line, r.problem])).toEqual([
      [2, undefined],
      [4, undefined],
    ]);
    const after = applyChanges(plan, got.changes);
    expect([addressOf(after, 'f0001'), addressOf(after, 'f0002')]).toEqual(['U2 7', 'U3 1']);
    expect(recordsOf(after, 'fixture')[0]?.use).toBe('key;\nleft');
  });

  it('tells each bad row what is wrong with it and takes the others', () => {
    const { plan } = patchRig([
      10,
      10,
      10,
      { slots: 10, more: { locked: true } },
      10,
      { slots: 10, more: { unit: '5' } },
    ]);
    const got = read(
      plan,
      'universe,address,unit,mode\n1,1,1,\n1,0,2,\n1,1.5,3,\n1,20,4,\n1,30,5,\n1,40,9,\n1,50,1,\n64000,1,2,\n1,510,3,\nx,1,3,\n',
    );
    expect(got.rows.map((r) => r.problem?.split('.')[0])).toEqual([
      undefined,
      expect.stringContaining('no such slot'),
      '“1',
      'Unit 4 is locked',
      '2 units of the plan have the number 5',
      'There is no unit 9 in the plan',
      'Unit 1 was on line 2 already',
      expect.stringContaining('Unit 2 was on line 3'),
      expect.stringContaining('Unit 3 was on line 4'),
      expect.stringContaining('Unit 3 was on line 4'),
    ]);
    expect([got.bad, got.changed]).toEqual([9, 1]);
    const single = (row: string): string =>
      read(plan, `universe,address,unit,mode\n${row}\n`).rows[0]?.problem ?? '';
    expect(single('64000,1,2,')).toContain('There is no universe 64000');
    expect(single('1,510,3,')).toContain('takes 10 slots');
    expect(single('x,1,3,')).toContain('not a universe');
    expect(single('1,1,3,other')).toContain('no mode “other”');
  });

  it('refuses a list with a wrong header whole, and says what the header is', () => {
    const r = readPatchCsv(patchRig([1]).plan, 'fixture,dmx\n1,1\n', 'list.csv');
    expect(r.ok).toBe(false);
    if (!r.ok) {
      expect(r.error.what).toContain('“unit” and “address”');
      expect(r.error.todo).toContain('universe, address');
    }
    expect(readPatchCsv(patchRig([1]).plan, '', 'list.csv').ok).toBe(false);
    expect(readPatchCsv(patchRig([1]).plan, 'unit,address\n"1', 'list.csv').ok).toBe(false);
  });

  it('takes a patch away where both cells are empty', () => {
    const plan = assigned(patchRig([10]).plan);
    expect(addressOf(applyChanges(plan, read(plan, 'unit,universe,address\n1,,\n').changes), 'f0001')).toBe(
      '',
    );
  });

  it('reads 100,000 rows and tells each that has no unit', () => {
    const { plan } = patchRig(new Array(500).fill(1));
    const rows = Array.from(
      { length: 100_000 },
      (_, i) => `${1 + Math.floor(i / 512)};${1 + (i % 512)};${i + 1};`,
    );
    const got = read(plan, `universe;address;unit;mode\n${rows.join('\n')}\n`);
    expect([got.rows.length, got.bad, got.changed]).toEqual([100_000, 99_500, 500]);
  });

  it('keeps a spreadsheet from taking a use for a formula', () => {
    const { plan } = patchRig([{ slots: 1, more: { use: '=1+1' } }]);
    expect(writePatchCsv(plan)).toContain("'=1+1");
    expect(read(plan, writePatchCsv(plan)).changed).toBe(0);
  });
});
