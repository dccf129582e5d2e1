import { dataNet } from '../../derive/data-net.ts';
import { placesOf } from '../../engines/control/index.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import { printAddress } from '../../plan/address.ts';
import { dimmerSlots } from '../../plan/edits/dimmer-patch.ts';
import { footprintOf, patchedMode } from '../../plan/footprint.ts';
import type { FixtureKind, Mode } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Box, Fixture } from '../../plan/records/index.ts';
import { controlBy, takesData } from '../../report/control-by.ts';
import { setupLink } from '../../report/setup-steps.ts';
import type { Finding } from '../../report/types.ts';

/** One line of the patch table: a unit, or a dimmer with a slot a way. */
export interface TableRow {
  readonly id: Id;
  /** Number of the unit, label of the dimmer. */
  readonly name: string;
  readonly fixture: Fixture | undefined;
  readonly dimmer: Box | undefined;
  readonly kindName: string;
  readonly patched: boolean;
  readonly kind: FixtureKind | undefined;
  readonly mode: Mode | undefined;
  /** Its kind has modes, so it can take control data. */
  readonly takesData: boolean;
  readonly universe: number | undefined;
  readonly address: number | undefined;
  readonly slots: number | undefined;
  /** The last slot as printed, or where a parted unit goes on. */
  readonly last: string;
  /** The line that reaches it, or what its radio link is with; empty where nothing does. */
  readonly link: string;
  /** How it is controlled, where it takes no data. */
  readonly control: string;
  readonly findings: readonly Finding[];
}

export type Show = 'all' | 'patched' | 'unpatched' | 'line' | 'radio' | 'no-link' | 'no-data' | 'findings';
export type SortBy = 'unit' | 'address' | 'channel' | 'kind' | 'link';

export const SHOWS: readonly { readonly id: Show; readonly words: string }[] = [
  { id: 'all', words: 'all units' },
  { id: 'patched', words: 'with an address' },
  { id: 'unpatched', words: 'without an address' },
  { id: 'line', words: 'on a data line' },
  { id: 'radio', words: 'by radio' },
  { id: 'no-link', words: 'patched, reached by nothing' },
  { id: 'no-data', words: 'not on control data' },
  { id: 'findings', words: 'with findings' },
];

/** Labels of the lines a unit is on, or of the transmitter it is linked to. */
export const linkLabel = (plan: Plan, f: Fixture): string => {
  const lines = dataNet(plan).into.get(f.id) ?? [];
  if (lines.length > 0) return lines.map((l) => l.label).join(' ');
  const { transmitter, receiver } = setupLink(plan, f);
  return f.link === 'radio' ? [transmitter?.label, receiver?.label].filter(Boolean).join(' ') : '';
};

/** Dimmers that listen to control data, as rows. */
const dimmerRows = (plan: Plan, about: ReadonlyMap<string, readonly Finding[]>): readonly TableRow[] =>
  recordsOf(plan, 'box').flatMap((dimmer): TableRow[] => {
    const slots = dimmerSlots(plan, dimmer);
    const { patch } = dimmer;
    if (slots === 0 && !patch) return [];
    return [
      {
        id: dimmer.id,
        name: dimmer.label,
        fixture: undefined,
        dimmer,
        kindName: kindOf(plan, dimmer.kindId)?.name ?? '',
        patched: patch !== undefined,
        kind: undefined,
        mode: undefined,
        takesData: true,
        universe: patch && recordOf(plan, 'universe', patch.universeId)?.number,
        address: patch?.address,
        slots,
        last: patch && slots > 0 ? String(patch.address + slots - 1) : '',
        link: (dataNet(plan).into.get(dimmer.id) ?? []).map((l) => l.label).join(' '),
        control: '',
        findings: about.get(dimmer.id) ?? [],
      },
    ];
  });

/** Every fixture of the plan and every dimmer with its patch, in the order of their numbers. */
export const tableRows = (plan: Plan, findings: readonly Finding[]): readonly TableRow[] => {
  const about = new Map<string, Finding[]>();
  for (const f of findings)
    if (f.rule.startsWith('control-'))
      for (const id of f.recordIds) {
        const list = about.get(id);
        if (list) list.push(f);
        else about.set(id, [f]);
      }
  const units = recordsOf(plan, 'fixture').map((fixture): TableRow => {
    const kind = kindOf(plan, fixture.kindId, 'fixture');
    const mode = patchedMode(plan, fixture);
    const places = placesOf(plan, fixture);
    const [first, ...rest] = places;
    const slots = mode ? footprintOf(mode).slots : undefined;
    const here = (rest[0]?.fromSlot ?? (slots ?? 0) + 1) - 1;
    return {
      id: fixture.id,
      name: fixture.unit,
      fixture,
      dimmer: undefined,
      kindName: kind?.name ?? '',
      patched: fixture.patch !== undefined,
      kind,
      mode,
      takesData: takesData(plan, fixture),
      link: linkLabel(plan, fixture),
      control: takesData(plan, fixture) ? '' : controlBy(plan, fixture).words,
      universe: first?.universe,
      address: first?.address,
      slots,
      last: first && slots ? [String(first.address + here - 1), ...rest.map(printAddress)].join(' + ') : '',
      findings: about.get(fixture.id) ?? [],
    };
  });
  return [...units, ...dimmerRows(plan, about)].sort((a, b) => compareNatural(a.name, b.name));
};

export const shows = (r: TableRow, show: Show): boolean => {
  switch (show) {
    case 'all':
      return true;
    case 'patched':
      return r.patched;
    case 'unpatched':
      return r.takesData && !r.patched;
    case 'line':
      return r.takesData && r.fixture?.link !== 'radio' && r.link !== '';
    case 'radio':
      return r.takesData && r.fixture?.link === 'radio';
    case 'no-link':
      return r.patched && r.link === '';
    case 'no-data':
      return !r.takesData;
    case 'findings':
      return r.findings.length > 0;
  }
};

const matches = (r: TableRow, words: readonly string[]): boolean => {
  const text =
    `${r.name} ${r.kindName} ${r.dimmer ? 'dimmer' : ''} ${r.fixture?.use ?? ''} ${r.fixture?.channel ?? ''} ${r.mode?.name ?? ''} ${r.fixture?.link ?? ''} ${r.link} ${r.control} ${r.universe === undefined ? '' : `u${r.universe} ${r.address}`}`.toLowerCase();
  return words.every((w) => text.includes(w));
};

const channelOf = (r: TableRow): string => r.fixture?.channel ?? '';

const far = Number.MAX_SAFE_INTEGER;

const SORTS: Readonly<Record<SortBy, (a: TableRow, b: TableRow) => number>> = {
  unit: () => 0,
  address: (a, b) => (a.universe ?? far) - (b.universe ?? far) || (a.address ?? far) - (b.address ?? far),
  channel: (a, b) =>
    Number(channelOf(a) === '') - Number(channelOf(b) === '') || compareNatural(channelOf(a), channelOf(b)),
  kind: (a, b) => compareNatural(a.kindName, b.kindName),
  link: (a, b) => Number(a.link === '') - Number(b.link === '') || compareNatural(a.link, b.link),
};

export const filterRows = (
  rows: readonly TableRow[],
  f: {
    readonly query: string;
    readonly show: Show;
    readonly universe: number | undefined;
    readonly sort: SortBy;
  },
): readonly TableRow[] => {
  const words = f.query.toLowerCase().split(/\s+/).filter(Boolean);
  return rows
    .filter(
      (r) =>
        shows(r, f.show) &&
        (f.universe === undefined ||
          r.universe === f.universe ||
          r.last.split(' + ').some((p) => p.startsWith(`U${f.universe} `))) &&
        matches(r, words),
    )
    .sort(SORTS[f.sort]);
};
