// Who may import whom in src/, checked on the syntax tree that the build tool's parser gives.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseSync } from 'vite';

const ENGINE_RESULT_LAYERS = ['kernel', 'plan', 'derive', 'report'];

/** The closed list. A folder that is not here may not exist in src/. */
export const ALLOWED = {
  kernel: [],
  plan: ['kernel', 'shared'],
  gear: ['kernel', 'plan', 'shared'],
  import: ['kernel', 'plan'],
  derive: ['kernel', 'plan', 'shared'],
  storage: ['kernel', 'plan'],
  engines: ['kernel', 'plan', 'derive', 'shared'],
  report: ['kernel', 'plan', 'derive', 'engines', 'shared'],
  drawing: ['kernel', 'plan', 'derive', 'report', 'symbols', 'shared'],
  papers: [...ENGINE_RESULT_LAYERS, 'drawing', 'shared'],
  output: ['kernel', 'drawing', 'papers'],
  editor: [...ENGINE_RESULT_LAYERS, 'gear', 'drawing', 'storage', 'shared'],
  canvas: ['kernel', 'drawing', 'editor'],
  ui: [
    ...ENGINE_RESULT_LAYERS,
    ...['gear', 'import', 'storage', 'engines', 'drawing', 'papers', 'output', 'editor', 'canvas'],
    ...['symbols', 'shared'],
  ],
  app: [
    ...ENGINE_RESULT_LAYERS,
    ...['gear', 'storage', 'engines', 'drawing', 'papers', 'output', 'editor', 'canvas', 'ui'],
    ...['symbols', 'shared', 'demo-sets'],
  ],
  cli: [
    ...ENGINE_RESULT_LAYERS,
    ...['gear', 'storage', 'engines', 'drawing', 'papers', 'output', 'editor', 'symbols', 'shared'],
  ],
};

/** Files that may reach into a folder only through one of its files. */
const NARROWED = [
  { from: 'editor', to: 'storage', only: ['src/storage/port.ts'] },
  { from: 'report', to: 'engines', only: [/^src\/engines\/[^/]+\/(index|types)\.ts$/] },
];

const SCREEN = ['canvas', 'ui', 'app'];
/** Packages and the folders (or single files) that may import them. Any package not listed here is refused in src/. */
const PACKAGES = {
  react: SCREEN,
  'react-dom': SCREEN,
  konva: SCREEN,
  'react-konva': SCREEN,
  zustand: SCREEN,
  '@base-ui/react': ['ui', 'app'],
  '@tanstack/react-virtual': ['ui', 'app'],
  'lucide-react': ['ui', 'app'],
  tinykeys: ['ui', 'app'],
  jspdf: ['output'],
  'pdfjs-dist': ['app'],
  idb: ['storage'],
  // The app only turns off its use of generated code, which the policy forbids.
  zod: ['plan', 'gear', 'app'],
  '@noble/hashes': ['kernel'],
  rbush: ['derive', 'drawing', 'editor', 'canvas'],
  suncalc: ['derive'],
  saxes: ['gear'],
  // Turns drawings into pixels where there is no browser.
  '@resvg/resvg-wasm': ['cli'],
  fflate: ['plan', 'gear', 'output', 'storage'],
  '@expo-google-fonts/source-sans-3': ['ui', 'app', 'cli'],
  'virtual:pwa-register': ['app'],
};
const NODE = { folders: ['cli'], files: ['src/storage/file-node.ts'] };

/** Folders that give the same answer every time: no clock, no chance, no page. */
const PURE = [
  'kernel',
  'plan',
  'gear',
  'import',
  'derive',
  'engines',
  'report',
  'drawing',
  'papers',
  'output',
  'editor',
];
const BANNED = [
  'window',
  'document',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'performance',
  'navigator',
];

export const WARN_LINES = 250;
export const FAIL_LINES = 400;
const LENGTH_EXEMPT = /(^|[/.])(generated|data)[/.]|\.d\.m?ts$|\.css$/;

const packageOf = (specifier) => {
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? '');
};

const childrenOf = function* (node) {
  for (const [key, value] of Object.entries(node)) {
    if (key === 'parent') continue;
    if (Array.isArray(value)) {
      for (const v of value) if (v && typeof v === 'object' && 'type' in v) yield [key, v];
    } else if (value && typeof value === 'object' && 'type' in value) yield [key, value];
  }
};

const lineAt = (text, offset) => text.slice(0, offset).split('\n').length;

/** All module names a file refers to, and its uses of what pure code may not touch. */
const scan = (path, text) => {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0].message}`);
  const imports = [];
  const impure = [];
  const declared = new Set();
  const note = (source) => {
    if (typeof source?.value === 'string')
      imports.push({ specifier: source.value, line: lineAt(text, source.start) });
  };
  const visit = (node, key, parent) => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'ExportNamedDeclaration':
      case 'ImportExpression':
      case 'TSImportType':
        note(node.source ?? node.argument);
        break;
      case 'NewExpression':
        if (node.callee.name === 'Worker' || node.callee.name === 'SharedWorker') {
          const url = node.arguments[0];
          if (url?.type === 'NewExpression' && url.callee.name === 'URL') note(url.arguments[0]);
        }
        if (node.callee.name === 'Date' && node.arguments.length === 0)
          impure.push({ what: 'new Date()', line: lineAt(text, node.start) });
        break;
      case 'MemberExpression': {
        const name = `${node.object.name}.${node.property.name}`;
        if (name === 'Date.now' || name === 'Math.random' || /^globalThis\./.test(name))
          impure.push({ what: name, line: lineAt(text, node.start) });
        break;
      }
      case 'VariableDeclarator':
      case 'FunctionDeclaration':
        if (node.id?.name) declared.add(node.id.name);
        break;
      case 'Identifier': {
        const isName =
          (parent?.type === 'MemberExpression' && key === 'property' && !parent.computed) ||
          (parent?.type === 'Property' && key === 'key' && !parent.computed) ||
          parent?.type?.startsWith('TS') ||
          ((parent?.type === 'FunctionDeclaration' || parent?.type === 'ArrowFunctionExpression') &&
            key === 'params');
        if (parent?.type === 'ArrowFunctionExpression' && key === 'params') declared.add(node.name);
        if (!isName && BANNED.includes(node.name))
          impure.push({ what: node.name, line: lineAt(text, node.start) });
        break;
      }
    }
    for (const [k, child] of childrenOf(node)) visit(child, k, node);
  };
  visit(program, '', undefined);
  return { imports, impure: impure.filter((i) => !declared.has(i.what)) };
};

const folderOf = (path) => {
  const [top, second] = path.split('/');
  return top === 'src' ? second : top;
};

/** Resolves a relative import the way the compiler does here: with its extension written out. */
const targetOf = (path, specifier) =>
  posix.normalize(posix.join(posix.dirname(path), specifier.split('?')[0]));

const checkImport = (path, folder, { specifier }) => {
  if (!specifier.startsWith('.')) {
    if (specifier.startsWith('node:'))
      return NODE.folders.includes(folder) || NODE.files.includes(path)
        ? undefined
        : `${specifier} may only be imported in cli and the file adapter`;
    const name = packageOf(specifier);
    const may = PACKAGES[name];
    if (!may) return `the package ${name} may not be imported in src`;
    return may.includes(folder) ? undefined : `${name} may only be imported in ${may.join(', ')}`;
  }
  const target = targetOf(path, specifier);
  const to = folderOf(target);
  if (to === 'node_modules' || target.startsWith('..')) return `${specifier} leads out of the project`;
  if (folder === 'engines' && to === 'engines') {
    const engine = (p) => p.split('/')[2];
    return engine(path) === engine(target) ? undefined : `one engine may not import another (${target})`;
  }
  if (folder === to) return undefined;
  if (target === 'package.json' && (folder === 'cli' || folder === 'app')) return undefined;
  if (!ALLOWED[folder]?.includes(to)) return `${folder} may not import ${to} (${target})`;
  const narrowed = NARROWED.find((n) => n.from === folder && n.to === to);
  if (narrowed && !narrowed.only.some((o) => (typeof o === 'string' ? o === target : o.test(target))))
    return `${folder} may import ${to} only through its door, not ${target}`;
  return undefined;
};

/** Every way round from a file back to itself, as a list of paths. */
const findCycles = (graph) => {
  const state = new Map();
  const cycles = [];
  const stack = [];
  const visit = (path) => {
    state.set(path, 'open');
    stack.push(path);
    for (const next of graph.get(path) ?? []) {
      if (state.get(next) === 'open') cycles.push([...stack.slice(stack.indexOf(next)), next]);
      else if (!state.has(next)) visit(next);
    }
    stack.pop();
    state.set(path, 'done');
  };
  for (const path of graph.keys()) if (!state.has(path)) visit(path);
  return cycles;
};

/**
 * Checks source files, given as path (from the project's root, with /) → text.
 * Gives errors and warnings as lines of text.
 */
export const checkLayers = (files) => {
  const errors = [];
  const warnings = [];
  const graph = new Map();
  for (const [path, text] of files) {
    const folder = folderOf(path);
    if (!(folder in ALLOWED)) {
      errors.push(`${path}: the folder src/${folder} is not in the table of layers`);
      continue;
    }
    const lines = text.split('\n').length - 1;
    if (!LENGTH_EXEMPT.test(path)) {
      if (lines > FAIL_LINES) errors.push(`${path}: ${lines} lines; the limit is ${FAIL_LINES}`);
      else if (lines > WARN_LINES)
        warnings.push(`${path}: ${lines} lines; think of splitting it above ${WARN_LINES}`);
    }
    if (!/\.(tsx?|mjs)$/.test(path) || /\.d\.m?ts$/.test(path)) continue;
    const { imports, impure } = scan(path, text);
    graph.set(path, []);
    for (const i of imports) {
      const wrong = checkImport(path, folder, i);
      if (wrong) errors.push(`${path}:${i.line}: ${wrong}`);
      if (i.specifier.startsWith('.')) {
        const target = targetOf(path, i.specifier);
        if (files.has(target)) graph.get(path).push(target);
      }
    }
    if (PURE.includes(folder))
      for (const { what, line } of impure) errors.push(`${path}:${line}: ${what} has no place in ${folder}`);
  }
  for (const cycle of findCycles(graph)) errors.push(`a ring of imports: ${cycle.join(' → ')}`);
  return { errors, warnings };
};

/** All source files under `root`/src. */
export const readSources = (root) => {
  const files = new Map();
  for (const entry of readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !/\.(tsx?|mjs|css)$/.test(entry.name)) continue;
    const full = join(entry.parentPath, entry.name);
    const path = relative(root, full).split(sep).join('/');
    if (path.split('/').length > 2) files.set(path, readFileSync(full, 'utf8'));
  }
  return files;
};

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
  const { errors, warnings } = checkLayers(readSources(root));
  for (const w of warnings) console.log(`warning: ${w}`);
  for (const e of errors) console.error(e);
  process.exitCode = errors.length > 0 ? 1 : 0;
}
