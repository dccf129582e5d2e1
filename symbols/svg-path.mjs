// Path data of a small SVG subset, brought to absolute M, L, C and Z.

const TOKEN = /([MmLlHhVvCcQqAaZz])|(-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?)/g;
const COUNT = { M: 2, L: 2, H: 1, V: 1, C: 6, Q: 4, A: 7, Z: 0 };

const tokens = (d) => {
  const rest = d.replace(TOKEN, '').replace(/[\s,]+/g, '');
  if (rest !== '') throw new Error(`cannot read “${rest}” in path data`);
  return [...d.matchAll(TOKEN)].map((m) => m[1] ?? Number(m[2]));
};

/** Absolute M, L, C, Z commands of path data in M L H V C Q A Z, large and small letters. */
export const normalisePath = (d) => {
  const t = tokens(d);
  const out = [];
  let i = 0;
  let letter = '';
  let x = 0;
  let y = 0;
  let sx = 0;
  let sy = 0;
  while (i < t.length) {
    if (typeof t[i] === 'string') letter = t[i++];
    else if (letter === 'M') letter = 'L';
    else if (letter === 'm') letter = 'l';
    const upper = letter.toUpperCase();
    const n = COUNT[upper];
    if (n === undefined) throw new Error(`path data begins without a command: ${d}`);
    const a = t.slice(i, i + n);
    if (a.length !== n || a.some((v) => typeof v !== 'number')) throw new Error(`too few numbers after ${letter}`);
    i += n;
    const rel = letter !== upper;
    const px = (v) => (rel ? x + v : v);
    const py = (v) => (rel ? y + v : v);
    if (upper === 'Z') {
      out.push(['Z']);
      [x, y] = [sx, sy];
    } else if (upper === 'M' || upper === 'L') {
      [x, y] = [px(a[0]), py(a[1])];
      if (upper === 'M') [sx, sy] = [x, y];
      out.push([upper, x, y]);
    } else if (upper === 'H' || upper === 'V') {
      if (upper === 'H') x = px(a[0]);
      else y = py(a[0]);
      out.push(['L', x, y]);
    } else if (upper === 'C') {
      const c = [px(a[0]), py(a[1]), px(a[2]), py(a[3]), px(a[4]), py(a[5])];
      out.push(['C', ...c]);
      [x, y] = [c[4], c[5]];
    } else if (upper === 'Q') {
      const [qx, qy, ex, ey] = [px(a[0]), py(a[1]), px(a[2]), py(a[3])];
      out.push(['C', x + (2 / 3) * (qx - x), y + (2 / 3) * (qy - y), ex + (2 / 3) * (qx - ex), ey + (2 / 3) * (qy - ey), ex, ey]);
      [x, y] = [ex, ey];
    } else {
      const [ex, ey] = [px(a[5]), py(a[6])];
      out.push(...arc(x, y, a[0], a[1], a[2], a[3] !== 0, a[4] !== 0, ex, ey));
      [x, y] = [ex, ey];
    }
  }
  return out;
};

const KAPPA = 0.5522847498307936;

/** An ellipse as four cubic arcs. */
export const circleToPath = (cx, cy, rx, ry) => [
  ['M', cx + rx, cy],
  ['C', cx + rx, cy + KAPPA * ry, cx + KAPPA * rx, cy + ry, cx, cy + ry],
  ['C', cx - KAPPA * rx, cy + ry, cx - rx, cy + KAPPA * ry, cx - rx, cy],
  ['C', cx - rx, cy - KAPPA * ry, cx - KAPPA * rx, cy - ry, cx, cy - ry],
  ['C', cx + KAPPA * rx, cy - ry, cx + rx, cy - KAPPA * ry, cx + rx, cy],
  ['Z'],
];

/** Elliptical arc to cubics, after the implementation notes of SVG 1.1 (F.6). */
const arc = (x1, y1, rx0, ry0, rotDeg, large, sweep, x2, y2) => {
  if (rx0 === 0 || ry0 === 0) return [['L', x2, y2]];
  const phi = (rotDeg * Math.PI) / 180;
  const c = Math.cos(phi);
  const s = Math.sin(phi);
  const dx = (x1 - x2) / 2;
  const dy = (y1 - y2) / 2;
  const ux = c * dx + s * dy;
  const uy = -s * dx + c * dy;
  let rx = Math.abs(rx0);
  let ry = Math.abs(ry0);
  const lambda = (ux * ux) / (rx * rx) + (uy * uy) / (ry * ry);
  if (lambda > 1) {
    rx *= Math.sqrt(lambda);
    ry *= Math.sqrt(lambda);
  }
  const den = rx * rx * uy * uy + ry * ry * ux * ux;
  const k = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (rx * rx * ry * ry - den) / den));
  const cxp = (k * rx * uy) / ry;
  const cyp = (-k * ry * ux) / rx;
  const cx = c * cxp - s * cyp + (x1 + x2) / 2;
  const cy = s * cxp + c * cyp + (y1 + y2) / 2;
  const from = Math.atan2((uy - cyp) / ry, (ux - cxp) / rx);
  let by = Math.atan2((-uy - cyp) / ry, (-ux - cxp) / rx) - from;
  if (sweep && by < 0) by += 2 * Math.PI;
  if (!sweep && by > 0) by -= 2 * Math.PI;
  const n = Math.max(1, Math.ceil(Math.abs(by) / (Math.PI / 2) - 1e-9));
  const step = by / n;
  const h = (4 / 3) * Math.tan(step / 4);
  const at = (px, py) => [cx + c * rx * px - s * ry * py, cy + s * rx * px + c * ry * py];
  const out = [];
  for (let i = 0; i < n; i++) {
    const a = from + i * step;
    const b = a + step;
    const p1 = at(Math.cos(a) - h * Math.sin(a), Math.sin(a) + h * Math.cos(a));
    const p2 = at(Math.cos(b) + h * Math.sin(b), Math.sin(b) - h * Math.cos(b));
    const p3 = i === n - 1 ? [x2, y2] : at(Math.cos(b), Math.sin(b));
    out.push(['C', ...p1, ...p2, ...p3]);
  }
  return out;
};

/** The box around the drawn curves (not their control points). */
export const pathBox = (commands) => {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x, y) => {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  };
  let x = 0;
  let y = 0;
  for (const c of commands) {
    if (c[0] === 'Z') continue;
    if (c[0] === 'C') {
      for (let i = 1; i <= 32; i++) {
        const t = i / 32;
        const u = 1 - t;
        const f = (p0, p1, p2, p3) => u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
        take(f(x, c[1], c[3], c[5]), f(y, c[2], c[4], c[6]));
      }
    } else take(c[1], c[2]);
    x = c.at(-2);
    y = c.at(-1);
  }
  return { minX, minY, maxX, maxY };
};

const short = (n) => String(Number(n.toFixed(2)));

/** Path data as text, one letter and comma-free numbers, two decimals. */
export const pathText = (commands) =>
  commands.map(([letter, ...n]) => letter + n.map(short).join(' ')).join('');
