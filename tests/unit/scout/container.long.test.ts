import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../../src/kernel/base64.ts';
import { blobOf, roomForBlob } from '../../../src/plan/blobs.ts';
import { applyChanges, Draft } from '../../../src/plan/change-set.ts';
import { isContainer, planFileBytes, readPlanBytes } from '../../../src/plan/container.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Blob } from '../../../src/plan/records/index.ts';
import { readZipDirectory } from '../../../src/plan/zip.ts';
import { pngOf } from '../../support/pictures.ts';
import { smallPlan } from '../../support/small-plan.ts';
import { need } from '../../support/storage-world.ts';

const picture = blobOf(pngOf(40, 30), 'image/png');
const stray = blobOf(pngOf(10, 10), 'image/png');

const withPhoto = (blob: Blob = picture): Plan => {
  const plan = smallPlan();
  return applyChanges(
    plan,
    new Draft(plan)
      .put(blob)
      .put({
        id: 'photo-1',
        type: 'photo',
        floorId: 'floor-1',
        at: { xMm: 0, yMm: 0 },
        blobId: blob.id,
        widthPx: 40,
        heightPx: 30,
        label: 'PH1',
        caption: 'Panel',
      })
      .changes(),
  );
};

const names = (bytes: Uint8Array): readonly string[] =>
  need(readZipDirectory(bytes))
    .map((e) => e.name)
    .sort();

const problem = (bytes: Uint8Array): string => {
  const r = readPlanBytes(bytes, 'night.zip');
  if (r.ok) throw new Error('the file was read');
  expect(r.error.todo ?? '').not.toBe('');
  return r.error.what;
};

const planJson = (bytes: Uint8Array): string => {
  const text = Buffer.from(bytes).toString('latin1');
  expect(text).not.toContain(picture.base64.slice(0, 40));
  return text;
};

describe('base64', () => {
  test('is what the platform makes of it, for every length up to three groups', () => {
    for (let n = 0; n < 12; n++) {
      const bytes = Uint8Array.from({ length: n }, (_, i) => (i * 97 + 251) & 255);
      expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      expect(fromBase64(toBase64(bytes))).toEqual(bytes);
    }
  });
  test('takes nothing that is none', () => {
    for (const text of ['A', 'AB', 'AAA', 'A===', 'AA A', 'ÄÄÄÄ', 'AA=A', '===='])
      expect(fromBase64(text)).toBeUndefined();
  });
});

describe('a plan file with parts', () => {
  test('a plan without any is plain JSON, as before', () => {
    const { bytes, sort } = planFileBytes(smallPlan());
    expect(sort).toBe('json');
    expect(new TextDecoder().decode(bytes)).toBe(serialisePlan(smallPlan()));
  });

  test('a plan with a picture is a zip of records and one part by its hash, and comes back as it was', () => {
    const plan = withPhoto();
    const { bytes, sort } = planFileBytes(plan);
    expect(sort).toBe('zip');
    expect(isContainer(bytes)).toBe(true);
    expect(names(bytes)).toEqual([`parts/${picture.id.slice(5)}`, 'plan.json']);
    planJson(bytes);
    const read = need(readPlanBytes(bytes));
    expect(read.notices).toEqual([]);
    expect(serialisePlan(read.plan)).toBe(serialisePlan(plan));
    // The same plan gives the same bytes.
    expect(Buffer.from(planFileBytes(read.plan).bytes).equals(Buffer.from(bytes))).toBe(true);
  });

  test('JSON with the bytes in it reads as well', () => {
    const plan = withPhoto();
    const read = need(readPlanBytes(new TextEncoder().encode(serialisePlan(plan))));
    expect(serialisePlan(read.plan)).toBe(serialisePlan(plan));
  });

  test('what nothing in the plan names is left out of the file', () => {
    const plan = withPhoto();
    const more = applyChanges(plan, new Draft(plan).put(stray).changes());
    expect(names(planFileBytes(more).bytes)).toEqual(names(planFileBytes(plan).bytes));
    // A record that could not be read may need its picture when a newer program reads it.
    const aside: Plan = {
      ...more,
      setAside: [
        { key: 'x', reason: 'unknown', value: { id: 'x', type: 'unheard-of', pictureId: stray.id } },
      ],
    };
    expect(names(planFileBytes(aside).bytes)).toContain(`parts/${stray.id.slice(5)}`);
  });

  test('a blob whose bytes are not what its id says is kept whole beside the records', () => {
    const odd: Blob = { ...stray, id: picture.id };
    const plan = withPhoto(odd);
    const file = planFileBytes(plan);
    expect(file.sort).toBe('json');
    expect(serialisePlan(need(readPlanBytes(file.bytes)).plan)).toBe(serialisePlan(plan));
  });
});

describe('a damaged or hostile plan file', () => {
  const whole = planFileBytes(withPhoto()).bytes;
  const parts = (change: (files: Record<string, Uint8Array>) => void): Uint8Array => {
    const text = serialisePlan(withPhoto()).replace(/,"base64":"[^"]*"/, '');
    const files: Record<string, Uint8Array> = {
      'plan.json': new TextEncoder().encode(text),
      [`parts/${picture.id.slice(5)}`]: Uint8Array.from(Buffer.from(picture.base64, 'base64')),
    };
    change(files);
    return zipSync(files);
  };

  test('a missing part is told and set aside; the rest of the plan is there, and the record is written back', () => {
    const read = need(readPlanBytes(parts((f) => delete f[`parts/${picture.id.slice(5)}`])));
    expect(read.notices.join()).toMatch(/set aside.*its bytes are not in the file/);
    expect(read.plan.records.get('photo-1')).toBeDefined();
    expect(serialisePlan(read.plan)).toContain(picture.id);
  });

  test('a part with other bytes than its name says is not taken', () => {
    const bytes = parts((f) => {
      f[`parts/${picture.id.slice(5)}`] = Uint8Array.from(pngOf(8, 8));
    });
    expect(need(readPlanBytes(bytes)).notices.join()).toMatch(/not those it was saved with/);
  });

  test('a part that does not unpack leaves the rest', () => {
    const bytes = Uint8Array.from(whole);
    const at = Buffer.from(bytes).indexOf('parts/');
    // Its local header is not one any more.
    bytes[at - 30] = 0;
    expect(need(readPlanBytes(bytes)).notices.join()).toMatch(/set aside.*cannot be read/);
  });

  test('a zip that is no plan, one cut off, and one with a name that leads outside', () => {
    expect(problem(zipSync({ 'a.txt': new Uint8Array(3) }))).toContain('holds no plan.json');
    expect(problem(whole.slice(0, whole.length - 40))).toContain('night.zip');
    expect(problem(parts((f) => Object.assign(f, { '../up': new Uint8Array(1) })))).toContain(
      'leads outside',
    );
  });

  test('records that unpack out of all proportion are refused before they fill the memory', () => {
    expect(problem(zipSync({ 'plan.json': new Uint8Array(60_000_000) }))).toMatch(/more than 200 times/);
    expect(problem(zipSync({ 'plan.json': new Uint8Array(80_000_000) }))).toMatch(/too large unpacked/);
  });

  test('more parts than a plan has are refused', () => {
    const many = Object.fromEntries(
      Array.from({ length: 1001 }, (_, i) => [
        `parts/${i.toString(16).padStart(64, '0')}`,
        new Uint8Array(0),
      ]),
    );
    expect(problem(parts((f) => Object.assign(f, many)))).toMatch(/1002 parts; a plan has at most 1000/);
  });

  test('a picture that claims 300 megapixels is set aside, in a zip as in JSON', () => {
    const bomb = blobOf(pngOf(4, 4, undefined, { widthPx: 20000, heightPx: 15000 }), 'image/png');
    for (const bytes of [
      planFileBytes(withPhoto(bomb)).bytes,
      new TextEncoder().encode(serialisePlan(withPhoto(bomb))),
    ]) {
      const read = need(readPlanBytes(bytes));
      expect(read.notices.join()).toMatch(/20000 × 15000 pixels/);
      expect(read.plan.records.has(bomb.id)).toBe(false);
    }
  });

  test('the room for pictures is limited, and what is over the limit is told with figures', () => {
    const plan = withPhoto({ ...picture, base64: 'A'.repeat(64 * 1024 * 1024 - 400) });
    const r = roomForBlob(plan, 5_000_000);
    expect(r.ok ? '' : r.error.what).toMatch(/48\.0 MB already.*4\.8 MB/);
    expect(roomForBlob(smallPlan(), 5_000_000).ok).toBe(true);
    expect(need(readPlan(serialisePlan(withPhoto()))).notices).toEqual([]);
  });
});
