import type { Meter } from '../../report/summary.ts';

/** Key of a figure in another setup than the one it was asked for. */
export const inSetup = (figureKey: string, setupId: string | undefined): string | undefined =>
  setupId === undefined ? undefined : `${figureKey.slice(0, figureKey.lastIndexOf('@'))}@${setupId}`;

/** Key of a current in its worst setup. */
export const worstKey = (m: Pick<Meter, 'figureKey' | 'worstSetupId'>): string | undefined =>
  inSetup(m.figureKey, m.worstSetupId);
