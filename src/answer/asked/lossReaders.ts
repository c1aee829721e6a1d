/** The loss budget: from the ideal to the delivered specific impulse in vacuum. */

import type { LossItem } from '../../physics/nozzle/losses/index.ts';
import { noWallLayer } from '../absences.ts';
import type { WallLayer } from '../model.ts';
import { sizeScatter } from '../scatter/figureScatter.ts';
import { errorOfItem } from '../scatter/lossErrors.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import type { EngineSolution } from '../solution.ts';
import type { Scatter } from './model.ts';
import { namedOne } from './named.ts';
import { absent, type Read, type Reader, type Readers } from './reader.ts';

type ItemKey = 'specificImpulse' | 'share' | 'low' | 'high';

function itemReader(key: ItemKey): Reader {
  return (asked): Read => {
    const { solution } = asked;
    const item = namedOne(asked, 'loss', solution.losses.budget.items, ({ name }) => [name]);
    return { value: item[key], scatter: scatterOfItems(solution, [item], key, item[key]) };
  };
}

/** Each item at either end of its band, the others at their best values. */
function scatterOfItems(
  solution: EngineSolution,
  items: readonly LossItem[],
  key: ItemKey | 'delivered',
  value: number,
): readonly Scatter[] {
  if (key === 'low' || key === 'high') return [];
  const { ideal } = solution.losses.budget;
  const unit = key === 'share' ? 1 : key === 'delivered' ? -ideal : ideal;
  return items.flatMap((item) => {
    const name = errorOfItem(item, solution);
    const end = (share: number): number => value + (share - item.share) * unit;
    return name === null ? [] : [{ name, low: end(item.low), high: end(item.high), source: item.source }];
  });
}

function sumReader(key: ItemKey): Reader {
  return ({ solution }): Read => {
    const { sum, items } = solution.losses.budget;
    return { value: sum[key], scatter: scatterOfItems(solution, items, key, sum[key]) };
  };
}

function layerReader(key: keyof WallLayer): Reader {
  return (asked): Read => {
    const { solution } = asked;
    const layer = solution.losses.budget.layer ?? absent(asked, noWallLayer(solution));
    const value = layer[key];
    if (key !== 'thrustLost') return { value };
    const friction = solution.losses.budget.items.find(({ error }) => error === ERROR_NAMES.friction);
    if (friction === undefined || friction.share === 0) return { value };
    const end = (share: number): number => (value * share) / friction.share;
    const { low, high, source } = friction;
    const sized = sizeScatter(solution, value, { area: 1, efficiency: 0 });
    return {
      value,
      scatter: [
        ...sized.filter(({ name }) => name !== ERROR_NAMES.friction),
        { name: ERROR_NAMES.friction, low: end(low), high: end(high), source },
      ],
    };
  };
}

const itemKeys = ['specificImpulse', 'share', 'low', 'high'] as const;
const layerKeys = [
  'thrustLost',
  'momentumThickness',
  'throatDisplacement',
  'discharge',
  'heatFlow',
  'wallTemperature',
] as const;

export const lossReaders: Readers = {
  'losses.ideal': ({ solution }) => solution.losses.budget.ideal,
  'losses.delivered': ({ solution }): Read => {
    const { delivered, items } = solution.losses.budget;
    return { value: delivered, scatter: scatterOfItems(solution, items, 'delivered', delivered) };
  },
  ...Object.fromEntries(itemKeys.map((key) => [`losses.items.${key}`, itemReader(key)])),
  ...Object.fromEntries(itemKeys.map((key) => [`losses.sum.${key}`, sumReader(key)])),
  ...Object.fromEntries(layerKeys.map((key) => [`losses.layer.${key}`, layerReader(key)])),
};
