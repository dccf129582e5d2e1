import { setLinks } from '../../plan/edits/radio.ts';
import { planInSetup, wholePlan } from '../../plan/moves.ts';
import { kindOf } from '../../plan/plan.ts';
import type { Device, Fixture } from '../../plan/records/index.ts';
import { computeRadio, formatDb, radioKey, servedBy } from '../../report/radio.ts';
import { Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { LinkSelect } from './RadioLinks.tsx';
import { RadioVerdict } from './RadioVerdict.tsx';
import './radio.css';

/** How a unit gets its data; by radio: from which transmitter, and with what margin. */
export const FixtureRadioRows = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  if (!fixture.patch && !kindOf(plan, fixture.kindId, 'fixture')?.modes.some((m) => m.slots > 0)) return null;
  return (
    <>
      <Row label="Data by">
        <select
          className="inline-input"
          aria-label="Data by"
          disabled={readOnly || fixture.locked === true}
          value={fixture.link}
          onChange={(e) =>
            session.commit(
              `Data of unit ${fixture.unit}`,
              setLinks(plan, [fixture.id], e.target.value as Fixture['link']),
            )
          }
        >
          <option value="none">not said</option>
          <option value="line">line</option>
          <option value="radio">radio</option>
        </select>
      </Row>
      {fixture.link === 'radio' ? <Heard id={fixture.id} /> : null}
    </>
  );
};

/** Radio of a transmitter, receiver or repeater: what it serves or hears. */
export const DeviceRadioRows = ({ device }: { readonly device: Device }) => {
  const plan = useSessionSlice((s) => s.plan);
  const kind = kindOf(plan, device.kindId, 'transmitter', 'receiver', 'repeater');
  if (!kind) return null;
  const r = computeRadio(plan);
  const served = servedBy(r).get(device.id) ?? [];
  const worst = served
    .flatMap((l) => r.links.get(l.id) ?? [])
    .filter((k) => Number.isFinite(k.marginDb))
    .reduce<{ marginDb: number; listenerId: string } | undefined>(
      (a, k) => (a && a.marginDb <= k.marginDb ? a : k),
      undefined,
    );
  return (
    <>
      <h3 className="inspector-head">Radio</h3>
      {kind.family === 'transmitter' ? null : <Heard id={device.fixtureId ?? device.id} />}
      {kind.family === 'receiver' ? null : (
        <Row label="Serves">
          {served.length === 0 ? 'nothing yet' : served.map((l) => l.label).join(', ')}
          {worst ? (
            <span className="row-hint">
              worst {r.model.listeners.get(worst.listenerId)?.label}{' '}
              <Figure figureKey={radioKey('radioMarginDb', worst.listenerId, device.id)}>
                {formatDb(worst.marginDb)}
              </Figure>
            </span>
          ) : null}
        </Row>
      )}
    </>
  );
};

const Heard = ({ id }: { readonly id: string }) => {
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  const whole = wholePlan(plan);
  const there = planInSetup(whole, setupId);
  const r = computeRadio(there);
  const link = r.links.get(id);
  return (
    <>
      <Row label="Linked to">
        <LinkSelect listenerId={id} result={r} />
      </Row>
      <Row label="Margin">
        {link && link.notComputed === undefined ? (
          <>
            <Figure
              figureKey={radioKey('radioMarginDb', id, link.senderId, there === whole ? undefined : setupId)}
            >
              {formatDb(link.marginDb)}
            </Figure>{' '}
            <RadioVerdict verdict={link.verdict} />
          </>
        ) : (
          <span className="soft">{link?.notComputed ?? 'no link'}</span>
        )}
      </Row>
    </>
  );
};
