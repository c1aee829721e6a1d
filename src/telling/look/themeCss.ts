/** The look as CSS variables, so that the workbench and every page take their colours from one place. */

import { PRESSURE_RAMP, PRESSURE_STEPS } from './pressureRamp.ts';
import { COLOURS, type ColourToken, type Theme } from './tokens.ts';

export const FONT_FAMILY = 'Source Sans 3';
/** Name of the cut-down font that travels inside exported files; the licence reserves the name "Source". */
export const SUBSET_FAMILY = 'Plumeline Text';
export const FONT_STACK = `'${FONT_FAMILY}','${SUBSET_FAMILY}',system-ui,sans-serif`;

/**
 * Declarations of one theme, to be put inside a rule of your own:
 * `:root{${themeCss('light')}} @media (prefers-color-scheme: dark){:root{${themeCss('dark')}}}`.
 * Variables: `--paper`, `--ink`, `--ink-2`, `--engine-1`, … and `--pressure-0` (paper) to `--pressure-24`.
 */
export function themeCss(theme: Theme): string {
  const colours = Object.entries(COLOURS[theme]) as [ColourToken, string][];
  const lines = colours.map(([token, hex]) => `--${token}:${hex};`);
  lines.push(`--pressure-0:${COLOURS[theme].paper};`);
  for (let step = 1; step <= PRESSURE_STEPS; step++)
    lines.push(`--pressure-${step}:${PRESSURE_RAMP[theme][step - 1]};`);
  return `color-scheme:${theme};${lines.join('')}`;
}
