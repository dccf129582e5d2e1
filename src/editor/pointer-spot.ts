import type { Point } from '../kernel/geometry.ts';
import { wholeSession } from './on-setup.ts';
import type { Session } from './session.ts';

const spots = new WeakMap<Session, Point>();

/** Notes where on the floor the pointer is, or that it is not over it. It changes too often to be part of the state. */
export const notePointer = (session: Session, at: Point | undefined): void => {
  if (at) spots.set(wholeSession(session), at);
  else spots.delete(wholeSession(session));
};

/** Where things go that are placed from the keyboard: under the pointer where it is over the floor, else in the middle of the view. */
export const keyboardSpot = (session: Session): Point => {
  const { center } = session.getState().camera;
  const { xMm, yMm } = spots.get(wholeSession(session)) ?? center;
  return { xMm: Math.round(xMm), yMm: Math.round(yMm) };
};
