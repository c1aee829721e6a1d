/** Heat to the walls, and the coolant behind them. */

import { BARTZ_SCATTER } from '../../physics/heat/index.ts';
import type { EngineCooling } from '../heat/engineCooling.ts';
import { peakRadiation } from '../heat/engineHeat.ts';
import { cooledWall, coolingAnswer, heatAnswer, heatPoints } from '../heat/heatAnswer.ts';
import type { CoolingAnswer, CoolingPoint, HeatAnswer, HeatPoint } from '../heat/model.ts';
import { sizeScatter } from '../scatter/figureScatter.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import { between, placeAlong } from './alongWall.ts';
import type { Scatter } from './model.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, orAbsent, type Read, type Reader, type Readers } from './reader.ts';

const bartz = (low: number, high: number): Scatter => ({
  name: ERROR_NAMES.bartz,
  low,
  high,
  source: BARTZ_SCATTER.source,
});

/** What Bartz alone gives, radiation beside it. */
function byBartz(value: number, radiation: number): readonly Scatter[] {
  const end = (share: number): number => radiation + share * (value - radiation);
  return [bartz(end(BARTZ_SCATTER.low), end(BARTZ_SCATTER.high))];
}

type HeatNumber = Exclude<keyof HeatAnswer, 'peakOn' | 'gapError' | 'walls'>;

/** By which power of the throat's area they grow where a thrust fixes the size. */
const ofHeat: Readonly<Record<HeatNumber, number>> = {
  wallTemperature: 0,
  total: 0.9,
  layerTotal: 0.9,
  radiationShare: 0,
  peakFlux: 0,
  layerPeakFlux: 0,
  peakAt: 0.5,
  wettedArea: 1,
  throatEdge: 0.5,
  throatHydraulicDiameter: 0.5,
};

function heatReader(key: HeatNumber): Reader {
  return ({ solution }): Read => {
    const heat = solution.heat();
    const value = heatAnswer(heat)[key];
    const power = ofHeat[key];
    const sized = power === 0 ? [] : sizeScatter(solution, value, { area: power, efficiency: 0 });
    const radiation = heat.sum.radiation;
    if (key === 'total') return { value, scatter: [...sized, ...byBartz(value, radiation)] };
    if (key === 'peakFlux') return { value, scatter: byBartz(value, peakRadiation(heat)) };
    return { value, scatter: sized };
  };
}

function gapReader(key: keyof HeatAnswer['gapError']): Reader {
  return ({ solution }) => solution.heat().gapError[key];
}

/** The wall that is named, else the last one: of a plug engine its plug. */
function oneWall<T extends { readonly name: string }>(asked: Asked, walls: readonly T[]): T {
  return asked.part === null ? walls.at(-1)! : namedOne(asked, 'wall', walls, ({ name }) => [name]);
}

function throatRadiusOf({ solution }: Asked): number | null {
  const { kind } = solution.nozzle.spec;
  return kind === 'plug' || kind === 'expansionDeflection' ? null : solution.contour.throatRadius;
}

function alongHeat(key: keyof HeatPoint): Reader {
  return (asked): Read => {
    const heat = asked.solution.heat();
    const { name } = oneWall(
      asked,
      heat.sides.map(({ side }) => side),
    );
    const points = heatPoints(heat, name);
    const { from, share } = placeAlong(points, asked.station, throatRadiusOf(asked));
    const at = (of: keyof HeatPoint): number => between(points[from]![of], points[from + 1]![of], share);
    const value = at(key);
    return key === 'flux' ? { value, scatter: byBartz(value, at('radiationFlux')) } : { value };
  };
}

type CoolingNumber = {
  [Key in keyof CoolingAnswer]-?: CoolingAnswer[Key] extends number | undefined ? Key : never;
}[keyof CoolingAnswer];

const coolingKeys: readonly CoolingNumber[] = [
  'margin',
  'heatMargin',
  'wallMargin',
  'tightestAt',
  'heat',
  'capacity',
  'flow',
  'inletTemperature',
  'inletPressure',
  'outletTemperature',
  'pressureDrop',
  'channelDepth',
  'channelWidth',
  'hottestWall',
  'hottestAt',
  'wallLimit',
  'skirtTemperature',
  'skirtLimit',
];

/** Those that move with Bartz, and how they are read off another march. */
const moved: Readonly<Partial<Record<CoolingNumber, (cooling: EngineCooling) => number>>> = {
  margin: ({ margin }) => margin,
  heatMargin: ({ heatMargin }) => heatMargin,
  wallMargin: ({ wallMargin }) => wallMargin,
  heat: ({ heat }) => heat,
  hottestWall: ({ hottest }) => hottest.point.wallHot,
  outletTemperature: ({ sides }) => Math.max(...sides.map(({ march }) => march.outlet.temperature)),
};

function coolingReader(key: CoolingNumber): Reader {
  return (asked): Read => {
    const live = asked.solution.cooling();
    const value = plainCooling(asked, key);
    const of = moved[key];
    if (of === undefined) return { value };
    const { low, high } = live.ends();
    if (!low.ok || !high.ok) return { value };
    return { value, scatter: [bartz(of(low.value), of(high.value))] };
  };
}

function plainCooling(asked: Asked, key: CoolingNumber): number {
  const { cooling } = asked.solution.cooling();
  const quick = moved[key];
  if (quick !== undefined) return quick(cooling);
  const value = coolingAnswer({ ...asked.solution.cooling(), thrust: NOT_ASKED, pressure: NOT_ASKED })[key];
  return (
    value ??
    absent(asked, { why: 'This engine has no radiating skirt.', mend: 'Add skirtFrom to its cooling.' })
  );
}

const NOT_ASKED = () =>
  ({ ok: false, problem: { code: 'not-asked', what: 'Not asked for.', mend: 'Ask for it.' } }) as const;

const NO_POWER = {
  why: 'A margin of nothing does not grow by shares.',
  mend: 'Cool the engine better, or sweep its size or pressure.',
};

function scalingReader(by: 'thrust' | 'pressure', key: 'heatMargin' | 'wallMargin'): Reader {
  return (asked) => {
    const found = asked.solution.cooling()[by]();
    if (!found.ok) return absent(asked, { why: found.problem.what, mend: found.problem.mend });
    return orAbsent(asked, found.value[key], () => NO_POWER);
  };
}

function alongCooling(key: keyof CoolingPoint): Reader {
  return (asked): Read => {
    const live = asked.solution.cooling();
    const of = ({ sides }: EngineCooling): number | null => {
      const { points } = cooledWall(oneWall(asked, sides));
      const { from, share } = placeAlong(points, asked.station, throatRadiusOf(asked));
      const [a, b] = [points[from]![key], points[from + 1]![key]];
      return a === null || b === null ? null : between(a, b, share);
    };
    const value = of(live.cooling);
    if (value === null) {
      return absent(asked, { why: 'The wall cannot get so hot there.', mend: 'Ask nearer to the throat.' });
    }
    const { low, high } = live.ends();
    const [least, most] = [low.ok ? of(low.value) : null, high.ok ? of(high.value) : null];
    return { value, scatter: least === null || most === null ? [] : [bartz(least, most)] };
  };
}

const heatPointKeys = ['flux', 'layerFlux', 'radiationFlux', 'adiabaticTemperature'] as const;
const coolingPointKeys = [
  'wallHot',
  'wallCold',
  'coolantTemperature',
  'coolantPressure',
  'coolantVelocity',
  'flux',
  'localMargin',
] as const;

export const heatReaders: Readers = {
  ...Object.fromEntries((Object.keys(ofHeat) as HeatNumber[]).map((key) => [`heat.${key}`, heatReader(key)])),
  ...Object.fromEntries(
    (['area', 'flow', 'pressure'] as const).map((key) => [`heat.gapError.${key}`, gapReader(key)]),
  ),
  ...Object.fromEntries(heatPointKeys.map((key) => [`heat.${key}`, alongHeat(key)])),
  ...Object.fromEntries(coolingKeys.map((key) => [`cooling.${key}`, coolingReader(key)])),
  ...Object.fromEntries(coolingPointKeys.map((key) => [`cooling.${key}`, alongCooling(key)])),
  'cooling.scaling.heatMarginWithThrust': scalingReader('thrust', 'heatMargin'),
  'cooling.scaling.wallMarginWithThrust': scalingReader('thrust', 'wallMargin'),
  'cooling.scaling.heatMarginWithPressure': scalingReader('pressure', 'heatMargin'),
  'cooling.scaling.wallMarginWithPressure': scalingReader('pressure', 'wallMargin'),
};
