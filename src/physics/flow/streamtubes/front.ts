/** A front along a line of nodes of an isentropic flow. */

import { columnAt } from '../gasTable.ts';
import { NODE, type Symmetry } from '../points.ts';
import type { TubeGas } from './tubeGas.ts';
import { noteUndisturbed } from './tubeState.ts';
import { newFront, type TubeFront } from './tubes.ts';

// Three-point Gauss–Legendre rule on [0, 1].
const GAUSS_X = [0.1127016653792583, 0.5, 0.8872983346207417];
const GAUSS_W = [5 / 18, 8 / 18, 5 / 18];

/**
 * Front along a line of isentropic nodes (x, r, θ, ν, μ), lower side first, in `count` tubes of equal share of its nodes.
 * Mass and momentum are integrated along it; the states are those at the middle of each tube.
 */
export function frontAlong(gas: TubeGas, symmetry: Symmetry, nodes: Float64Array, count: number): TubeFront {
  const front = newFront(count, symmetry);
  const last = nodes.length / NODE - 1;
  const at = (share: number, k: number): number => {
    const s = Math.min(share * last, last);
    const i = Math.min(Math.floor(s), last - 1);
    return nodes[i * NODE + k]! + (s - i) * (nodes[(i + 1) * NODE + k]! - nodes[i * NODE + k]!);
  };
  for (let i = 0; i <= count; i++) {
    front.x[i] = at(i / count, 0);
    front.r[i] = at(i / count, 1);
  }
  for (let j = 0; j < count; j++) fillTube(front, gas, j, (t, k) => at((j + t) / count, k));
  for (let i = 0; i <= count; i++) {
    const j = Math.min(i, count - 1);
    front.faceLnP[i] = front.lnP[j]!;
    front.faceP[i] = Math.exp(front.lnP[j]!);
    front.faceTheta[i] = at(i / count, 2);
  }
  return front;
}

function fillTube(front: TubeFront, gas: TubeGas, j: number, at: (t: number, k: number) => number): void {
  const { knots, step, cells } = gas.table;
  const dx = front.x[j + 1]! - front.x[j]!;
  const dr = front.r[j + 1]! - front.r[j]!;
  let middle = 0;
  let direction = 0;
  for (let g = 0; g < 3; g++) {
    const t = GAUSS_X[g]!;
    const nu = at(t, 3);
    const theta = at(t, 2);
    const speed = columnAt(knots.speed, step, cells, nu);
    const pressure = Math.exp(columnAt(knots.lnPressure, step, cells, nu));
    const density = Math.exp(columnAt(knots.lnDensity, step, cells, nu));
    const u = speed * Math.cos(theta);
    const v = speed * Math.sin(theta);
    const weight = GAUSS_W[g]! * (front.round ? front.r[j]! + t * dr : 1);
    const flux = weight * density * (u * dr - v * dx);
    front.mass[j] = front.mass[j]! + flux;
    front.momentumX[j] = front.momentumX[j]! + flux * u + weight * pressure * dr;
    front.momentumR[j] = front.momentumR[j]! + flux * v - weight * pressure * dx;
    if (g === 1) {
      middle = speed;
      direction = theta;
    }
  }
  noteUndisturbed(front, gas, j, middle * Math.cos(direction), middle * Math.sin(direction));
}
