/** The look as CSS variables, so that the workbench and every page take their colours from one place. */

import { FIELD_TINTS, RAMPS, rampColour } from './flowRamps.ts';
import { COLOURS, type ColourToken, type Theme } from './tokens.ts';

export const FONT_FAMILY = 'Source Sans 3';
/** Name of the cut-down font that travels inside exported files; the licence reserves the name "Source". */
export const SUBSET_FAMILY = 'Plumeline Text';
export const FONT_STACK = `'${FONT_FAMILY}','${SUBSET_FAMILY}',system-ui,sans-serif`;

/**
 * Declarations of one theme, to be put inside a rule of your own:
 * `:root{${themeCss('light')}} @media (prefers-color-scheme: dark){:root{${themeCss('dark')}}}`.
 * Variables: `--paper`, `--ink`, `--ink-2`, `--engine-1`, … and `--pressure-0` (paper) to `--pressure-24`; so for `--mach-`, `--temperature-`, `--speed-` and `--density-`.
 */
export function themeCss(theme: Theme): string {
  const colours = Object.entries(COLOURS[theme]) as [ColourToken, string][];
  const lines = colours.map(([token, hex]) => `--${token}:${hex};`);
  for (const tint of FIELD_TINTS) {
    for (let step = 0; step <= RAMPS[tint].steps; step++)
      lines.push(`--${tint}-${step}:${rampColour(tint, step, theme)};`);
  }
  return `color-scheme:${theme};${lines.join('')}`;
}
