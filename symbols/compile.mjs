// Compiles the symbol drawings of this folder into src/drawing/symbols.generated.ts and a contact sheet.
// Run: node symbols/compile.mjs           writes both
//      node symbols/compile.mjs --check   exits with 1 when the module is out of date
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { circleToPath, normalisePath, pathBox, pathText } from './svg-path.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const target = join(here, '../src/drawing/symbols.generated.ts');
const LINES = ['outline', 'detail', 'solid'];

const attributes = (text) => {
  const out = {};
  for (const m of text.matchAll(/([\w-]+)="([^"]*)"/g)) out[m[1]] = m[2];
  return out;
};

const number = (a, name, fallback) => {
  if (a[name] === undefined && fallback !== undefined) return fallback;
  const n = Number(a[name]);
  if (!Number.isFinite(n)) throw new Error(`attribute ${name} is not a number: ${a[name]}`);
  return n;
};

const points = (text) => {
  const n = text.trim().split(/[\s,]+/).map(Number);
  const out = [];
  for (let i = 0; i + 1 < n.length; i += 2) out.push([n[i], n[i + 1]]);
  return out;
};

const roundedRect = (x, y, w, h, r) =>
  r === 0
    ? `M${x},${y} h${w} v${h} h${-w} Z`
    : `M${x + r},${y} h${w - 2 * r} a${r},${r} 0 0 1 ${r},${r} v${h - 2 * r} a${r},${r} 0 0 1 ${-r},${r} ` +
      `h${-(w - 2 * r)} a${r},${r} 0 0 1 ${-r},${-r} v${-(h - 2 * r)} a${r},${r} 0 0 1 ${r},${-r} Z`;

/** One element as path data. */
const elementPath = (tag, a) => {
  if (tag === 'path') return normalisePath(a.d);
  if (tag === 'line') return normalisePath(`M${a.x1},${a.y1} L${a.x2},${a.y2}`);
  if (tag === 'rect') {
    return normalisePath(
      roundedRect(number(a, 'x'), number(a, 'y'), number(a, 'width'), number(a, 'height'), number(a, 'rx', 0)),
    );
  }
  if (tag === 'circle') return circleToPath(number(a, 'cx'), number(a, 'cy'), number(a, 'r'), number(a, 'r'));
  if (tag === 'ellipse') return circleToPath(number(a, 'cx'), number(a, 'cy'), number(a, 'rx'), number(a, 'ry'));
  if (tag === 'polyline' || tag === 'polygon') {
    const d = points(a.points)
      .map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x},${y}`)
      .join(' ');
    return normalisePath(tag === 'polygon' ? `${d} Z` : d);
  }
  throw new Error(`unknown element <${tag}>`);
};

/** Reads one drawing: its paths with their line class. */
export const readSymbol = (svg) => {
  const out = [];
  for (const m of svg.matchAll(/<(path|line|rect|circle|ellipse|polyline|polygon)\b([^>]*?)\/?>/g)) {
    const a = attributes(m[2]);
    if (!LINES.includes(a.class)) throw new Error(`<${m[1]}> needs class outline, detail or solid`);
    out.push({ line: a.class, commands: elementPath(m[1], a) });
  }
  if (out.length === 0) throw new Error('nothing drawn');
  return out;
};

/** Joins neighbours of one line class, so that painters make fewer strokes. */
const joined = (paths) => {
  const out = [];
  for (const p of paths) {
    const last = out.at(-1);
    if (last?.line === p.line && p.line !== 'outline') last.commands.push(...p.commands);
    else out.push({ line: p.line, commands: [...p.commands] });
  }
  return out;
};

export const compileSymbols = (folder = here) => {
  const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'));
  return manifest.map((row) => {
    const paths = joined(readSymbol(readFileSync(join(folder, row.file), 'utf8')));
    const box = pathBox(paths.flatMap((p) => p.commands));
    for (const [name, have, want] of [
      ['length', box.maxX - box.minX, row.lengthMm],
      ['width', box.maxY - box.minY, row.widthMm],
    ]) {
      if (Math.abs(have - want) > 1) {
        throw new Error(`${row.id}: its ${name} is ${have.toFixed(1)} mm, the manifest says ${want} mm`);
      }
    }
    return { ...row, box, paths };
  });
};

const lit = (text) => `'${text.replaceAll("'", "\\'")}'`;

/** One path as the formatter would print it. */
const pathRow = (p) => {
  const d = lit(pathText(p.commands));
  const flat = `      { line: '${p.line}', d: ${d} },`;
  return flat.length <= 110 ? flat : `      {\n        line: '${p.line}',\n        d: ${d},\n      },`;
};

export const moduleText = (symbols) => {
  const rows = symbols.map((s) => {
    const paths = s.paths.map(pathRow).join('\n');
    const b = [s.box.minX, s.box.minY, s.box.maxX, s.box.maxY].map((n) => Number(n.toFixed(2))).join(', ');
    return (
      `  {\n    id: ${lit(s.id)},\n    lengthMm: ${s.lengthMm},\n    widthMm: ${s.widthMm},\n    box: [${b}],\n` +
      `    words: ${lit(s.words)},\n    paths: [\n${paths}\n    ],\n  },`
    );
  });
  return (
    '// Made by symbols/compile.mjs from the drawings in symbols/. Change those, then run it again.\n' +
    "import type { CompiledSymbol } from './symbol-types.ts';\n\n" +
    `export const COMPILED_SYMBOLS: readonly CompiledSymbol[] = [\n${rows.join('\n')}\n];\n`
  );
};

const contactSheet = (symbols) => {
  const cell = 30;
  const perRow = 12;
  const rows = Math.ceil(symbols.length / perRow);
  const parts = symbols.map((s, i) => {
    const x = (i % perRow) * cell + cell / 2;
    const y = Math.floor(i / perRow) * cell + cell / 2 - 2;
    const k = 20 / Math.max(s.lengthMm, s.widthMm);
    const dx = (s.box.minX + s.box.maxX) / 2;
    const dy = (s.box.minY + s.box.maxY) / 2;
    const paths = s.paths.map((p) => {
      const paint =
        p.line === 'solid'
          ? 'fill="#1b2126" stroke="none"'
          : `fill="${p.line === 'outline' ? '#fff' : 'none'}" stroke="#1b2126" stroke-width="${(p.line === 'outline' ? 0.5 : 0.25) / k}"`;
      return `<path d="${pathText(p.commands)}" ${paint}/>`;
    });
    return (
      `<g transform="translate(${x} ${y}) scale(${k.toFixed(5)}) translate(${-dx} ${-dy})" stroke-linejoin="round">${paths.join('')}</g>` +
      `<text x="${x}" y="${y + 14.5}" font-family="sans-serif" font-size="2.4" text-anchor="middle" fill="#1b2126">${s.id}</text>`
    );
  });
  const w = perRow * cell;
  const h = rows * cell + 2;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" width="${w}mm" height="${h}mm"><rect width="${w}" height="${h}" fill="#fff"/>${parts.join('\n')}</svg>\n`;
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const symbols = compileSymbols();
  const text = moduleText(symbols);
  if (process.argv.includes('--check')) {
    if (readFileSync(target, 'utf8') !== text) {
      console.error('src/drawing/symbols.generated.ts is out of date: run node symbols/compile.mjs');
      process.exit(1);
    }
  } else {
    writeFileSync(target, text);
    writeFileSync(join(here, 'contact-sheet.svg'), contactSheet(symbols));
    console.log(`${symbols.length} symbols`);
  }
}
