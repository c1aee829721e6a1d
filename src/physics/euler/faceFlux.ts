/**
 * The flux through a face between two states: Harten–Lax–van Leer with the contact kept (Toro, Spruce & Speares 1994), wave
 * speeds by Einfeldt (1988) for any gas; without the contact (HLLE) where the face stands across a strong shock, which
 * would otherwise bulge (Quirk 1994).
 */

/** One side of a face, its velocity turned into the face's own directions. */
export interface FaceSide {
  density: number;
  /** Along the face's normal, and along the face [m/s]. */ normal: number;
  along: number;
  pressure: number;
  share: number;
  /** Tangent of the gas (see fieldGas.ts) that reckons its energy. */ kappa: number;
  eta: number;
  zeta: number;
}

export const emptySide = (): FaceSide => ({
  density: 1,
  normal: 0,
  along: 0,
  pressure: 1,
  share: 0,
  kappa: 1,
  eta: 0,
  zeta: 0,
});

/** Each per m² of the face. */
export interface FaceFlux {
  mass: number;
  /** Momentum along the normal, and along the face. */ normal: number;
  along: number;
  /** Energy as the gas of the left and of the right side reckons it: alike where both hold the same gas. */
  energyLeft: number;
  energyRight: number;
  /** Mass of the inner gas. */ share: number;
}

export const emptyFlux = (): FaceFlux => ({
  mass: 0,
  normal: 0,
  along: 0,
  energyLeft: 0,
  energyRight: 0,
  share: 0,
});

/**
 * @param apart the sides hold different gases: each reckons the energy of both by its own tangent, so that a contact keeps
 * pressure and speed uniform (Abgrall & Karni 2001); mass and momentum stay conserved, energy only in sum over one gas.
 * @param soft no contact is kept
 */
export function faceFlux(
  left: FaceSide,
  right: FaceSide,
  apart: boolean,
  soft: boolean,
  out: FaceFlux,
): void {
  const { density: rl, normal: ul, pressure: pl, kappa: kl } = left;
  const { density: rr, normal: ur, pressure: pr, kappa: kr } = right;
  const squareLeft = ((kl + 1) * pl + left.zeta) / (kl * rl);
  const squareRight = ((kr + 1) * pr + right.zeta) / (kr * rr);
  const wl = Math.sqrt(rl);
  const wr = Math.sqrt(rr);
  const sum = wl + wr;
  const mean = (wl * ul + wr * ur) / sum;
  const jump = ur - ul;
  const middle = Math.sqrt(
    (wl * squareLeft + wr * squareRight) / sum + ((wl * wr) / (2 * sum * sum)) * jump * jump,
  );
  const leftEdge = ul - Math.sqrt(squareLeft);
  const rightEdge = ur + Math.sqrt(squareRight);
  const sl = leftEdge < mean - middle ? leftEdge : mean - middle;
  const sr = rightEdge > mean + middle ? rightEdge : mean + middle;
  if (sl >= 0) {
    plain(left, out);
    out.energyLeft = energyThrough(left, left);
    out.energyRight = apart ? energyThrough(left, right) : out.energyLeft;
    return;
  }
  if (sr <= 0) {
    plain(right, out);
    out.energyRight = energyThrough(right, right);
    out.energyLeft = apart ? energyThrough(right, left) : out.energyRight;
    return;
  }
  if (soft) {
    blurred(left, right, sl, sr, apart, out);
    return;
  }
  const ml = rl * (sl - ul);
  const mr = rr * (sr - ur);
  const sm = (pr - pl + ul * ml - ur * mr) / (ml - mr);
  const fromLeft = sm >= 0;
  const side = fromLeft ? left : right;
  const s = fromLeft ? sl : sr;
  const star = side.pressure + side.density * (s - side.normal) * (sm - side.normal);
  const density = (side.density * (s - side.normal)) / (s - sm);
  out.mass = density * sm;
  out.normal = out.mass * sm + star;
  out.along = out.mass * side.along;
  out.share = out.mass * side.share;
  out.energyLeft = starEnergy(side, apart ? left : side, s, sm, star);
  out.energyRight = apart ? starEnergy(side, right, s, sm, star) : out.energyLeft;
}

/** [J/m³] of a state, its inner part by the tangent of `gas` */
function energyOf(state: FaceSide, gas: FaceSide): number {
  const { density, normal, along, pressure } = state;
  return (
    gas.kappa * pressure + gas.eta * density + gas.zeta + (density * (normal * normal + along * along)) / 2
  );
}

function plain(state: FaceSide, out: FaceFlux): void {
  out.mass = state.density * state.normal;
  out.normal = out.mass * state.normal + state.pressure;
  out.along = out.mass * state.along;
  out.share = out.mass * state.share;
}

function energyThrough(state: FaceSide, gas: FaceSide): number {
  return (energyOf(state, gas) + state.pressure) * state.normal;
}

/** (E* + p*) s_m between the outer wave and the contact. */
function starEnergy(state: FaceSide, gas: FaceSide, s: number, sm: number, star: number): number {
  const energy = energyOf(state, gas);
  return (((s - state.normal) * energy - state.pressure * state.normal + star * sm) / (s - sm) + star) * sm;
}

function blurred(
  left: FaceSide,
  right: FaceSide,
  sl: number,
  sr: number,
  apart: boolean,
  out: FaceFlux,
): void {
  const width = sr - sl;
  const mix = (fluxLeft: number, fluxRight: number, holdLeft: number, holdRight: number): number =>
    (sr * fluxLeft - sl * fluxRight + sl * sr * (holdRight - holdLeft)) / width;
  const { density: rl, normal: ul } = left;
  const { density: rr, normal: ur } = right;
  const [ml, mr] = [rl * ul, rr * ur];
  out.mass = mix(ml, mr, rl, rr);
  out.normal = mix(ml * ul + left.pressure, mr * ur + right.pressure, ml, mr);
  out.along = mix(ml * left.along, mr * right.along, rl * left.along, rr * right.along);
  out.share = mix(ml * left.share, mr * right.share, rl * left.share, rr * right.share);
  const energy = (gasLeft: FaceSide, gasRight: FaceSide): number =>
    mix(
      energyThrough(left, gasLeft),
      energyThrough(right, gasRight),
      energyOf(left, gasLeft),
      energyOf(right, gasRight),
    );
  out.energyLeft = apart ? energy(left, left) : energy(left, right);
  out.energyRight = apart ? energy(right, right) : out.energyLeft;
}
