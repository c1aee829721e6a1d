/**
 * Steady, adiabatic, isentropic flow from rest, over any rule that gives the state at a pressure.
 *
 *   u = √(2 (h0 − h)),   A/A* = (ρu)* / (ρu),   c* = p0 / (ρu)*
 *
 * The throat is where the mass flux is greatest. Where the sound speed exists that is M = 1; where a phase change lies
 * between the chamber and that place, or pins the temperature, the flux can have several tops and the greatest is sought.
 * Source: conservation of energy and mass; c* as in G. P. Sutton & O. Biblarz, Rocket Propulsion Elements, ch. 3.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { requireStationAreaRatio, requireStationPressure, requireSubsonicArea } from './askedStation.ts';
import type { Expansion, FlowState, GasState } from './flow.ts';
import { enthalpyDrop, type Isentrope } from './isentrope.ts';
import { stateAtMach } from './stateAtMach.ts';

const MOST_STEPS = 120;

/**
 * Build the expansion; solves the throat at once, everything else when asked.
 * @param afterLoss see {@link Expansion}
 */
export function expandAlong(isentrope: Isentrope, afterLoss?: Expansion['afterLoss']): Expansion {
  const { chamber } = isentrope;
  const throatState = findThroat(isentrope);
  const sonicFlux = massFluxOf(chamber, throatState);
  const flow = (state: GasState): FlowState => withFlow(state, chamber, sonicFlux);
  const throat = flow(throatState);
  return {
    chemistry: isentrope.chemistry,
    chamber: flow(chamber),
    throat,
    characteristicVelocity: chamber.pressure / sonicFlux,
    get lowestPressure() {
      return isentrope.lowestPressure();
    },
    atPressure(pressure) {
      requireStationPressure(pressure, chamber.pressure);
      return flow(isentrope.at(pressure));
    },
    atAreaRatio(areaRatio, side) {
      requireStationAreaRatio(areaRatio);
      if (areaRatio === 1) return throat;
      return side === 'subsonic'
        ? flow(subsonicState(isentrope, throat, areaRatio, sonicFlux))
        : flow(supersonicState(isentrope, throat, areaRatio, sonicFlux));
    },
    atMach(mach) {
      return flow(stateAtMach(isentrope, throat, mach));
    },
    ...(afterLoss && { afterLoss }),
  };
}

function massFluxOf(chamber: GasState, state: GasState): number {
  return state.density * Math.sqrt(2 * enthalpyDrop(chamber, state));
}

function withFlow(state: GasState, chamber: GasState, sonicFlux: number): FlowState {
  const velocity = Math.sqrt(2 * enthalpyDrop(chamber, state));
  const massFlux = state.density * velocity;
  // Named one by one: spreading an object of this size costs more than solving a small gas.
  return {
    temperature: state.temperature,
    pressure: state.pressure,
    density: state.density,
    molarMass: state.molarMass,
    molarMassGas: state.molarMassGas,
    enthalpy: state.enthalpy,
    entropy: state.entropy,
    cpFrozen: state.cpFrozen,
    cpEquilibrium: state.cpEquilibrium,
    isentropicExponent: state.isentropicExponent,
    gammaFrozen: state.gammaFrozen,
    soundSpeed: state.soundSpeed,
    dlnVdlnT: state.dlnVdlnT,
    dlnVdlnp: state.dlnVdlnp,
    absent: state.absent,
    notice: state.notice,
    composition: state.composition,
    velocity,
    mach: state.soundSpeed === null ? null : velocity / state.soundSpeed,
    massFlux,
    areaRatio: massFlux > 0 ? sonicFlux / massFlux : Number.POSITIVE_INFINITY,
  };
}

/**
 * M = 1 by the iteration p ← p (1 + γ M²)/(1 + γ) (RP-1311, eq. 6.16; from memory). When the phases there are not those of
 * the chamber, the sound speed has jumped on the way and the flux may have a higher top before it; where condensed matter
 * evaporates behind it, a higher one behind.
 */
function findThroat(isentrope: Isentrope): GasState {
  const sonic = sonicState(isentrope);
  const alone =
    sonic && isentrope.kindOf(sonic) === isentrope.kindOf(isentrope.chamber) && !risesAgain(isentrope, sonic);
  return alone ? sonic : greatestFlux(isentrope, sonic);
}

/** Share of the sonic pressure at which a second top of the flux, where there is one, has risen above the first. */
const LOOK_BEHIND = 0.78;

function risesAgain(isentrope: Isentrope, sonic: GasState): boolean {
  const carriesCondensed = sonic.molarMass < sonic.molarMassGas * (1 - 1e-9);
  if (!carriesCondensed) return false;
  const behind = tryState(isentrope, LOOK_BEHIND * sonic.pressure);
  if (behind instanceof ProblemError) return false;
  return massFluxOf(isentrope.chamber, behind) > massFluxOf(isentrope.chamber, sonic);
}

function sonicState(isentrope: Isentrope): GasState | null {
  const { chamber } = isentrope;
  const gamma = chamber.isentropicExponent ?? chamber.gammaFrozen;
  let pressure = chamber.pressure * (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  for (let step = 0; step < 40; step++) {
    const state = isentrope.at(pressure);
    if (state.soundSpeed === null || state.isentropicExponent === null) return null;
    const machSquared = (2 * (chamber.enthalpy - state.enthalpy)) / state.soundSpeed ** 2;
    if (Math.abs(machSquared - 1) < 2e-12) return state;
    if (!(machSquared > 0 && machSquared < 30)) return null;
    const next = (pressure * (1 + state.isentropicExponent * machSquared)) / (1 + state.isentropicExponent);
    if (!(next > 0.02 * chamber.pressure && next < 0.9999 * chamber.pressure)) return null;
    if (!(Math.abs(next - pressure) > 1e-15 * pressure)) return state;
    pressure = next;
  }
  return null;
}

/** Shares of the chamber pressure between which a throat is sought when M = 1 does not mark it, and steps of the scans. */
const THROAT_SHARES = { low: 0.02, high: 0.9995, scan: 40, fine: 48 };

/** In ln p: where a throat has gas behind it. More than one, since the equilibrium may escape at the edge of a phase change. */
const PAST_THE_TOP = [1e-3, 0.01, 0.05];

interface FluxAt {
  readonly lnP: number;
  readonly flux: number;
  /** Null where the isentrope has no state. */ readonly state: GasState | null;
}

/**
 * The greatest mass flux itself: a scan over ln p, a finer one about its top, then every top and every edge of a phase
 * change that the finer scan shows, narrowed down. `sonic`: the place of M = 1, when there is one.
 */
function greatestFlux(isentrope: Isentrope, sonic: GasState | null): GasState {
  const { chamber } = isentrope;
  const at = (lnP: number): FluxAt => {
    const state = tryState(isentrope, Math.exp(lnP));
    return state instanceof ProblemError
      ? { lnP, flux: 0, state: null }
      : { lnP, flux: massFluxOf(chamber, state), state };
  };
  const scan = (from: number, to: number, steps: number): FluxAt[] =>
    Array.from({ length: steps + 1 }, (_, i) => at(to + (i / steps) * (from - to)));
  const lnLow = Math.log(THROAT_SHARES.low * chamber.pressure);
  const lnHigh = Math.log(THROAT_SHARES.high * chamber.pressure);
  const coarse = scan(lnLow, lnHigh, THROAT_SHARES.scan);
  const top = coarse.reduce((best, here) => (here.flux > best.flux ? here : best));
  if (!(top.flux > 0)) throw noThroat(chamber);
  const margin = (2.5 * (lnHigh - lnLow)) / THROAT_SHARES.scan;
  const fine = scan(
    Math.max(top.lnP - margin, lnLow),
    Math.min(top.lnP + margin, lnHigh),
    THROAT_SHARES.fine,
  );
  const found: FluxAt[] = [top];
  if (sonic) found.push({ lnP: Math.log(sonic.pressure), flux: massFluxOf(chamber, sonic), state: sonic });
  // A top within this of the best so far may still be the greatest after narrowing down.
  const worthwhile = (flux: number): boolean => flux > 0.999 * top.flux;
  fine.forEach((here, i) => {
    const before = fine[i - 1];
    const after = fine[i + 1];
    if (!worthwhile(here.flux) || !before || !after) return;
    if (here.flux >= before.flux && here.flux >= after.flux) found.push(narrowTop(at, after.lnP, before.lnP));
    if (here.state && after.state && isentrope.kindOf(here.state) !== isentrope.kindOf(after.state))
      found.push(narrowEdge(isentrope, at, here, after));
  });
  const greatest = found.reduce((best, here) => (here.flux > best.flux ? here : best));
  // Where the data end the flux is not at its top, only no farther to be followed.
  if (!PAST_THE_TOP.some((step) => at(greatest.lnP - step).state)) throw noThroat(chamber);
  return isentrope.at(Math.exp(greatest.lnP));
}

/** Golden section for the top of the flux between two values of ln p. */
function narrowTop(at: (lnP: number) => FluxAt, from: number, to: number): FluxAt {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = from;
  let high = to;
  let a = at(high - ratio * (high - low));
  let b = at(low + ratio * (high - low));
  for (let i = 0; i < 90 && high - low > 1e-11; i++) {
    if (a.flux < b.flux) {
      low = a.lnP;
      a = b;
      b = at(low + ratio * (high - low));
    } else {
      high = b.lnP;
      b = a;
      a = at(high - ratio * (high - low));
    }
  }
  return a.flux > b.flux ? a : b;
}

/** Bisection for the edge of a phase change; the state on its upstream side. */
function narrowEdge(
  isentrope: Isentrope,
  at: (lnP: number) => FluxAt,
  upstream: FluxAt,
  downstream: FluxAt,
): FluxAt {
  const kind = isentrope.kindOf(upstream.state!);
  let high = upstream;
  let low = downstream.lnP;
  for (let i = 0; i < 60 && high.lnP - low > 1e-12; i++) {
    const middle = at(0.5 * (high.lnP + low));
    if (middle.state && isentrope.kindOf(middle.state) === kind) high = middle;
    else low = middle.lnP;
  }
  return high;
}

function noThroat(chamber: GasState): ProblemError {
  return new ProblemError({
    code: 'no-throat',
    what: 'The gas cannot be followed from the chamber to a throat: no state of the flow was found below the chamber pressure.',
    why: 'the mixture is nearly all condensed, or at the edge of its data',
    mend: 'Use a mixture that is a gas for the greater part.',
    facts: { chamberPressure: chamber.pressure, temperature: chamber.temperature },
  });
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
  requireSubsonicArea(areaRatio);
  const { chamber } = isentrope;
  const lnArea = Math.log(areaRatio);
  // Near rest (ρu)² ≈ 2 ρ0 (p0 − p): solve for ln(p0 − p), which keeps its digits when the flow is slow.
  const atDrop = (lnDrop: number): GasState => isentrope.at(chamber.pressure - Math.exp(lnDrop));
  const throatDrop = Math.log(chamber.pressure - throat.pressure);
  const guess = Math.log(sonicFlux ** 2 / (2 * chamber.density * areaRatio ** 2));
  const miss = (lnDrop: number): number => {
    const state = atDrop(lnDrop);
    const value = areaMiss(isentrope, state, lnArea, sonicFlux);
    if (Math.abs(value) < nearest) {
      nearest = Math.abs(value);
      best = state;
    }
    return value;
  };
  let best = throat;
  let nearest = Number.POSITIVE_INFINITY;
  let slow = Math.min(guess, throatDrop) - 1;
  while (!(miss(slow) > 0) && slow > guess - 12) slow -= 2;
  if (miss(slow) > 0) {
    findBracketedRoot(miss, slow, throatDrop, {
      valueTolerance: 1e-13,
      widthTolerance: 1e-15,
      maxSteps: MOST_STEPS,
      start: Math.min(Math.max(guess, slow + 1e-3), throatDrop - 1e-3),
    });
    if (nearest < 5e-9) return best;
  }
  throw stationNotFound(areaRatio);
}

function stationNotFound(areaRatio: number): ProblemError {
  return new ProblemError({
    code: 'station-not-found',
    what: `The state at area ratio ${areaRatio} was not found.`,
    why: 'the flow is at the edge of a phase change there',
    mend: 'Change the area ratio or the mixture a little.',
    facts: { areaRatio },
  });
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
  let nearest = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_STEPS; step++) {
    const state = tryState(isentrope, Math.exp(lnP));
    if (state instanceof ProblemError) {
      floor = state;
      low = Math.max(low, lnP);
      if (high - low < 1e-9) throw beyondReach(areaRatio, isentrope, Math.exp(high), sonicFlux, floor);
      lnP = 0.5 * (low + high);
      continue;
    }
    const miss = areaMiss(isentrope, state, lnArea, sonicFlux);
    if (Math.abs(miss) < nearest) {
      nearest = Math.abs(miss);
      best = state;
    }
    if (Math.abs(miss) < 1e-13) return state;
    if (miss > 0) low = Math.max(low, lnP);
    else high = Math.min(high, lnP);
    if (high - low < 1e-15 * Math.abs(high)) break;
    const exponent = state.isentropicExponent ?? state.gammaFrozen;
    const machSquared =
      (2 * (chamber.enthalpy - state.enthalpy) * state.density) / (exponent * state.pressure);
    const slope = (1 / machSquared - 1) / exponent;
    let next = lnP - miss / slope;
    if (!(Math.abs(next - lnP) < 4)) next = lnP + Math.sign(next - lnP) * 4;
    if (!(next < high && next > low)) next = Number.isFinite(low) ? 0.5 * (low + high) : lnP - 2;
    if (Math.abs(next - lnP) < 2e-16 * Math.abs(lnP)) break;
    lnP = next;
  }
  // Where ice and water stand together the data's rounding moves the state by this much.
  if (best && nearest < 5e-9) return best;
  throw stationNotFound(areaRatio);
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
