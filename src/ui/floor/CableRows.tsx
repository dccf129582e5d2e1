import { cableLength } from '../../derive/lengths.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatCableLength, formatLength, type LengthUnits, parseLengthMm } from '../../kernel/units.ts';
import { setPieces, setSlack } from '../../plan/edits/routes.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import { placeOf } from '../../plan/ports.ts';
import type { Cable } from '../../plan/records/index.ts';
import { useCommands } from '../commands.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** A share as typed: `10`, `10 %`; empty leaves it to the usual. */
const parseShare = (t: string): Result<number | undefined> => {
  const s = t.replace('%', '').replace(',', '.').trim();
  if (s === '') return ok(undefined);
  const n = Number(s);
  return n >= 0 && n <= 200
    ? ok(n)
    : fail({ what: `“${t}” is no share.`, todo: 'Write 0 to 200 percent, or nothing for the usual.' });
};

/** Pieces as typed: `25 + 10`, `2 × 25, 10`; empty leaves them to be made up. Only lengths the stock has. */
const parsePieces = (t: string, stock: readonly number[], units: LengthUnits): Result<readonly number[]> => {
  const pieces: number[] = [];
  for (const part of t.split(/[+;]|,\s/).map((s) => s.trim())) {
    if (part === '') continue;
    const m = /^(?:(\d{1,2})\s*[x×*]\s*)?(.+)$/i.exec(part);
    const mm = parseLengthMm(m?.[2] ?? '', units);
    if (!mm.ok) return mm;
    const near = stock.find((x) => Math.abs(x - mm.value) < 60);
    if (near === undefined)
      return fail({
        what: `This cable is not stocked in ${formatCableLength(mm.value, units)}.`,
        todo: `Write pieces of ${stock.map((x) => formatCableLength(x, units)).join(', ')}, like 25 + 10.`,
      });
    for (let n = Number(m?.[1] ?? 1); n > 0; n--) pieces.push(near);
  }
  return ok(pieces);
};

/** How a cable lies and how long it is: its way, rises and drops, slack, and the pieces that make it up. */
export const CableRows = ({ cable }: { readonly cable: Cable }) => {
  const { session } = useServices();
  const { run } = useCommands();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const l = cableLength(plan, cable);
  if (!l) return <p className="soft">One end is not on the drawing, so it has no length.</p>;
  const rises = [cable.from, cable.to].map((end) => Math.abs(placeOf(plan, end.recordId)?.heightMm ?? 0));
  const bends = cable.route.points.length;
  const stock = kindOf(plan, cable.kindId, 'cable')?.stockLengthsMm ?? [];
  return (
    <>
      <Row label="Route">
        {cable.route.auto ? 'laid by itself' : 'laid by hand'}
        <span className="row-hint">
          {bends} {bends === 1 ? 'corner' : 'corners'}
        </span>
        {cable.route.auto ? (
          <span className="row-hint">pull a corner to lay it by hand</span>
        ) : (
          <button
            type="button"
            className="link row-hint"
            disabled={readOnly}
            onClick={() => run('let-route')}
          >
            lay by itself
          </button>
        )}
      </Row>
      <Row label="Drawn">{formatLength(l.drawnMm, units)}</Row>
      <Row label="Rises">
        {formatLength(l.risesMm, units)}
        <span className="row-hint">{rises.map((mm) => formatLength(mm, units)).join(' + ')} at its ends</span>
      </Row>
      <Field
        label="Slack"
        value={cable.slackPct}
        format={(v) => (v === undefined ? '' : `${v} %`)}
        parse={parseShare}
        disabled={readOnly}
        hint={`${formatLength(l.slackMm, units)}${l.slackAssumed ? ', the usual, assumed' : ''}`}
        onCommit={(v) => session.commit('Change slack', setSlack(plan, cable.id, v))}
      />
      <Row label="Needs">{formatLength(l.neededMm, units)}</Row>
      <Field
        label="Pieces"
        value={l.piecesMm}
        format={(mm) => mm.map((x) => formatCableLength(x, units)).join(' + ')}
        parse={(t) => parsePieces(t, stock, units)}
        disabled={readOnly || cable.locked === true || stock.length === 0}
        hint={`${l.couplings === 0 ? 'no coupling' : l.couplings === 1 ? '1 coupling' : `${l.couplings} couplings`}${
          l.piecesAssumed ? '' : ', chosen by hand; empty it to have them made up'
        }`}
        onCommit={(mm) => session.commit('Choose pieces of a cable', setPieces(plan, cable.id, mm))}
      />
      {stock.length > 0 ? (
        <Row label="Stock">
          <span className="soft">{stock.map((mm) => formatCableLength(mm, units)).join(', ')}</span>
        </Row>
      ) : null}
    </>
  );
};
