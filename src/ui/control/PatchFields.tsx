import { breakPlaces, DIP_WEIGHTS, dipSwitches } from '../../engines/control/index.ts';
import { ok } from '../../kernel/result.ts';
import { type Address, parseAddress, printAddress } from '../../plan/address.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { setBreak } from '../../plan/edits/patch.ts';
import { footprintOf, patchedMode } from '../../plan/footprint.ts';
import { kindOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { changePatch, commitOr, numberOf, unpatch } from './patching.ts';
import { linkLabel } from './rows.ts';

/** Mode, universe and address of one unit, for the inspector. */
export const PatchFields = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const kind = kindOf(plan, fixture.kindId, 'fixture');
  const mode = patchedMode(plan, fixture);
  const universe = numberOf(plan, fixture);
  const { patch } = fixture;
  if (!patch && !kind?.modes.some((m) => m.slots > 0))
    return (
      <Row label="Address">
        <span className="soft">not on control data</span>
      </Row>
    );
  const tell = (why: string | undefined): void => session.set({ message: why ?? '' });
  const at = patch && universe !== undefined ? { universe, address: patch.address } : undefined;
  const slots = mode ? footprintOf(mode).slots : 0;
  const breaks = breakPlaces(plan, fixture);
  return (
    <>
      <Row label="Mode">
        <select
          className="inline-input"
          aria-label="Mode"
          disabled={readOnly}
          value={mode?.id ?? ''}
          onChange={(e) =>
            tell(
              changePatch(
                session,
                fixture.id,
                patch ? { modeId: e.target.value } : { modeId: e.target.value, universe: 1 },
              ),
            )
          }
        >
          {mode ? null : <option value="">{patch ? 'mode missing' : 'choose'}</option>}
          {(kind?.modes ?? []).map((m) => (
            <option key={m.id} value={m.id}>
              {m.name}
            </option>
          ))}
        </select>
      </Row>
      <Field<Address | undefined>
        label="Address"
        value={at}
        format={(a) => (a ? printAddress(a) : '')}
        parse={(t) => (t.trim() === '' ? ok(undefined) : parseAddress(t, universe))}
        disabled={readOnly}
        hint={
          !at
            ? 'like U3 418'
            : patch?.spans?.length
              ? `${slots} slots, parted`
              : slots > 1
                ? `${slots} slots, to ${at.address + slots - 1}`
                : '1 slot'
        }
        onCommit={(a) =>
          a === undefined
            ? unpatch(session, [fixture.id], `Take the address of unit ${fixture.unit} away`)
            : tell(changePatch(session, fixture.id, a))
        }
      />
      {breaks.length > 1
        ? breaks
            .slice(1)
            .map((b, i) => (
              <Field<Address>
                key={b.fromSlot}
                label={`Break ${i + 2}`}
                value={{ universe: b.universe, address: b.address }}
                format={printAddress}
                parse={(t) => parseAddress(t, b.universe)}
                disabled={readOnly}
                hint={`from its slot ${b.fromSlot}`}
                onCommit={(a) =>
                  tell(
                    commitOr(
                      session,
                      `Address of break ${i + 2} of unit ${fixture.unit}`,
                      setBreak(session.getState().plan, fixture.id, b.fromSlot, a.universe, a.address),
                    ),
                  )
                }
              />
            ))
        : null}
      <Row label="Link">
        <select
          className="inline-input"
          aria-label="Link"
          disabled={readOnly}
          value={fixture.link}
          onChange={(e) =>
            tell(
              commitOr(
                session,
                `Link of unit ${fixture.unit}`,
                changeRecord(session.getState().plan, fixture, {
                  link: e.target.value as Fixture['link'],
                }),
              ),
            )
          }
        >
          <option value="none">not set</option>
          <option value="line">data line</option>
          <option value="radio">radio</option>
        </select>
        {linkLabel(plan, fixture) ? <span className="row-hint">{linkLabel(plan, fixture)}</span> : null}
      </Row>
      {kind?.addressBy === 'switches' && at ? <Switches address={at.address} /> : null}
    </>
  );
};

/** Nine switches as they stand for an address, by both conventions. */
const Switches = ({ address }: { readonly address: number }) => (
  <>
    {(['sum', 'sum-less-one'] as const).map((how) => {
      const on = dipSwitches(address, how);
      const words = how === 'sum' ? 'Switches' : 'or less 1';
      return (
        <Row key={how} label={words}>
          {on.ok ? (
            <svg
              className="dip"
              width="126"
              height="26"
              role="img"
              aria-label={`on: ${on.value.join(', ') || 'none'}`}
            >
              {DIP_WEIGHTS.map((w, i) => (
                <g key={w} transform={`translate(${i * 14} 0)`}>
                  <rect className="dip-slot" x="1" y="1" width="10" height="16" />
                  <rect
                    className="dip-knob"
                    x="2"
                    y={on.value.includes(i + 1) ? 2 : 9}
                    width="8"
                    height="7"
                  />
                  <text className="dip-number" x="6" y="25">
                    {i + 1}
                  </text>
                </g>
              ))}
            </svg>
          ) : (
            <span className="soft">{on.error.what}</span>
          )}
          <span className="row-hint">see the unit’s manual</span>
        </Row>
      );
    })}
  </>
);
