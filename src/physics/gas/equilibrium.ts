/**
 * Chemical equilibrium of a gas and the pure condensed phases that can stand beside it: which phases take part, and when
 * two phases of one substance stand together and pin the temperature.
 *
 * A phase takes part when that lowers the Gibbs energy, g_c°/RT < Σ_k a_ck π_k; it leaves when its amount would be
 * negative. A substance whose temperature runs out of the range of its phase takes the next phase; when that one runs out
 * the other way, both stand together at the transition temperature (equation (4) of gibbsMinimum.ts, twice).
 * Source: S. Gordon & B. J. McBride, NASA RP-1311 (1994), ch. 3.4; the bookkeeping is our own.
 */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { equilibriumState } from './equilibriumState.ts';
import {
  type ActivePhase,
  type GibbsWork,
  type Held,
  minimiseGibbs,
  type NewtonOutcome,
  startCold,
} from './gibbsMinimum.ts';
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
    if (outcome === 'slow' && held.kind === 'temperature')
      outcome = descend(work, pressure, held.temperature);
    if (outcome !== 'converged' && outcome !== 'beyond-phase-data' && held.kind !== 'temperature') {
      startCold(work);
      outcome = byTemperature(work, pressure, held);
    }
    if (outcome !== 'converged') throw noEquilibrium(work, pressure, held, outcome);
  }
  requireTemperature(work, pressure, held);
  work.balanceResidual = balanceResidual(work);
}

/** Come down from the hottest gas in steps, so that what condenses on the way is there already. */
function descend(work: GibbsWork, pressure: number, temperature: number): NewtonOutcome {
  startCold(work);
  for (let T = HIGHEST_TEMPERATURE; T > temperature; T *= 0.9) {
    const outcome = settlePhases(work, pressure, { kind: 'temperature', temperature: T });
    if (outcome !== 'converged') return outcome;
  }
  return settlePhases(work, pressure, { kind: 'temperature', temperature });
}

/**
 * The sure way to a held enthalpy or entropy: both rise with temperature at constant pressure, so bracket the
 * temperature with equilibria at held temperature, then let Newton finish, with both phases of a substance where the
 * rise is a jump.
 */
function byTemperature(work: GibbsWork, pressure: number, held: HeldFreeTemperature): NewtonOutcome {
  const wanted = held.kind === 'enthalpy' ? held.enthalpy : held.entropy;
  let low = LOWEST_TEMPERATURE;
  let high = HIGHEST_TEMPERATURE;
  let emptyBelow = false;
  let outcome = valueAt(work, pressure, held.kind, high);
  if (typeof outcome === 'string') return outcome;
  if (outcome < wanted) {
    work.temperature = 2 * HIGHEST_TEMPERATURE;
    return 'slow';
  }
  for (let step = 0; step < 60 && high - low > 1e-3; step++) {
    const middle = 0.5 * (low + high);
    const value = valueAt(work, pressure, held.kind, middle);
    // Without gas at all, or at its very edge, the mixture is colder than the state sought.
    if (typeof value === 'string' || value < wanted) {
      low = middle;
      emptyBelow = value === 'no-gas';
    } else high = middle;
  }
  outcome = valueAt(work, pressure, held.kind, high);
  if (high < LOWEST_TEMPERATURE + 0.01) {
    work.temperature = 0.5 * LOWEST_TEMPERATURE;
    return 'slow';
  }
  const jump = work.active.find(({ substance }) =>
    substance.transitions.some((T) => T > low - 0.01 && T < high + 0.01),
  );
  if (jump) {
    const place = jump.substance.phases.findIndex((phase) => phase.index === jump.phase);
    const colder = jump.substance.phases[place - 1];
    if (colder && Math.abs(colder.to - high) < 0.02) {
      const half = 0.5 * jump.moles;
      jump.moles = half;
      work.active.push({ substance: jump.substance, phase: colder.index, moles: half });
    }
  }
  const settled = settlePhases(work, pressure, held);
  return settled !== 'converged' && emptyBelow ? 'no-gas' : settled;
}

type HeldFreeTemperature = Exclude<Held, { readonly kind: 'temperature' }>;

/** Enthalpy or entropy of the equilibrium at a held temperature, or why there is none. */
function valueAt(
  work: GibbsWork,
  pressure: number,
  kind: 'enthalpy' | 'entropy',
  temperature: number,
): number | Exclude<NewtonOutcome, 'converged'> {
  const held: Held = { kind: 'temperature', temperature };
  let outcome = settlePhases(work, pressure, held);
  if (outcome !== 'converged' && outcome !== 'no-gas') {
    startCold(work);
    outcome = settlePhases(work, pressure, held);
    if (outcome === 'slow') outcome = descend(work, pressure, temperature);
  }
  if (outcome !== 'converged') {
    startCold(work);
    return outcome;
  }
  return kind === 'enthalpy' ? equilibriumState(work).enthalpy : equilibriumState(work).entropy;
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
      if (!freeT && outcome === 'singular' && makeUpEverything(work)) return 'no-gas';
      if (active.length === 0 || ++emptied > 4) return outcome;
      // A phase too many: the one that entered last goes, and the gas starts afresh.
      const index = active.findIndex((phase) => phase.phase === lastEntered);
      active.splice(Math.max(index, 0), 1);
      lastEntered = -1;
      const kept = active.map((phase) => ({ ...phase, moles: 0 }));
      startCold(work);
      active.push(...kept);
      continue;
    }
    if (removeNegative(work)) continue;
    if (freeT) {
      const moved = moveOutOfRange(work, flips);
      if (moved === 'beyond-phase-data') return moved;
      if (moved) continue;
    }
    const entering = bestEntering(work);
    if (!entering) return 'converged';
    if (letEnter(work, entering, freeT) === 'no-gas') return 'no-gas';
    lastEntered = entering.phase;
  }
  return 'slow';
}

/** At a held temperature one phase of a substance is enough: the one stable there; none above the end of its data. */
function dropTwins(work: GibbsWork, temperature: number): void {
  const seen = new Set<Substance>();
  const stable = work.active.filter(({ substance, phase }) => {
    if (seen.has(substance) || temperature > substance.highest) return false;
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
function moveOutOfRange(work: GibbsWork, flips: Map<Substance, number>): boolean | 'beyond-phase-data' {
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
    const count = (flips.get(substance) ?? 0) + 1;
    flips.set(substance, count);
    if (!next) {
      // Beyond the data of the substance: it cannot stand as a condensed phase there.
      if (count > 3) return 'beyond-phase-data';
      active.splice(i, 1);
      return true;
    }
    if (count >= 2) active.push({ substance, phase: next.index, moles: 0 });
    else active[i] = { substance, phase: next.index, moles: phase.moles };
    return true;
  }
  return false;
}

/** The phase that would lower the Gibbs energy most by entering, per atom; null when none would. */
function bestEntering(work: GibbsWork): ActivePhase | null {
  const { mixture, active, temperature, basis, solution, gibbs, enthalpy, cp } = work;
  const E = mixture.elements.length;
  let best: ActivePhase | null = null;
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
      best = { substance, phase: substance.rangePhase[row]!, moles: 0 };
    }
  }
  return best;
}

/**
 * Let a phase in. Where its formula is a sum of the active ones (Al4C3 beside Al and C) it takes the place of the one
 * that its growth uses up first, as in the simplex method. At a held temperature as many phases as elements leave no
 * gas, by the phase rule; unless one of them would be negative, which then leaves.
 */
function letEnter(work: GibbsWork, entering: ActivePhase, freeT: boolean): 'entered' | 'no-gas' {
  const { active, mixture } = work;
  const E = mixture.elements.length;
  const formulaOf = ({ substance }: ActivePhase): Float64Array =>
    mixture.formula.subarray(substance.index * E, (substance.index + 1) * E);
  const shares = asSumOf(active.map(formulaOf), formulaOf(entering));
  if (shares) {
    let leaving = -1;
    let grows = Number.POSITIVE_INFINITY;
    shares.forEach((share, c) => {
      if (share > 1e-9 && active[c]!.moles / share < grows) {
        grows = active[c]!.moles / share;
        leaving = c;
      }
    });
    if (leaving < 0) return 'no-gas';
    shares.forEach((share, c) => {
      active[c]!.moles -= share * grows;
    });
    active.splice(leaving, 1);
    active.push({ ...entering, moles: grows });
    return 'entered';
  }
  active.push(entering);
  if (freeT || active.length < E) return 'entered';
  const amounts = asSumOf(active.map(formulaOf), work.elementTotals);
  if (!amounts) return 'entered';
  let worst = -1;
  let least = 0;
  amounts.forEach((amount, c) => {
    if (amount < least && active[c] !== entering) {
      least = amount;
      worst = c;
    }
  });
  if (worst < 0) return 'no-gas';
  active.splice(worst, 1);
  return 'entered';
}

/** Whether the condensed phases hold every atom, so that the gas has shrunk to nothing. */
function makeUpEverything({ active, mixture, elementTotals }: GibbsWork): boolean {
  const E = mixture.elements.length;
  const formulas = active.map(({ substance }) =>
    mixture.formula.subarray(substance.index * E, (substance.index + 1) * E),
  );
  return asSumOf(formulas, elementTotals)?.every((amount) => amount >= 0) ?? false;
}

/** Coefficients by which `parts` add up to `whole`, or null when they can't. Least squares, exact for these small integers. */
function asSumOf(parts: readonly Float64Array[], whole: Float64Array): Float64Array | null {
  const count = parts.length;
  if (count === 0) return null;
  const stride = count + 1;
  const system = new Float64Array(count * stride);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) system[i * stride + j] = dot(parts[i]!, parts[j]!);
    system[i * stride + count] = dot(parts[i]!, whole);
  }
  const x = new Float64Array(count);
  if (!solveDenseInto(x, system, count, stride)) return null;
  for (let k = 0; k < whole.length; k++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += x[i]! * parts[i]![k]!;
    if (Math.abs(sum - whole[k]!) > 1e-9 * (1 + Math.abs(whole[k]!))) return null;
  }
  return x;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
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
  if (outcome === 'beyond-phase-data') {
    return new ProblemError({
      code: 'condensed-beyond-data',
      what: `At ${describeHeld(held)} and ${bar(pressure)} a substance would condense above the highest temperature of its data.`,
      why: 'liquid water, for one, has data to 600 K only, near its critical point',
      mend: 'Use a lower pressure, or a mixture that keeps the gas clear of condensing there.',
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
