import { startPorts } from '../../derive/data-net.ts';
import type { Id } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { addLine, canStop, setStops } from '../../plan/edits/lines.ts';
import type { DataCableKind } from '../../plan/kinds/kinds.ts';
import { recordName } from '../../plan/names.ts';
import { type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { placeOf } from '../../plan/ports.ts';
import type { DataLine, PortRef } from '../../plan/records/index.ts';
import { NO_OVERLAY } from '../overlay.ts';
import { capital } from '../words.ts';
import { clearTraces, hitMm, type PointerInfo, type Tool, type ToolContext } from './tool.ts';

const HINT = 'Press on the desk, node or splitter the line starts from, then on what it reaches, in order.';

/** A line being drawn: a new one from a port, or one that goes on from its last stop. */
interface Draft {
  readonly from: PortRef;
  readonly goesOn: DataLine | undefined;
  readonly stops: readonly Id[];
}

/** The first port of a thing that no line starts from yet, wire before network; else its first. */
const freePort = (plan: Plan, id: Id): string | undefined => {
  const taken = new Set(
    recordsOf(plan, 'line')
      .filter((l) => l.from.recordId === id)
      .map((l) => l.from.portId),
  );
  const ports = startPorts(plan, id);
  // A splitter's through goes on with its own line; its outputs are what it is there for.
  const rank = (p: (typeof ports)[number]): number =>
    Number(taken.has(p.id)) * 4 + Number(p.connector === 'ethernet') * 2 + Number(p.id === 'through');
  return [...ports].sort((a, b) => rank(a) - rank(b))[0]?.id;
};

/** The first data cable of the book with the ends of a port. */
const usualCable = (ctx: ToolContext, from: PortRef): DataCableKind | undefined => {
  const port = startPorts(ctx.session.getState().plan, from.recordId).find((p) => p.id === from.portId);
  return ctx.book
    .kinds()
    .find((k): k is DataCableKind => k.family === 'dataCable' && k.connector === port?.connector);
};

/** The line that ends at a thing and can go on from there. */
const lineEndingAt = (plan: Plan, id: Id): DataLine | undefined =>
  recordOf(plan, 'fixture', id) && recordsOf(plan, 'line').find((l) => l.stops.at(-1) === id && !l.locked);

/** Draws a data line: a press on where it starts, one on each stop, Enter (or a second press on the last) ends it. */
export const createLineTool = (): Tool => {
  let draft: Draft | undefined;

  const reset = (ctx: ToolContext): void => {
    draft = undefined;
    clearTraces(ctx);
  };

  const at = (ctx: ToolContext, e: PointerInfo): Id | undefined => {
    const { plan } = ctx.session.getState();
    return ctx.picker.pick(
      e.at,
      hitMm(ctx, e),
      (r) => canStop(plan, r.id) || startPorts(plan, r.id).length > 0,
    );
  };

  /** Shows the line as far as it goes, and a rubber line to the pointer. */
  const show = (ctx: ToolContext, e: PointerInfo | undefined): void => {
    const { plan } = ctx.session.getState();
    if (!draft) return;
    const last = draft.stops.at(-1) ?? draft.goesOn?.stops.at(-1) ?? draft.from.recordId;
    const from = placeOf(plan, last)?.at;
    const made = edit(ctx, draft);
    const over = e && at(ctx, e);
    const target = over === undefined || over === last ? undefined : placeOf(plan, over)?.at;
    ctx.session.set({
      preview: made?.ok ? made.value : undefined,
      overlay:
        from && e
          ? {
              ...NO_OVERLAY,
              rubber: { from, to: target ?? e.at, what: 'data', fits: target !== undefined },
              target,
            }
          : NO_OVERLAY,
    });
  };

  const edit = (ctx: ToolContext, d: Draft) => {
    const { plan } = ctx.session.getState();
    if (d.stops.length === 0) return undefined;
    if (d.goesOn) return setStops(plan, d.goesOn.id, [...d.goesOn.stops, ...d.stops]);
    // While drawing it keeps one id; the real one is given when it ends.
    const made = addLine(plan, d.from, d.stops, () => 'ln:drawn');
    return made.ok ? { ok: true as const, value: made.value.changes } : made;
  };

  const count = (d: Draft): string =>
    d.stops.length === 0
      ? 'now press on what it reaches, in order.'
      : `${d.stops.length} ${d.stops.length === 1 ? 'stop' : 'stops'}. Enter ends it, Backspace takes the last away.`;

  const begin = (ctx: ToolContext, id: Id): void => {
    const { plan, session } = { plan: ctx.session.getState().plan, session: ctx.session };
    const goesOn = lineEndingAt(plan, id);
    const portId = freePort(plan, id);
    if (!goesOn && portId === undefined) {
      session.set({ message: `${capital(recordName(plan, id))} gives no data. ${HINT}` });
      return;
    }
    draft = { from: goesOn?.from ?? { recordId: id, portId: portId ?? '' }, goesOn, stops: [] };
    const what = goesOn ? `${capital(recordName(plan, goesOn))} goes on` : `From ${recordName(plan, id)}`;
    session.set({ selection: new Set([id]), message: `${what}: ${count(draft)}` });
  };

  const end = (ctx: ToolContext): boolean => {
    const { plan, session } = { plan: ctx.session.getState().plan, session: ctx.session };
    if (!draft || draft.stops.length === 0) return false;
    const d = draft;
    reset(ctx);
    if (d.goesOn) {
      const r = setStops(plan, d.goesOn.id, [...d.goesOn.stops, ...d.stops]);
      if (r.ok) session.commit(`Lengthen ${recordName(plan, d.goesOn)}`, r.value);
      session.set({
        selection: new Set([d.goesOn.id]),
        message: r.ok
          ? `${capital(recordName(plan, d.goesOn))} reaches ${d.stops.length} more.`
          : problemText(r.error),
      });
      return true;
    }
    const r = addLine(plan, d.from, d.stops, session.newId, usualCable(ctx, d.from));
    if (!r.ok) {
      session.set({ message: problemText(r.error) });
      return true;
    }
    session.commit(`Draw ${recordName(plan, r.value.line)}`, r.value.changes);
    session.set({
      selection: new Set([r.value.line.id]),
      message: `${capital(recordName(plan, r.value.line))} reaches ${d.stops.length} ${d.stops.length === 1 ? 'stop' : 'stops'}. Its port and order are on the right.`,
    });
    return true;
  };

  return {
    id: 'line',
    hint: HINT,
    onPointerDown: (ctx, e) => {
      const { plan, readOnly } = ctx.session.getState();
      if (readOnly) return;
      const id = at(ctx, e);
      if (id === undefined) {
        ctx.session.set({
          message: draft
            ? `Nothing that takes data there. Enter ends the line.`
            : `Nothing there gives data. ${HINT}`,
        });
        return;
      }
      if (!draft) {
        begin(ctx, id);
        show(ctx, e);
        return;
      }
      if (id === draft.stops.at(-1)) {
        end(ctx);
        return;
      }
      const next: Draft = { ...draft, stops: [...draft.stops, id] };
      const made = edit(ctx, next);
      if (made && !made.ok) {
        ctx.session.set({ message: problemText(made.error) });
        return;
      }
      draft = next;
      ctx.session.set({ message: `${capital(recordName(plan, id))}: ${count(next)}` });
      show(ctx, e);
    },
    onPointerMove: show,
    onPointerUp: () => undefined,
    onPointerCancel: reset,
    onKey: (ctx, key) => {
      if (!draft) return false;
      if (key === 'Enter') return end(ctx);
      if (key === 'Backspace') {
        draft = { ...draft, stops: draft.stops.slice(0, -1) };
        ctx.session.set({ message: count(draft) });
        show(ctx, undefined);
        return true;
      }
      if (key !== 'Escape') return false;
      reset(ctx);
      ctx.session.set({ message: HINT });
      return true;
    },
    cursor: () => 'crosshair',
  };
};
