import { CONNECTOR_WORDS, startPort } from '../../derive/data-lines.ts';
import { dataNet, startPorts } from '../../derive/data-net.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { ok, problemText, type Result } from '../../kernel/result.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { setPortUniverses } from '../../plan/edits/devices.ts';
import { changeLine, setLineKind, setStart } from '../../plan/edits/lines.ts';
import type { DataCableKind } from '../../plan/kinds/kinds.ts';
import { recordName } from '../../plan/names.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import type { DataLine } from '../../plan/records/index.ts';
import { networkOf } from '../../report/control.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { isSet, PortCell } from './DeviceRows.tsx';
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

/** The one universe all patched units of a line are on, where its port names none yet. */
const commonUniverse = (plan: Plan, line: DataLine): number | undefined => {
  if (!dataNet(plan).carried.get(line.id)?.unset || !recordOf(plan, 'device', line.from.recordId))
    return undefined;
  const ids = new Set(
    line.stops.flatMap((id) => {
      const patch = recordOf(plan, 'fixture', id)?.patch ?? recordOf(plan, 'box', id)?.patch;
      return patch ? [patch.universeId] : [];
    }),
  );
  const [id] = ids;
  return ids.size === 1 && id !== undefined ? recordOf(plan, 'universe', id)?.number : undefined;
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
  const { session, book } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const off = readOnly || line.locked === true;
  const name = recordName(plan, line);
  const commit = (label: string, r: Result<ChangeSet>): void => {
    session.set({ message: r.ok ? '' : problemText(r.error) });
    if (r.ok) session.commit(label, r.value);
  };
  const choices = startChoices(plan);
  const connector = startPort(plan, line)?.connector ?? 'xlr-5';
  const own = line.kindId === undefined ? undefined : kindOf(plan, line.kindId, 'dataCable');
  const fitting = book
    .kinds()
    .filter((k): k is DataCableKind => k.family === 'dataCable' && k.connector === connector);
  const cables = own && !fitting.some((k) => k.id === own.id) ? [own, ...fitting] : fitting;
  const suggested = commonUniverse(plan, line);
  const node = networkOf(plan).nodes.find((n) => n.deviceId === line.from.recordId);
  const record = recordOf(plan, 'device', line.from.recordId);
  const device = node && record ? { record, family: node.family } : undefined;
  const port = node?.ports.find((p) => p.port.id === line.from.portId);
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
      <Row label="Carries">
        {device && port && isSet(device.family, port) ? (
          <>
            <span className="soft">U </span>
            <PortCell
              device={device.record}
              port={port}
              disabled={off || device.record.locked === true}
              label={`Universes that ${name} carries`}
            />
          </>
        ) : (
          carriedWords(plan, line)
        )}
        {suggested === undefined ? null : (
          <button
            type="button"
            className="link row-hint"
            disabled={off}
            onClick={() =>
              commit(
                `Set the port of ${name}`,
                setPortUniverses(plan, line.from.recordId, line.from.portId, [suggested]),
              )
            }
          >
            set the port to U{suggested}
          </button>
        )}
      </Row>
      <Row label="Cable">
        <select
          className="inline-input"
          aria-label="Cable"
          disabled={off}
          value={line.kindId ?? ''}
          onChange={(e) =>
            commit(
              `Cable of ${name}`,
              setLineKind(
                plan,
                line.id,
                cables.find((k) => k.id === e.target.value),
              ),
            )
          }
        >
          <option value="">{CONNECTOR_WORDS[connector]}, kind not said</option>
          {cables.map((k) => (
            <option key={k.id} value={k.id}>
              {k.name}
            </option>
          ))}
        </select>
      </Row>
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
