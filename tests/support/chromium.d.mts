export const findChromium: (log?: (line: string) => void) => { path?: string; todo?: string };
