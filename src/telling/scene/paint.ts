/** A role of colour as the colour that it has in a theme. */

import { type FieldTint, rampColour } from '../look/flowRamps.ts';
import { COLOURS, type ColourToken, type Theme } from '../look/tokens.ts';
import type { Paint } from './scene.ts';

/** `#rrggbb`, or `none`. */
export function fixedColour(paint: Paint, theme: Theme): string {
  if (paint === 'none') return 'none';
  const [, tint, step] = /^(pressure|mach|temperature|speed|density)-(\d+)$/.exec(paint) ?? [];
  if (tint !== undefined) return rampColour(tint as FieldTint, Number(step), theme);
  return COLOURS[theme][paint as ColourToken];
}
