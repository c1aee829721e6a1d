/** How the first, second, third and fourth engine are told apart: hue, and always a second cue. */

import type { ColourToken } from './tokens.ts';

export type Marker = 'disc' | 'diamond' | 'triangle' | 'square';
export type BandFill = 'tint' | 'hatch' | 'dots' | 'outline';

export interface EngineStyle {
  /** 1 to 4, in the order of the study. */ readonly order: 1 | 2 | 3 | 4;
  readonly colour: ColourToken;
  /** Dashes as multiples of the line width; empty for a solid line. */ readonly dash: readonly number[];
  readonly marker: Marker;
  readonly band: BandFill;
  /** [degrees] lean of the engine's hatch, clockwise from upright */ readonly hatchAngle: number;
}

export const ENGINE_STYLES: readonly [EngineStyle, EngineStyle, EngineStyle, EngineStyle] = [
  { order: 1, colour: 'engine-1', dash: [], marker: 'disc', band: 'tint', hatchAngle: 45 },
  { order: 2, colour: 'engine-2', dash: [2.9, 1.7], marker: 'diamond', band: 'hatch', hatchAngle: -45 },
  {
    order: 3,
    colour: 'engine-3',
    dash: [5, 1.5, 0.9, 1.5],
    marker: 'triangle',
    band: 'dots',
    hatchAngle: 45,
  },
  { order: 4, colour: 'engine-4', dash: [0.9, 1.2], marker: 'square', band: 'outline', hatchAngle: -45 },
];
