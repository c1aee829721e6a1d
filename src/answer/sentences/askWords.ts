/** One asked number in words: `the specific impulse of Alder P at the pad`. */

import type { Study } from '../../study/model.ts';
import { type Owner, ownersOf } from '../../study/owners.ts';
import type { Ask, AskedAmbient, AskedStation } from '../asked/model.ts';
import { quantity } from '../catalogue.ts';
import { listed } from '../compare/speech.ts';
import { showStated } from '../display.ts';
import { settableInputs } from '../inputs/index.ts';

export type OwnersById = ReadonlyMap<string, Owner>;

export const ownersById = (study: Pick<Study, 'engines' | 'vehicles'>): OwnersById =>
  new Map(ownersOf(study).map((owner) => [owner.id, owner]));

/** @param placed false: without where it is asked for */
export function askWords(ask: Ask, engines: OwnersById, placed = true): string {
  // `pressure at the lip, flowing full`: the owner stands before what is added.
  const label = labelWords(ask);
  if (/ which | where |^where /.test(label) && ask.engine !== null) {
    const name = engines.get(ask.engine)?.name ?? ask.engine;
    return `the ${clauseOf(label, name)}${placed ? placeWords(ask, engines) : ''}`;
  }
  const [name = '', ...added] = label.split(/(?=, )/);
  return `the ${name}${ownerWords(ask, engines)}${added.length === 0 ? '' : `${added.join('')},`}${placed ? placeWords(ask, engines) : ''}`;
}

/** `pressure at which the gas lets go of the wall of Alder B`: the owner stands behind what is the engine’s own. */
function clauseOf(label: string, owner: string): string {
  const clause = label.replace(/^where /, 'place where ');
  const owned = clause.replace(/the (?:wall|nozzle|chemistry|wake|plug’s wall)\b/, `$& of ${owner}`);
  return owned === clause ? `${clause} in ${owner}` : owned;
}

/** The same where the quantity has just been named: `that of Alder B at the pad`. */
export function thatOfWords(ask: Ask, engines: OwnersById, placed = true): string {
  return `that${ownerWords(ask, engines)}${placed ? placeWords(ask, engines) : ''}`;
}

function labelWords({ quantity: name, part }: Ask): string {
  const { label, place } = quantity(name);
  if (part === undefined || place === 'vehicle') return label;
  return / one surface$/.test(label) ? label.replace(/one surface$/, `the ${part}`) : `${label} (${part})`;
}

function ownerWords({ engine, quantity: name, part }: Ask, engines: OwnersById): string {
  if (engine === null) return '';
  const below =
    part === undefined || quantity(name).place !== 'vehicle'
      ? ''
      : ` with ${engines.get(part)?.name ?? part}`;
  return ` of ${engines.get(engine)?.name ?? engine}${below}`;
}

/** Where it is asked for, a space in front; empty where it is the same everywhere. */
export function placeWords(ask: Ask, engines: OwnersById): string {
  const { ambient, station, throttle, time } = ask;
  return [
    station === null ? '' : ` ${stationWords(station)}`,
    ambient === null ? '' : ` ${ambientWords(ambient)}`,
    time === undefined ? '' : ` ${timeWords(time)}`,
    throttle === null
      ? ''
      : ` at ${showStated('separation.throttle.share', throttle).text} of full chamber pressure`,
    inputWords(ask, engines),
  ].join('');
}

export function ambientWords(ambient: AskedAmbient): string {
  if (ambient.kind === 'vacuum') return 'in vacuum';
  if (ambient.kind === 'pressure') {
    return `in ${showStated('ambientPressure', ambient.pressure).text} outside`;
  }
  return altitudeWords(ambient.altitude);
}

export function altitudeWords(altitude: number): string {
  return altitude === 0 ? 'at the pad' : `at ${showStated('altitude', altitude).text}`;
}

export function timeWords(time: number): string {
  return time === 0 ? 'at lift-off' : `${showStated('flight.points.time', time).text} after lift-off`;
}

function stationWords(station: AskedStation): string {
  switch (station.kind) {
    case 'areaRatio':
      return `at area ratio ${showStated('areaRatio', station.areaRatio).text}`;
    case 'distance':
      return `${showStated('separation.place.axial', station.distance).text} behind the throat`;
    default:
      return `at the ${station.kind}`;
  }
}

function inputWords({ engine, inputs }: Ask, engines: OwnersById): string {
  const input = engine === null ? undefined : engines.get(engine);
  if (inputs.length === 0 || input === undefined) return '';
  const known = settableInputs(input);
  const words = inputs.map(({ input: name, value }) => {
    const own = known.find((one) => one.name === name);
    if (own !== undefined) return `${own.label} ${showStated(own.quantity, value).text}`;
    // Of an engine below a vehicle: `bell.nozzle.areaRatio`.
    const below = engines.get(name.split('.')[0]!);
    const entry = below && settableInputs(below).find((one) => `${below.id}.${one.name}` === name);
    return entry ? `${entry.label} of ${below.name} ${showStated(entry.quantity, value).text}` : name;
  });
  return ` with ${listed(words)}`;
}
