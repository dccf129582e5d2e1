export const ALLOWED: Readonly<Record<string, readonly string[]>>;
export const checkLayers: (files: ReadonlyMap<string, string>) => { errors: string[]; warnings: string[] };
export const readSources: (root: string) => Map<string, string>;
