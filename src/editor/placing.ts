import type { Point } from '../kernel/geometry.ts';
import type { Id, NewId } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { type ChangeSet, compose, peekChanges } from '../plan/change-set.ts';
import { addCharger } from '../plan/edits/day.ts';
import { addFloorPack } from '../plan/edits/floor-packs.ts';
import { placeGrip, placeRigging } from '../plan/edits/grip.ts';
import { hangOn, lineUnder } from '../plan/edits/hang.ts';
import {
  placeBox,
  placeDevice,
  placeFixture,
  placeMark,
  placeSource,
  placeStand,
} from '../plan/edits/place.ts';
import { placeSetPiece } from '../plan/edits/set-piece.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord, Mark } from '../plan/records/index.ts';
import type { Book } from './book.ts';
import { OPTIONS } from './options.ts';

export interface PlaceThere {
  /** Slug of a kind, or `mark:camera`, `mark:talent`, `mark:note`. */
  readonly slug: string;
  readonly floorId: Id;
  readonly at: Point;
  readonly facingDeg: number;
}

export interface Placed {
  readonly changes: ChangeSet;
  readonly id: Id;
  readonly name: string;
}

const MARKS: readonly Mark['what'][] = ['camera', 'talent', 'note'];

/** What a placing would put on the floor. Kinds come from the book, else from the plan itself. */
export const placeThere = (plan: Plan, book: Book, what: PlaceThere, newId: NewId): Result<Placed> => {
  const mark = MARKS.find((m) => what.slug === `mark:${m}`);
  if (mark) {
    const placed = placeMark(plan, mark, what.floorId, what.at, newId);
    return ok({
      ...turned(placed.changes, what.facingDeg),
      id: placed.mark.id,
      name: `mark ${placed.mark.name}`,
    });
  }
  const kind = book.find(what.slug) ?? recordsOf(plan, 'kind').find((k) => k.slug === what.slug);
  if (!kind) {
    return fail({ what: 'This kind is not in the gear book.', todo: 'Choose another from the gear shelf.' });
  }
  switch (kind.family) {
    case 'fixture': {
      const hung = kind.mount.fits.includes('hung') || kind.mount.fits.every((m) => m === 'clamp');
      const tube = kind.mount.fits.some((m) => m === 'clamp' || m === 'hung')
        ? lineUnder(plan, what.floorId, what.at, OPTIONS.tubeReachMm)
        : undefined;
      const ceiling = recordOf(plan, 'floor', what.floorId)?.ceilingMm ?? OPTIONS.hungHeightMm;
      const { changes, fixture } = placeFixture(
        plan,
        {
          kind,
          ballast: kind.needsBallast ? book.ballastFor(kind.slug) : undefined,
          floorId: what.floorId,
          at: what.at,
          heightMm: hung ? ceiling : OPTIONS.floorHeightMm,
          facingDeg: what.facingDeg,
        },
        newId,
      );
      const all = tube
        ? compose(changes, hangOn(peekChanges(plan, changes), [fixture.id], tube.rigging.id))
        : changes;
      return ok({ changes: all, id: fixture.id, name: `unit ${fixture.unit}` });
    }
    case 'stand': {
      const { changes, stand } = placeStand(plan, kind, what.floorId, what.at, newId);
      return ok({ ...turned(changes, what.facingDeg), id: stand.id, name: 'a stand' });
    }
    case 'dimmer':
    case 'adapter':
    case 'converter':
    case 'box': {
      const { changes, box } = placeBox(plan, kind, what.floorId, what.at, newId);
      return ok({ ...turned(changes, what.facingDeg), id: box.id, name: `box ${box.label}` });
    }
    case 'charger': {
      const changes = addCharger(plan, kind, what.floorId, what.at, newId);
      const made = changes.added.find((r) => r.type === 'charger');
      return ok({ ...turned(changes, what.facingDeg), id: made?.id ?? '', name: 'a charger' });
    }
    case 'pack': {
      const { changes, pack } = addFloorPack(plan, kind, what.floorId, what.at, newId);
      return ok({ ...turned(changes, what.facingDeg), id: pack.id, name: `pack ${pack.label}` });
    }
    case 'source': {
      const { changes, source } = placeSource(plan, kind, what.floorId, what.at, newId);
      return ok({ ...turned(changes, what.facingDeg), id: source.id, name: `source ${source.label}` });
    }
    case 'camera': {
      const { changes, mark: m } = placeMark(plan, 'camera', what.floorId, what.at, newId, kind);
      return ok({ ...turned(changes, what.facingDeg), id: m.id, name: `mark ${m.name}` });
    }
    case 'furniture':
    case 'vehicle': {
      const { changes, piece } = placeSetPiece(plan, { ...what, kind, rotationDeg: what.facingDeg }, newId);
      return ok({ changes, id: piece.id, name: kind.name });
    }
    case 'grip': {
      const usual = kind.stand === undefined ? undefined : book.find(kind.stand);
      const stand = usual?.family === 'stand' ? usual : undefined;
      const { changes, grip } = placeGrip(plan, { ...what, kind, stand, rotationDeg: what.facingDeg }, newId);
      return ok({ changes, id: grip.id, name: kind.name });
    }
    case 'rigging': {
      const ceiling = recordOf(plan, 'floor', what.floorId)?.ceilingMm ?? OPTIONS.hungHeightMm;
      const hung = kind.heightMinMm === undefined;
      const where = {
        ...what,
        kind,
        rotationDeg: what.facingDeg,
        heightMm: hung ? ceiling : (kind.heightMinMm ?? 0),
      };
      const { changes, rigging } = placeRigging(plan, where, newId);
      return ok({ changes, id: rigging.id, name: `${kind.name} ${rigging.label}` });
    }
    case 'dataCable':
      return fail({
        what: 'A data cable runs along a data line.',
        todo: 'Draw the line from a data port; then choose its cable.',
      });
    case 'cable':
      return fail({
        what: 'A cable runs between two things.',
        todo: 'Use the Cable tool and press on both.',
      });
    case 'ballast':
      return fail({
        what: 'A ballast comes with its head.',
        todo: 'Place the head; its ballast comes along.',
      });
    case 'transmitter':
    case 'receiver':
    case 'repeater':
    case 'node':
    case 'dataSplitter':
    case 'video': {
      const { changes, device } = placeDevice(plan, kind, what.floorId, what.at, newId);
      return ok({ ...turned(changes, what.facingDeg), id: device.id, name: `${kind.name} ${device.label}` });
    }
  }
};

/** What was added, turned to a facing. Boxes and the like stand straight at a facing of 0. */
const turned = (changes: ChangeSet, deg: number): { readonly changes: ChangeSet } => ({
  changes: {
    ...changes,
    added: changes.added.map((r): AnyRecord => {
      if (r.type === 'mark') return { ...r, facingDeg: deg };
      if ('rotationDeg' in r && typeof r.rotationDeg === 'number')
        return { ...r, rotationDeg: deg } as AnyRecord;
      return r;
    }),
  },
});
