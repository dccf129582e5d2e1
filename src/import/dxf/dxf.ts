import { compareNatural } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import type { LineWork } from '../../plan/line-work.ts';
import { decodeLatin1, decodeUtf8 } from '../../plan/utf8.ts';
import { type Block, Collector, SAME } from './collect.ts';
import { type Entry, entriesOf, numberOf, PairReader, textOf } from './pairs.ts';
import { mmOfUnits } from './units.ts';

/** Files above this are refused before they are read. */
export const MAX_DXF_BYTES = 120 * 1024 * 1024;
/** More entities than this, blocks not unfolded, are refused. */
export const MAX_DXF_ENTITIES = 500_000;

/** A drawing read from DXF: line work from its upper left corner, y down, in its own units. */
export interface DxfDrawing {
  readonly work: LineWork;
  readonly widthUnits: number;
  readonly heightUnits: number;
  /** Millimetres of its unit where it says so. */
  readonly mmPerUnit: number | undefined;
  readonly entities: number;
  readonly notices: readonly string[];
}

const GET_TEXT = 'Save it as a text (ASCII) DXF from the program it was drawn with.';

/**
 * Reads a text DXF: lines, polylines, arcs, circles, ellipses, splines, outlines of faces, texts and blocks with their
 * scale, angle and nesting. Layers keep their names; what is on layers turned off, or on a paper layout, is left out.
 */
export const readDxf = (bytes: Uint8Array, name: string): Result<DxfDrawing> => {
  if (bytes.length > MAX_DXF_BYTES)
    return fail({
      what: `${name} is too large (${Math.round(bytes.length / 1e6)} MB; the limit is ${MAX_DXF_BYTES / 1024 / 1024} MB).`,
      todo: 'Save only the floor that is needed.',
    });
  if (bytes.subarray(0, 64).includes(0))
    return fail({ what: `${name} is a binary drawing, not a text DXF.`, todo: GET_TEXT });
  const reader = new PairReader(decode(bytes));
  const parts = partsOf(reader);
  if (!parts.ok)
    return fail({
      what: `${name} has more than ${MAX_DXF_ENTITIES.toLocaleString('en')} entities.`,
      todo: 'Save only the floor and the layers that are needed.',
    });
  const { entities, blocks, off, insUnits, sections } = parts.value;
  if (!sections)
    return fail({
      what: `${name} is no DXF drawing${reader.fault ? `: ${reader.fault}` : ''}.`,
      todo: GET_TEXT,
    });
  const all = new Collector(blocks, off);
  all.take(entities, SAME, undefined, 0);
  if (all.limit !== undefined)
    return fail({
      what: `${name} cannot be taken as a whole: ${all.limit}.`,
      todo: 'Save only the floor and the layers that are needed.',
    });
  const placed = placedWork(all);
  if (!placed)
    return fail({
      what: `${name} holds no line work${reader.fault ? ` that can be read: ${reader.fault}` : ''}.`,
      todo: 'Check that its layers are on and that it is drawn in model space.',
    });
  return ok({
    ...placed,
    mmPerUnit: mmOfUnits(insUnits),
    entities: all.entities,
    notices: noticesOf(all, off, reader.fault),
  });
};

/** Older drawings are in a code page of their own; Latin letters come out right in most. */
const decode = (bytes: Uint8Array): string => decodeUtf8(bytes) ?? decodeLatin1(bytes);

interface Parts {
  readonly entities: readonly Entry[];
  readonly blocks: ReadonlyMap<string, Block>;
  readonly off: ReadonlySet<string>;
  readonly insUnits: number | undefined;
  readonly sections: number;
}

const partsOf = (reader: PairReader): Result<Parts, 'many'> => {
  const entities: Entry[] = [];
  const blocks = new Map<string, Block>();
  const off = new Set<string>();
  let insUnits: number | undefined;
  let section = '';
  let sections = 0;
  let block: { name: string; base: [number, number]; entries: Entry[] } | undefined;
  let count = 0;
  for (const e of entriesOf(reader)) {
    if (++count > MAX_DXF_ENTITIES * 4) return fail('many');
    if (e.name === 'SECTION') {
      section = textOf(e, 2)?.toUpperCase() ?? '';
      sections++;
      if (section === 'HEADER') insUnits = headerUnits(e);
    } else if (e.name === 'ENDSEC') section = '';
    else if (e.name === 'LAYER' && section === 'TABLES') {
      if (numberOf(e, 62, 7) < 0 || (numberOf(e, 70) & 1) === 1) off.add((textOf(e, 2) ?? '').toUpperCase());
    } else if (section === 'BLOCKS') {
      if (e.name === 'BLOCK')
        block = { name: textOf(e, 2) ?? '', base: [numberOf(e, 10), numberOf(e, 20)], entries: [] };
      else if (e.name === 'ENDBLK') {
        if (block) blocks.set(block.name.toUpperCase(), { base: block.base, entries: block.entries });
        block = undefined;
      } else block?.entries.push(e);
    } else if (section === 'ENTITIES') {
      entities.push(e);
      if (entities.length > MAX_DXF_ENTITIES) return fail('many');
    }
  }
  return ok({ entities, blocks, off, insUnits, sections });
};

/** The header's variables are one run of groups: a name under 9, then its value. */
const headerUnits = (header: Entry): number | undefined => {
  const at = header.pairs.findIndex((p) => p.code === 9 && p.value.trim() === '$INSUNITS');
  const value = at < 0 ? undefined : header.pairs[at + 1];
  const n = value?.code === 70 ? Number(value.value) : 0;
  return Number.isInteger(n) && n > 0 ? n : undefined;
};

/** Turned so that y runs down, and brought to its own upper left corner. */
const placedWork = (all: Collector): Pick<DxfDrawing, 'work' | 'widthUnits' | 'heightUnits'> | undefined => {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const paths of all.paths.values())
    for (const p of paths)
      for (let i = 0; i + 1 < p.length; i += 2) {
        const [x, y] = [p[i] ?? 0, p[i + 1] ?? 0];
        if (x < minX) minX = x;
        if (x > maxX) maxX = x;
        if (y < minY) minY = y;
        if (y > maxY) maxY = y;
      }
  if (!(maxX > minX || maxY > minY)) return undefined;
  const layers = [...all.paths]
    .sort(([a], [b]) => compareNatural(a, b))
    .map(([name, paths]) => ({
      name,
      paths: paths.map((p) => p.map((v, i) => (i % 2 === 0 ? v - minX : maxY - v))),
    }));
  const texts = all.texts.map((t) => ({ ...t, x: t.x - minX, y: maxY - t.y }));
  return {
    work: { layers, texts },
    widthUnits: Math.max(maxX - minX, 1e-6),
    heightUnits: Math.max(maxY - minY, 1e-6),
  };
};

const noticesOf = (
  all: Collector,
  off: ReadonlySet<string>,
  fault: string | undefined,
): readonly string[] => {
  const out: string[] = [];
  if (fault) out.push(`The file ends early (${fault}); what came before it is there.`);
  if (all.skipped.size > 0) {
    const list = [...all.skipped]
      .sort(([a], [b]) => compareNatural(a, b))
      .map(([n, k]) => `${k} × ${n.toLowerCase()}`);
    out.push(`Left out, as no line work: ${list.join(', ')}.`);
  }
  if (off.size > 0)
    out.push(`${off.size} ${off.size === 1 ? 'layer is' : 'layers are'} turned off in it and left out.`);
  return out;
};
