import { describe, expect, test } from 'vitest';
import { clipOf, clipText, pasteClip } from '../../../src/editor/clipboard.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { needKind } from '../../../src/gear/index.ts';
import { point } from '../../../src/kernel/geometry.ts';
import { blobOf } from '../../../src/plan/blobs.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { addLine, setHopRoute } from '../../../src/plan/edits/lines.ts';
import { addPhoto } from '../../../src/plan/edits/photos.ts';
import { placeDevice } from '../../../src/plan/edits/place.ts';
import { addUnderlay } from '../../../src/plan/edits/underlays.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, type FloorRig, floorRig } from '../../support/floor.ts';
import { pngOf } from '../../support/pictures.ts';
import { need } from '../../support/storage-world.ts';

const plan = (rig: FloorRig) => rig.session.getState().plan;
const picture = (n: number) =>
  blobOf(
    pngOf(20, 10, (x) => [x, n, 0]),
    'image/png',
  );

const scouted = () => {
  const rig = floorRig();
  const source = { name: 'scan', what: 'image' as const, blob: picture(1), widthUnits: 20, heightUnits: 10 };
  const made = need(
    addUnderlay(
      plan(rig),
      { source, floorId: rig.floorId, centre: point(3000, 2500), guessWidthMm: 4000 },
      rig.session.newId,
    ),
  );
  rig.add(made.changes);
  return { rig, underlay: made.underlay.id };
};

const pasted = (text: string, off = 0) => {
  const other = floorRig();
  const made = need(pasteClip(plan(other), text, other.floorId, { xMm: off, yMm: 0 }, other.session.newId));
  other.add(made.changes);
  return { other, made };
};

describe('pictures and lines between plans', () => {
  test('an underlay takes its picture along, once', () => {
    const { rig, underlay } = scouted();
    const text = clipText(plan(rig), new Set([underlay]));
    const { other, made } = pasted(text);
    expect(made.left).toBe(0);
    const [copy] = recordsOf(plan(other), 'underlay');
    expect(copy).toMatchObject({ name: 'scan', floorId: other.floorId, mmPerUnit: 200 });
    expect(recordOf(plan(other), 'blob', copy?.blobId ?? '')?.base64).toBe(picture(1).base64);
    const again = need(pasteClip(plan(other), text, other.floorId, { xMm: 0, yMm: 0 }, other.session.newId));
    other.add(again.changes);
    expect(recordsOf(plan(other), 'underlay')).toHaveLength(2);
    expect(recordsOf(plan(other), 'blob')).toHaveLength(1);
    expect(referenceProblems(plan(other))).toEqual([]);
  });

  test('bytes that are not what their name says are not taken in, and the paste says something is missing', () => {
    const { rig, underlay } = scouted();
    const text = clipText(plan(rig), new Set([underlay]));
    const forged = text.replace(picture(1).base64, picture(2).base64);
    expect(forged).not.toBe(text);
    const { other, made } = pasted(forged);
    expect(made.left).toBe(1);
    expect(recordsOf(plan(other), 'blob')).toEqual([]);
    expect(recordsOf(plan(other), 'underlay')).toEqual([]);
  });

  test('what is too large for the clipboard stays behind, and copying says so', () => {
    const { rig, underlay } = scouted();
    const blob = recordsOf(plan(rig), 'blob')[0];
    if (!blob) throw new Error('no picture');
    const big = { ...blob, base64: 'A'.repeat(20_000_004) };
    rig.add({ added: [], updated: [{ from: blob, to: big }], removed: [] });
    const unit = addUnit(rig, 'led-panel-60x60', 1000, 2000);
    expect(clipOf(plan(rig), new Set([underlay, unit])).left).toEqual([underlay]);
    rig.session.set({ selection: new Set([underlay, unit]) });
    command('copy').perform(rig);
    expect(rig.session.getState().message).toMatch(/^Copied unit 1\. .*cannot be copied/);
  });

  test('a data line goes along with all it joins, with its ways laid by hand, and stays behind without them', () => {
    const rig = floorRig();
    const a = addUnit(rig, 'led-panel-60x60', 2000, 1000);
    const node = placeDevice(
      plan(rig),
      needKind('north-america', 'desk-2', 'node'),
      rig.floorId,
      point(0, 1000),
      rig.session.newId,
    );
    rig.add(node.changes);
    const line = need(
      addLine(plan(rig), { recordId: node.device.id, portId: 'out-1' }, [a], rig.session.newId),
    );
    rig.add(line.changes);
    rig.session.load(
      applyChanges(plan(rig), setHopRoute(plan(rig), line.line.id, 0, [point(0, 3000), point(2000, 3000)])),
    );
    const whole = pasted(clipText(plan(rig), new Set([a, node.device.id])), 500);
    const copy = recordsOf(plan(whole.other), 'line')[0];
    expect(copy?.routes).toEqual([{ hop: 0, points: [point(500, 3000), point(2500, 3000)] }]);
    expect(copy?.stops).toEqual(recordsOf(plan(whole.other), 'fixture').map((f) => f.id));
    expect(referenceProblems(plan(whole.other))).toEqual([]);
    const part = pasted(clipText(plan(rig), new Set([a])));
    expect(recordsOf(plan(part.other), 'line')).toEqual([]);
  });

  test('a photo keeps its picture and gets a free label', () => {
    const rig = floorRig();
    const made = need(
      addPhoto(
        plan(rig),
        { floorId: rig.floorId, at: point(1, 2), blob: picture(3), widthPx: 20, heightPx: 10, caption: '' },
        rig.session.newId,
      ),
    );
    rig.add(made.changes);
    const { other } = pasted(clipText(plan(rig), new Set(recordsOf(plan(rig), 'photo').map((p) => p.id))));
    expect(recordsOf(plan(other), 'photo')).toHaveLength(1);
    expect(recordsOf(plan(other), 'blob').map((b) => b.id)).toEqual([picture(3).id]);
  });
});
