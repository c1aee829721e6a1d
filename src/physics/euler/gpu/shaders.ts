/** The shaders of a flow, with the numbers of the reference’s scheme. */

import { ALIKE, ISENTROPE_STEPS } from '../corners.ts';
import { LOWEST_SHARE } from '../openSides.ts';
import { STRONG } from '../shockMarks.ts';
import { BLURRED_STEPS, NEAR, PRESSURE_STEPS, RENEWED, TRIES } from '../stage.ts';
import { FACES } from './faces.wgsl.ts';
import { GAS } from './gas.wgsl.ts';
import { GHOSTS_SHADER } from './ghosts.wgsl.ts';
import { STAGE } from './stage.wgsl.ts';
import { RESERVOIR_PLACES, shaderHead } from './words.ts';

/** Shares of another gas below this count as none: floats of 32 bits are rounded more coarsely than those of the reference. */
const LEAST_SHARE = 1e-6;

export function flowShaders(): string {
  const head = shaderHead(
    { TRIES, RENEWED, BLURRED_STEPS, PRESSURE_STEPS, ISENTROPE_STEPS, RESERVOIR_PLACES },
    { NEAR, STRONG, ALIKE, LOWEST_SHARE, MIXED: LEAST_SHARE, OTHER_GAS: LEAST_SHARE },
  );
  return [head, GAS, FACES, GHOSTS_SHADER, STAGE].join('\n');
}
