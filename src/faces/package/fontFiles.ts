import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Scene } from '../../telling/scene/scene.ts';
import { type EmbeddedFont, sceneToSvg } from '../../telling/scene/svg.ts';

/** The bundled fonts; this folder lies three levels below the root both as source and as built. */
const place = (name: string, ending: 'ttf' | 'woff'): string =>
  fileURLToPath(new URL(`../../../assets/fonts/SourceSans3-${name}.${ending}`, import.meta.url));

const names = { 400: 'Regular', 600: 'SemiBold', 700: 'Bold' } as const;

/** Paths, for the picture maker. */
export const fontFiles: readonly string[] = Object.values(names).map((name) => place(name, 'ttf'));

/** The fonts of these weights, whole: for a drawing that any program opens, or for a page. */
export function embeddedFonts(
  weights: readonly (400 | 600 | 700)[],
  form: EmbeddedFont['form'],
): readonly EmbeddedFont[] {
  const ending = form === 'woff' ? 'woff' : 'ttf';
  return weights.map((weight) => ({
    weight,
    form,
    base64: readFileSync(place(names[weight], ending)).toString('base64'),
  }));
}

/** A drawing as a file, with its fonts inside or without. */
export const svgFile = (scene: Scene, fonts: boolean): string =>
  sceneToSvg(scene, fonts ? { fonts: embeddedFonts([400, 600, 700], 'truetype') } : {});
