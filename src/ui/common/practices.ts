import type { Country, Practice } from '../../plan/records/index.ts';

/** Practices and the countries whose own rules lie over them, as people read them. */
export const PRACTICES: Readonly<Record<Practice, string>> = {
  'north-america': 'North America',
  europe: 'Europe',
};

export const COUNTRIES: Readonly<Record<Practice, readonly (readonly [Country, string])[]>> = {
  'north-america': [
    ['us', 'United States'],
    ['canada', 'Canada'],
  ],
  europe: [
    ['eu', 'European Union'],
    ['uk', 'United Kingdom'],
    ['australia', 'Australia'],
  ],
};
