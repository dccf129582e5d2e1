import {
  type Complex,
  type ComplexMatrix,
  type FeederSegment,
  type FeederSpec,
  sequenceOhm,
  spreadLoads,
  transformerRatio,
} from '../engines/power/index.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import {
  type FeederFile,
  type FeederFileLoad,
  type FeederFileTransformer,
  readFeederFile,
} from '../plan/feeder-file.ts';

const ratioOf = (t: FeederFileTransformer): readonly (readonly number[])[] => {
  if ('connection' in t) return transformerRatio[t.connection](t.turns);
  if ('regulator' in t) return transformerRatio.regulator(...t.regulator);
  if ('openDeltaRegulator' in t) return transformerRatio.openDeltaRegulator(...t.openDeltaRegulator);
  return t.ratio;
};

const times = (m: ComplexMatrix, k: number): ComplexMatrix =>
  m.map((row) => row.map((c): Complex => [c[0] * k, c[1] * k]));
const NOTHING: ComplexMatrix = [0, 1, 2].map(() => [0, 1, 2].map((): Complex => [0, 0]));

const segmentOf = (f: FeederFile, s: FeederFile['segments'][number]): Result<FeederSegment> => {
  const c = s.line === undefined ? undefined : f.configurations[s.line];
  if (s.line !== undefined && !c)
    return fail({
      what: `The stretch from ${s.from} to ${s.to} names a line “${s.line}” that is not there.`,
      todo: `Lines of the file: ${Object.keys(f.configurations).join(', ') || 'none'}.`,
    });
  const made = c === undefined ? undefined : 'z1' in c ? sequenceOhm(c.z1, c.z0) : c.ohm;
  const charging = c && 'ohm' in c ? c.siemens : undefined;
  return ok({
    from: s.from,
    to: s.to,
    ohm: s.ohm ?? (made ? times(made, s.length) : NOTHING),
    ...(charging ? { shuntS: charging.map((row) => row.map((b) => b * s.length)) } : {}),
    ...(s.parallel === undefined ? {} : { parallel: s.parallel }),
    ...(s.transformer ? { ratio: ratioOf(s.transformer) } : {}),
  });
};

const loadOf = (l: FeederFileLoad) => ({
  from: l.from,
  to: l.to,
  wattsW: l.watts,
  varsVar: l.vars,
  nominalV: l.nominalV,
  ...(l.expP === undefined ? {} : { expP: l.expP }),
  ...(l.expQ === undefined ? {} : { expQ: l.expQ }),
});

/** A feeder from the text of a file: JSON in the form that `lampwright feeder --help` tells. Problems name the place in it. */
export const readFeeder = (text: string): Result<{ readonly name: string; readonly spec: FeederSpec }> => {
  const read = readFeederFile(text);
  if (!read.ok) return read;
  const f = read.value;
  const segments: FeederSegment[] = [];
  for (const s of f.segments) {
    const made = segmentOf(f, s);
    if (!made.ok) return made;
    segments.push(made.value);
  }
  const spread = spreadLoads(
    segments,
    f.spread.map((l) => ({ along: l.along, load: loadOf(l) })),
    f.spreadAt,
  );
  const sourceV = f.sourceV.map(({ volts, degrees }): Complex => {
    const a = (degrees * Math.PI) / 180;
    return [volts * Math.cos(a), volts * Math.sin(a)];
  });
  const loads = [...f.loads.map((l) => ({ node: l.node, ...loadOf(l) })), ...spread.loads];
  return ok({ name: f.name, spec: { source: f.source, sourceV, segments: spread.segments, loads } });
};
