import { useState } from 'react';
import { type Limit, limitCitation, limitsOf } from '../../../derive/limits.ts';
import { fail, ok, type Result } from '../../../kernel/result.ts';
import { withLimit } from '../../../plan/edits/settings.ts';
import { planRecord } from '../../../plan/plan.ts';
import { anyText, text } from '../../common/parse.ts';
import { TypedCell } from '../../common/TypedCell.tsx';
import { useUi } from '../../ui-state.ts';
import type { SectionProps } from './sections.ts';

type Group = 'power' | 'rigging' | 'battery' | 'control' | 'radio' | 'site' | 'own';

const GROUPS: readonly (readonly [Group, string])[] = [
  ['power', 'power'],
  ['battery', 'batteries and day'],
  ['control', 'control data'],
  ['radio', 'radio'],
  ['rigging', 'stands and wind'],
  ['site', 'places to keep clear'],
  ['own', 'set in this plan'],
];

const PREFIXES: readonly (readonly [RegExp, Group])[] = [
  [/^rigging-/, 'rigging'],
  [/^(battery|station|fuel|continuous-|breaker-short)/, 'battery'],
  [/^radio-/, 'radio'],
  [/^(overhead|keep-clear|cable-crossing)/, 'site'],
  [/^(line-|network-|universe-)/, 'control'],
];

const groupOf = (id: string): Group => PREFIXES.find(([re]) => re.test(id))?.[1] ?? 'power';

const parseValue = (t: string): Result<number> => {
  const n = Number(t.trim().replace('−', '-').replace(',', '.'));
  return t.trim() !== '' && Number.isFinite(n)
    ? ok(n)
    : fail({ what: `“${t}” is not a number.`, todo: 'Write the value alone, like 0.8.' });
};

/** Every limit the checks use, where it is from, and the plan's own in its place. A reason is asked for and printed. */
export const RulesSection = ({ draft, disabled, onPlan }: SectionProps) => {
  const [find, setFind] = useState(useUi((u) => u.settingsFind));
  const [group, setGroup] = useState<Group>('power');
  const words = find.toLowerCase().split(/\s+/).filter(Boolean);
  const rows = [...limitsOf(draft).values()].filter((l) =>
    words.length > 0
      ? words.every((w) => `${l.id} ${l.text} ${l.unit}`.toLowerCase().includes(w))
      : group === 'own'
        ? l.override !== undefined
        : groupOf(l.id) === group,
  );
  return (
    <>
      <div className="settings-find">
        <input
          className="input"
          aria-label="Find a rule"
          placeholder="Find a rule in all groups"
          value={find}
          onChange={(e) => setFind(e.target.value)}
        />
        <label>
          Group{' '}
          <select className="input" value={group} onChange={(e) => setGroup(e.target.value as Group)}>
            {GROUPS.map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className="soft small">
        A value of your own replaces the table’s in every check and prints with its reason. It makes nothing
        allowed: local codes and the authority having jurisdiction prevail.
      </p>
      {rows.length === 0 ? <p className="soft">No rule here.</p> : null}
      <table className="table settings-rules">
        <thead>
          <tr>
            <th scope="col">Rule</th>
            <th scope="col">Value</th>
            <th scope="col">Why, where it is your own</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((l) => (
            <RuleRow key={l.id} limit={l} draft={draft} disabled={disabled} onPlan={onPlan} />
          ))}
        </tbody>
      </table>
    </>
  );
};

const RuleRow = ({
  limit: l,
  draft,
  disabled,
  onPlan,
}: Pick<SectionProps, 'draft' | 'disabled' | 'onPlan'> & { readonly limit: Limit }) => {
  const reason = planRecord(draft).limits.find((x) => x.limit === l.id)?.reason ?? '';
  return (
    <tr>
      <td>
        {l.text}
        <div className="soft small">
          {l.override ? `The table says ${l.override.tableValue}.` : limitCitation(l)}
        </div>
      </td>
      <td className="settings-value">
        <TypedCell
          label={`Value of ${l.id}`}
          value={l.value}
          format={String}
          parse={parseValue}
          disabled={disabled}
          onCommit={(v) => onPlan(withLimit(draft, l.id, v, reason))}
        />{' '}
        <span className="soft small">{l.unit}</span>
      </td>
      <td>
        {l.override ? (
          <>
            <TypedCell
              label={`Reason for ${l.id}`}
              value={reason}
              format={text}
              parse={anyText}
              placeholder="reason, needed"
              wide
              disabled={disabled}
              onCommit={(v) => onPlan(withLimit(draft, l.id, l.value, v))}
            />{' '}
            <button
              type="button"
              className="link small"
              disabled={disabled}
              aria-label={`Table’s value of ${l.id}`}
              onClick={() => onPlan(withLimit(draft, l.id, undefined, ''))}
            >
              table’s value
            </button>
          </>
        ) : (
          <span className="soft small">{l.id}</span>
        )}
      </td>
    </tr>
  );
};
