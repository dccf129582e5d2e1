import { readFileSync } from 'node:fs';
import type { PaperFonts } from '../../src/output/pdf.ts';

const folder = new URL('../../node_modules/@expo-google-fonts/source-sans-3/', import.meta.url);
const file = (path: string): Uint8Array => new Uint8Array(readFileSync(new URL(path, folder)));

/** The font of the papers, read from its package. */
export const paperFonts = (): PaperFonts => ({
  regular: file('400Regular/SourceSans3_400Regular.ttf'),
  semibold: file('600SemiBold/SourceSans3_600SemiBold.ttf'),
});
