import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { EmbeddedFont } from '../../telling/scene/svg.ts';

/** The bundled fonts; this folder lies three levels below the root both as source and as built. */
const place = (name: string): string =>
  fileURLToPath(new URL(`../../../assets/fonts/SourceSans3-${name}.ttf`, import.meta.url));

const names = { 400: 'Regular', 600: 'SemiBold', 700: 'Bold' } as const;

/** Paths, for the picture maker. */
export const fontFiles: readonly string[] = Object.values(names).map(place);

/** The fonts of these weights as base64, whole. */
export function embeddedFonts(weights: readonly (400 | 600 | 700)[]): readonly EmbeddedFont[] {
  return weights.map((weight) => ({ weight, base64: readFileSync(place(names[weight])).toString('base64') }));
}
