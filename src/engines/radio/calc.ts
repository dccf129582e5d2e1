/** Speed of light in vacuum, m/s (exact by the definition of the metre). */
export const LIGHT_MPS = 299_792_458;

const log10 = Math.log10;

/** Wavelength in metres of a frequency in MHz. */
export const wavelengthM = (fMhz: number): number => LIGHT_MPS / (fMhz * 1e6);

/** Loss in free space in dB over a distance in metres: 20 · log(4 π d ÷ λ) (ITU-R P.525). */
export const freeSpaceDb = (fMhz: number, distanceM: number): number =>
  20 * log10((4 * Math.PI * distanceM) / wavelengthM(fMhz));

/** Distance in metres at which free space costs so many dB: the inverse of `freeSpaceDb`. */
export const freeSpaceM = (fMhz: number, lossDb: number): number =>
  (10 ** (lossDb / 20) * wavelengthM(fMhz)) / (4 * Math.PI);

/**
 * Loss indoors in dB over a distance in metres, with the distance power loss coefficient in dB per decade and the loss
 * of the floors crossed: 20 · log f + N · log d + L(n) − 28, f in MHz, d from 1 m on (ITU-R P.1238, to edition 9).
 */
export const indoorDb = (fMhz: number, distanceM: number, coefficient: number, floorsDb = 0): number =>
  20 * log10(fMhz) + coefficient * log10(Math.max(1, distanceM)) + floorsDb - 28;

/**
 * Loss indoors in dB after the newer form: 10 α log d + β + 10 γ log f, d in metres, f in GHz, the spread left out
 * (ITU-R P.1238 from edition 10 on).
 */
export const indoorNewDb = (
  fMhz: number,
  distanceM: number,
  c: { readonly alpha: number; readonly beta: number; readonly gamma: number },
): number => 10 * c.alpha * log10(distanceM) + c.beta + 10 * c.gamma * log10(fMhz / 1000);

/** Radius in metres of the n-th Fresnel zone at so many metres from the two ends: √(n λ d1 d2 ÷ (d1 + d2)) (ITU-R P.526). */
export const fresnelM = (fMhz: number, d1M: number, d2M: number, n = 1): number =>
  Math.sqrt((n * wavelengthM(fMhz) * d1M * d2M) / (d1M + d2M));

/** How far an edge stands in the way, without a unit: h · √(2 (d1 + d2) ÷ (λ d1 d2)), h above the line in metres (ITU-R P.526). */
export const edgeNu = (fMhz: number, heightM: number, d1M: number, d2M: number): number =>
  heightM * Math.sqrt((2 * (d1M + d2M)) / (wavelengthM(fMhz) * d1M * d2M));

/** Below this an edge costs nothing. */
export const EDGE_FREE_NU = -0.78;

/** Loss of a knife edge in dB: 6.9 + 20 · log(√((ν − 0.1)² + 1) + ν − 0.1) from ν = −0.78 on, else 0 (ITU-R P.526). */
export const edgeDb = (nu: number): number =>
  nu > EDGE_FREE_NU ? 6.9 + 20 * log10(Math.sqrt((nu - 0.1) ** 2 + 1) + nu - 0.1) : 0;

/** Metres beyond which the ground costs more than free space does: 4 h1 h2 ÷ λ. */
export const breakpointM = (fMhz: number, h1M: number, h2M: number): number =>
  (4 * h1M * h2M) / wavelengthM(fMhz);

/** Loss over flat ground beyond the break point in dB: 40 · log d − 20 · log(h1 h2). */
export const groundDb = (distanceM: number, h1M: number, h2M: number): number =>
  40 * log10(distanceM) - 20 * log10(h1M * h2M);

/** Share of the time that a signal with this margin is above its limit when its power spreads exponentially (Rayleigh). */
export const availability = (marginDb: number): number => Math.exp(-(10 ** (-marginDb / 10)));

/** dB below the axis at an angle from it: 12 · (angle ÷ beam)², at most `mostDb` (form of 3GPP TR 36.814). */
export const patternDb = (angleDeg: number, beamDeg: number, mostDb: number): number =>
  Math.min(mostDb, 12 * (angleDeg / beamDeg) ** 2);
