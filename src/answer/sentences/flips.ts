/** Where one input turns a test, all others at their middle values. */

import type { Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import type { Crew, Point } from '../asked/crew.ts';
import type { Ask } from '../asked/model.ts';
import { ownersAsked } from '../asked/ownersAsked.ts';
import { show } from '../display.ts';
import type { DrawnAsks } from './drawnAsks.ts';
import { type MovableInput, movableInputs } from './inputLabels.ts';
import type { FlipPoint } from './model.ts';
import { ownValues, type PlacedTest } from './shareOf.ts';

/** Inputs that are tried besides those that are not known. */
const MAIN: ReadonlySet<string> = new Set([
  'chamber.pressure',
  'chamber.efficiency',
  'propellants.ratio',
  'nozzle.areaRatio',
  'nozzle.length',
  'nozzle.kept',
]);
/** Of tests that ask a vehicle. */
const MAIN_OF_FLIGHTS: ReadonlySet<string> = new Set(['first.dry']);
/** Values tried over the range of an input, and steps by which each sign change is closed in on. */
const VALUES = 8;
const ROUNDS = 4;

interface Bracket {
  readonly test: number;
  readonly path: string;
  from: Placed;
  to: Placed;
}

interface Placed {
  readonly x: number;
  readonly margin: number;
}

/** For each test, its flip points, nearest first. */
export async function flipPoints(
  study: Study,
  tests: readonly PlacedTest[],
  asks: readonly Ask[],
  drawn: DrawnAsks,
  crew: Crew,
  signal?: AbortSignal,
): Promise<readonly (readonly FlipPoint[])[]> {
  const vehicles = new Set(study.vehicles.map(({ id }) => id));
  const flown = tests.map(({ test }) =>
    test.asks.some(({ engine }) => engine !== null && vehicles.has(engine)),
  );
  // A flight is costly, and costlier far from the study's engines: for it fewer inputs are tried.
  const groups = await Promise.all(
    [MAIN, MAIN_OF_FLIGHTS].map((main, group) =>
      groupFlips(
        study,
        tests.filter((_, i) => flown[i] === (group === 1)),
        main,
        { asks, drawn, crew, signal },
      ),
    ),
  );
  const next = [0, 0];
  return flown.map((flies) => groups[Number(flies)]![next[Number(flies)]!++]!);
}

interface Search {
  readonly asks: readonly Ask[];
  readonly drawn: DrawnAsks;
  readonly crew: Crew;
  readonly signal: AbortSignal | undefined;
}

async function groupFlips(
  study: Study,
  tests: readonly PlacedTest[],
  main: ReadonlySet<string>,
  search: Search,
): Promise<readonly (readonly FlipPoint[])[]> {
  const { drawn } = search;
  const inputs = movableInputs(ownersOf(study));
  const open = new Set(drawn.sources.filter(({ kind }) => kind === 'input').map(({ name }) => name));
  const asked = ownersAsked(
    tests.flatMap(({ test }) => test.asks),
    study,
  );
  const tried = [...inputs].filter(
    ([path, { entry, engines }]) =>
      (open.has(path) || main.has(entry.name)) && engines.some((id) => asked.has(id)),
  );
  const middle = drawn.middle.map((told) => (told.ok ? told.value : null));
  const now = tests.map((placed) => placed.test.margin(ownValues(placed, middle)));
  const points = tried.flatMap(([path, input]) => valuesOver(input).map((x) => ({ path, x })));
  const margins = await marginTeller(tests, search)(points.map(({ path, x }) => ({ [path]: x })));
  const brackets = tests.flatMap((placed, test) => {
    const start = now[test];
    if (start === null || start === undefined) return [];
    const moved = ownersAsked(placed.test.asks, study);
    return tried.flatMap(([path, input]) => {
      if (!input.engines.some((id) => moved.has(id))) return [];
      const scan = points.flatMap(({ path: of, x }, i): Placed[] => {
        const margin = of === path ? margins[i]?.[test] : undefined;
        return margin === undefined || margin === null ? [] : [{ x, margin }];
      });
      return nearestChanges(input.current, start, scan).map((pair): Bracket => ({ test, path, ...pair }));
    });
  });
  await closeIn(brackets, tests, search);
  return tests.map((_, test) =>
    brackets
      .filter((bracket) => bracket.test === test)
      .map((bracket) => ({ bracket, input: inputs.get(bracket.path)! }))
      .sort((a, b) => awayFrom(a) - awayFrom(b))
      .map(({ bracket, input }) => flipPoint(bracket, input, now[test]! > 0)),
  );
}

/** Each test is asked for by itself: what the others ask is not worked out at its places. */
async function closeIn(
  brackets: readonly Bracket[],
  tests: readonly PlacedTest[],
  search: Search,
): Promise<void> {
  const tellers = tests.map((placed) => marginTeller([placed], search));
  for (let round = 0; round < ROUNDS; round++) {
    await Promise.all(
      tests.map(async (_, test) => {
        const own = brackets.filter((bracket) => bracket.test === test);
        const next = own.map((bracket) => between(bracket, round));
        const told = await tellers[test]!(own.map(({ path }, i) => ({ [path]: next[i]! })));
        own.forEach((bracket, i) => {
          narrow(bracket, next[i]!, told[i]?.[0] ?? null);
        });
      }),
    );
  }
}

type MarginsAt = (points: readonly Point[]) => Promise<readonly (readonly (number | null)[])[]>;

/** Margins of these tests at points; only what they ask is worked out. */
function marginTeller(tests: readonly PlacedTest[], { asks, crew, signal }: Search): MarginsAt {
  const places = [...new Set(tests.flatMap((placed) => placed.places))];
  const own = places.map((place) => asks[place]!);
  const at = new Map(places.map((place, i) => [place, i]));
  return async (points) => {
    if (points.length === 0) return [];
    const told = await crew.tell(own, points, signal === undefined ? {} : { signal });
    return told.map((row) => {
      const values = row.map((one) => (one.ok ? one.value : null));
      return tests.map(({ test, places: of }) =>
        test.margin(of.map((place) => values[at.get(place)!] ?? null)),
      );
    });
  };
}

/** Over the range worth looking at, inside what the study form allows. */
function valuesOver({ entry: { sweep, whole }, current }: MovableInput): readonly number[] {
  const { from, to, spacing } = sweep;
  const values = Array.from({ length: VALUES }, (_, i) => {
    const u = i / (VALUES - 1);
    const value = spacing === 'even' ? from + (to - from) * u : from * (to / from) ** u;
    return whole ? Math.round(value) : value;
  });
  return [...new Set(values)].filter((value) => value !== current);
}

/** The first change of sign on either side of the present value. */
function nearestChanges(
  current: number,
  margin: number,
  scan: readonly Placed[],
): readonly { readonly from: Placed; readonly to: Placed }[] {
  const sides = [
    scan.filter(({ x }) => x < current).sort((a, b) => b.x - a.x),
    scan.filter(({ x }) => x > current).sort((a, b) => a.x - b.x),
  ];
  return sides.flatMap((side) => {
    let from: Placed = { x: current, margin };
    for (const to of side) {
      if (to.margin > 0 !== margin > 0) return [{ from, to }];
      from = to;
    }
    return [];
  });
}

/** By the straight line between both ends, kept off them; every other time the middle, for margins that jump. */
function between({ from, to }: Bracket, round: number): number {
  const line = from.margin / (from.margin - to.margin);
  const share = round % 2 === 1 ? 0.5 : Math.min(Math.max(line, 0.02), 0.98);
  return from.x + share * (to.x - from.x);
}

function narrow(bracket: Bracket, x: number, margin: number | null): void {
  if (margin === null) return;
  if (margin > 0 === bracket.from.margin > 0) bracket.from = { x, margin };
  else bracket.to = { x, margin };
}

const placeOf = ({ from, to }: Bracket): number => {
  const share = from.margin / (from.margin - to.margin);
  return from.x + Math.min(Math.max(share, 0), 1) * (to.x - from.x);
};

function awayFrom({ bracket, input: { current } }: { bracket: Bracket; input: MovableInput }): number {
  return Math.abs(placeOf(bracket) - current) / Math.max(Math.abs(current), Number.MIN_VALUE);
}

function flipPoint(bracket: Bracket, { entry, current, label }: MovableInput, holds: boolean): FlipPoint {
  const value = placeOf(bracket);
  const side = value < current ? 'below' : 'above';
  const told = show(entry.quantity, value, 3).text;
  return {
    input: bracket.path,
    value,
    words: `${label}: turns ${holds ? 'false' : 'true'} ${side} about ${told}`,
  };
}
