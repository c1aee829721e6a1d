/** The compared numbers: at the pad, at a few altitudes, in vacuum, and those without a place. */

import { attempt } from '../../numerics/problem.ts';
import { quantity } from '../catalogue.ts';
import { figuresAt, figuresAtAltitude } from '../conditions.ts';
import { cycleFigures, engineFiguresAt } from '../cycle/cycleFigures.ts';
import { showIn, unitFor } from '../display.ts';
import type { ComparedQuantity } from '../model.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';

/** Pad, thick air, thin air [m]. */
const COMPARED_ALTITUDES = [0, 5_000, 10_000, 20_000] as const;
const EQUAL = 1e-6;

export function comparedQuantities(
  base: EngineSolution,
  other: EngineSolution,
  asked: readonly number[],
): readonly ComparedQuantity[] {
  const altitudes = [...new Set([...COMPARED_ALTITUDES, ...asked])].sort((a, b) => a - b);
  const atAltitudes = (['specificImpulse', 'thrust'] as const).flatMap((name) =>
    altitudes.map((altitude) =>
      compared(
        name,
        altitude,
        figuresAtAltitude(base, altitude).figures[name],
        figuresAtAltitude(other, altitude).figures[name],
      ),
    ),
  );
  const inVacuum = (['specificImpulse', 'thrust'] as const).map((name) =>
    compared(
      `vacuum.${name}`,
      null,
      figuresAt(base, 0, null).figures[name],
      figuresAt(other, 0, null).figures[name],
    ),
  );
  const withoutPlace = placeless.map(([name, of]) => compared(name, null, of(base), of(other)));
  return [...atAltitudes, ...inVacuum, ...wholeEngines(base, other), ...withoutPlace];
}

/** With what the cycles dump, where both say how they are pumped. */
function wholeEngines(base: EngineSolution, other: EngineSolution): readonly ComparedQuantity[] {
  if (base.input.cycle === null || other.input.cycle === null) return [];
  const impulse = (engine: EngineSolution): number | null => {
    const figures = attempt(() => engineFiguresAt(engine, 0, null));
    return figures.ok ? figures.value.specificImpulse : null;
  };
  const share = (engine: EngineSolution): number | null => {
    const dumped = attempt(() => cycleFigures.dumpShare(engine));
    return dumped.ok ? dumped.value : null;
  };
  return [
    compared('cycle.specificImpulse', null, impulse(base), impulse(other)),
    compared('cycle.dumpShare', null, share(base), share(other)),
  ];
}

const placeless: readonly (readonly [string, (engine: EngineSolution) => number | null])[] = [
  ['massFlow', (e) => e.massFlow],
  ['characteristicVelocity', (e) => e.characteristicVelocity],
  ['chamber.temperature', (e) => e.expansion.chamber.temperature],
  ['chamber.bulkDensity', (e) => e.bulkDensity],
  ['throat.diameter', (e) => diameterOf(e.throatArea)],
  ['exit.diameter', (e) => diameterOf(e.exitArea)],
  ['contour.totalLength', (e) => e.contour.totalLength],
  ['exit.pressure', (e) => e.nozzle.exit.pressure],
];

function compared(
  name: string,
  altitude: number | null,
  base: number | null,
  other: number | null,
): ComparedQuantity {
  if (base === null || other === null) {
    const missing = base === null && other === null ? 'either' : base === null ? 'the first' : 'the second';
    return {
      quantity: name,
      altitude,
      base,
      other,
      difference: null,
      share: null,
      words: `no number for ${missing}`,
    };
  }
  const difference = other - base;
  return {
    quantity: name,
    altitude,
    base,
    other,
    difference,
    share: base === 0 ? null : difference / Math.abs(base),
    words: differenceInWords(name, base, other),
  };
}

/** `12 s more`, `0.4 m less`, `the same`. */
export function differenceInWords(name: string, base: number, other: number): string {
  const difference = other - base;
  if (Math.abs(difference) <= EQUAL * Math.max(Math.abs(base), Math.abs(other))) return 'the same';
  const entry = quantity(name);
  const size = Math.abs(difference);
  return `${showIn(unitFor(entry, [size]), size, 2).text} ${difference > 0 ? 'more' : 'less'}`;
}
