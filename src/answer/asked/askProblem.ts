/** Whether a quantity may be asked in such a way: known without any engine, so before anything runs. */

import type { Problem } from '../../numerics/problem.ts';
import { HIGHEST_ALTITUDE, LOWEST_ALTITUDE } from '../../physics/air/index.ts';
import type { CatalogueEntry } from '../catalogue.ts';
import type { Ask } from './model.ts';

/** What a quantity needs to be one number. */
export interface Needs {
  readonly ambient: boolean;
  /** A moment of the flight. */ readonly time: boolean;
  /** `jet`: a distance alone. */ readonly station: 'wall' | 'jet' | null;
}

export function needsOf({ place, along }: CatalogueEntry): Needs {
  return {
    ambient: place === 'altitude' || place === 'air',
    time: along === 'flight',
    station: place === 'wall' ? 'wall' : along === 'jet' ? 'jet' : null,
  };
}

/** The first thing that is wrong with asking this quantity so; null: nothing is. */
export function askProblem(entry: CatalogueEntry, ask: Ask): Problem | null {
  if (entry.notAsked !== undefined) {
    const { why, instead } = entry.notAsked;
    return problem('quantity-not-asked', entry, `${capital(entry.label)} can’t be asked for.`, instead, why);
  }
  return (
    engineProblem(entry, ask) ??
    timeProblem(entry, ask) ??
    ambientProblem(entry, ask) ??
    stationProblem(entry, ask) ??
    partProblem(entry, ask) ??
    throttleProblem(entry, ask)
  );
}

function engineProblem(entry: CatalogueEntry, { engine, throttle, inputs }: Ask): Problem | null {
  if (entry.place !== 'air') {
    if (engine !== null) return vehicleProblem(entry, throttle);
    const owner = entry.place === 'vehicle' ? 'a vehicle' : 'an engine';
    const what = `${capital(entry.label)} belongs to ${owner}, and none is named.`;
    const example = entry.place === 'vehicle' ? `booster.${belowVehicle(entry.name)}` : `bell.${entry.name}`;
    return problem(
      'engine-missing',
      entry,
      what,
      `Write ${owner.replace(/^an? /, 'the ')} in front, e.g. ${example}.`,
    );
  }
  if (engine !== null) {
    const what = `${capital(entry.label)} belongs to the air, not to an engine.`;
    return problem('engine-not-expected', entry, what, `Write ${entry.name} without an engine in front.`);
  }
  if (throttle === null && inputs.length === 0) return null;
  const what = 'The air has no throttle and no inputs of an engine.';
  return problem('input-not-expected', entry, what, 'Leave only the altitude in the brackets.');
}

function vehicleProblem(entry: CatalogueEntry, throttle: number | null): Problem | null {
  if (entry.place !== 'vehicle' || throttle === null) return null;
  const what = 'A vehicle throttles by itself, to keep its limits.';
  return problem(
    'throttle-not-expected',
    entry,
    what,
    'Leave the throttle out, or set a limit of the vehicle.',
  );
}

/** Only of a vehicle in flight; when it has stopped only the flight itself knows. */
function timeProblem(entry: CatalogueEntry, { engine, ambient, time }: Ask): Problem | null {
  const { label, name } = entry;
  if (!needsOf(entry).time) {
    if (time === undefined) return null;
    const what = `${capital(label)} is not of one moment of a flight; a time says nothing here.`;
    return problem(
      'time-not-expected',
      entry,
      what,
      'Leave the time out, or ask a vehicle, e.g. booster.thrust(60 s).',
    );
  }
  const example = `${engine ?? 'booster'}.${belowVehicle(name)}(60 s)`;
  if (ambient !== null) {
    const what = `${capital(label)} is asked at a time since lift-off, not in surroundings.`;
    return problem(
      'ambient-not-expected',
      entry,
      what,
      `Write e.g. ${example}; in given surroundings ask an engine.`,
    );
  }
  if (time === undefined) {
    const what = `${capital(label)} changes on the way, and no time is named.`;
    return problem('time-missing', entry, what, `Say when, since lift-off: ${example}.`);
  }
  if (time >= 0 && Number.isFinite(time)) return null;
  const what = time < 0 ? 'Before lift-off there is no flight.' : `${time} s is no time.`;
  return problem('time-out-of-range', entry, what, `Name a time from 0 s on, since lift-off: ${example}.`);
}

/** As a sentence writes it: `flight.payload` → `payload`, `vehicle.first.dry` → `first.dry`. */
export function belowVehicle(name: string): string {
  return name.replace(/^(flight(?:\.points)?|vehicle)\./, '');
}

const PLACES = 'vacuum, sea level, an altitude such as 12 km or a pressure such as 0.5 bar';

function ambientProblem(entry: CatalogueEntry, { ambient }: Ask): Problem | null {
  const { name, label, place } = entry;
  if (!needsOf(entry).ambient) {
    if (ambient === null) return null;
    const mend =
      place === 'wall' ? 'Name a place along the wall instead, e.g. lip.' : `Write ${name} without it.`;
    const what = `${capital(label)} is the same in all surroundings; there is nothing to say of them.`;
    return problem('ambient-not-expected', entry, what, mend);
  }
  if (ambient === null) {
    const what = `${capital(label)} hangs on the surroundings, and none are named.`;
    return problem('ambient-missing', entry, what, `Say where: ${PLACES}.`);
  }
  if (ambient.kind === 'vacuum') {
    const ofAir = place === 'air' || name === 'altitude';
    if (!ofAir) return null;
    return problem('ambient-not-air', entry, 'There is no air in vacuum.', 'Name an altitude.');
  }
  const value = ambient.kind === 'altitude' ? ambient.altitude : ambient.pressure;
  const [least, most] = ambient.kind === 'altitude' ? [LOWEST_ALTITUDE, HIGHEST_ALTITUDE] : [0, Infinity];
  if (value >= least && value <= most && Number.isFinite(value)) return null;
  const what =
    ambient.kind === 'altitude'
      ? `The altitude ${value / 1000} km lies outside the standard air, −5 to 1000 km.`
      : `The ambient pressure ${value} Pa is not a pressure.`;
  return problem('ambient-out-of-range', entry, what, `Say where: ${PLACES}.`);
}

function stationProblem(entry: CatalogueEntry, { station }: Ask): Problem | null {
  const { station: needed } = needsOf(entry);
  const mend =
    needed === 'jet'
      ? 'Name a distance behind the throat, e.g. 2 m behind throat.'
      : 'Name injector, throat, lip, an area ratio behind the throat or a distance from the throat.';
  if (needed === null) {
    if (station === null) return null;
    const what = `${capital(entry.label)} has no place along the wall.`;
    return problem('station-not-expected', entry, what, `Write ${entry.name} without it.`);
  }
  if (station === null) {
    const what = `${capital(entry.label)} changes along the ${needed}, and no place is named.`;
    return problem('station-missing', entry, what, mend);
  }
  if (needed === 'jet' && station.kind !== 'distance') {
    return problem('station-not-expected', entry, 'Behind the lip a place is a distance.', mend);
  }
  if (station.kind === 'areaRatio' && !(station.areaRatio >= 1 && Number.isFinite(station.areaRatio))) {
    const what = `The area ratio ${station.areaRatio} is below 1: no place behind the throat has it.`;
    return problem('station-out-of-range', entry, what, mend);
  }
  if (station.kind === 'distance' && !Number.isFinite(station.distance)) {
    return problem('station-out-of-range', entry, `${station.distance} m is no distance.`, mend);
  }
  return null;
}

function partProblem(entry: CatalogueEntry, { part }: Ask): Problem | null {
  const { label, part: parts } = entry;
  const named = part !== undefined && part.trim() !== '';
  if (parts === undefined) {
    if (!named) return null;
    const what = `${capital(label)} has no parts, yet “${part}” is named.`;
    return problem('part-not-expected', entry, what, `Write ${entry.name} without it.`);
  }
  if (named || !parts.needed) return null;
  const kinds = parts.kinds.join(' or ');
  const what = `${capital(label)} is one of several, and no ${kinds} is named.`;
  return problem('part-missing', entry, what, `Name it, e.g. ${entry.name}(${parts.example}).`);
}

function throttleProblem(entry: CatalogueEntry, { throttle }: Ask): Problem | null {
  if (throttle === null || (throttle > 0 && Number.isFinite(throttle))) return null;
  return problem(
    'throttle-out-of-range',
    entry,
    `A throttle of ${throttle} is no share of the chamber pressure.`,
    'Give a share above 0, e.g. throttle = 60 %.',
  );
}

function problem(code: string, entry: CatalogueEntry, what: string, mend: string, why?: string): Problem {
  return { code, what, ...(why !== undefined && { why }), mend, where: entry.name };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
