import { cleanText, numberOf } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import { attrOf, childrenOf, type XmlNode } from './xml.ts';

/** Extent of a unit seen from above, millimetres: across the viewer's line, along it, and upwards. */
export interface FileSize {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly heightMm?: number;
}

interface Model {
  readonly halfM: readonly [number, number, number];
}

/** The largest extent taken as real, in metres. */
const MAX_M = 30;

const modelsOf = (models: XmlNode | undefined, notices: Notices): ReadonlyMap<string, Model> => {
  const found = new Map<string, Model>();
  for (const m of childrenOf(models, 'Model')) {
    const size = ['Length', 'Width', 'Height'].map((n) => numberOf(attrOf(m, n)) ?? 0);
    const [x = 0, y = 0, z = 0] = size;
    if (size.some((n) => n < 0 || n > MAX_M)) {
      notices.add(
        `Model “${cleanText(attrOf(m, 'Name'), 40)}” has a size that cannot be right (${size.join(' × ')} m) and was left out.`,
      );
    } else if (x > 0 || y > 0) found.set(attrOf(m, 'Name') ?? '', { halfM: [x / 2, y / 2, z / 2] });
  }
  return found;
};

/**
 * The box around all models of a mode as they stand in the file, seen from above as in its own top view. Each model
 * is a box around the place of its geometry; sizes of the models count, not their meshes (DIN SPEC 15800, Model).
 * Undefined where no model has a size.
 */
export const fileSize = (
  models: XmlNode | undefined,
  visits: readonly Visit[],
  notices: Notices,
): FileSize | undefined => {
  const byName = modelsOf(models, notices);
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (const { place, model } of visits) {
    const half = model === undefined ? undefined : byName.get(model)?.halfM;
    if (!half) continue;
    for (let r = 0; r < 3; r++) {
      const centre = place[r * 4 + 3] ?? 0;
      let reach = 0;
      for (let k = 0; k < 3; k++) reach += Math.abs(place[r * 4 + k] ?? 0) * (half[k] ?? 0);
      min[r] = Math.min(min[r] ?? 0, centre - reach);
      max[r] = Math.max(max[r] ?? 0, centre + reach);
    }
  }
  const [x = 0, y = 0, z = 0] = max.map((m, i) => Math.round((m - (min[i] ?? 0)) * 1000));
  if (!(x > 0 && y > 0 && x <= MAX_M * 1000 && y <= MAX_M * 1000)) return undefined;
  return { widthMm: x, lengthMm: y, ...(z > 0 && z <= MAX_M * 1000 ? { heightMm: z } : {}) };
};
