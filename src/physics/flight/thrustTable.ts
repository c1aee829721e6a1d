/** Thrust over the ambient pressure, tabulated once, so that a flight asks a table instead of a flow field. */

import { cubicBetween } from '../../numerics/cubicBetween.ts';
import { ProblemError } from '../../numerics/problem.ts';

/** Thrust at one pressure [N]; or why there is none. */
export type ThrustOrWhy = { readonly thrust: number } | { readonly absent: string };

interface Node {
  readonly pressure: number;
  /** [N]; NaN where there is none, so that no sum takes it for a number */ readonly thrust: number;
  readonly absent: string | null;
}

/** Points of the first net, evenly spaced in the logarithm from this share of the top on. */
const FIRST_POINTS = 10;
const LOWEST_SHARE = 1e-3;
/** Met within this share of the vacuum thrust, or the interval is this share of the top wide. */
const MET = 2e-4;
const NARROWEST = 2e-4;
/** A corner between two points, with the slopes of the neighbours on its sides, is missed by at most this share of the vacuum thrust. */
const CORNER = 3e-4;

/**
 * A cubic without overshoot between points that are added in the middle until it is met there. Where the thrust jumps, as a
 * nozzle changes its way of working, the jump is a steep ramp a few ten-thousandths of the top wide.
 *
 * @param top [Pa] highest pressure asked for
 * @returns thrust [N] at a pressure from 0 to `top`; it throws ProblemError `no-thrust-there` where the model has none
 */
export function tabulatedThrust(
  at: (pressure: number) => ThrustOrWhy,
  top: number,
): (pressure: number) => number {
  const nodes = refined(at, top);
  const last = nodes.length - 1;
  const slopes = nodes.map((_, i) => slopeAt(nodes, i));
  let near = 0;
  return (pressure) => {
    if (!(pressure >= 0 && pressure <= top)) throw beyond(pressure, top);
    if (!(pressure >= nodes[near]!.pressure && pressure <= nodes[near + 1]!.pressure))
      near = intervalOf(nodes, pressure);
    const from = nodes[near]!;
    const to = nodes[Math.min(near + 1, last)]!;
    const absent = from.absent ?? to.absent;
    if (absent !== null) throw noThrust(pressure, absent);
    const width = to.pressure - from.pressure;
    return cubicBetween(
      from.thrust,
      width * slopes[near]!,
      to.thrust,
      width * slopes[near + 1]!,
      (pressure - from.pressure) / width,
    );
  };
}

function refined(at: (pressure: number) => ThrustOrWhy, top: number): readonly Node[] {
  const nodeAt = (pressure: number): Node => {
    const found = at(pressure);
    return 'thrust' in found
      ? { pressure, thrust: found.thrust, absent: null }
      : { pressure, thrust: Number.NaN, absent: found.absent };
  };
  const ratio = LOWEST_SHARE ** (1 / (FIRST_POINTS - 1));
  let nodes: readonly Node[] = [
    nodeAt(0),
    ...Array.from({ length: FIRST_POINTS }, (_, i) =>
      nodeAt(i === FIRST_POINTS - 1 ? top : top * ratio ** (FIRST_POINTS - 1 - i)),
    ),
  ];
  const scale = Math.max(...nodes.map(({ thrust }) => (Number.isNaN(thrust) ? 0 : Math.abs(thrust))));
  // Whether an interval has been looked at: by its lower end and its upper one.
  const settled = new Set<string>();
  for (;;) {
    const added: Node[] = [];
    for (let i = 0; i < nodes.length - 1; i++) {
      const from = nodes[i]!;
      const to = nodes[i + 1]!;
      const key = keyOf(from, to);
      if (settled.has(key)) continue;
      const width = to.pressure - from.pressure;
      if (width < NARROWEST * top || (from.absent !== null && to.absent !== null)) {
        settled.add(key);
        continue;
      }
      const middle = nodeAt(from.pressure + 0.5 * width);
      const guess = cubicBetween(
        from.thrust,
        width * slopeAt(nodes, i),
        to.thrust,
        width * slopeAt(nodes, i + 1),
        0.5,
      );
      added.push(middle);
      if (!(Math.abs(guess - middle.thrust) <= MET * scale)) continue;
      // Met in the middle: with that point between them both halves are met still closer, unless the curve has a corner in one.
      const [lower, upper] = [chordOf(from, middle), chordOf(middle, to)];
      const before = i > 0 ? chordOf(nodes[i - 1]!, from) : null;
      const after = i + 2 < nodes.length ? chordOf(to, nodes[i + 2]!) : null;
      const corner = (a: number | null, b: number | null): number =>
        a === null || b === null ? 0 : (Math.abs(a - b) * 0.5 * width) / 8;
      if (corner(before, upper) <= CORNER * scale) settled.add(keyOf(from, middle));
      if (corner(lower, after) <= CORNER * scale) settled.add(keyOf(middle, to));
    }
    if (added.length === 0) return nodes;
    nodes = [...nodes, ...added].sort((a, b) => a.pressure - b.pressure);
  }
}

/** Slope of the straight line between two points; null where one has no thrust. */
function chordOf(from: Node, to: Node): number | null {
  if (from.absent !== null || to.absent !== null) return null;
  return (to.thrust - from.thrust) / (to.pressure - from.pressure);
}

function keyOf(from: Node, to: Node): string {
  return `${from.pressure} ${to.pressure}`;
}

/** Harmonic mean of the slopes on both sides, none at a turn (F. N. Fritsch, R. E. Carlson 1980, from memory); at an end that inside. */
function slopeAt(nodes: readonly Node[], i: number): number {
  const [below, at, above] = [nodes[i - 1], nodes[i]!, nodes[i + 1]];
  const before = below === undefined ? null : chordOf(below, at);
  const after = above === undefined ? null : chordOf(at, above);
  if (before === null || after === null) return before ?? after ?? 0;
  return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
}

function intervalOf(nodes: readonly Node[], pressure: number): number {
  let low = 0;
  let high = nodes.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (nodes[middle]!.pressure <= pressure) low = middle;
    else high = middle;
  }
  return low;
}

export function noThrust(pressure: number, why: string): ProblemError {
  return new ProblemError({
    code: 'no-thrust-there',
    what: `The engine has no computed thrust in air of ${(pressure / 1000).toFixed(1)} kPa, where the vehicle would fly.`,
    why,
    mend: 'Take an engine that works there, start higher, or throttle less.',
    facts: { pressure },
  });
}

function beyond(pressure: number, top: number): ProblemError {
  return new ProblemError({
    code: 'no-thrust-there',
    what: `The engine would work as in air of ${Math.round(pressure)} Pa; it is tabulated up to ${Math.round(top)} Pa.`,
    why: 'The air is thicker there than at the pad.',
    mend: 'Let the vehicle start lower.',
    facts: { pressure, top },
  });
}
