/**
 * The number that would stand at a place if a list were sorted, without sorting all of it.
 *
 * Source: C. A. R. Hoare, Algorithm 65: Find, Commun. ACM 4 (1961) 321–322 (from memory).
 */

/**
 * Moves numbers within the list so that none before the place is larger and none behind it smaller.
 *
 * @param values without NaN @param from all before it are known to be no larger than the rest
 */
export function orderedAt(values: Float64Array, place: number, from = 0): number {
  let [first, last] = [from, values.length - 1];
  while (first < last) {
    const pivot = values[(first + last) >>> 1]!;
    let [i, j] = [first, last];
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const moved = values[i]!;
      values[i++] = values[j]!;
      values[j--] = moved;
    }
    if (place <= j) last = j;
    else if (place >= i) first = i;
    else break;
  }
  return values[place]!;
}
