/** Lines along which the gas of a field flows, an equal part of it between each two. */

import { type FieldReader, fieldReader } from './fieldPlaces.ts';
import type { PictureBlock } from './flowPicture.ts';

export interface Streamline {
  /** [m] */ readonly axial: readonly number[];
  readonly radius: readonly number[];
  /** [s] since the gas came in */ readonly time: readonly number[];
}

/** Length of a step over the size of the cells. */
const STEP = 0.4;
const MOST_STEPS = 6000;
/** Gas slower than this share of the fastest on its line stands still. */
const STILL = 1e-3;

/**
 * From where the gas comes in, the first side of the first block: the share (k + ½)/count of its flow lies between axis or
 * inner wall and line k. Midpoint steps; in a steady flow, round or flat, these are lines of equal stream function.
 * @param upTo [m] axial distance at which they end
 */
export function streamlines(
  blocks: readonly PictureBlock[],
  count: number,
  upTo: number,
): readonly Streamline[] {
  const reader = fieldReader(blocks);
  return seedsOf(blocks[0]!, count).map(([axial, radius]) => lineFrom(reader, axial, radius, upTo));
}

/** Places in the middle of the first cells that have equal flow between them, half of it beside the ends. */
function seedsOf(block: PictureBlock, count: number): readonly (readonly [number, number])[] {
  const { symmetry, ni, nj, axial, radius, density, along, away } = block;
  const isRound = symmetry === 'round';
  const passed = [0];
  for (let j = 0; j < nj; j++) {
    const [a, c] = [j * (ni + 1), (j + 1) * (ni + 1)];
    const [dx, dr] = [axial[c]! - axial[a]!, radius[c]! - radius[a]!];
    const around = isRound ? (radius[a]! + radius[c]!) / 2 : 1;
    const flow = density[j * ni]! * (along[j * ni]! * dr - away[j * ni]! * dx) * around;
    passed.push(passed[j]! + Math.max(0, flow));
  }
  const all = passed[nj]!;
  if (!(all > 0)) return [];
  return Array.from({ length: count }, (_, k) => {
    const wanted = (all * (k + 0.5)) / count;
    const j = Math.max(0, Math.min(nj - 1, passed.findIndex((flow) => flow > wanted) - 1));
    const share = (wanted - passed[j]!) / (passed[j + 1]! - passed[j]!);
    const [a, c] = [j * (ni + 1), (j + 1) * (ni + 1)];
    // Half a cell in, between the two lines of the mesh.
    const at = (i: number): readonly [number, number] => {
      const [inner, outer] = [radius[a + i]!, radius[c + i]!];
      const way = isRound ? wayByArea(inner, outer, share) : share;
      return [axial[a + i]! + way * (axial[c + i]! - axial[a + i]!), inner + way * (outer - inner)];
    };
    const [one, other] = [at(0), at(1)];
    return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2];
  });
}

/** The flow of a round cell grows with the square of the radius. */
function wayByArea(inner: number, outer: number, share: number): number {
  if (outer === inner) return share;
  return (Math.sqrt(inner * inner + share * (outer * outer - inner * inner)) - inner) / (outer - inner);
}

function lineFrom(reader: FieldReader, x0: number, r0: number, upTo: number): Streamline {
  const [axial, radius, time] = [[x0], [r0], [0]];
  let [x, r, at, fastest] = [x0, r0, 0, 0];
  for (let step = 0; step < MOST_STEPS && reader.goTo(x, r); step++) {
    const [u, v, size] = [reader.read('along'), reader.read('away'), STEP * reader.size()];
    const speed = Math.hypot(u, v);
    fastest = Math.max(fastest, speed);
    if (!(speed > STILL * fastest)) break;
    const half = size / 2 / speed;
    if (!reader.goTo(x + half * u, Math.max(0, r + half * v))) break;
    const [um, vm] = [reader.read('along'), reader.read('away')];
    const middle = Math.hypot(um, vm);
    if (!(middle > STILL * fastest)) break;
    const took = size / middle;
    [x, r, at] = [x + took * um, Math.max(0, r + took * vm), at + took];
    axial.push(x);
    radius.push(r);
    time.push(at);
    if (x > upTo) break;
  }
  return { axial, radius, time };
}
