/** A smooth surface through values on an even grid of two inputs: cubics with the slopes of the neighbours' chords. */

export interface EvenAxis {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** What was read last; nothing is allocated in reading. */
export interface EvenTable {
  readonly x: EvenAxis;
  readonly y: EvenAxis;
  /** The values with one more on each side, by which the edges keep the slope of the last chord; y running. */
  readonly padded: Float64Array;
  value: number;
  slopeX: number;
  slopeY: number;
  /** Beyond its ends it goes straight on. */ read(x: number, y: number): void;
}

/** @param values count of x times count of y, y running; at least 2 each */
export function evenTable(x: EvenAxis, y: EvenAxis, values: Float64Array): EvenTable {
  const [across, wx, wy] = [new Float64Array(8), new Float64Array(8), new Float64Array(8)];
  const at = (i: number, j: number): number => values[i * y.count + j]!;
  /** Values past an edge continue the last chord, so that the slope there is that of the chord. */
  const padded = (i: number, j: number): number => {
    if (i < 0) return 2 * padded(0, j) - padded(1, j);
    if (i >= x.count) return 2 * padded(x.count - 1, j) - padded(x.count - 2, j);
    if (j < 0) return 2 * at(i, 0) - at(i, 1);
    if (j >= y.count) return 2 * at(i, y.count - 1) - at(i, y.count - 2);
    return at(i, j);
  };
  const wide = y.count + 2;
  const all = new Float64Array((x.count + 2) * wide);
  for (let i = -1; i <= x.count; i++)
    for (let j = -1; j <= y.count; j++) all[(i + 1) * wide + j + 1] = padded(i, j);
  const table: EvenTable = {
    x,
    y,
    padded: all,
    value: 0,
    slopeX: 0,
    slopeY: 0,
    read(atX, atY) {
      const i = placeOn(x, atX, wx);
      const j = placeOn(y, atY, wy);
      let [value, slopeX, slopeY] = [0, 0, 0];
      for (let a = 0; a < 4; a++) {
        const row = (i + a) * wide + j;
        across[a] =
          wy[0]! * all[row]! + wy[1]! * all[row + 1]! + wy[2]! * all[row + 2]! + wy[3]! * all[row + 3]!;
        const slope =
          wy[4]! * all[row]! + wy[5]! * all[row + 1]! + wy[6]! * all[row + 2]! + wy[7]! * all[row + 3]!;
        value += wx[a]! * across[a]!;
        slopeX += wx[a + 4]! * across[a]!;
        slopeY += wx[a]! * slope;
      }
      table.value = value;
      table.slopeX = slopeX / x.step;
      table.slopeY = slopeY / y.step;
    },
  };
  return table;
}

/** First of the four values that count, and their weights for the value (0 to 3) and for its slope a step (4 to 7). */
function placeOn({ from, step, count }: EvenAxis, at: number, w: Float64Array): number {
  const s = (at - from) / step;
  const cell = Math.min(count - 2, Math.max(0, Math.floor(s)));
  const whole = s - cell;
  const t = Math.min(1, Math.max(0, whole));
  const t2 = t * t;
  w[0] = (-t + 2 * t2 - t2 * t) / 2;
  w[1] = (2 - 5 * t2 + 3 * t2 * t) / 2;
  w[2] = (t + 4 * t2 - 3 * t2 * t) / 2;
  w[3] = (-t2 + t2 * t) / 2;
  w[4] = (-1 + 4 * t - 3 * t2) / 2;
  w[5] = (-10 * t + 9 * t2) / 2;
  w[6] = (1 + 8 * t - 9 * t2) / 2;
  w[7] = (-2 * t + 3 * t2) / 2;
  const beyond = whole - t;
  for (let k = 0; k < 4; k++) w[k] = w[k]! + beyond * w[k + 4]!;
  return cell;
}
