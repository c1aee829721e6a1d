/**
 * Chemical equilibrium of a gas and the pure condensed phases that can stand beside it: which phases take part, and when
 * two phases of one substance stand together and pin the temperature.
 *
 * A phase takes part when that lowers the Gibbs energy, g_c°/RT < Σ_k a_ck π_k; it leaves when its amount would be
 * negative. A substance whose temperature runs out of the range of its phase takes the next phase; when that one runs out
 * the other way, both stand together at the transition temperature (equation (4) of gibbsMinimum.ts, twice).
 * Source: S. Gordon & B. J. McBride, NASA RP-1311 (1994), ch. 3.4; the bookkeeping is our own.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { type GibbsWork, type Held, minimiseGibbs, type NewtonOutcome, startCold } from './gibbsMinimum.ts';
import {
  HIGHEST_TEMPERATURE,
  LOWEST_TEMPERATURE,
  type Substance,
  substancePropertiesInto,
  substanceRange,
} from './mixture.ts';

/** A phase must be this much better, in RT, to enter: far above rounding, far below any effect on the answer. */
const ENTER_MARGIN = 1e-9;
const MOST_CHANGES = 60;

/**
 * Bring `work` to equilibrium at `pressure` [Pa] with temperature, enthalpy or entropy held. Starts from whatever state
 * `work` is in (a neighbouring one saves time) and falls back to the cold start.
 * @throws ProblemError when there is none in the range of the data, or it is not found
 */
export function equilibrate(work: GibbsWork, pressure: number, held: Held): void {
  work.iterations = 0;
  const first = settlePhases(work, pressure, held);
  if (first !== 'converged') {
    startCold(work);
    let outcome = settlePhases(work, pressure, held);
    if (outcome !== 'converged' && outcome !== 'no-gas' && held.kind !== 'temperature') {
      outcome = fromBothEnds(work, pressure, held);
    }
    if (outcome !== 'converged') throw noEquilibrium(work, pressure, held, outcome);
  }
  requireTemperature(work, pressure, held);
  work.balanceResidual = balanceResidual(work);
}

/** A second way in: equilibrium at several temperatures first, then the held quantity from there. */
function fromBothEnds(work: GibbsWork, pressure: number, held: Held): NewtonOutcome {
  let outcome: NewtonOutcome = 'slow';
  for (const temperature of [1500, 4500, 800, 350]) {
    startCold(work);
    if (settlePhases(work, pressure, { kind: 'temperature', temperature }) !== 'converged') continue;
    outcome = settlePhases(work, pressure, held);
    if (outcome === 'converged') return outcome;
  }
  return outcome;
}

/** Newton, then let phases enter, leave and change, until nothing changes any more. */
function settlePhases(work: GibbsWork, pressure: number, held: Held): NewtonOutcome {
  const freeT = held.kind !== 'temperature';
  const { active } = work;
  const flips = new Map<Substance, number>();
  let lastEntered = -1;
  let emptied = 0;
  if (!freeT) dropTwins(work, held.temperature);
  for (let round = 0; round < MOST_CHANGES; round++) {
    const outcome = minimiseGibbs(work, pressure, held);
    if (outcome !== 'converged') {
      if (active.length === 0 || (outcome === 'no-gas' && ++emptied > 3)) return outcome;
      // A phase too many: the one that entered last goes, and the gas starts afresh.
      const index = active.findIndex((phase) => phase.phase === lastEntered);
      active.splice(Math.max(index, 0), 1);
      lastEntered = -1;
      const kept = active.map((phase) => ({ ...phase, moles: 0 }));
      if (round > MOST_CHANGES / 2) kept.length = 0;
      startCold(work);
      active.push(...kept);
      continue;
    }
    if (removeNegative(work)) continue;
    if (freeT && moveOutOfRange(work, flips)) continue;
    const entered = enterBest(work);
    if (entered < 0) return 'converged';
    lastEntered = entered;
  }
  return 'slow';
}

/** At a held temperature one phase of a substance is enough: the one stable there. */
function dropTwins(work: GibbsWork, temperature: number): void {
  const seen = new Set<Substance>();
  const stable = work.active.filter(({ substance, phase }) => {
    if (seen.has(substance)) return false;
    const right = substance.rangePhase[substanceRange(substance, temperature, false)] === phase;
    if (right) seen.add(substance);
    return right;
  });
  work.active.splice(0, work.active.length, ...stable);
}

function removeNegative(work: GibbsWork): boolean {
  let worst = -1;
  let least = 0;
  work.active.forEach((phase, i) => {
    if (phase.moles < least) {
      least = phase.moles;
      worst = i;
    }
  });
  if (worst < 0) return false;
  work.active.splice(worst, 1);
  return true;
}

/** Change phases whose temperature range has been left; both stand together when they chase each other. */
function moveOutOfRange(work: GibbsWork, flips: Map<Substance, number>): boolean {
  const { active, temperature } = work;
  for (let i = 0; i < active.length; i++) {
    const phase = active[i]!;
    const { substance } = phase;
    const twin = active.some((other, j) => j !== i && other.substance === substance);
    if (twin) continue;
    const own = substance.phases.find((p) => p.index === phase.phase)!;
    const slack = 1e-9 * temperature;
    if (temperature >= own.from - slack && temperature <= own.to + slack) continue;
    const hotter = temperature > own.to;
    const position = substance.phases.indexOf(own) + (hotter ? 1 : -1);
    const next = substance.phases[position];
    if (!next) {
      // Beyond the data of the substance: it cannot stand as a condensed phase there.
      active.splice(i, 1);
      return true;
    }
    const count = (flips.get(substance) ?? 0) + 1;
    flips.set(substance, count);
    if (count >= 2) active.push({ substance, phase: next.index, moles: 0 });
    else active[i] = { substance, phase: next.index, moles: phase.moles };
    return true;
  }
  return false;
}

/** Let the phase enter that lowers the Gibbs energy most; returns its index, or −1 when none does. */
function enterBest(work: GibbsWork): number {
  const { mixture, active, temperature, basis, solution, gibbs, enthalpy, cp } = work;
  const E = mixture.elements.length;
  // Phase rule: gas plus C phases of E components leave E + 2 − (1 + C) freedoms, pressure and one more are used.
  if (active.length >= E) return -1;
  let best: { substance: Substance; phase: number } | null = null;
  let most = ENTER_MARGIN;
  for (const substance of mixture.substances) {
    if (temperature > substance.highest) continue;
    if (active.some((phase) => phase.substance === substance)) continue;
    const row = substanceRange(substance, temperature, false);
    substancePropertiesInto(enthalpy, gibbs, cp, substance, temperature, row);
    let drive = -gibbs[substance.index]!;
    let atoms = 0;
    for (let k = 0; k < E; k++) {
      drive += basis.formula[substance.index * E + k]! * solution[k]!;
      atoms += mixture.formula[substance.index * E + k]!;
    }
    if (drive / atoms > most) {
      most = drive / atoms;
      best = { substance, phase: substance.rangePhase[row]! };
    }
  }
  if (!best) return -1;
  active.push({ ...best, moles: 0 });
  return best.phase;
}

/** Largest relative miss of Σ a n = b over the elements, condensed phases included. */
function balanceResidual(work: GibbsWork): number {
  const { mixture, elementTotals, moles } = work;
  const E = mixture.elements.length;
  let worst = 0;
  for (let j = 0; j < E; j++) {
    let sum = 0;
    for (let i = 0; i < mixture.speciesCount; i++) sum += mixture.formula[i * E + j]! * moles[i]!;
    const miss = Math.abs(sum - elementTotals[j]!) / elementTotals[j]!;
    if (miss > worst) worst = miss;
  }
  return worst;
}

const bar = (pressure: number): string => `${(pressure / 1e5).toPrecision(4)} bar`;

function describeHeld(held: Held): string {
  if (held.kind === 'temperature') return `a temperature of ${held.temperature.toFixed(1)} K`;
  if (held.kind === 'enthalpy') return `an enthalpy of ${(held.enthalpy / 1000).toFixed(1)} kJ/kg`;
  return `an entropy of ${(held.entropy / 1000).toFixed(4)} kJ/(kg K)`;
}

function requireTemperature(work: GibbsWork, pressure: number, held: Held): void {
  const { temperature } = work;
  if (temperature > HIGHEST_TEMPERATURE) {
    throw new ProblemError({
      code: 'temperature-above-range',
      what: `At ${describeHeld(held)} and ${bar(pressure)} the gas would be at ${temperature.toFixed(0)} K; the species data end at ${HIGHEST_TEMPERATURE} K.`,
      mend: 'Lower the temperature or the energy of the propellants, or move the mixture away from the hottest ratio.',
      facts: { temperature, highest: HIGHEST_TEMPERATURE, pressure },
    });
  }
  if (temperature < LOWEST_TEMPERATURE * (1 - 1e-9)) {
    throw new ProblemError({
      code: 'temperature-below-range',
      what: `At ${describeHeld(held)} and ${bar(pressure)} the gas would be at ${temperature.toFixed(0)} K; the species data for reacting gas begin at ${LOWEST_TEMPERATURE} K.`,
      why: 'a mixture this cold does not burn, or has expanded beyond what the data cover',
      mend: 'Use a mixture that releases more heat, a smaller area ratio, or frozen chemistry, which continues below.',
      facts: { temperature, lowest: LOWEST_TEMPERATURE, pressure },
    });
  }
}

function noEquilibrium(work: GibbsWork, pressure: number, held: Held, outcome: NewtonOutcome): ProblemError {
  const facts = { pressure, temperature: work.temperature, iterations: work.iterations };
  if (outcome === 'no-gas') {
    return new ProblemError({
      code: 'no-gas-left',
      what: `At ${describeHeld(held)} and ${bar(pressure)} everything condenses: no gas is left to flow.`,
      mend: 'Use a hotter mixture, a lower pressure, or one with lighter products.',
      facts,
    });
  }
  if (!(work.temperature < 1.5 * HIGHEST_TEMPERATURE)) requireTemperature(work, pressure, held);
  if (!(work.temperature > 0.7 * LOWEST_TEMPERATURE)) requireTemperature(work, pressure, held);
  return new ProblemError({
    code: 'equilibrium-not-found',
    what: `The equilibrium at ${describeHeld(held)} and ${bar(pressure)} was not found in ${work.iterations} iterations (${outcome}).`,
    mend: 'Change the mixture or the pressure a little; the state is likely at the edge of a phase change or of the data.',
    facts,
  });
}
