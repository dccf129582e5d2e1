import { cableLength } from '../derive/lengths.ts';
import type { SupplyEntity } from '../derive/types.ts';
import { stockText } from '../drawing/one-line/words.ts';
import { connector } from '../plan/connectors.ts';
import { portName, recordName } from '../plan/names.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { Cable } from '../plan/records/index.ts';
import { readerOf } from './figures.ts';
import type { SetInfo } from './sheet-info.ts';

/** One run of cable as the crew pulls it. */
export interface Run {
  /** `R1`, `R2` … in the order of pulling: from the sources outwards. */
  readonly number: string;
  readonly cable: Cable;
  readonly entity: SupplyEntity | undefined;
  readonly from: string;
  readonly to: string;
  readonly kindName: string;
  readonly kindId: string;
  readonly pieces: string;
  readonly piecesMm: readonly number[];
  readonly couplings: number;
  readonly plug: string;
  readonly socket: string;
  readonly routeMm: number;
}

const connectorName = (id: string | undefined): string =>
  id === undefined ? '' : (connector(id)?.name ?? id);

/** All runs of a plan in the order they are pulled: what is nearest to a source first, what no source feeds last. */
export const runsOf = (info: SetInfo): readonly Run[] => {
  const { plan } = info;
  const r = readerOf(info.assessment, info.setupId);
  const units = planRecord(plan).lengthUnits;
  const fed = info.assessment.entities
    .filter((e) => e.what === 'cable')
    .map((e, i) => ({ e, i }))
    .sort((a, b) => rank(a.e) - rank(b.e) || a.e.depth - b.e.depth || a.i - b.i)
    .map(({ e }) => e.recordId);
  const rest = recordsOf(plan, 'cable').filter((c) => !fed.includes(c.id));
  const cables = [...fed.flatMap((id) => recordOf(plan, 'cable', id) ?? []), ...rest];
  return cables.map((cable, i) => {
    const kind = kindOf(plan, cable.kindId, 'cable');
    const length = cableLength(plan, cable);
    return {
      number: cable.label || `R${i + 1}`,
      cable,
      entity: r.entity(cable.id),
      from: portName(plan, cable.from),
      to: recordName(plan, cable.to.recordId)
        .replace(/^unit /, 'Unit ')
        .replace(/^box /, ''),
      kindName: kind?.name ?? 'kind not in the plan',
      kindId: cable.kindId,
      pieces: stockText(length?.piecesMm ?? [], units),
      piecesMm: length?.piecesMm ?? [],
      couplings: length?.couplings ?? 0,
      plug: connectorName(kind?.plug),
      socket: connectorName(kind?.socket),
      routeMm: length ? length.drawnMm + length.risesMm : Number.NaN,
    };
  });
};

/** Fed runs before loose ones. */
const rank = (e: SupplyEntity): number => (e.sourceId === undefined ? 1 : 0);
