/** One stage of a step, and the tangents of the gases renewed after it. */

import type { Problem } from '../../numerics/problem.ts';
import { CELL_VALUES, type Field, type GasPair, middleOf, putTangent, type Reals } from './field.ts';
import { MIXED, mixedTangent, type Tangent } from './fieldGas.ts';
import type { Inflow } from './inflow.ts';
import { cellAt, GHOSTS, strideOf } from './mesh.ts';

/** What a step begins from, kept so that it can be taken back. */
export type Kept = Readonly<Record<(typeof CELL_VALUES)[number], Reals>>;

/** On as many bits as the field itself. */
export function keptFor(field: Field): Kept {
  return Object.fromEntries(CELL_VALUES.map((key) => [key, field[key].slice()])) as unknown as Kept;
}

export function keep(field: Field, kept: Kept): void {
  for (const key of CELL_VALUES) kept[key].set(field[key]);
}

export function restore(field: Field, kept: Kept): void {
  for (const key of CELL_VALUES) field[key].set(kept[key]);
}

/** Newton steps from the old pressure to that of the new energy; exact at once where the gas is perfect. */
export const PRESSURE_STEPS = 4;
/** A change of the pressure by this share asks for the tangent at the new one; what is left is of its square. */
export const NEAR = 1e-3;

/** Steps for which a cell that broke, and those beside it, go without slopes. */
export const BLURRED_STEPS = 20;

/** Towards a steady state the tangents of gases that stand alone are renewed once in so many steps. */
export const RENEWED = 4;

/** How often a step is tried with more and more cells without slopes. */
export const TRIES = 6;

/** One step less to go for each cell without slopes. */
export function lessBlurred({ blurred }: Field): void {
  for (let at = 0; at < blurred.length; at++) if (blurred[at]! > 0) blurred[at] = blurred[at]! - 1;
}

export function blurAround({ mesh, blurred }: Field, at: number): void {
  const stride = strideOf(mesh);
  for (const row of [-stride, 0, stride])
    for (const column of [-1, 0, 1]) blurred[at + row + column] = BLURRED_STEPS;
}

/**
 * Stage 0: forward. Stage 1: forward again, then the mean with what was before. The tangents stay as they are.
 * Cells that break are marked to go without slopes; the first of them is told.
 */
export function takeStage(
  field: Field,
  inflow: Inflow,
  old: Kept,
  seconds: Float64Array,
  stage: 0 | 1,
): Problem | null {
  const { mesh, density, u, v, share, energy, kappa, eta, zeta } = field;
  let broken: Problem | null = null;
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      const over = seconds[at]! / mesh.volume[at]!;
      const rho = density[at]!;
      let mass = rho + over * inflow.mass[at]!;
      let x = rho * u[at]! + over * inflow.x[at]!;
      let y = rho * v[at]! + over * inflow.y[at]!;
      let held = energy[at]! + over * inflow.energy[at]!;
      let inner = rho * share[at]! + over * inflow.share[at]!;
      if (stage === 1) {
        const was = old.density[at]!;
        mass = (mass + was) / 2;
        x = (x + was * old.u[at]!) / 2;
        y = (y + was * old.v[at]!) / 2;
        held = (held + old.energy[at]!) / 2;
        inner = (inner + was * old.share[at]!) / 2;
      }
      const within = held - (x * x + y * y) / (2 * mass);
      const p = (within - eta[at]! * mass - zeta[at]!) / kappa[at]!;
      if (!(mass > 0) || !(p > 0)) {
        broken ??= brokeAt(field, at);
        blurAround(field, at);
        continue;
      }
      putState(field, at, mass, x, y, inner, held, p);
    }
  }
  return broken;
}

/**
 * Puts into a cell what it holds for each volume.
 *
 * @param mass [kg/m³] @param x and y its momentum [kg/(m²·s)] @param inner mass of the inner gas [kg/m³]
 * @param held energy [J/m³] @param p pressure [Pa]
 */
export function putState(
  { density, u, v, share, energy, pressure }: Field,
  at: number,
  mass: number,
  x: number,
  y: number,
  inner: number,
  held: number,
  p: number,
): void {
  density[at] = mass;
  u[at] = x / mass;
  v[at] = y / mass;
  share[at] = inner / mass;
  energy[at] = held;
  pressure[at] = p;
}

/**
 * New tangents. Cells of one gas keep their energy, mixed ones their pressure (see docs: two gases).
 * @param all not in mixed cells only
 */
export function settle(
  field: Field,
  { inner, outer }: GasPair,
  tangent: Tangent,
  all: boolean,
): Problem | null {
  const { mesh, density, u, v, pressure, share, energy } = field;
  const onlyOne = inner === outer;
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      const rho = density[at]!;
      const part = share[at]!;
      const alone = onlyOne || part < MIXED || part > 1 - MIXED;
      if (alone && !all) continue;
      const moving = (rho * (u[at]! ** 2 + v[at]! ** 2)) / 2;
      let p = pressure[at]!;
      mixedTangent(inner, outer, part, rho, p, tangent);
      if (alone) {
        for (let n = 0; n < PRESSURE_STEPS; n++) {
          const next = (energy[at]! - moving - tangent.eta * rho - tangent.zeta) / tangent.kappa;
          const near = Math.abs(next - p) <= NEAR * p;
          p = next;
          if (!(p > 0)) {
            blurAround(field, at);
            return brokeAt(field, at);
          }
          if (near) break;
          mixedTangent(inner, outer, part, rho, p, tangent);
        }
        pressure[at] = p;
      } else {
        energy[at] = tangent.kappa * p + tangent.eta * rho + tangent.zeta + moving;
      }
      putTangent(field, at, tangent);
    }
  }
  return null;
}

/** The field still holds what it held there before. */
export function brokeAt({ mesh, density: densities, pressure: pressures }: Field, at: number): Problem {
  const stride = strideOf(mesh);
  const i = (at % stride) - GHOSTS;
  const j = Math.floor(at / stride) - GHOSTS;
  const [x, y] = middleOf(mesh, i, j);
  const [density, pressure] = [densities[at]!, pressures[at]!];
  return {
    code: 'field-broke',
    what: `The flow field has no state any more at x = ${x.toPrecision(4)} m, y = ${y.toPrecision(4)} m, where it held ${density.toPrecision(3)} kg/m³ at ${pressure.toPrecision(3)} Pa.`,
    why: 'The flow changes faster there than the mesh and the step can follow.',
    mend: 'Take shorter steps, a finer mesh, or go to this surrounding pressure in steps.',
    facts: { x, y, density, pressure },
  };
}
