import type { Plan } from '../../src/plan/plan.ts';
import { stage } from './stage.ts';
import { street } from './street.ts';
import { study } from './study.ts';

/** Every demo by its slug, made anew. */
export const demoMakers: Readonly<Record<string, () => Plan>> = {
  study,
  street,
  stage,
};
