/** How far thrust and specific impulse may be off in vacuum and at sea level, by all that is published of the models. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import { statedSpan } from '../../study/plainQuantity.ts';
import { figureAlternatives } from '../asked/figureAlternatives.ts';
import type { Scatter } from '../asked/model.ts';
import { listed } from '../compare/speech.ts';
import { type FiguresAt, figuresAt } from '../conditions.ts';
import type { EngineAnswer } from '../model.ts';
import { rowSeparation } from '../separation/rowSeparation.ts';
import type { EngineSolution } from '../solution.ts';
import { figureScatter } from './figureScatter.ts';
import { ERROR_NAMES } from './model.ts';

type Band = EngineAnswer['bands'][string];
type Key = 'thrust' | 'specificImpulse';

const places = [
  { name: 'vacuum', pressure: 0, altitude: null },
  { name: 'seaLevel', pressure: STANDARD_ATMOSPHERE, altitude: 0 },
] as const;

/** By the name of the quantity; absent where nothing is left open. */
export function answerBands(solution: EngineSolution): EngineAnswer['bands'] {
  const bands: Record<string, Band> = {};
  for (const { name, pressure, altitude } of places) {
    const found = figuresAt(solution, pressure, altitude);
    for (const key of ['thrust', 'specificImpulse'] as const) {
      const band = bandOf(solution, found, altitude, key);
      if (band !== null) bands[`${name}.${key}`] = band;
    }
  }
  return bands;
}

/** Every error at its one end, then at its other, about the least and the greatest that the criteria of separation give. */
function bandOf(
  solution: EngineSolution,
  { at, figures }: FiguresAt,
  altitude: number | null,
  key: Key,
): Band | null {
  const value = figures[key];
  if (value === null) return null;
  const alternatives = figureAlternatives(solution, at, value);
  const span =
    alternatives.length === 0 ? undefined : at.separation && rowSeparation(solution, at.separation)[key];
  const published = figureScatter(solution, at, altitude, key, value);
  // The span of the criteria has the pressure behind the place in it.
  const beside =
    span === undefined ? published : published.filter(({ name }) => name !== ERROR_NAMES.deadAir);
  const scatter = [...beside, ...statedEfficiency(solution, key, value)];
  if (scatter.length === 0 && alternatives.length === 0) return null;
  const values = [
    value,
    ...alternatives.flatMap((one) => one.value ?? []),
    ...(span === undefined ? [] : [span.low, span.high]),
  ];
  const off = (end: 'min' | 'max'): number =>
    scatter.reduce((sum, { low, high }) => sum + Math[end](low, high, value) - value, 0);
  return {
    low: Math.min(...values) + off('min'),
    high: Math.max(...values) + off('max'),
    from: [
      ...(scatter.length === 0
        ? []
        : [`published scatter of ${listed(scatter.map(({ name }) => name))}, the ends added up`]),
      ...(alternatives.length === 0
        ? []
        : [`${alternatives.length} criteria of separation and the pressure behind it`]),
    ].join('; '),
  };
}

/** A stated ± or range of the chamber's efficiency: no model's error, but as much left open. */
function statedEfficiency({ input }: EngineSolution, key: Key, value: number): readonly Scatter[] {
  const { value: efficiency, byDefault } = input.chamber.efficiency;
  const span = statedSpan(input.chamber.efficiency);
  if (key !== 'specificImpulse' || byDefault || span === null || span.low === span.high) return [];
  const end = (share: number): number => (value * Math.min(share, 1)) / efficiency;
  return [
    {
      name: 'the chamber efficiency as stated',
      low: end(span.low),
      high: end(span.high),
      source: 'the study',
    },
  ];
}
