/** What flows into each cell a second: second order in space by limited slopes of density, velocity, pressure and share. */

import { emptyFlux, emptySide, type FaceFlux, type FaceSide, faceFlux } from './faceFlux.ts';
import type { Field } from './field.ts';
import { cellAt, strideOf } from './mesh.ts';

/** Into each cell a second, all faces together; ghosts hold nothing. */
export interface Inflow {
  readonly mass: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly energy: Float64Array;
  readonly share: Float64Array;
}

export function inflowFor(field: Field): Inflow {
  const array = (): Float64Array => new Float64Array(field.density.length);
  return { mass: array(), x: array(), y: array(), energy: array(), share: array() };
}

/** Above this share of another gas two cells count as different gases. */
const OTHER_GAS = 1e-9;

interface Work {
  readonly left: FaceSide;
  readonly right: FaceSide;
  readonly flux: FaceFlux;
}

/**
 * @param firstOrder without slopes: robust, blurred
 */
export function addInflow(field: Field, inflow: Inflow, firstOrder: boolean): void {
  const { mesh } = field;
  const { ni, nj } = mesh;
  const stride = strideOf(mesh);
  for (const each of Object.values(inflow) as Float64Array[]) each.fill(0);
  const work: Work = { left: emptySide(), right: emptySide(), flux: emptyFlux() };
  for (let j = 0; j < nj; j++) {
    for (let i = 0; i <= ni; i++) {
      const face = j * (ni + 1) + i;
      through(
        field,
        inflow,
        work,
        cellAt(mesh, i - 1, j),
        1,
        field.shockJ,
        mesh.iFaceX[face]!,
        mesh.iFaceY[face]!,
        field.iWalls[face] === 0 ? 'open' : i === 0 ? 'behind' : 'ahead',
        firstOrder,
      );
    }
  }
  for (let j = 0; j <= nj; j++) {
    for (let i = 0; i < ni; i++) {
      const face = j * ni + i;
      through(
        field,
        inflow,
        work,
        cellAt(mesh, i, j - 1),
        stride,
        field.shockI,
        mesh.jFaceX[face]!,
        mesh.jFaceY[face]!,
        field.jWalls[face] === 0 ? 'open' : j === 0 ? 'behind' : 'ahead',
        firstOrder,
      );
    }
  }
  if (mesh.symmetry === 'round') pushOutward(field, inflow);
}

/** The pressure on the two sides of a wedge round the axis pushes the gas outward. */
function pushOutward({ mesh, pressure }: Field, { y }: Inflow): void {
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) y[at] = y[at]! + pressure[at]! * mesh.planeArea[at]!;
  }
}

/** Through the face between cell `a` and the next, `step` on; `shock` marks cells where one lies across the other direction. */
function through(
  field: Field,
  inflow: Inflow,
  { left, right, flux }: Work,
  a: number,
  step: number,
  shock: Uint8Array,
  areaX: number,
  areaY: number,
  wall: 'open' | 'behind' | 'ahead',
  firstOrder: boolean,
): void {
  const area = Math.sqrt(areaX * areaX + areaY * areaY);
  if (area === 0) return;
  const nx = areaX / area;
  const ny = areaY / area;
  const b = a + step;
  if (wall !== 'behind') sideOf(field, left, a, step, 1, nx, ny, firstOrder);
  if (wall !== 'ahead') sideOf(field, right, b, step, -1, nx, ny, firstOrder);
  if (wall === 'ahead') mirror(left, right);
  if (wall === 'behind') mirror(right, left);
  const { share } = field;
  const between = share[a]! - share[b]!;
  const apart = between > OTHER_GAS || between < -OTHER_GAS;
  const soft = shock[a] === 1 || shock[b] === 1;
  faceFlux(left, right, apart, soft, flux);
  const { mass, x, y, energy, share: inner } = inflow;
  const px = (flux.normal * nx - flux.along * ny) * area;
  const py = (flux.normal * ny + flux.along * nx) * area;
  mass[a] = mass[a]! - flux.mass * area;
  mass[b] = mass[b]! + flux.mass * area;
  x[a] = x[a]! - px;
  x[b] = x[b]! + px;
  y[a] = y[a]! - py;
  y[b] = y[b]! + py;
  energy[a] = energy[a]! - flux.energyLeft * area;
  energy[b] = energy[b]! + flux.energyRight * area;
  inner[a] = inner[a]! - flux.share * area;
  inner[b] = inner[b]! + flux.share * area;
}

/** The wall's other side: what comes is sent back. */
function mirror(from: FaceSide, to: FaceSide): void {
  to.density = from.density;
  to.normal = -from.normal;
  to.along = from.along;
  to.pressure = from.pressure;
  to.share = from.share;
  to.kappa = from.kappa;
  to.eta = from.eta;
  to.zeta = from.zeta;
}

/** The state of a cell at its face ahead (`ahead` 1) or behind (−1). */
function sideOf(
  field: Field,
  out: FaceSide,
  cell: number,
  step: number,
  ahead: 1 | -1,
  nx: number,
  ny: number,
  firstOrder: boolean,
): void {
  const { density, u, v, pressure, share } = field;
  let rho = density[cell]!;
  let p = pressure[cell]!;
  let ux = u[cell]!;
  let uy = v[cell]!;
  let part = share[cell]!;
  if (!firstOrder) {
    const half = ahead / 2;
    const rhoThere = rho + half * slope(density, cell, step);
    const pThere = p + half * slope(pressure, cell, step);
    if (rhoThere > 0 && pThere > 0) {
      rho = rhoThere;
      p = pThere;
      ux += half * slope(u, cell, step);
      uy += half * slope(v, cell, step);
      part += half * slope(share, cell, step);
    }
  }
  out.density = rho;
  out.pressure = p;
  out.normal = ux * nx + uy * ny;
  out.along = uy * nx - ux * ny;
  out.share = part;
  out.kappa = field.kappa[cell]!;
  out.eta = field.eta[cell]!;
  out.zeta = field.zeta[cell]!;
}

/** Van Leer’s harmonic mean (1974): nothing at an extreme, second order elsewhere. */
function slope(of: Float64Array, cell: number, step: number): number {
  const here = of[cell]!;
  const behind = here - of[cell - step]!;
  const ahead = of[cell + step]! - here;
  const product = behind * ahead;
  return product > 0 ? (2 * product) / (behind + ahead) : 0;
}
