/**
 * Energies of a gas over pressure and θ = p/ρ held to what any gas is, so that its pressure follows from its energy and its sound has
 * a speed at whatever state a field comes to: between states that were computed, chords cross; beyond them straight lines
 * run on, and where the gas dissociates those of two pressures soon say nonsense together.
 *
 *   e_Y ≥ 1.5 θ + |e_X|,   −0.5 θ ≤ e_X ≤ 0.25 θ,   X = ln p, Y = ln θ
 *
 * so that κ = (e_X + e_Y)/θ ≥ 1.5 and 1 + (1 − e_X/θ)/κ, the exponent of the isentrope, lies between 1 and 2.
 */

/** cv of a gas of atoms over its gas constant: none has less. */
const LEAST = 1.5;
/** Of e_X over θ; own choice. */
const LOWEST = -0.5;
const HIGHEST = 0.25;
/** Times that each value is put between its neighbours, so that cubics have no bends to overshoot. */
const ROUNDINGS = 3;

/**
 * In place, from the highest pressure down.
 * @param rows by rising pressure, each over rising θ @param step of X between two rows
 */
export function soundEnergies(rows: readonly Float64Array[], thetas: readonly number[], step: number): void {
  const top = rows.length - 1;
  for (let row = top; row >= 0; row--) {
    const own = rows[row]!;
    for (let n = 0; n < ROUNDINGS; n++) rounded(own, thetas);
    const above = rows[row + 1];
    if (above !== undefined)
      for (let k = 0; k < own.length; k++) {
        const reach = step * thetas[k]!;
        own[k] = Math.min(above[k]! - LOWEST * reach, Math.max(above[k]! - HIGHEST * reach, own[k]!));
      }
    rising(own, above, thetas, step);
  }
}

/** Halfway to the straight line between its neighbours over θ: what runs straight there, as a perfect gas does, stays. */
function rounded(row: Float64Array, thetas: readonly number[]): void {
  let before = row[0]!;
  for (let k = 1; k < row.length - 1; k++) {
    const own = row[k]!;
    const part = (thetas[k]! - thetas[k - 1]!) / (thetas[k + 1]! - thetas[k - 1]!);
    row[k] = (own + before + part * (row[k + 1]! - before)) / 2;
    before = own;
  }
}

/** From the coldest on: what rises too little is lifted. */
function rising(
  row: Float64Array,
  above: Float64Array | undefined,
  thetas: readonly number[],
  step: number,
): void {
  for (let k = 1; k < row.length; k++) {
    const across = above === undefined ? 0 : Math.abs(above[k]! - row[k]!) / step;
    const wide = thetas[k]! - thetas[k - 1]!;
    const mean = (thetas[k]! + thetas[k - 1]!) / 2;
    const least = row[k - 1]! + wide * (LEAST + across / mean);
    if (row[k]! < least) row[k] = least;
  }
}
