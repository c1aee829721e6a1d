/** What flows in a block: one value a cell of density, velocity, pressure and share of the inner gas, ghosts included. */

import { ProblemError } from '../../numerics/problem.ts';
import { type FieldGas, mixedTangent, type Tangent } from './fieldGas.ts';
import { cellAt, type MeshBlock } from './mesh.ts';

export interface FlowPoint {
  /** [kg/m³] */ readonly density: number;
  /** [m/s] */ readonly u: number;
  readonly v: number;
  /** [Pa] */ readonly pressure: number;
  /** Share of the mass that is the inner gas (exhaust), 0 to 1. */ readonly share: number;
}

/** The exhaust and the air around it; the same gas twice where there is one. */
export interface GasPair {
  readonly inner: FieldGas;
  readonly outer: FieldGas;
}

/** Floats of 64 bits in the reference; a kernel may reckon with 32. */
export type Reals = Float64Array | Float32Array;

/** Where the values of a field are kept. */
export interface FieldRoom {
  /** One for each cell, ghosts included. */ reals(): Reals;
  bytes(): Uint8Array;
}

export interface Field {
  readonly mesh: MeshBlock;
  readonly density: Reals;
  readonly u: Reals;
  readonly v: Reals;
  readonly pressure: Reals;
  readonly share: Reals;
  /** Tangent of the gas in each cell. */ readonly kappa: Reals;
  readonly eta: Reals;
  readonly zeta: Reals;
  /** ρe + ρ(u² + v²)/2 [J/m³] */ readonly energy: Reals;
  /** 1 where a strong shock lies across the first, the second index. */ readonly shockI: Uint8Array;
  readonly shockJ: Uint8Array;
  /** Steps for which a cell goes without slopes, having broken: see stage.ts. */ readonly blurred: Uint8Array;
  /** Faces, as in the mesh, that are walls. */ readonly iWalls: Uint8Array;
  readonly jWalls: Uint8Array;
}

/** All that a cell holds besides its marks, in the order in which kernels keep it. */
export const CELL_VALUES = [
  'density',
  'u',
  'v',
  'pressure',
  'share',
  'kappa',
  'eta',
  'zeta',
  'energy',
] as const;

/** In the reference’s own floats. */
export function plainRoom({ volume }: MeshBlock): FieldRoom {
  return { reals: () => new Float64Array(volume.length), bytes: () => new Uint8Array(volume.length) };
}

/** @param at the flow at the middle of each cell */
export function fieldOn(
  mesh: MeshBlock,
  gases: GasPair,
  at: (x: number, y: number, i: number, j: number) => FlowPoint,
  room: FieldRoom = plainRoom(mesh),
): Field {
  const array = (): Reals => room.reals();
  const field: Field = {
    mesh,
    density: array().fill(1),
    u: array(),
    v: array(),
    pressure: array().fill(1),
    share: array(),
    kappa: array().fill(1),
    eta: array(),
    zeta: array(),
    energy: array(),
    shockI: room.bytes(),
    shockJ: room.bytes(),
    blurred: room.bytes(),
    iWalls: new Uint8Array(mesh.iFaceX.length),
    jWalls: new Uint8Array(mesh.jFaceX.length),
  };
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  for (let j = 0; j < mesh.nj; j++) {
    for (let i = 0; i < mesh.ni; i++) {
      const [x, y] = middleOf(mesh, i, j);
      putPoint(field, cellAt(mesh, i, j), at(x, y, i, j), gases, tangent);
    }
  }
  return field;
}

/** [m] the mean of the cell's corners */
export function middleOf({ ni, x, y }: MeshBlock, i: number, j: number): readonly [number, number] {
  const a = j * (ni + 1) + i;
  const d = a + ni + 1;
  return [(x[a]! + x[a + 1]! + x[d]! + x[d + 1]!) / 4, (y[a]! + y[a + 1]! + y[d]! + y[d + 1]!) / 4];
}

/** @throws ProblemError for a density or a pressure that is not above nothing */
export function putPoint(
  field: Field,
  cell: number,
  point: FlowPoint,
  gases: GasPair,
  tangent: Tangent,
): void {
  const { density, u, v, pressure, share } = point;
  if (!(density > 0) || !(pressure > 0) || !Number.isFinite(density * pressure * (1 + u * u + v * v))) {
    throw new ProblemError({
      code: 'field-point',
      what: `A density of ${density} kg/m³ at ${pressure} Pa is no state of a gas.`,
      mend: 'Give a density, a pressure and a velocity that are finite, the first two above 0.',
      facts: { density, pressure, u, v },
    });
  }
  field.density[cell] = density;
  field.u[cell] = u;
  field.v[cell] = v;
  field.pressure[cell] = pressure;
  field.share[cell] = share;
  mixedTangent(gases.inner, gases.outer, share, density, pressure, tangent);
  putTangent(field, cell, tangent);
  field.energy[cell] =
    tangent.kappa * pressure + tangent.eta * density + tangent.zeta + (density * (u * u + v * v)) / 2;
}

export function putTangent(field: Field, cell: number, { kappa, eta, zeta }: Tangent): void {
  field.kappa[cell] = kappa;
  field.eta[cell] = eta;
  field.zeta[cell] = zeta;
}

/** [m/s] */
export function soundSpeedAt({ kappa, zeta, pressure, density }: Field, cell: number): number {
  const k = kappa[cell]!;
  return Math.sqrt(((k + 1) * pressure[cell]! + zeta[cell]!) / (k * density[cell]!));
}
