import { dataNet } from '../../derive/data-net.ts';
import { placesOf } from '../../engines/control/index.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { printAddress } from '../../plan/address.ts';
import { footprintOf, patchedMode } from '../../plan/footprint.ts';
import type { FixtureKind, Mode } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { controlBy, takesData } from '../../report/control-by.ts';
import { setupLink } from '../../report/setup-steps.ts';
import type { Finding } from '../../report/types.ts';

/** One line of the patch table. */
export interface TableRow {
  readonly fixture: Fixture;
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

/** Every fixture of the plan with its patch, in the order of its number. */
export const tableRows = (plan: Plan, findings: readonly Finding[]): readonly TableRow[] => {
  const about = new Map<string, Finding[]>();
  for (const f of findings)
    if (f.rule.startsWith('control-'))
      for (const id of f.recordIds) {
        const list = about.get(id);
        if (list) list.push(f);
        else about.set(id, [f]);
      }
  return recordsOf(plan, 'fixture')
    .map((fixture) => {
      const kind = kindOf(plan, fixture.kindId, 'fixture');
      const mode = patchedMode(plan, fixture);
      const places = placesOf(plan, fixture);
      const [first, ...rest] = places;
      const slots = mode ? footprintOf(mode).slots : undefined;
      const here = (rest[0]?.fromSlot ?? (slots ?? 0) + 1) - 1;
      return {
        fixture,
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
    })
    .sort((a, b) => compareNatural(a.fixture.unit, b.fixture.unit));
};

export const shows = (r: TableRow, show: Show): boolean => {
  switch (show) {
    case 'all':
      return true;
    case 'patched':
      return r.fixture.patch !== undefined;
    case 'unpatched':
      return r.takesData && !r.fixture.patch;
    case 'line':
      return r.takesData && r.fixture.link !== 'radio' && r.link !== '';
    case 'radio':
      return r.takesData && r.fixture.link === 'radio';
    case 'no-link':
      return r.fixture.patch !== undefined && r.link === '';
    case 'no-data':
      return !r.takesData;
    case 'findings':
      return r.findings.length > 0;
  }
};

const matches = (r: TableRow, words: readonly string[]): boolean => {
  const text =
    `${r.fixture.unit} ${r.kind?.name ?? ''} ${r.fixture.use} ${r.fixture.channel} ${r.mode?.name ?? ''} ${r.fixture.link} ${r.link} ${r.control} ${r.universe === undefined ? '' : `u${r.universe} ${r.address}`}`.toLowerCase();
  return words.every((w) => text.includes(w));
};

const far = Number.MAX_SAFE_INTEGER;

const SORTS: Readonly<Record<SortBy, (a: TableRow, b: TableRow) => number>> = {
  unit: () => 0,
  address: (a, b) => (a.universe ?? far) - (b.universe ?? far) || (a.address ?? far) - (b.address ?? far),
  channel: (a, b) =>
    Number(a.fixture.channel === '') - Number(b.fixture.channel === '') ||
    compareNatural(a.fixture.channel, b.fixture.channel),
  kind: (a, b) => compareNatural(a.kind?.name ?? '', b.kind?.name ?? ''),
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
