/**
 * Pressure that a coolant loses over one step of its channels, and its speed behind it.
 *
 *   −Δp = ½ [(f/D)(Gv/2)₁ + (f/D)(Gv/2)₂] Δs + ½ (G₁ + G₂)(v₂ − v₁),     G = ρv = ṁ/A,     ρ = ρ(p, h − v²/2)
 *
 * h: the enthalpy with that of its motion. v₂ is that at the pressure behind the step, so that the loss is in it twice: from two tries
 * the straight line through them gives the loss that agrees with itself, Δp = Δp₁/(1 − κ), κ = (Δp₂ − Δp₁)/Δp₁ = −G dv/dp at held h,
 * which is the square of the Mach number; where it nears one, the channels choke.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { ChannelHere } from './channels.ts';
import { frictionFactor } from './coolantCorrelations.ts';
import type { CoolantFluid, CoolantState } from './coolantFluid.ts';

/** The coolant at one place of its channels. */
export interface CoolantSection {
  readonly channel: ChannelHere;
  /** As if at rest: what walls and wires feel of it. */ readonly state: CoolantState;
  /** [m/s] */ readonly velocity: number;
}

export interface CoolantStream {
  readonly fluid: CoolantFluid;
  /** [kg/s] */ readonly massFlow: number;
  /** [m] of the channels' walls */ readonly roughness: number;
}

/** Square of the Mach number beyond which no step is taken: the loss then hangs on the last digits. */
const CHOKED = 0.8;
/** Share of the pressure at the beginning of a step below which nothing is left. */
const SPENT = 0.02;

/** @param enthalpy h [J/kg]; no more than the table holds at that pressure is taken */
export function sectionAt(
  { fluid, massFlow }: CoolantStream,
  channel: ChannelHere,
  pressure: number,
  enthalpy: number,
): CoolantSection {
  const state = fluid.stateAt(pressure, Math.min(enthalpy, fluid.highestEnthalpy(pressure)));
  const flux = massFlow / channel.area;
  const least = fluid.lowestEnthalpy(pressure);
  const next = (velocity: number): number =>
    flux / fluid.stateAt(pressure, Math.max(state.enthalpy - velocity ** 2 / 2, least)).density;
  const still = flux / state.density;
  const first = next(still);
  const second = next(first);
  const gain = first === still ? 0 : (second - first) / (first - still);
  return { channel, state, velocity: still + (first - still) / (1 - Math.min(gain, 0.5)) };
}

/**
 * @param length [m] of the step @param enthalpy behind it [J/kg]
 * @throws ProblemError `coolant-chokes`, `coolant-pressure-lost`, and what the fluid's table throws
 */
export function sectionAfter(
  stream: CoolantStream,
  behind: CoolantSection,
  channel: ChannelHere,
  length: number,
  enthalpy: number,
): CoolantSection {
  const { pressure } = behind.state;
  const tried = (lost: number): CoolantSection => {
    if (!(pressure - lost > SPENT * pressure)) throw pressureLost(pressure);
    return sectionAt(stream, channel, pressure - lost, enthalpy);
  };
  const first = lossOver(stream, length, tried(0), behind);
  const second = lossOver(stream, length, tried(first), behind);
  const gain = first === 0 ? 0 : (second - first) / first;
  if (gain > CHOKED) throw chokes(pressure);
  return tried(first / (1 - gain));
}

function lossOver(
  stream: CoolantStream,
  length: number,
  here: CoolantSection,
  behind: CoolantSection,
): number {
  const flux = stream.massFlow / here.channel.area;
  const before = stream.massFlow / behind.channel.area;
  const speedUp = ((flux + before) / 2) * (here.velocity - behind.velocity);
  return (length * (frictionOf(stream, here) + frictionOf(stream, behind))) / 2 + speedUp;
}

/** (f/D)(Gv/2) [Pa/m] */
function frictionOf(
  { massFlow, roughness }: CoolantStream,
  { channel, state, velocity }: CoolantSection,
): number {
  const flux = massFlow / channel.area;
  const factor = frictionFactor((flux * channel.diameter) / state.viscosity, roughness / channel.diameter);
  return ((factor / channel.diameter) * flux * velocity) / 2;
}

const MEND = 'Give deeper or wider channels, less coolant, or a higher inlet pressure.';

function chokes(pressure: number): ProblemError {
  return new ProblemError({
    code: 'coolant-chokes',
    what: `The coolant comes near the speed of sound in its channels, at ${(pressure / 1e5).toPrecision(3)} bar: they choke on it.`,
    mend: MEND,
    where: 'cooling.channels.depth',
    facts: { pressure },
  });
}

function pressureLost(pressure: number): ProblemError {
  return new ProblemError({
    code: 'coolant-pressure-lost',
    what: `The coolant loses all that is left of its pressure, ${(pressure / 1e5).toPrecision(3)} bar, in a short piece of its channels.`,
    mend: MEND,
    where: 'cooling.channels.depth',
    facts: { pressure },
  });
}
