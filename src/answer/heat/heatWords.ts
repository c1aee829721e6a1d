/** Heat and cooling in words and rows, as every face prints them. */

import { show } from '../display.ts';
import type { EngineAnswer } from '../model.ts';
import type { CoolingAnswer, HeatAnswer } from './model.ts';

/** One row: a quantity of the catalogue and its value; null: this engine has none. */
export interface HeatRow {
  readonly quantity: string;
  readonly value: number | null;
}

const heatKeys = ['total', 'layerTotal', 'radiationShare', 'peakFlux', 'wettedArea', 'throatEdge'] as const;
const gapKeys = ['area', 'flow', 'pressure'] as const;
const coolingKeys = [
  'margin',
  'heatMargin',
  'wallMargin',
  'tightestAt',
  'hottestWall',
  'wallLimit',
  'heat',
  'flow',
  'outletTemperature',
  'inletPressure',
  'pressureDrop',
  'channelDepth',
] as const;
const skirtKeys = ['skirtTemperature', 'skirtLimit'] as const;
const scalingKeys = [
  'heatMarginWithThrust',
  'wallMarginWithThrust',
  'heatMarginWithPressure',
  'wallMarginWithPressure',
] as const;

/** What any wall gets, and what a tenth of a millimetre of throat does. */
export function heatRows({ heat }: EngineAnswer): readonly HeatRow[] {
  return [
    ...heatKeys.map((key) => ({ quantity: `heat.${key}`, value: heat?.[key] ?? null })),
    ...gapKeys.map((key) => ({ quantity: `heat.gapError.${key}`, value: heat?.gapError[key] ?? null })),
  ];
}

/** What the coolant makes of it; empty where the study says nothing of cooling. */
export function coolingRows({ cooling }: EngineAnswer): readonly HeatRow[] {
  if (cooling === undefined) return [];
  const skirt = cooling?.skirtTemperature === undefined ? [] : skirtKeys;
  return [
    ...coolingKeys.map((key) => ({ quantity: `cooling.${key}`, value: cooling?.[key] ?? null })),
    ...skirt.map((key) => ({ quantity: `cooling.${key}`, value: cooling?.[key] ?? null })),
    ...scalingKeys.map((key) => ({
      quantity: `cooling.scaling.${key}`,
      value: cooling?.scaling[key] ?? null,
    })),
  ];
}

/** Does the wall live, and what is tightest; the skirt, which has no channels, by itself. */
export function coolingVerdict(cooling: CoolingAnswer): string {
  return [channelsVerdict(cooling), ...skirtVerdict(cooling)].join(' ');
}

function skirtVerdict({ skirtTemperature, skirtLimit }: CoolingAnswer): readonly string[] {
  if (skirtTemperature === undefined || skirtLimit === undefined) return [];
  const fate = skirtTemperature <= skirtLimit ? 'lives' : 'does not live';
  const [hot, limit] = [
    show('cooling.skirtTemperature', skirtTemperature).text,
    show('cooling.skirtLimit', skirtLimit).text,
  ];
  return [`The skirt, which only radiates, ${fate}: it reaches ${hot} and stands ${limit}.`];
}

function channelsVerdict(cooling: CoolingAnswer): string {
  const { margin, heatMargin, wallMargin, hottestWall, wallLimit, tightestOn } = cooling;
  const where = placeWords(cooling.tightestAt, tightestOn);
  const wall = `the wall reaches ${show('cooling.hottestWall', hottestWall).text} and stands ${show('cooling.wallLimit', wallLimit).text}`;
  const taken = `${cooling.coolant} can take ${show('cooling.heatMargin', heatMargin).text} times the heat that arrives`;
  if (margin >= 1) {
    return `The walls live: ${taken}, and ${wall}; tightest ${where}, wall margin ${show('cooling.wallMargin', wallMargin).text}.`;
  }
  if (heatMargin < 1) {
    return `The walls do not live: ${cooling.coolant} can take only ${show('cooling.heatMargin', heatMargin).text} of the heat that arrives, for ${cooling.capacityBy}.`;
  }
  return `The walls do not live as they are: ${wall}, ${where}, though ${taken}.`;
}

function placeWords(axial: number, on: string): string {
  const wall = on === 'wall' ? '' : ` on the ${on}`;
  const size = show('cooling.tightestAt', Math.abs(axial)).text;
  if (Math.abs(axial) < 1e-4) return `at the throat${wall}`;
  return `${size} ${axial < 0 ? 'ahead of' : 'behind'} the throat${wall}`;
}

/** How two engines differ in heat, with what causes it; null where either has no wall. */
export function heatComparedWords(base: EngineAnswer, other: EngineAnswer): string | null {
  if (base.heat === null || other.heat === null) return null;
  const of = (key: keyof HeatAnswer & ('total' | 'wettedArea' | 'throatEdge' | 'peakFlux')): string =>
    `${Number((other.heat![key] / base.heat![key]).toPrecision(2))}`;
  const margins =
    base.cooling && other.cooling
      ? ` Its cooling margin is ${show('cooling.margin', other.cooling.margin).text}, against ${show('cooling.margin', base.cooling.margin).text}.`
      : '';
  return `${other.name} takes ${of('total')} times the heat of ${base.name}: its walls have ${of('wettedArea')} times the area, the edge of its throat is ${of('throatEdge')} times as long, and the greatest flux is ${of('peakFlux')} times as large.${margins}`;
}
