import { describe, expect, test } from 'vitest';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { COLUMNS, rowsOf } from '../../../src/ui/floor/table-rows.ts';
import { addBox, addUnit, floorRig } from '../../support/floor.ts';

const setup = () => {
  const rig = floorRig();
  const box = addBox(rig, needKind('north-america', 'box-100-6x20', 'box'), 4500, 3500);
  const unit = addUnit(rig, 'led-panel-60x60', 1500, 1500);
  const other = addUnit(rig, 'led-panel-60x60', 1500, 3000);
  const third = addUnit(rig, 'led-panel-60x60', 1500, 4000);
  const plan = () => rig.session.getState().plan;
  const column = (name: string) => {
    const c = COLUMNS.find((x) => x.name === name);
    if (!c?.edit) throw new Error(`no column ${name} that can be written`);
    return c;
  };
  const write = (name: string, id: string, text: string) => {
    const r = plan().records.get(id);
    const made =
      r &&
      column(name).edit?.(plan(), r, text, undefined, {
        cables: rig.book.cables(),
        adapters: rig.book.adapters(),
        newId: rig.session.newId,
      });
    if (!made) throw new Error('nothing to write to');
    if (made.ok) rig.session.load(applyChanges(plan(), made.value));
    return made;
  };
  const cell = (name: string, id: string) =>
    rowsOf(plan(), rig.floorId, undefined).find((r) => r.id === id)?.cells[
      COLUMNS.findIndex((c) => c.name === name)
    ];
  return { plan, box, unit, other, third, write, cell };
};

describe('cells of the floor table', () => {
  test('an address is written, changed within its universe and taken away', () => {
    const { plan, unit, write, cell } = setup();
    expect(write('Address', unit, 'U3 418').ok).toBe(true);
    expect(cell('Address', unit)).toBe('U3 418');
    expect(recordsOf(plan(), 'universe').map((u) => u.number)).toContain(3);
    write('Address', unit, '20');
    expect(cell('Address', unit)).toBe('U3 20');
    const wrong = write('Address', unit, 'banana');
    expect(wrong).toMatchObject({ ok: false, error: { what: expect.stringContaining('banana') } });
    expect(cell('Address', unit)).toBe('U3 20');
    write('Address', unit, '');
    expect(recordOf(plan(), 'fixture', unit)?.patch).toBeUndefined();
  });

  test('what feeds a unit is written by name, moved, and unplugged by an empty cell', () => {
    const { plan, unit, other, box, write, cell } = setup();
    expect(write('Fed from', unit, 'k1 4').ok).toBe(true);
    expect(cell('Fed from', unit)).toBe('K1 way 4');
    expect(recordsOf(plan(), 'cable')).toMatchObject([{ from: { recordId: box }, to: { recordId: unit } }]);
    write('Fed from', unit, 'K1 way 2');
    expect(cell('Fed from', unit)).toBe('K1 way 2');
    expect(recordsOf(plan(), 'cable')).toHaveLength(1);
    expect(write('Fed from', other, 'W9')).toMatchObject({
      ok: false,
      error: { what: expect.stringContaining('W9') },
    });
    expect(write('Fed from', unit, ' ').ok).toBe(true);
    expect(recordsOf(plan(), 'cable')).toHaveLength(0);
    expect(write('Fed from', unit, 'cells').ok).toBe(true);
    expect(recordOf(plan(), 'fixture', unit)?.onPacks).toBe(true);
    expect(write('Fed from', box, 'cells')).toMatchObject({
      ok: false,
      error: { what: expect.stringContaining('K1') },
    });
  });

  test('a way whose sockets are all taken says by whom', () => {
    const { plan, unit, other, third, write } = setup();
    expect(write('Fed from', unit, 'K1 way 1').ok).toBe(true);
    expect(write('Fed from', other, 'K1 way 1').ok).toBe(true);
    expect(write('Fed from', third, 'K1 way 1')).toMatchObject({
      ok: false,
      error: { what: 'K1 way 1 is taken by unit 1.' },
    });
    expect(recordsOf(plan(), 'cable')).toHaveLength(2);
  });
});
