import { always, type EngineFinding } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { names, senderFindings } from './findings-senders.ts';
import { radioKey } from './keys.ts';
import { type RadioResult, takes } from './links.ts';
import type { Listener } from './types.ts';
import { freeHopsMhz } from './wifi.ts';

const universeWords = (plan: Plan, id: Id): string => recordLabel(plan, recordOf(plan, 'universe', id));

/** The link of each unit and receiver: there is none, its universe is not on it, its band does not fit, it is thin. */
const linkFindings = (r: RadioResult, out: EngineFinding[]): void => {
  const { plan, senders, listeners } = r.model;
  const lost: Listener[] = [];
  const unheard: Listener[] = [];
  for (const l of listeners.values()) {
    const label = l.label;
    if (l.what === 'repeater') continue;
    if (senders.size === 0) {
      lost.push(l);
      continue;
    }
    const named = l.linkId === undefined ? undefined : senders.get(l.linkId);
    if (l.linkId !== undefined && !named) {
      const what = recordLabel(plan, plan.records.get(l.linkId));
      out.push(always('radio-link', 'stop', l.id, [l.id], { label, what }));
      continue;
    }
    if (named && !takes(l, named.band)) {
      const bands = (l.bands ?? []).map((b) => `${b.fromMhz} to ${b.toMhz} MHz`).join(', ');
      const sends = `${named.band.fromMhz} to ${named.band.toMhz} MHz`;
      out.push(
        always('radio-band', 'stop', l.id, [l.id, named.id], { label, sender: named.label, bands, sends }),
      );
      continue;
    }
    const link = r.links.get(l.id);
    const over = named ?? (link ? senders.get(link.senderId) : undefined);
    if (l.universeIds.length === 0) {
      if (l.what === 'receiver' || !over) unheard.push(l);
    } else {
      const missing = l.universeIds.filter((u) =>
        named
          ? !r.carried.get(named.id)?.includes(u)
          : ![...senders.keys()].some((s) => r.carried.get(s)?.includes(u)),
      );
      const first = missing[0];
      if (first !== undefined) {
        const universe = universeWords(plan, first);
        out.push(
          named
            ? always('radio-universe', 'stop', l.id, [l.id, named.id], {
                label,
                universe,
                sender: named.label,
              })
            : always('radio-carrier', 'stop', l.id, [l.id], { label, universe }),
        );
        if (!named) continue;
      }
    }
    if (!link || !over) continue;
    if (!Number.isFinite(link.marginDb)) {
      out.push(
        always('radio-no-way', 'warn', l.id, [l.id, over.id], {
          label,
          sender: over.label,
          why: link.notComputed ?? '',
        }),
      );
      continue;
    }
    if (link.verdict === 'weak' || (link.verdict === 'none' && !over.mesh)) {
      const better = r.choices.get(l.id)?.find((k) => k.marginDb > link.marginDb + 3);
      out.push({
        ...always('radio-margin', link.verdict === 'none' ? 'warn' : 'note', l.id, [l.id, over.id], {
          label,
          sender: over.label,
          marginDb: link.marginDb,
          better: better ? (senders.get(better.senderId)?.label ?? '') : '',
          betterDb: better?.marginDb ?? 0,
        }),
        figureKey: radioKey('radioMarginDb', l.id, over.id),
        figure: -link.marginDb,
      });
    }
  }
  const ids = (list: readonly Listener[]): readonly string[] => list.map((l) => l.id);
  if (unheard.length > 0)
    out.push(
      always('radio-unpatched', 'warn', 'plan', ids(unheard), {
        count: unheard.length,
        labels: names(unheard.map((l) => l.label)),
      }),
    );
  if (lost.length > 0)
    out.push(
      always(
        'radio-no-transmitter',
        'warn',
        'plan',
        lost.map((l) => l.id),
        {
          count: lost.length,
          labels: names(lost.map((l) => l.label)),
        },
      ),
    );
  const deaf = [...listeners.values()].filter((l) => l.what === 'fixture' && l.assumed);
  if (deaf.length > 0)
    out.push(
      always(
        'radio-receiver',
        'note',
        'plan',
        deaf.map((l) => l.id),
        {
          count: deaf.length,
          labels: names(deaf.map((l) => l.label)),
          sensitivityDbm: limitOf(plan, 'radio-sensitivity').value,
        },
      ),
    );
};

/** Units of a mesh that no way of few enough hops reaches. */
const hopFindings = (r: RadioResult, out: EngineFinding[]): void => {
  for (const link of r.links.values()) {
    const s = r.model.senders.get(link.senderId);
    const l = r.model.listeners.get(link.listenerId);
    if (!s?.mesh || !l || link.verdict !== 'none') continue;
    out.push(
      always('radio-hops', 'warn', l.id, [l.id, s.id], {
        label: l.label,
        sender: s.label,
        most: s.mesh.hopsMax,
      }),
    );
  }
};

const airFindings = (r: RadioResult, out: EngineFinding[]): void => {
  const { plan, senders, air } = r.model;
  const busy = [...senders.values()].filter((s) => s.band.fromMhz < 2484 && s.band.toMhz > 2400);
  const free = freeHopsMhz(air.wifiChannels).length;
  const least = limitOf(plan, 'radio-hops-least').value;
  if (busy.length > 0 && free < least)
    out.push(
      always(
        'radio-wifi',
        'note',
        'plan',
        busy.map((s) => s.id),
        {
          channels: air.wifiChannels.join(', '),
          free,
          all: limitOf(plan, 'radio-hops-all').value,
          least,
        },
      ),
    );
};

/** Repeaters and transmitters whose kind the plan lost, so that nothing of them is computed. */
const kindFindings = (plan: Plan, out: EngineFinding[]): void => {
  for (const d of recordsOf(plan, 'device'))
    if (!kindOf(plan, d.kindId))
      out.push(always('radio-kind', 'warn', d.id, [d.id], { label: recordLabel(plan, d) }));
};

/** What is wrong or worth knowing with the radio links of a plan, in a stable order. */
export const findingsOf = (r: RadioResult): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  kindFindings(r.model.plan, out);
  linkFindings(r, out);
  senderFindings(r, out);
  hopFindings(r, out);
  airFindings(r, out);
  return out;
};
