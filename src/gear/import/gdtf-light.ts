import { positiveOf } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

/** What a fixture file says of the light a unit gives. */
export interface FileLight {
  readonly source: 'tungsten' | 'discharge' | 'led' | 'fluorescent';
  readonly sourceAssumed: boolean;
  readonly beamType: string;
  /** Has channels that pan or tilt it. */
  readonly moves: boolean;
  /** Fields of a kind: only what the file gives, never the standard's defaults for what is absent. */
  readonly optics: {
    readonly beamDeg?: number;
    readonly fieldDeg?: number;
    readonly cct?: { readonly minK: number; readonly maxK: number; readonly color: boolean };
    readonly fluxLm?: number;
  };
}

const SOURCES: Readonly<Record<string, FileLight['source']>> = {
  led: 'led',
  discharge: 'discharge',
  tungsten: 'tungsten',
  halogen: 'tungsten',
};

/** The light of a unit: its widest beam's angles, its source, the sum of its parts' flux. */
export const fileLight = (visits: readonly Visit[], type: XmlNode): FileLight => {
  const beams = visits.map((v) => v.geometry.xml).filter((x) => /^beam$/i.test(x.name));
  const lamp = beams.map((b) => attrOf(b, 'LampType')?.toLowerCase()).find((l) => l !== undefined);
  const source = SOURCES[lamp ?? ''];
  const attributes = attributesOf(type);
  const color = [...attributes].some((a) => /^(ColorAdd_[RGB]|ColorRGB_|HSB_Hue|CIE_X)/.test(a));
  const most = (name: string, max: number): number | undefined => {
    const all = beams.flatMap((b) => positiveOf(attrOf(b, name), max) ?? []);
    return all.length > 0 ? all.reduce((a, b) => Math.max(a, b)) : undefined;
  };
  const beamDeg = most('BeamAngle', 360);
  const fieldDeg = most('FieldAngle', 360);
  const kelvins = beams.flatMap((b) => positiveOf(attrOf(b, 'ColorTemperature'), 50_000) ?? []);
  const fluxes = beams.flatMap((b) => positiveOf(attrOf(b, 'LuminousFlux'), 1e7) ?? []);
  const cct =
    kelvins.length > 0
      ? {
          minK: kelvins.reduce((a, b) => Math.min(a, b)),
          maxK: kelvins.reduce((a, b) => Math.max(a, b)),
          color,
        }
      : undefined;
  return {
    source: source ?? 'led',
    sourceAssumed: source === undefined,
    beamType:
      beams.map((b) => attrOf(b, 'BeamType')).find((t) => t !== undefined && t !== 'None' && t !== 'Glow') ??
      '',
    moves: attributes.has('Pan') || attributes.has('Tilt'),
    optics: {
      ...(beamDeg !== undefined ? { beamDeg } : {}),
      ...(fieldDeg !== undefined ? { fieldDeg } : {}),
      ...(cct ? { cct } : {}),
      ...(fluxes.length === beams.length && fluxes.length > 0
        ? { fluxLm: Math.round(fluxes.reduce((a, b) => a + b, 0)) }
        : {}),
    },
  };
};

const attributesOf = (type: XmlNode): ReadonlySet<string> => {
  const found = new Set<string>();
  for (const mode of childrenOf(childOf(type, 'DMXModes'), 'DMXMode'))
    for (const channel of childrenOf(childOf(mode, 'DMXChannels'), 'DMXChannel'))
      for (const logical of childrenOf(channel, 'LogicalChannel'))
        found.add(attrOf(logical, 'Attribute') ?? '');
  return found;
};
