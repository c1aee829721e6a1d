/**
 * Steady, adiabatic, isentropic flow from rest, over any rule that gives the state at a pressure.
 *
 *   u = √(2 (h0 − h)),   A/A* = (ρu)* / (ρu),   c* = p0 / (ρu)*
 *
 * The throat is where the mass flux is greatest. Where the sound speed exists that is M = 1; where two phases pin the
 * temperature the maximum itself is sought.
 * Source: conservation of energy and mass; c* as in G. P. Sutton & O. Biblarz, Rocket Propulsion Elements, ch. 3.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { ChemistryKind, Expansion, FlowState, GasState } from './flow.ts';

/** A rule for the state along one isentrope. Throws ProblemError outside its range. */
export interface Isentrope {
  readonly chemistry: ChemistryKind;
  /** State at rest. */ readonly chamber: GasState;
  at(pressure: number): GasState;
  /** Lowest pressure that the rule reaches [Pa]. */
  lowestPressure(): number;
}

const MOST_STEPS = 120;

/** Build the expansion; solves the throat at once, everything else when asked. */
export function expandAlong(isentrope: Isentrope): Expansion {
  const { chamber } = isentrope;
  const throatState = findThroat(isentrope);
  const sonicFlux = massFluxOf(chamber, throatState);
  const flow = (state: GasState): FlowState => withFlow(state, chamber, sonicFlux);
  const throat = flow(throatState);
  const requirePressure = (pressure: number): void => {
    if (pressure > 0 && pressure <= chamber.pressure * (1 + 1e-12)) return;
    throw new ProblemError({
      code: 'station-pressure-outside',
      what: `A pressure of ${pressure} Pa is not between 0 and the chamber pressure of ${chamber.pressure} Pa.`,
      mend: 'Ask for a pressure that the flow passes through.',
      facts: { pressure, chamberPressure: chamber.pressure },
    });
  };
  return {
    chemistry: isentrope.chemistry,
    chamber: flow(chamber),
    throat,
    characteristicVelocity: chamber.pressure / sonicFlux,
    get lowestPressure() {
      return isentrope.lowestPressure();
    },
    atPressure(pressure) {
      requirePressure(pressure);
      return flow(isentrope.at(pressure));
    },
    atAreaRatio(areaRatio, side) {
      if (!(areaRatio >= 1 && Number.isFinite(areaRatio))) {
        throw new ProblemError({
          code: 'area-ratio-below-one',
          what: `An area ratio of ${areaRatio} is below 1: no place in the nozzle is narrower than the throat.`,
          mend: 'Give an area ratio of 1 or more.',
          facts: { areaRatio },
        });
      }
      if (areaRatio === 1) return throat;
      return side === 'subsonic'
        ? flow(subsonicState(isentrope, throat, areaRatio, sonicFlux))
        : flow(supersonicState(isentrope, throat, areaRatio, sonicFlux));
    },
    atMach(mach) {
      return flow(stateAtMach(isentrope, throat, mach));
    },
  };
}

function massFluxOf(chamber: GasState, state: GasState): number {
  return state.density * Math.sqrt(2 * Math.max(chamber.enthalpy - state.enthalpy, 0));
}

function withFlow(state: GasState, chamber: GasState, sonicFlux: number): FlowState {
  const velocity = Math.sqrt(2 * Math.max(chamber.enthalpy - state.enthalpy, 0));
  const massFlux = state.density * velocity;
  return {
    ...state,
    velocity,
    mach: state.soundSpeed === null ? null : velocity / state.soundSpeed,
    massFlux,
    areaRatio: massFlux > 0 ? sonicFlux / massFlux : Number.POSITIVE_INFINITY,
  };
}

/** M = 1 by the iteration p ← p (1 + γ M²)/(1 + γ) (RP-1311, eq. 6.16; from memory), else the maximum itself. */
function findThroat(isentrope: Isentrope): GasState {
  const { chamber } = isentrope;
  const gamma = chamber.isentropicExponent ?? chamber.gammaFrozen;
  let pressure = chamber.pressure * (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  for (let step = 0; step < 40; step++) {
    const state = isentrope.at(pressure);
    if (state.soundSpeed === null || state.isentropicExponent === null) break;
    const machSquared = (2 * (chamber.enthalpy - state.enthalpy)) / state.soundSpeed ** 2;
    if (Math.abs(machSquared - 1) < 2e-12) return state;
    const next = (pressure * (1 + state.isentropicExponent * machSquared)) / (1 + state.isentropicExponent);
    if (!(Math.abs(next - pressure) > 1e-15 * pressure)) return state;
    pressure = next;
    if (step === 39) break;
  }
  return greatestFlux(isentrope);
}

/** Golden section on ln p; the mass flux has one maximum between rest and vacuum. */
function greatestFlux(isentrope: Isentrope): GasState {
  const { chamber } = isentrope;
  const ratio = (Math.sqrt(5) - 1) / 2;
  const flux = (lnP: number): number => massFluxOf(chamber, isentrope.at(Math.exp(lnP)));
  let low = Math.log(0.3 * chamber.pressure);
  let high = Math.log(0.8 * chamber.pressure);
  let a = high - ratio * (high - low);
  let b = low + ratio * (high - low);
  let fa = flux(a);
  let fb = flux(b);
  for (let step = 0; step < 90 && high - low > 1e-11; step++) {
    if (fa < fb) {
      low = a;
      a = b;
      fa = fb;
      b = low + ratio * (high - low);
      fb = flux(b);
    } else {
      high = b;
      b = a;
      fb = fa;
      a = high - ratio * (high - low);
      fa = flux(a);
    }
  }
  return isentrope.at(Math.exp(0.5 * (low + high)));
}

/** ln(A/A*) − ln(ε) at a state. */
function areaMiss(isentrope: Isentrope, state: GasState, lnArea: number, sonicFlux: number): number {
  return Math.log(sonicFlux / massFluxOf(isentrope.chamber, state)) - lnArea;
}

function subsonicState(
  isentrope: Isentrope,
  throat: GasState,
  areaRatio: number,
  sonicFlux: number,
): GasState {
  const { chamber } = isentrope;
  const lnArea = Math.log(areaRatio);
  // Near rest (ρu)² ≈ 2 ρ0 (p0 − p): solve for ln(p0 − p), which keeps its digits when the flow is slow.
  const atDrop = (lnDrop: number): GasState => isentrope.at(chamber.pressure - Math.exp(lnDrop));
  const throatDrop = Math.log(chamber.pressure - throat.pressure);
  const guess = Math.log(sonicFlux ** 2 / (2 * chamber.density * areaRatio ** 2));
  const { root } = findBracketedRoot(
    (lnDrop) => areaMiss(isentrope, atDrop(lnDrop), lnArea, sonicFlux),
    Math.min(guess, throatDrop) - 2,
    throatDrop,
    {
      valueTolerance: 1e-13,
      widthTolerance: 1e-15,
      maxSteps: MOST_STEPS,
      start: Math.min(guess, throatDrop - 1e-3),
    },
  );
  return atDrop(root);
}

/** Newton on ln p with d ln A/d ln p = 1/(γ M²) − 1/γ, kept between bounds. */
function supersonicState(
  isentrope: Isentrope,
  throat: GasState,
  areaRatio: number,
  sonicFlux: number,
): GasState {
  const { chamber } = isentrope;
  const lnArea = Math.log(areaRatio);
  let high = Math.log(throat.pressure);
  let low = Number.NEGATIVE_INFINITY;
  let floor: ProblemError | null = null;
  const gamma = throat.isentropicExponent ?? throat.gammaFrozen;
  let lnP = high - Math.max(Math.min(0.4 * Math.sqrt(areaRatio - 1), 1), gamma * 1.2 * lnArea);
  let best: GasState | null = null;
  for (let step = 0; step < MOST_STEPS; step++) {
    const state = tryState(isentrope, Math.exp(lnP));
    if (state instanceof ProblemError) {
      floor = state;
      low = Math.max(low, lnP);
      if (high - low < 1e-9) throw beyondReach(areaRatio, isentrope, Math.exp(high), sonicFlux, floor);
      lnP = 0.5 * (low + high);
      continue;
    }
    best = state;
    const miss = areaMiss(isentrope, state, lnArea, sonicFlux);
    if (Math.abs(miss) < 1e-13) return state;
    if (miss > 0) low = Math.max(low, lnP);
    else high = Math.min(high, lnP);
    if (high - low < 1e-15 * Math.abs(high)) return state;
    const exponent = state.isentropicExponent ?? state.gammaFrozen;
    const machSquared =
      (2 * (chamber.enthalpy - state.enthalpy) * state.density) / (exponent * state.pressure);
    const slope = (1 / machSquared - 1) / exponent;
    let next = lnP - miss / slope;
    if (!(Math.abs(next - lnP) < 4)) next = lnP + Math.sign(next - lnP) * 4;
    if (!(next < high && next > low)) next = Number.isFinite(low) ? 0.5 * (low + high) : lnP - 2;
    if (Math.abs(next - lnP) < 2e-16 * Math.abs(lnP)) return state;
    lnP = next;
  }
  if (best && Math.abs(areaMiss(isentrope, best, lnArea, sonicFlux)) < 1e-10) return best;
  throw new ProblemError({
    code: 'station-not-found',
    what: `The state at area ratio ${areaRatio} was not found in ${MOST_STEPS} steps.`,
    mend: 'Change the area ratio a little.',
    facts: { areaRatio },
  });
}

/** The state, or the reason why the gas can't get there. */
function tryState(isentrope: Isentrope, pressure: number): GasState | ProblemError {
  try {
    return isentrope.at(pressure);
  } catch (error) {
    if (error instanceof ProblemError) return error;
    throw error;
  }
}

function beyondReach(
  areaRatio: number,
  isentrope: Isentrope,
  lastPressure: number,
  sonicFlux: number,
  cause: ProblemError,
): ProblemError {
  const reached = sonicFlux / massFluxOf(isentrope.chamber, isentrope.at(lastPressure));
  return new ProblemError({
    code: cause.problem.code === 'temperature-below-range' ? 'expansion-beyond-data' : cause.problem.code,
    what: `The gas cannot be followed to area ratio ${areaRatio}; it can to about ${reached.toPrecision(4)}. ${cause.problem.what}`,
    mend: `Use an area ratio below ${reached.toPrecision(3)}. ${cause.problem.mend}`,
    facts: { areaRatio, reached, pressure: lastPressure },
  });
}

function stateAtMach(isentrope: Isentrope, throat: FlowState, mach: number): GasState {
  if (!(mach >= 0 && Number.isFinite(mach))) {
    throw new ProblemError({
      code: 'mach-invalid',
      what: `A Mach number of ${mach} has no meaning here.`,
      mend: 'Give a Mach number of 0 or more.',
      facts: { mach },
    });
  }
  const { chamber } = isentrope;
  if (mach === 0) return chamber;
  if (mach === 1) return throat;
  const machAt = (lnP: number): number => {
    const state = isentrope.at(Math.exp(lnP));
    if (state.soundSpeed === null) {
      throw new ProblemError({
        code: 'no-sound-speed',
        what: `At ${state.pressure.toPrecision(4)} Pa the gas has no single sound speed, so no Mach number either.`,
        why: state.absent ?? '',
        mend: 'Name the place by pressure or area ratio.',
        facts: { pressure: state.pressure },
      });
    }
    return Math.sqrt(2 * Math.max(chamber.enthalpy - state.enthalpy, 0)) / state.soundSpeed - mach;
  };
  const options = { valueTolerance: 1e-13 * mach, widthTolerance: 1e-15, maxSteps: MOST_STEPS };
  const lnThroat = Math.log(throat.pressure);
  const lnRest = Math.log(chamber.pressure);
  if (mach < 1) return isentrope.at(Math.exp(findBracketedRoot(machAt, lnRest, lnThroat, options).root));
  const lnLowest = Math.log(isentrope.lowestPressure());
  let low = lnThroat;
  while (low > lnLowest) {
    low = Math.max(lnLowest, low - 1);
    if (machAt(low) >= 0) {
      return isentrope.at(
        Math.exp(findBracketedRoot(machAt, low, Math.min(low + 1, lnThroat), options).root),
      );
    }
  }
  throw new ProblemError({
    code: 'mach-beyond-data',
    what: `The gas reaches Mach ${(machAt(lnLowest) + mach).toPrecision(4)} at the lowest pressure that its data allow, not ${mach}.`,
    mend: 'Ask for a smaller Mach number.',
    facts: { mach, lowestPressure: Math.exp(lnLowest) },
  });
}
