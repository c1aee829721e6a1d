/**
 * Solve A x = b in place by Gaussian elimination with row scaling and partial pivoting.
 *
 * @param system row-major, `size` rows of `stride` numbers: the matrix, then the right-hand sides from column `size` on
 * @param x the solutions are written here, one after the other
 * @param rights how many right-hand sides there are
 * @returns false when a pivot vanishes or is no number; a system that is only nearly singular is solved as it stands
 * Source: standard (G. H. Golub & C. F. Van Loan, Matrix Computations, ch. 3). Allocates nothing.
 */
export function solveDenseInto(
  x: Float64Array,
  system: Float64Array,
  size: number,
  stride: number,
  rights = 1,
): boolean {
  const width = size + rights;
  for (let r = 0; r < size; r++) {
    const row = r * stride;
    let largest = 0;
    for (let c = 0; c < size; c++) {
      const magnitude = Math.abs(system[row + c]!);
      if (magnitude > largest) largest = magnitude;
    }
    if (!(largest > 0)) return false;
    const scale = 1 / largest;
    for (let c = 0; c < width; c++) system[row + c]! *= scale;
  }
  for (let k = 0; k < size; k++) {
    let p = k;
    for (let r = k + 1; r < size; r++) {
      if (Math.abs(system[r * stride + k]!) > Math.abs(system[p * stride + k]!)) p = r;
    }
    const pivot = system[p * stride + k]!;
    if (!(Math.abs(pivot) > 1e-280)) return false;
    if (p !== k) {
      for (let c = k; c < width; c++) {
        const keep = system[k * stride + c]!;
        system[k * stride + c] = system[p * stride + c]!;
        system[p * stride + c] = keep;
      }
    }
    for (let r = k + 1; r < size; r++) {
      const factor = system[r * stride + k]! / pivot;
      if (factor === 0) continue;
      for (let c = k + 1; c < width; c++) system[r * stride + c]! -= factor * system[k * stride + c]!;
    }
  }
  for (let b = 0; b < rights; b++) {
    const at = b * size;
    for (let r = size - 1; r >= 0; r--) {
      let sum = system[r * stride + size + b]!;
      for (let c = r + 1; c < size; c++) sum -= system[r * stride + c]! * x[at + c]!;
      x[at + r] = sum / system[r * stride + r]!;
    }
  }
  return true;
}
