import { cleanText, numberOf, positiveOf } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

/** What a fixture file says of the power a unit takes. */
export interface FilePower {
  readonly wattsW: number;
  readonly powerFactor?: number;
  readonly voltsMinV?: number;
  readonly voltsMaxV?: number;
  /** Where in the file the watts are from, in words. */
  readonly from: string;
  /** Light sources only: losses of driver, fans and motors come on top. */
  readonly lampOnly: boolean;
}

/** The largest power taken as real, in watts. */
const MAX_WATTS = 100_000;
const MAX_FIGURES = 50;
/** What the standard puts in for a beam that says nothing: no figure of the unit. */
const DEFAULT_BEAM = { wattsW: 1000, fluxLm: 10_000 };

interface Draw {
  readonly wattsW: number;
  readonly powerFactor: number | undefined;
  readonly minV: number | undefined;
  readonly maxV: number | undefined;
  readonly count: number;
}

/**
 * Watts at the inlet by the order of sources: consumers of the wiring (summed; VA = W / cos φ), then the power
 * consumption among the properties, then the light sources alone, then unknown. An absent attribute is unknown,
 * never its default. `visits` is the mode's walk, so that parts that stand several times count as often.
 */
export const filePower = (
  type: XmlNode,
  visits: readonly Visit[],
  notices: Notices,
): FilePower | undefined => {
  const wired = visits
    .map((v) => v.geometry.xml)
    .filter((x) => x.name === 'WiringObject' && attrOf(x, 'ComponentType') === 'Consumer')
    .filter((x) => (attrOf(x, 'SignalType') ?? 'Power') === 'Power')
    .flatMap((x) => drawOf(x, WIRING, notices));
  if (wired.length > 0) return summed(wired, 'the consumers of its wiring', false);
  const properties = childOf(childOf(type, 'PhysicalDescriptions'), 'Properties');
  const listed = childrenOf(properties, 'PowerConsumption')
    .slice(0, MAX_FIGURES)
    .flatMap((x) => drawOf(x, PROPERTY, notices));
  if (listed.length > 0) return fromProperties(listed, notices);
  return lampsOnly(visits, notices);
};

const WIRING = { watts: 'ElectricalPayLoad', pf: 'CosPhi', min: 'VoltageRangeMin', max: 'VoltageRangeMax' };
const PROPERTY = { watts: 'Value', pf: 'PowerFactor', min: 'VoltageLow', max: 'VoltageHigh' };

const drawOf = (xml: XmlNode, names: typeof WIRING, notices: Notices): readonly Draw[] => {
  const text = attrOf(xml, names.watts);
  const wattsW = positiveOf(text, MAX_WATTS);
  if (wattsW === undefined) {
    if (text !== undefined && numberOf(text) !== 0)
      notices.add(`A power of “${cleanText(text, 30)}” W in the file cannot be right and was left out.`);
    return [];
  }
  const pfText = attrOf(xml, names.pf);
  const powerFactor = positiveOf(pfText, 1);
  if (pfText !== undefined && powerFactor === undefined)
    notices.add(`A power factor of “${cleanText(pfText, 30)}” in the file cannot be right and was left out.`);
  const low = positiveOf(attrOf(xml, names.min), 1000);
  const high = positiveOf(attrOf(xml, names.max), 1000);
  const inOrder = low === undefined || high === undefined || low <= high;
  return [{ wattsW, powerFactor, minV: inOrder ? low : high, maxV: inOrder ? high : low, count: 1 }];
};

/** Several draws at once: watts add up, and so do volt-amperes where all power factors are known. */
const summed = (draws: readonly Draw[], from: string, lampOnly: boolean): FilePower => {
  const wattsW = draws.reduce((sum, d) => sum + d.wattsW, 0);
  const va = draws.reduce(
    (sum, d) => sum + (d.powerFactor === undefined ? Number.NaN : d.wattsW / d.powerFactor),
    0,
  );
  const lows = draws.flatMap((d) => d.minV ?? []);
  const highs = draws.flatMap((d) => d.maxV ?? []);
  const minV = lows.length > 0 ? Math.max(...lows) : undefined;
  const maxV = highs.length > 0 ? Math.min(...highs) : undefined;
  const range = minV === undefined || maxV === undefined || minV <= maxV;
  return {
    wattsW: round(wattsW, 1),
    ...(Number.isFinite(va) ? { powerFactor: Math.min(1, round(wattsW / va, 4)) } : {}),
    ...(range && minV !== undefined ? { voltsMinV: minV } : {}),
    ...(range && maxV !== undefined ? { voltsMaxV: maxV } : {}),
    from,
    lampOnly,
  };
};

const overlap = (a: Draw, b: Draw): boolean =>
  (a.minV ?? 0) <= (b.maxV ?? Infinity) && (b.minV ?? 0) <= (a.maxV ?? Infinity);

/** Several figures for different volts are alternatives; figures for the same volts are inlets that draw together. */
const fromProperties = (draws: readonly Draw[], notices: Notices): FilePower => {
  const groups = draws.map((d) => draws.filter((o) => overlap(d, o)));
  const sums = groups.map((g) => summed(g, 'its power consumption', false));
  const most = sums.reduce((a, b) => (b.wattsW > a.wattsW ? b : a));
  if (draws.length === 1) return most;
  notices.add(
    `The file lists ${draws.length} power figures (${draws
      .slice(0, 6)
      .map((d) => `${d.wattsW} W`)
      .join(', ')}); ${most.wattsW} W was taken, the most that can draw at once. Check it.`,
  );
  const lows = sums.flatMap((s) => s.voltsMinV ?? []);
  const highs = sums.flatMap((s) => s.voltsMaxV ?? []);
  return {
    ...most,
    ...(lows.length === sums.length ? { voltsMinV: Math.min(...lows) } : {}),
    ...(highs.length === sums.length ? { voltsMaxV: Math.max(...highs) } : {}),
  };
};

const lampsOnly = (visits: readonly Visit[], notices: Notices): FilePower | undefined => {
  const beams = visits.map((v) => v.geometry.xml).filter((x) => /^beam$/i.test(x.name));
  const draws = beams
    .filter((b) => !isDefault(b))
    .flatMap((b) => drawOf(b, { ...PROPERTY, watts: 'PowerConsumption' }, notices));
  if (draws.length === 0) {
    if (beams.some(isDefault))
      notices.add(
        'Its light sources only carry the standard’s default of 1000 W, which says nothing of the unit.',
      );
    return undefined;
  }
  const power = summed(draws, 'its light sources alone', true);
  notices.add(
    `The file gives only the power of its light sources (${power.wattsW} W). Driver, fans and motors come on top: read the rating plate.`,
  );
  return power;
};

const isDefault = (beam: XmlNode): boolean =>
  numberOf(attrOf(beam, 'PowerConsumption')) === DEFAULT_BEAM.wattsW &&
  numberOf(attrOf(beam, 'LuminousFlux')) === DEFAULT_BEAM.fluxLm;

const round = (n: number, digits: number): number => Number(n.toFixed(digits));
