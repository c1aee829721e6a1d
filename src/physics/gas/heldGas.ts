/**
 * A gas whose composition is held: frozen flow, and cold or heated gases. Condensed substances keep their amount but
 * follow their own solid–liquid transition, where they pin the temperature until it is done.
 *
 * Below the species data (200 K) the heat capacity of each gas is held at its value there, h and s continuous: the
 * *constant-cp continuation*, told in `notice`; so is a gas that has passed its saturation pressure, because held
 * composition does not condense.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import { shares } from './equilibriumState.ts';
import type { ChemistryKind, GasState } from './flow.ts';
import { STANDARD_STATE_PRESSURE } from './gibbsMinimum.ts';
import type { Isentrope } from './isentrope.ts';
import {
  gasPropertiesInto,
  HIGHEST_TEMPERATURE,
  LOWEST_CONTINUED_TEMPERATURE,
  LOWEST_TEMPERATURE,
  type Mixture,
  type Substance,
  substancePropertiesInto,
  substanceRange,
} from './mixture.ts';
import { saturationNotice } from './saturation.ts';

/** Amounts [mol/kg]: of every gas and substance of the mixture by index. */
export interface HeldComposition {
  readonly mixture: Mixture;
  readonly moles: Float64Array;
}

interface Sums {
  /** Σ n h/RT [mol/kg] */ enthalpy: number;
  /** Σ n s°/R, mixing and pressure left out [mol/kg] */ entropy: number;
  /** Σ n cp/R [mol/kg] */ cp: number;
  /** Σ n of all condensed substances [mol/kg] */ condensed: number;
}

/** Reads the properties of a held composition; owns its work arrays. */
export interface HeldGas {
  readonly composition: HeldComposition;
  /** N of the gas alone [mol/kg] */ readonly gasMoles: number;
  /** −Σ n ln(n/N) [mol/kg] */ readonly mixing: number;
  /** Transition temperatures of condensed substances that are present, ascending [K]. */
  readonly transitions: readonly number[];
  /** [K] highest temperature of all that is present */ readonly highest: number;
  readonly work: { readonly h: Float64Array; readonly g: Float64Array; readonly cp: Float64Array };
}

export function heldGas(composition: HeldComposition): HeldGas {
  const { mixture, moles } = composition;
  const gases = mixture.gases.length;
  let gasMoles = 0;
  for (let i = 0; i < gases; i++) gasMoles += moles[i]!;
  if (!(gasMoles > 0)) {
    throw new ProblemError({
      code: 'no-gas-left',
      what: 'The composition holds no gas at all.',
      mend: 'Use a mixture that leaves gas to flow.',
    });
  }
  let mixing = 0;
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    if (n > 0) mixing -= n * Math.log(n / gasMoles);
  }
  const present = mixture.substances.filter((substance) => moles[substance.index]! > 0);
  const transitions = present.flatMap((substance) => substance.transitions).sort((a, b) => a - b);
  const highest = Math.min(HIGHEST_TEMPERATURE, ...present.map((substance) => substance.highest));
  const S = mixture.speciesCount;
  const work = { h: new Float64Array(S), g: new Float64Array(S), cp: new Float64Array(S) };
  return { composition, gasMoles, mixing, transitions, highest, work };
}

/** Sums at a temperature; `upper`: which side of a transition counts when the temperature is exactly on it. */
function sumsAt(gas: HeldGas, temperature: number, upper: boolean): Sums {
  const { mixture, moles } = gas.composition;
  const { h, g, cp } = gas.work;
  gasPropertiesInto(h, g, cp, mixture, temperature);
  const sums: Sums = { enthalpy: 0, entropy: 0, cp: 0, condensed: 0 };
  for (let i = 0; i < mixture.gases.length; i++) {
    const n = moles[i]!;
    if (n === 0) continue;
    sums.enthalpy += n * h[i]!;
    sums.entropy += n * (h[i]! - g[i]!);
    sums.cp += n * cp[i]!;
  }
  for (const substance of mixture.substances) {
    const i = substance.index;
    const n = moles[i]!;
    if (n === 0) continue;
    substancePropertiesInto(h, g, cp, substance, temperature, substanceRange(substance, temperature, upper));
    sums.enthalpy += n * h[i]!;
    sums.entropy += n * (h[i]! - g[i]!);
    sums.cp += n * cp[i]!;
    sums.condensed += n;
  }
  return sums;
}

/** State at temperature [K] and pressure [Pa]; `done`: how much of a transition at exactly this temperature is over. */
export function heldState(
  gas: HeldGas,
  temperature: number,
  pressure: number,
  done: number | null = null,
): GasState {
  requireHeldTemperature(gas, temperature);
  const R = MOLAR_GAS_CONSTANT;
  const { gasMoles } = gas;
  const lower = sumsAt(gas, temperature, false);
  const upper = done === null ? lower : sumsAt(gas, temperature, true);
  const between = (a: number, b: number): number => a + (done ?? 0) * (b - a);
  const cp = between(lower.cp, upper.cp);
  const gamma = cp / (cp - gasMoles);
  const pinned = done !== null;
  const lnP = Math.log(pressure / STANDARD_STATE_PRESSURE);
  const { mixture, moles } = gas.composition;
  return {
    temperature,
    pressure,
    density: pressure / (gasMoles * R * temperature),
    molarMass: 1 / (gasMoles + lower.condensed),
    molarMassGas: 1 / gasMoles,
    enthalpy: R * temperature * between(lower.enthalpy, upper.enthalpy),
    entropy: R * (between(lower.entropy, upper.entropy) + gas.mixing - gasMoles * lnP),
    cpFrozen: R * cp,
    cpEquilibrium: null,
    isentropicExponent: pinned ? null : gamma,
    gammaFrozen: gamma,
    soundSpeed: pinned ? null : Math.sqrt(gamma * gasMoles * R * temperature),
    dlnVdlnT: pinned ? null : 1,
    dlnVdlnp: -1,
    absent: pinned
      ? `a substance melts or freezes and pins the temperature at ${temperature.toFixed(1)} K`
      : 'the composition is held, so there is no equilibrium heat capacity',
    notice: noticeOf(gas, temperature, pressure),
    composition: () => shares(mixture, moles, heldPhases(gas, temperature, done), gasMoles + lower.condensed),
  };
}

function heldPhases(gas: HeldGas, temperature: number, done: number | null) {
  const { mixture, moles } = gas.composition;
  return mixture.substances.flatMap((substance: Substance) => {
    const n = moles[substance.index]!;
    if (n === 0) return [];
    const below = substance.rangePhase[substanceRange(substance, temperature, false)]!;
    const above = substance.rangePhase[substanceRange(substance, temperature, true)]!;
    if (done === null || below === above) return [{ phase: below, moles: n }];
    return [
      { phase: below, moles: n * (1 - done) },
      { phase: above, moles: n * done },
    ].filter((part) => part.moles > 0);
  });
}

function noticeOf(gas: HeldGas, temperature: number, pressure: number): string | null {
  const notices: string[] = [];
  if (temperature < LOWEST_TEMPERATURE) {
    notices.push(
      `below ${LOWEST_TEMPERATURE} K, where the species data end, heat capacities are held constant (constant-cp continuation)`,
    );
  }
  const { mixture, moles } = gas.composition;
  const saturated = saturationNotice(mixture.gases, moles, gas.gasMoles, temperature, pressure);
  if (saturated) notices.push(saturated);
  return notices.length > 0 ? notices.join('; ') : null;
}

function requireHeldTemperature(gas: HeldGas, temperature: number): void {
  if (temperature >= LOWEST_CONTINUED_TEMPERATURE && temperature <= gas.highest * (1 + 1e-12)) return;
  const low = temperature < LOWEST_CONTINUED_TEMPERATURE;
  throw new ProblemError({
    code: low ? 'temperature-below-range' : 'temperature-above-range',
    what: `The gas would be at ${temperature.toFixed(1)} K, outside ${LOWEST_CONTINUED_TEMPERATURE} to ${gas.highest} K.`,
    mend: low ? 'Use a smaller area ratio or a higher pressure.' : 'Use a lower temperature.',
    facts: { temperature, lowest: LOWEST_CONTINUED_TEMPERATURE, highest: gas.highest },
  });
}

/** The state on the isentrope through entropy [J/(kg K)] at pressure [Pa]. */
export function heldStateAtEntropy(gas: HeldGas, entropy: number, pressure: number, start: number): GasState {
  const lnP = Math.log(pressure / STANDARD_STATE_PRESSURE);
  // Σ n s°/R that the state must have.
  const wanted = entropy / MOLAR_GAS_CONSTANT - gas.mixing + gas.gasMoles * lnP;
  for (const transition of gas.transitions) {
    const below = sumsAt(gas, transition, false).entropy;
    const above = sumsAt(gas, transition, true).entropy;
    if (wanted >= below && wanted <= above && above > below) {
      return heldState(gas, transition, pressure, (wanted - below) / (above - below));
    }
  }
  let low = LOWEST_CONTINUED_TEMPERATURE;
  let high = gas.highest;
  let T = Math.min(Math.max(start, low), high);
  for (let step = 0; step < 200; step++) {
    const sums = sumsAt(gas, T, false);
    const miss = sums.entropy - wanted;
    if (miss > 0) high = Math.min(high, T);
    else low = Math.max(low, T);
    let next = T * Math.exp(-miss / sums.cp);
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (Math.abs(miss) < 1e-15 * Math.abs(wanted) || Math.abs(next - T) < 4e-16 * T) break;
    T = next;
  }
  const reached = Math.abs(sumsAt(gas, T, false).entropy - wanted) < 1e-9 * Math.abs(wanted);
  if (!reached)
    requireHeldTemperature(gas, T > start ? gas.highest * 1.01 : LOWEST_CONTINUED_TEMPERATURE * 0.99);
  return heldState(gas, T, pressure);
}

/** The isentrope of a held composition from a state at rest. */
export function heldIsentrope(gas: HeldGas, chamber: GasState, chemistry: ChemistryKind): Isentrope {
  let last = chamber.temperature;
  return {
    chemistry,
    chamber,
    at(pressure) {
      const state = heldStateAtEntropy(gas, chamber.entropy, pressure, last);
      last = state.temperature;
      return state;
    },
    kindOf: ({ temperature, soundSpeed }) =>
      `${gas.transitions.filter((T) => T < temperature).length}${soundSpeed === null ? ' between' : ''}`,
    lowestPressure() {
      const sums = sumsAt(gas, LOWEST_CONTINUED_TEMPERATURE, true);
      const lnP = (sums.entropy + gas.mixing - chamber.entropy / MOLAR_GAS_CONSTANT) / gas.gasMoles;
      return STANDARD_STATE_PRESSURE * Math.exp(lnP) * (1 + 1e-9);
    },
  };
}
