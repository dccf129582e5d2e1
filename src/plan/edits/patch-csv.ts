import { type CsvTable, readCsv, writeCsv } from '../../kernel/csv.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import { fail, ok, type Problem, problemText, type Result } from '../../kernel/result.ts';
import { parseAddress, printAddress } from '../address.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { footprintOf, patchedMode } from '../footprint.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Box, Fixture } from '../records/index.ts';
import { dimmerPatchedWith, dimmerSlots } from './dimmer-patch.ts';
import { type PatchChange, patchedWith } from './patch.ts';

/**
 * Columns of a patch list, in the order they are written. To be read, a list needs `unit` and `address`; `universe` may be
 * left out where the address has it (`U3 418`, `3/418` or an absolute number). `mode` (name or id), `channel`, `use` and
 * `paired` are taken where they are there; the rest is for people. Neither universe nor address: no patch. `parted` tells
 * where a parted unit goes on, as `own slot=universe/address`, like `171=4/1`. A dimmer is a row by its label in `unit`, with
 * a slot a way; of it only the address is read. Where a unit and a dimmer are called alike, `kind` tells which is meant.
 */
export const PATCH_COLUMNS = [
  'universe',
  'address',
  'slots',
  'last slot',
  'unit',
  'channel',
  'kind',
  'mode',
  'use',
  'link',
  'paired',
  'parted',
] as const;

type Column = (typeof PATCH_COLUMNS)[number];

const LIMITS = { maxChars: 64 * 1024 * 1024, maxRows: 200_000, maxColumns: 100 };

const takesControl = (plan: Plan, f: Fixture): boolean =>
  f.patch !== undefined || (kindOf(plan, f.kindId, 'fixture')?.modes.length ?? 0) > 0;

/** Dimmers that listen to control data. */
const dimmersOf = (plan: Plan): readonly Box[] =>
  recordsOf(plan, 'box').filter((b) => b.patch !== undefined || dimmerSlots(plan, b) > 0);

const dimmerRow = (plan: Plan, b: Box) => {
  const slots = dimmerSlots(plan, b);
  return [
    b.patch && recordOf(plan, 'universe', b.patch.universeId)?.number,
    b.patch?.address,
    slots,
    b.patch ? b.patch.address + slots - 1 : undefined,
    b.label,
    '',
    kindOf(plan, b.kindId)?.name ?? '',
    slots === 1 ? 'dimmer' : `dimmer, ${slots} ways`,
    '',
    '',
    '',
    '',
  ] as const;
};

/**
 * The patch of a plan as CSV: every unit that takes control data and every dimmer, by universe and address, those without
 * one last.
 */
export const writePatchCsv = (plan: Plan): string => {
  const units = recordsOf(plan, 'fixture')
    .filter((f) => takesControl(plan, f))
    .map((f) => {
      const universe = f.patch && recordOf(plan, 'universe', f.patch.universeId)?.number;
      const mode = patchedMode(plan, f);
      const slots = mode && footprintOf(mode).slots;
      const first = f.patch?.spans?.[0];
      const here = first ? first.fromSlot - 1 : slots;
      const parted = (f.patch?.spans ?? [])
        .map((s) => `${s.fromSlot}=${recordOf(plan, 'universe', s.universeId)?.number ?? ''}/${s.address}`)
        .join(' ');
      return [
        universe,
        f.patch?.address,
        slots,
        f.patch && here !== undefined ? f.patch.address + here - 1 : undefined,
        f.unit,
        f.channel,
        kindOf(plan, f.kindId, 'fixture')?.name ?? '',
        mode?.name ?? f.patch?.modeId ?? '',
        f.use,
        f.link,
        f.patch?.paired ? 'paired' : '',
        parted,
      ] as const;
    });
  const rows = [...units, ...dimmersOf(plan).map((b) => dimmerRow(plan, b))].sort(
    (a, b) =>
      (a[0] ?? Number.MAX_SAFE_INTEGER) - (b[0] ?? Number.MAX_SAFE_INTEGER) ||
      (a[1] ?? 0) - (b[1] ?? 0) ||
      compareNatural(a[4], b[4]),
  );
  return writeCsv([PATCH_COLUMNS, ...rows]);
};

/** What one row of a list would do. `before` and `after` are addresses as printed, empty for none. */
export interface PatchCsvRow {
  readonly line: number;
  readonly unit: string;
  readonly fixtureId: Id | undefined;
  readonly before: string;
  readonly after: string;
  readonly changed: boolean;
  readonly problem: string | undefined;
}

/** A list that was read and not yet applied: what its good rows would change, and what is wrong with the bad ones. */
export interface PatchCsv {
  readonly rows: readonly PatchCsvRow[];
  readonly changes: ChangeSet;
  readonly bad: number;
  readonly changed: number;
}

/**
 * Reads a patch list saved as CSV, with commas, semicolons or tabs, quotes and a byte-order mark as they come. Nothing is
 * applied. Fails where the text is no list or its header lacks a column that is needed; a row that cannot be used carries
 * its problem and changes nothing.
 */
export const readPatchCsv = (plan: Plan, text: string, name: string): Result<PatchCsv> => {
  const table = readCsv(text, name, LIMITS);
  if (!table.ok) return table;
  const columns = columnsOf(table.value, name);
  if (!columns.ok) return columns;
  const byUnit = new Map<string, (Fixture | Box)[]>();
  for (const r of [...recordsOf(plan, 'fixture'), ...dimmersOf(plan)]) {
    const list = byUnit.get(nameOf(r));
    if (list) list.push(r);
    else byUnit.set(nameOf(r), [r]);
  }
  const draft = new Draft(plan);
  const seen = new Map<string, number>();
  const rows: PatchCsvRow[] = [];
  for (const { line, cells } of table.value.rows.slice(1)) {
    const cell = (c: Column): string | undefined => {
      const i = columns.value.get(c);
      return i === undefined ? undefined : (cells[i] ?? '').trim();
    };
    const unit = cell('unit') ?? '';
    const row = (
      fixture: Fixture | Box | undefined,
      problem: Problem | undefined,
      after?: Fixture | Box,
    ): PatchCsvRow => ({
      line,
      unit,
      fixtureId: fixture?.id,
      before: fixture ? printed(plan, draft, fixture) : '',
      after: after ? printed(plan, draft, after) : '',
      changed: after !== undefined && JSON.stringify(after) !== JSON.stringify(fixture),
      problem: problem && problemText(problem),
    });
    const called = byUnit.get(unit) ?? [];
    const meant = called.filter((r) => kindOf(plan, r.kindId)?.name === cell('kind'));
    const found = called.length > 1 && meant.length > 0 ? meant : called;
    const [fixture] = found;
    const key = found.length === 1 && fixture ? fixture.id : unit;
    const earlier = seen.get(key);
    seen.set(key, earlier ?? line);
    const who = unitProblem(unit, found.length, earlier);
    if (who || !fixture) {
      rows.push(row(undefined, who));
      continue;
    }
    const next =
      fixture.type === 'box'
        ? dimmerChangedBy(plan, draft, fixture, cell)
        : changedBy(plan, draft, fixture, cell);
    if (!next.ok) rows.push(row(fixture, next.error));
    else {
      const done = row(fixture, undefined, next.value);
      if (done.changed && fixture.locked)
        rows.push(
          row(fixture, {
            what: `${fixture.type === 'box' ? 'Dimmer' : 'Unit'} ${unit} is locked.`,
            todo: 'Unlock it, or take the row out.',
          }),
        );
      else {
        rows.push(done);
        if (done.changed) draft.put(next.value);
      }
    }
  }
  return ok({
    rows,
    changes: draft.changes(),
    bad: rows.filter((r) => r.problem !== undefined).length,
    changed: rows.filter((r) => r.changed).length,
  });
};

const columnsOf = (table: CsvTable, name: string): Result<ReadonlyMap<Column, number>> => {
  const head = (table.rows[0]?.cells ?? []).map((c) => c.trim().toLowerCase());
  const map = new Map<Column, number>();
  for (const c of PATCH_COLUMNS) if (head.includes(c)) map.set(c, head.indexOf(c));
  const missing = (['unit', 'address'] as const).filter((c) => !map.has(c));
  if (missing.length === 0) return ok(map);
  return fail({
    what: `${name} has no column ${missing.map((c) => `“${c}”`).join(' and ')}.`,
    where: `line ${table.rows[0]?.line ?? 1}, which reads ${head.filter(Boolean).slice(0, 8).join(', ') || 'nothing'}`,
    todo: `The first line names the columns: ${PATCH_COLUMNS.join(', ')}.`,
  });
};

const unitProblem = (unit: string, found: number, earlier: number | undefined): Problem | undefined => {
  if (unit === '') return { what: 'The row names no unit.', todo: 'Write its number in the column “unit”.' };
  if (found === 0) return { what: `There is no unit ${unit} in the plan.` };
  if (found > 1)
    return {
      what: `${found} units of the plan have the number ${unit}.`,
      todo: 'Give each its own number first. A dimmer of that label is told by its kind in the column “kind”.',
    };
  return earlier === undefined
    ? undefined
    : { what: `Unit ${unit} was on line ${earlier} already.`, todo: 'Leave one row for each unit.' };
};

/** The fixture as a row has it. Cells that are not there leave things as they are. */
const changedBy = (
  plan: Plan,
  draft: Draft,
  f: Fixture,
  cell: (c: Column) => string | undefined,
): Result<Fixture> => {
  const plain = { ...f, channel: cell('channel') ?? f.channel, use: cell('use') ?? f.use };
  const universe = cell('universe') ?? '';
  const address = cell('address') ?? '';
  if (universe === '' && address === '') {
    const { patch: _, ...rest } = plain;
    return ok(rest);
  }
  const place = placeIn(universe, address);
  if (!place.ok) return place;
  const change: PatchChange = { ...place.value };
  const modes = kindOf(plan, f.kindId, 'fixture')?.modes ?? [];
  const wanted = cell('mode') ?? '';
  const mode = modes.find((m) => m.id === wanted) ?? modes.find((m) => m.name === wanted);
  if (wanted !== '' && !mode)
    return fail({
      what: `Unit ${f.unit} has no mode “${wanted}”.`,
      todo: `It has: ${modes.map((m) => m.name).join('; ') || 'none'}.`,
    });
  const paired = (cell('paired') ?? '').toLowerCase();
  if (!['', 'paired', 'yes', 'no', '0', '1'].includes(paired))
    return fail({
      what: `“${paired}” is no answer to whether it is paired.`,
      todo: 'Write paired or leave it empty.',
    });
  const spans = partedIn(cell('parted') ?? '');
  if (!spans.ok) return spans;
  return patchedWith(plan, draft, plain, {
    ...change,
    ...(mode ? { modeId: mode.id } : {}),
    ...(cell('paired') === undefined ? {} : { paired: ['paired', 'yes', '1'].includes(paired) }),
    ...(cell('parted') === undefined ? {} : { spans: spans.value }),
  });
};

/** The dimmer as a row has it. */
const dimmerChangedBy = (
  plan: Plan,
  draft: Draft,
  b: Box,
  cell: (c: Column) => string | undefined,
): Result<Box> => {
  const universe = cell('universe') ?? '';
  const address = cell('address') ?? '';
  if (universe === '' && address === '') return dimmerPatchedWith(plan, draft, b, undefined);
  const place = placeIn(universe, address);
  return place.ok ? dimmerPatchedWith(plan, draft, b, place.value) : place;
};

const nameOf = (r: Fixture | Box): string => (r.type === 'box' ? r.label : r.unit);

const placeIn = (universe: string, address: string): Result<{ universe: number; address: number }> => {
  if (universe === '') return parseAddress(address);
  const number = universe.replace(/^u\s*/i, '');
  if (!/^\d+$/.test(number))
    return fail({ what: `“${universe}” is not a universe.`, todo: 'Write its number, like 3.' });
  if (!/^\d+$/.test(address))
    return fail({ what: `“${address}” is not an address.`, todo: 'Write a whole number from 1 to 512.' });
  return parseAddress(`${number}/${address}`);
};

const partedIn = (text: string): Result<NonNullable<PatchChange['spans']>> => {
  const spans: { fromSlot: number; universe: number; address: number }[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const m = /^(\d+)=(\d+)\/(\d+)$/.exec(word);
    const at = m && parseAddress(`${m[2]}/${m[3]}`);
    if (!m || !at?.ok)
      return fail({ what: `“${word}” tells no place to go on.`, todo: 'Write it like 171=4/1.' });
    spans.push({ fromSlot: Number(m[1]), ...at.value });
  }
  return ok(spans);
};

const printed = (plan: Plan, draft: Draft, f: Fixture | Box): string => {
  if (!f.patch) return '';
  const number = (id: Id): number => {
    const u = draft.get(id);
    return u?.type === 'universe' ? u.number : Number.NaN;
  };
  const mode = f.type === 'fixture' ? patchedMode(plan, f) : undefined;
  const places = f.type === 'fixture' && f.patch ? [f.patch, ...(f.patch.spans ?? [])] : [f.patch];
  return `${places.map((p) => printAddress({ universe: number(p.universeId), address: p.address })).join(' + ')}${mode ? `, ${mode.name}` : ''}`;
};
