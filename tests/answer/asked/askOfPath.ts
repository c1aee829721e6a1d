/** The question whose answer is the number at a path of an engine's answer, found from the path alone. */

import type { Ask, AskedAmbient, AskedStation } from '../../../src/answer/asked/model.ts';
import { findQuantity, quantityNameAt } from '../../../src/answer/catalogue.ts';
import type { EngineAnswer } from '../../../src/answer/model.ts';

type Question = Pick<Ask, 'quantity' | 'ambient' | 'station' | 'part'>;

/** Not one number of one engine, or asked for in another way: bands, published rows, drawings. */
const ELSEWHERE =
  /^(bands|published|publishedChecks|publishedSolve|separation\.throttle|contour\.bodies|chamber\.composition$)|bodies|\.counted$|lettingGo|shockMeeting|regime|(heat|cooling)\.walls\[\d+\]\.(points|skirt)\[\d+\]\.(axial|radius)/;

/** What is null as a whole, and one number of it. */
const WHOLES: readonly (readonly [string, string])[] = [
  ['firstCrossing', '.axial'],
  ['losses.layer', '.thrustLost'],
  ['field', '.mass'],
  ['heat', '.total'],
];

const SEA_LEVEL = { kind: 'altitude', altitude: 0 } as const;

/** Null where there is none. */
export function askOfPath(answer: EngineAnswer, path: string): Question | null {
  if (ELSEWHERE.test(path)) return null;
  const whole = WHOLES.find(([end]) => path.endsWith(end));
  const quantity = quantityNameAt(`engines.x.${path}${whole?.[1] ?? ''}`);
  if (quantity === undefined || findQuantity(quantity) === undefined) return null;
  const row = /(?:^|\.)(altitudes|ambients)\[(\d+)\]/.exec(path);
  const ambient = row === null ? placeOf(path) : rowPlace(answer, row[1]!, Number(row[2]));
  const station = stationOf(answer, path);
  const part = partOf(answer, path);
  if (part === null) return null;
  return { quantity, ambient, station, ...(part !== undefined && { part }) };
}

function rowPlace(answer: EngineAnswer, list: string, i: number): AskedAmbient {
  if (list === 'altitudes') return { kind: 'altitude', altitude: answer.altitudes[i]!.altitude! };
  return { kind: 'pressure', pressure: answer.ambients[i]!.ambientPressure };
}

function placeOf(path: string): AskedAmbient | null {
  if (/^(plume|thrustParts)\.vacuum/.test(path)) return { kind: 'vacuum' };
  return /^((plume|thrustParts)\.seaLevel|separation\.(seaLevel|criteria\[\d+\]\.place))/.test(path)
    ? SEA_LEVEL
    : null;
}

/** Points of a wall are asked for by their own distance from the throat. */
function stationOf(answer: EngineAnswer, path: string): AskedStation | null {
  const at = /^(.*(?:wall|boundary|walls\[\d+\]\.points)\[\d+\])\./.exec(path);
  if (at === null) return null;
  return { kind: 'distance', distance: (valueAt(answer, at[1]!) as { axial: number }).axial };
}

/** Undefined: none needs naming; null: none can be. */
function partOf(answer: EngineAnswer, path: string): string | undefined | null {
  const surface = /^((?:heat|cooling)\.walls\[\d+\])\./.exec(path);
  if (surface) return (valueAt(answer, surface[1]!) as { name: string }).name;
  const species = /^chamber\.composition\.(.+)$/.exec(path);
  if (species) return species[1]!;
  const item = /^(.*(?:items|parts|thrustParts|modes|positions|criteria|estimates)\[\d+\])\.[^[]*$/.exec(
    path,
  );
  const inPosition = /^(positions\[\d+\])\./.exec(path);
  const holder = inPosition ?? item;
  if (holder) {
    const held = valueAt(answer, holder[1]!) as Record<string, unknown>;
    if (path.includes('criteria[')) return path.endsWith('lowestFullThrottle') ? null : String(held.id);
    return String(held.name ?? held.surface ?? held.mode ?? held.by);
  }
  const end = /\.(earliest|latest)\.[^.]+$/.exec(path);
  if (end) return end[1]!;
  if (/lowestFullThrottle\./.test(path)) return path.endsWith('.best') ? undefined : path.split('.').at(-1)!;
  if (/separation\.(seaLevel\.)?(thrust|specificImpulse|massFlows)\.(low|high)$/.test(path)) {
    return path.split('.').at(-1)!;
  }
  return /^change\.(band|back)/.test(path) ? null : undefined;
}

function valueAt(value: unknown, path: string): unknown {
  return path
    .split(/[.[\]]+/)
    .filter((key) => key !== '')
    .reduce((inner, key) => (inner as Record<string, unknown>)[key], value);
}
