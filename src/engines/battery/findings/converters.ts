import type { EngineFinding } from '../../../derive/findings.ts';
import type { ConverterKind, FixtureKind, PackKind } from '../../../plan/kinds/kinds.ts';
import { packsV } from '../model.ts';
import type { BatteryUnit } from '../types.ts';

/** Volts of packs may be so far from what a converter is named for: cells of one number in a row differ by chemistry. */
const NEAR = 0.15;

type Say = (
  rule: string,
  severity: EngineFinding['severity'],
  params?: EngineFinding['params'],
  figure?: number,
) => EngineFinding;

const volts = (v: number): string => `${Number(v.toFixed(1))} V`;

/** Whether a chain of packs, converter and unit fits: plates, volts into the converter, and what comes out of it. */
export const converterFits = (
  u: BatteryUnit,
  kind: FixtureKind,
  converter: ConverterKind,
  pack: PackKind,
  say: Say,
): EngineFinding[] => {
  const out: EngineFinding[] = [];
  const wrong = (why: string): void => {
    out.push(say('battery-converter-volts', 'warn', { converter: converter.name, pack: pack.name, why }));
  };
  if (!u.floorPack && converter.plates.length > 0 && !converter.plates.includes(pack.plate))
    out.push(
      say('battery-plate', 'warn', {
        pack: pack.name,
        plate: pack.plate,
        takes: converter.plates.join(', '),
      }),
    );
  const nominal = packsV(u, (p) => p.voltsV);
  const inV = converter.dcIn[0]?.voltsV;
  if (inV !== undefined && Math.abs(nominal - inV) > NEAR * inV)
    wrong(
      `the packs${u.count > 1 ? `, ${u.count} in ${u.joined},` : ''} give ${volts(nominal)} and it takes ${volts(inV)}`,
    );
  if (converter.what === 'inverter') {
    const { load } = kind;
    const { outputV } = converter;
    if (load && outputV !== undefined && !(outputV >= load.voltsMinV && outputV <= load.voltsMaxV))
      wrong(`it gives ${volts(outputV)} and the unit takes ${load.voltsMinV} to ${volts(load.voltsMaxV)}`);
    return out;
  }
  const dc = kind.packIn;
  if (!dc) return [...out, say('battery-mains-only', 'warn', { pack: pack.name })];
  const given = converter.what === 'dc-dc' ? converter.dcOut[0]?.voltsV : undefined;
  const highV = given ?? packsV(u, (p) => p.fullV);
  const lowV = given ?? packsV(u, (p) => p.voltsV);
  if (highV > dc.maxV)
    out.push(
      say(
        'battery-volts-high',
        'stop',
        { pack: pack.name, fullV: highV, maxV: dc.maxV, packs: u.count, joined: u.joined },
        highV,
      ),
    );
  else if (lowV < dc.minV) wrong(`${volts(lowV)} reach the unit, which runs on ${volts(dc.minV)} or more`);
  return out;
};
