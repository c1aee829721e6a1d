/** The whole way up under given steering, until the last stage has burnt its propellant. */

import { ProblemError } from '../../numerics/problem.ts';
import { STANDARD_GRAVITY } from '../constants.ts';
import { type Drive, type Pointing, STATE, STATE_SIZE } from './forces.ts';
import type { Ascent, Site, Stage, Steering, Vehicle } from './model.ts';
import { type FlightEvent, flyPhase, type PhaseEnd } from './phase.ts';
import { flightRecord } from './record.ts';
import { standardAir } from './standardAir.ts';

export interface AscentOptions {
  /** Keep the points of the way; without, `points` holds the end alone. */ readonly record?: boolean;
  /** Go on without thrust to the highest point. */ readonly toHighestPoint?: boolean;
}

type Happening =
  | 'half burnt'
  | 'burnt out'
  | 'fast enough'
  | 'way turned'
  | 'high enough'
  | 'fairing'
  | 'fallen'
  | 'highest';

/** Steps [s] while the flight is recorded, short enough for its greatest values to be met within 0.1 %, and otherwise. */
const RECORDED_STEP = 1;
const LONGEST_STEP = 20;
/** More than this fall is the ground [m below the site]. */
const FALLEN = 50;

/**
 * @param payload [kg]
 * @throws ProblemError `flight-does-not-rise` where the thrust does not lift the vehicle, `flight-falls-back` where it comes down again
 */
export function flyAscent(
  vehicle: Vehicle,
  payload: number,
  site: Site,
  steering: Steering,
  options: AscentOptions = {},
): Ascent {
  const { stages, fairing } = vehicle;
  const masses = stages.map(({ dryMass, propellantMass }) => dryMass + propellantMass);
  let fairingOn = fairing !== undefined;
  // An event found a rounding short of its place must not be met again at the same place, for ever.
  let halfIsBurnt = false;
  const liftoffMass = masses.reduce((sum, mass) => sum + mass, payload) + (fairing?.mass ?? 0);
  const record = flightRecord(options.record === true);
  const longestStep = options.record === true ? RECORDED_STEP : LONGEST_STEP;
  const halfMass = liftoffMass - 0.5 * stages[0]!.propellantMass;
  const dropped = (): number => (fairing === undefined || fairingOn ? 0 : fairing.mass);
  const halfBurnt: FlightEvent<Happening> = {
    name: 'half burnt',
    value: (_, state) => halfMass - dropped() - state[STATE.mass]!,
  };

  let t = 0;
  let y = new Float64Array(STATE_SIZE);
  y[STATE.radius] = site.earth.radius + site.altitude;
  y[STATE.tangential] = site.rotation * y[STATE.radius]!;
  y[STATE.mass] = liftoffMass;
  refuseTooHeavy(vehicle, y, site);
  let ideal = 0;
  let upperBegun: number | null = null;

  /** Flies under one law to the first of the events, dropping the fairing on the way; returns what ended it. */
  function fly(
    which: number,
    propulsion: Stage['propulsion'] | null,
    pointing: Pointing,
    until: number,
    events: readonly FlightEvent<Happening>[],
  ): Happening | null {
    const drive: Drive = { vehicle, site, propulsion, pointing };
    for (;;) {
      const watch = [
        ...events,
        fallen(site),
        ...(fairingOn ? [above('fairing', site, fairing!.dropAltitude)] : []),
        ...(which === 0 && !halfIsBurnt ? [halfBurnt] : []),
      ];
      record.point(drive, which, t, y);
      const massBefore = y[STATE.mass]!;
      const end: PhaseEnd<Happening> = flyPhase(drive, t, y, until, watch, longestStep, (time, state) =>
        record.point(drive, which, time, state),
      );
      ({ t, y } = end as { t: number; y: Float64Array<ArrayBuffer> });
      if (propulsion !== null) {
        ideal += (propulsion.vacuumThrust / propulsion.massFlow) * Math.log(massBefore / y[STATE.mass]!);
      }
      record.point(drive, which, t, y);
      if (end.event === 'fallen') throw fallsBack(t, y);
      if (end.event === 'half burnt') {
        record.halfBurnt(site, y);
        halfIsBurnt = true;
      } else if (end.event === 'fairing') {
        y[STATE.mass]! -= fairing!.mass;
        fairingOn = false;
      } else {
        return end.event;
      }
    }
  }

  /** Whatever is still on board when stage `which` has burnt out. */
  const emptyMass = (which: number): number =>
    masses.slice(which + 1).reduce((sum, mass) => sum + mass, payload + stages[which]!.dryMass) +
    (fairingOn ? fairing!.mass : 0);
  const burntOut = (which: number): FlightEvent<Happening> => ({
    name: 'burnt out',
    value: (_, state) => emptyMass(which) - state[STATE.mass]!,
  });
  const upper: Pointing = {
    kind: 'angle',
    at: (time) => Math.atan(steering.upper.start + steering.upper.rate * (time - (upperBegun ?? time))),
  };

  stages.forEach(({ propulsion, propellantMass, coastBefore }, which) => {
    if (which > 0) y[STATE.mass]! -= stages[which - 1]!.dryMass;
    if (which > 0 && steering.upperFrom === undefined) upperBegun ??= t;
    if (coastBefore > 0) fly(which, null, { kind: 'along' }, t + coastBefore, []);
    const until = t + propellantMass / (propulsion.massFlow * Math.max(propulsion.lowestThrottle, 0.01)) + 1;
    const out = burntOut(which);
    let event: Happening | null = null;
    if (which === 0) {
      event = fly(which, propulsion, { kind: 'up' }, until, [out, fastEnough(steering.kickSpeed)]);
      if (event === 'fast enough' && steering.kickAngle > 0) {
        const angle = Math.PI / 2 - steering.kickAngle;
        const turned = wayTurned(site, steering.kickAngle);
        event =
          turned.value(t, y) >= 0
            ? 'way turned'
            : fly(which, propulsion, { kind: 'angle', at: () => angle }, until, [out, turned]);
      }
    }
    if (event !== 'burnt out' && upperBegun === null) {
      const high = steering.upperFrom === undefined ? [] : [above('high enough', site, steering.upperFrom)];
      const already = high.length > 0 && high[0]!.value(t, y) >= 0;
      event = already ? 'high enough' : fly(which, propulsion, { kind: 'along' }, until, [out, ...high]);
      if (event === 'high enough') upperBegun = t;
    }
    if (event !== 'burnt out') fly(which, propulsion, upper, until, [out]);
    if (which === 0) record.firstStageEnds(y, dropped());
  });
  if (options.toHighestPoint === true) {
    const highest: FlightEvent<Happening> = { name: 'highest', value: (_, state) => -state[STATE.radial]! };
    if (highest.value(t, y) < 0) fly(stages.length - 1, null, { kind: 'along' }, t + 20_000, [highest]);
  }
  return record.ascent(vehicle, y, ideal);
}

function fastEnough(speed: number): FlightEvent<Happening> {
  return { name: 'fast enough', value: (_, y) => y[STATE.radial]! - speed };
}

/** The way against the ground leans as far from the vertical as the angle. */
function wayTurned(site: Site, angle: number): FlightEvent<Happening> {
  return {
    name: 'way turned',
    value: (_, y) =>
      Math.atan2(y[STATE.tangential]! - site.rotation * y[STATE.radius]!, y[STATE.radial]!) - angle,
  };
}

function above(name: Happening, { earth }: Site, altitude: number): FlightEvent<Happening> {
  return { name, value: (_, y) => y[STATE.radius]! - earth.radius - altitude };
}

function fallen(site: Site): FlightEvent<Happening> {
  return { name: 'fallen', value: (_, y) => site.earth.radius + site.altitude - FALLEN - y[STATE.radius]! };
}

function refuseTooHeavy({ stages }: Vehicle, y: Float64Array, site: Site): void {
  const weight = y[STATE.mass]! * STANDARD_GRAVITY;
  const thrust = stages[0]!.propulsion.thrust((site.air ?? standardAir)(site.altitude)?.pressure ?? 0, 0);
  if (thrust > weight) return;
  throw new ProblemError({
    code: 'flight-does-not-rise',
    what: `The first stage pushes with ${Math.round(thrust / 1e3)} kN on the ground; the vehicle weighs ${Math.round(weight / 1e3)} kN.`,
    why: 'It does not leave the ground.',
    mend: 'Give it more engines or more thrust, or make the vehicle lighter.',
    facts: { thrust, weight },
  });
}

function fallsBack(t: number, y: Float64Array): ProblemError {
  return new ProblemError({
    code: 'flight-falls-back',
    what: `The vehicle comes down to the ground again after ${Math.round(t)} s.`,
    why: `Its way bends down faster than it gains speed (${Math.round(Math.hypot(y[STATE.radial]!, y[STATE.tangential]!))} m/s by then).`,
    mend: 'Leave the vertical later or by a smaller angle, or give the upper stage more thrust.',
    facts: { time: t },
  });
}
