/** What the gas is at a wall, from the cells beside it: their middles lie half a cell off, where its pressure may be some per cent less. */

/**
 * Straight on in its logarithm by half a cell, the slope limited (van Leer) as in the field's own steps.
 *
 *   ln v_w = ln v₁ + ½ · 2ab/(a + b),   a = ln v₁ − ln v₂,   b = ln v₂ − ln v₃,   0 where a and b differ in sign
 *
 * @param first value in the cell at the wall, then in the next two off it, of equal width; where one is not above nothing: the first itself
 */
export function atWall(first: number, second: number, third: number): number {
  if (!(first > 0 && second > 0 && third > 0)) return first;
  const [a, b] = [Math.log(first / second), Math.log(second / third)];
  return a * b > 0 ? first * Math.exp((a * b) / (a + b)) : first;
}
