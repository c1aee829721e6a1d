/**
 * Write src/physics/nozzle/bellAngleTable.ts: the wall angles that give a parabolic bell its greatest vacuum thrust in the
 * computed field, over area ratio, length and isentropic exponent. Run after a build: `node scripts/bell-angles.mjs`, some minutes.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, say } from './house.mjs';

const load = (path) => import(new URL(`../dist/physics/${path}`, import.meta.url).href);
const { expandPerfect } = await load('gas/perfectGas.js');
const { optimalBellAngles } = await load('nozzle/optimalAngles.js');

const AREA_RATIOS = [3, 5, 10, 20, 40, 80, 160, 400];
const LENGTHS = [0.6, 0.7, 0.8, 0.9, 1];
const GAMMAS = [1.1, 1.2, 1.3, 1.4];
const DEGREE = Math.PI / 180;

const rows = [];
for (const gamma of GAMMAS) {
  const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
  for (const length of LENGTHS) {
    // A flat bell of 80 % begins near 24° and 13°; each area ratio starts from the one before.
    let guess = {
      throatAngle: (24 + 30 * (0.8 - length)) * DEGREE,
      lipAngle: (13 + 28 * (0.8 - length)) * DEGREE,
    };
    for (const areaRatio of AREA_RATIOS) {
      const found = optimalBellAngles(areaRatio, length, expansion, guess);
      if (found === null) throw new Error(`no fields at ${areaRatio}, ${length}, ${gamma}`);
      // Once more from there: the first start may have been far.
      guess = optimalBellAngles(areaRatio, length, expansion, found) ?? found;
      const degrees = [guess.throatAngle, guess.lipAngle].map((angle) => (angle / DEGREE).toFixed(2));
      rows.push(`  [${gamma}, ${length}, ${areaRatio}, ${degrees.join(', ')}],`);
    }
    say(`γ ${gamma}, length ${length}: done`);
  }
}

const text = `/**
 * Wall angles of parabolic bells for the greatest vacuum thrust in the computed field.
 *
 * Made by scripts/bell-angles.mjs from this program's own field (tubeField.ts, optimalAngles.ts) on perfect gases, throat
 * arc 0.382 throat radii downstream and 1.5 upstream. Good to about half a degree; the thrust is flat there.
 */

/** γ [–], share of the 15° cone's length [–], area ratio [–], angle behind the throat [°], angle at the lip [°]. */
export const BELL_ANGLE_ROWS: readonly (readonly [number, number, number, number, number])[] = [
${rows.join('\n')}
];
`;
writeFileSync(join(root, 'src/physics/nozzle/bellAngleTable.ts'), text);
say(`wrote ${rows.length} rows`);
