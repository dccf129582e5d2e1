import { CONNECTOR_WORDS, startPort } from '../../derive/data-lines.ts';
import { dataNet, startPorts } from '../../derive/data-net.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { ok, problemText, type Result } from '../../kernel/result.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { changeLine, setStart } from '../../plan/edits/lines.ts';
import { recordName } from '../../plan/names.ts';
import { type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import type { DataLine } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { LineOrder } from './LineOrder.tsx';
import './lines.css';

/** Everything a line can start from, port by port. */
export const startChoices = (
  plan: Plan,
): readonly {
  readonly key: string;
  readonly recordId: string;
  readonly portId: string;
  readonly words: string;
}[] =>
  [...recordsOf(plan, 'device'), ...recordsOf(plan, 'fixture')]
    .flatMap((r) =>
      startPorts(plan, r.id).map((p) => ({
        key: `${r.id}/${p.id}`,
        recordId: r.id,
        portId: p.id,
        device: r.type === 'device',
        words: `${'label' in r && r.type === 'device' ? r.label : recordName(plan, r)}, ${p.label ?? p.id} (${CONNECTOR_WORDS[p.connector]})`,
      })),
    )
    .sort((a, b) => Number(b.device) - Number(a.device) || compareNatural(a.words, b.words));

/** What a line carries, for people. */
export const carriedWords = (plan: Plan, line: DataLine): string => {
  const c = dataNet(plan).carried.get(line.id);
  if (!c || c.ring) return 'leads back into itself';
  if (c.all) return 'network, any universe';
  const numbers = [...c.universes]
    .map((id) => recordOf(plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b);
  if (numbers.length === 0) return c.unset ? 'port not set' : 'no data';
  return numbers.map((n) => `U${n}`).join(', ') + (c.dead ? ' (no data)' : '');
};

const parsePct = (text: string): Result<number | undefined> => {
  const t = text.replace('%', '').replace(',', '.').trim();
  if (t === '') return ok(undefined);
  const n = Number(t);
  return Number.isFinite(n) && n >= 0
    ? ok(n)
    : { ok: false, error: { what: `“${text}” is not a share.`, todo: 'Write per cent, like 10.' } };
};

/** A data line: where it starts, what it carries, what it reaches, and its end. */
export const LineRows = ({ line }: { readonly line: DataLine }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const off = readOnly || line.locked === true;
  const name = recordName(plan, line);
  const commit = (label: string, r: Result<ChangeSet>): void => {
    session.set({ message: r.ok ? '' : problemText(r.error) });
    if (r.ok) session.commit(label, r.value);
  };
  const choices = startChoices(plan);
  const key = `${line.from.recordId}/${line.from.portId}`;
  return (
    <div className="line-rows">
      <Row label="Starts from">
        <select
          className="inline-input"
          aria-label="Starts from"
          disabled={off}
          value={key}
          onChange={(e) => {
            const c = choices.find((x) => x.key === e.target.value);
            if (c) commit(`Start ${name} elsewhere`, setStart(plan, line.id, c));
          }}
        >
          {choices.some((c) => c.key === key) ? null : <option value={key}>a port that is not there</option>}
          {choices.map((c) => (
            <option key={c.key} value={c.key}>
              {c.words}
            </option>
          ))}
        </select>
      </Row>
      <Row label="Carries">{carriedWords(plan, line)}</Row>
      <Row label="Connector">{CONNECTOR_WORDS[startPort(plan, line)?.connector ?? 'xlr-5']}</Row>
      <Field
        label="Slack"
        value={line.slackPct}
        format={(v) => (v === undefined ? '' : `${v} %`)}
        parse={parsePct}
        disabled={off}
        hint={line.slackPct === undefined ? 'as usual, assumed' : undefined}
        onCommit={(slackPct) => commit(`Slack of ${name}`, changeLine(plan, line.id, { slackPct }))}
      />
      <label className="line-check">
        <input
          type="checkbox"
          checked={line.terminated}
          disabled={off}
          onChange={(e) =>
            commit(`Terminator of ${name}`, changeLine(plan, line.id, { terminated: e.target.checked }))
          }
        />
        terminator in the last unit
      </label>
      <label className="line-check">
        <input
          type="checkbox"
          checked={line.remote ?? false}
          disabled={off}
          onChange={(e) =>
            commit(`Remote management of ${name}`, changeLine(plan, line.id, { remote: e.target.checked }))
          }
        />
        remote management wanted
      </label>
      <LineOrder line={line} />
    </div>
  );
};
