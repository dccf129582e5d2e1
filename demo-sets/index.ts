/** A plan shown on the start page: an invented production. `load` gives the plan file's JSON as data. */
export interface DemoSet {
  readonly slug: string;
  readonly title: string;
  readonly story: string;
  /** Address of a small picture of the drawing. */
  readonly picture: string;
  readonly load: () => Promise<unknown>;
}

const json = (module: { readonly default: unknown }): unknown => module.default;

export const demoPlans: readonly DemoSet[] = [
  {
    slug: 'study',
    picture: new URL('./pictures/study.png', import.meta.url).href,
    title: 'Study, day',
    story:
      'A small room on two 20 A wall circuits, drawn on the scout. Thirteen units; circuit 7 comes close to what it may carry, and a full day on packs fails by one pack.',
    load: () => import('./study.plan.json', { with: { type: 'json' } }).then(json),
  },
  {
    slug: 'street',
    picture: new URL('./pictures/street.png', import.meta.url).href,
    title: 'Street, night',
    story:
      'A street front past midnight on one 100 kW generator. Forty-eight units on eight boxes; one 2.5 kW unit hangs on a 20 A way, and one run is too long.',
    load: () => import('./street.plan.json', { with: { type: 'json' } }).then(json),
  },
  {
    slug: 'stage',
    picture: new URL('./pictures/stage.png', import.meta.url).href,
    title: 'Stage, three sets',
    story:
      'A studio stage in metres on a 230/400 V service. Seventy-one units, twenty-four of them pixel tubes over five universes, in five setups.',
    load: () => import('./stage.plan.json', { with: { type: 'json' } }).then(json),
  },
];
