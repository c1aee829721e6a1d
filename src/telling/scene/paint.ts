/** A role of colour as the colour that it has in a theme. */

import { stepColour } from '../look/pressureRamp.ts';
import { COLOURS, type ColourToken, type Theme } from '../look/tokens.ts';
import type { Paint } from './scene.ts';

/** `#rrggbb`, or `none`. */
export function fixedColour(paint: Paint, theme: Theme): string {
  if (paint === 'none') return 'none';
  if (paint.startsWith('pressure-')) return stepColour(Number(paint.slice(9)), theme);
  return COLOURS[theme][paint as ColourToken];
}
