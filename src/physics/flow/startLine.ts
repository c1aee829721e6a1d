/**
 * The first characteristic: C− from the wall at the throat plane down to the axis, in the transonic series.
 *
 * The wall's curvature jumps at the throat plane (the downstream arc is tighter). Nothing downstream of this
 * characteristic can be felt upstream of it, so the series of the upstream arc holds up to it and the net takes over.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { columnAt, type SupersonicTable } from './gasTable.ts';
import { NODE, setNodeInto } from './points.ts';
import { nuAtSpeed } from './tableInverse.ts';
import { throatVelocity } from './transonicThroat.ts';

export interface ThroatGas {
  readonly table: SupersonicTable;
  /** Isentropic exponent at the throat [–] */ readonly gamma: number;
  /** Critical speed [m/s] */ readonly criticalSpeed: number;
}

/**
 * Nodes from the wall (first) to the axis (last), `count` of them, evenly spaced in r², so that each carries about the
 * same flow.
 * @param throatRadius [m]
 * @param curvatureRadius upstream wall curvature radius over throat radius [–]
 * @throws ProblemError when the series is not supersonic on the whole characteristic (throat too sharp)
 */
export function throatCharacteristic(
  gas: ThroatGas,
  throatRadius: number,
  curvatureRadius: number,
  count: number,
): Float64Array {
  const nodes = new Float64Array(count * NODE);
  let x = 0;
  let r = 1;
  for (let i = 0; i < count; i++) {
    const wanted = i === count - 1 ? 0 : 1 - i / (count - 1);
    if (i > 0) {
      x = stepAlongCMinus(gas, curvatureRadius, x, r, wanted);
      r = wanted;
    }
    const { theta, nu } = stateAt(gas, curvatureRadius, x, r);
    setNodeInto(nodes, i * NODE, gas.table, x * throatRadius, r * throatRadius, r === 0 ? 0 : theta, nu);
  }
  return nodes;
}

function stateAt(
  gas: ThroatGas,
  curvatureRadius: number,
  x: number,
  r: number,
): { theta: number; nu: number } {
  const { u, v } = throatVelocity(x, r, curvatureRadius, gas.gamma);
  const speed = Math.hypot(u, v) * gas.criticalSpeed;
  if (!(speed > gas.criticalSpeed)) {
    throw new ProblemError({
      code: 'throat-series-not-supersonic',
      what: `The throat flow is not supersonic at r = ${r.toFixed(3)} throat radii on the first characteristic.`,
      why: `the series for a rounded throat (curvature ${curvatureRadius} throat radii) has left its range`,
      mend: 'Use a throat rounded with a radius of at least 0.6 throat radii upstream.',
      facts: { curvatureRadius, x, r },
    });
  }
  return { theta: Math.atan2(v, u), nu: nuAtSpeed(gas.table, speed) };
}

/** Integrate dx/dr = cot(θ − μ) from r to `to` with classical Runge–Kutta, in steps of at most 0.01. */
function stepAlongCMinus(gas: ThroatGas, curvatureRadius: number, x: number, r: number, to: number): number {
  const steps = Math.max(1, Math.ceil((r - to) / 0.01));
  const h = (to - r) / steps;
  const slope = (atX: number, atR: number): number => {
    const { theta, nu } = stateAt(gas, curvatureRadius, atX, atR);
    const mu = columnAt(gas.table.knots.mu, gas.table.step, gas.table.cells, nu);
    return 1 / Math.tan(theta - mu);
  };
  for (let i = 0; i < steps; i++) {
    const k1 = slope(x, r);
    const k2 = slope(x + 0.5 * h * k1, r + 0.5 * h);
    const k3 = slope(x + 0.5 * h * k2, r + 0.5 * h);
    const k4 = slope(x + h * k3, r + h);
    x += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
    r += h;
  }
  return x;
}
