import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { restackUnderlay, underlaysOn } from '../../plan/edits/underlays.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Underlay } from '../../plan/records/index.ts';
import { useCommands } from '../commands.ts';
import { Field, Row } from '../common/Field.tsx';
import { anyText, text } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { askAbout } from './ask-about.ts';

const parseFade = (t: string): Result<number> => {
  const n = Number(t.replace('%', '').trim());
  return t.trim() !== '' && n >= 0 && n <= 100
    ? ok(n)
    : fail({ what: `“${t}” is not a fade.`, todo: 'Write 0 (full) to 100 (not shown).' });
};

/** Name, fade, angle, size, order and lock of an underlay. */
export const UnderlayRows = ({ underlay: u }: { readonly underlay: Underlay }) => {
  const { session } = useServices();
  const { run } = useCommands();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const off = readOnly || u.locked === true;
  const all = underlaysOn(plan, u.floorId);
  const place = all.findIndex((x) => x.id === u.id);
  const edit = (label: string, patch: Partial<Underlay>): void => commit(label, changeRecord(plan, u, patch));
  const commit = (label: string, r: Result<ChangeSet>): void => {
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  const widthMm = u.widthUnits * u.mmPerUnit;
  return (
    <>
      <Field
        label="Name"
        value={u.name}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(name) => edit('Rename underlay', { name })}
      />
      <Field
        label="Fade"
        value={u.fadePct}
        format={(v) => `${v} %`}
        parse={parseFade}
        disabled={readOnly}
        onCommit={(fadePct) => edit('Fade underlay', { fadePct })}
      />
      <Field
        label="Width"
        value={widthMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => {
          const r = parseLengthMm(t, units);
          return r.ok && r.value <= 0 ? fail({ what: 'A width is more than nothing.' }) : r;
        }}
        hint={u.scaled ? 'to scale' : 'a guess; not scaled yet'}
        disabled={off}
        onCommit={(mm) => edit('Size underlay', { mmPerUnit: mm / u.widthUnits, scaled: true })}
      />
      <Row label="Order">
        {place + 1} of {all.length}
        <button
          type="button"
          className="link"
          disabled={readOnly || place === all.length - 1}
          onClick={() => session.commit('Raise underlay', restackUnderlay(plan, u.id, 1))}
        >
          raise
        </button>
        <button
          type="button"
          className="link"
          disabled={readOnly || place === 0}
          onClick={() => session.commit('Lower underlay', restackUnderlay(plan, u.id, -1))}
        >
          lower
        </button>
      </Row>
      <Row label="Print">
        <label className="state-check">
          <input
            type="checkbox"
            checked={u.onPaper !== false}
            disabled={readOnly}
            onChange={(e) => edit('Print underlay or not', { onPaper: e.target.checked })}
          />
          on paper
        </label>
      </Row>
      <p className="scout-buttons">
        <button type="button" className="button" disabled={off} onClick={() => run('tool-scale')}>
          Scale from a known length
        </button>
        <button
          type="button"
          className="button"
          disabled={readOnly}
          onClick={() => askAbout(session, 'underlay', u.id)}
        >
          Replace…
        </button>
      </p>
    </>
  );
};
