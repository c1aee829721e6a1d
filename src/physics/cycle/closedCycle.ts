/** Cycles whose turbine stands in series with the chamber: staged combustion, closed expander. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import { pressureBehindPump, pumpPower } from './feed.ts';
import type { Balance, ClosedCycle } from './model.ts';
import { ratioTooLarge } from './turbineGas.ts';

const WIDTH = 1e-10;
/** Steps of the golden section: the place of the greatest surplus to some 10⁻⁶, the surplus to its square. */
const STEPS = 34;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * All of one propellant, and of the other what makes its gas, pass the turbine before the chamber:
 *
 *   p_out = p_c (1 + injector),   p_in = π p_out,   pumps of the turbine’s gas: p_in (1 + preburner injector) + lines (+ jacket) p_c
 *   ṁ_T η_T Δh_ideal(π) = Σ ṁ Δp/(η_p ρ)
 *
 * The left side levels off with π, d(Δh)/dln π = R T_out, the right side grows in proportion: the smaller of the two π at which they
 * meet is taken, found between 1 and the π of the greatest surplus, which lies below ṁ_T η_T R T_in/(d need/dπ). A preburner’s injector drops the same share as the chamber’s; the rest of the other
 * propellant is pumped only to what the chamber needs.
 *
 * @throws ProblemError `cycle-cannot-close` where the turbine never gives as much as the pumps need,
 * `turbine-ratio-too-large` where it might beyond the ratio at which the data of its gas end,
 * `turbine-gas-hotter-than-chamber` where its gas would take more of the other propellant than there is
 * Source: the balance of M. Martinez-Sanchez, MIT 16.512, lecture 25, in series; pressures as in NASA SP-8107, 1974.
 */
export function balanceClosed(cycle: ClosedCycle): Balance {
  const { best, surplus } = greatestSurplus(cycle);
  if (surplus < 0) throw cannotClose(cycle, surplus);
  const { root } = findBracketedRoot((ratio) => surplusAt(cycle, ratio), 1, best, {
    valueTolerance: 1e-9 * needAt(cycle, best).power,
    widthTolerance: WIDTH,
  });
  const { power, oxidiserPressure, fuelPressure } = needAt(cycle, root);
  return {
    pumpPower: power,
    oxidiserPressure,
    fuelPressure,
    turbineFlow: turbineFlowOf(cycle),
    pressureRatio: root,
    work: cycle.efficiency * cycle.gas.idealWork(root),
    dumped: { oxidiser: 0, fuel: 0 },
  };
}

/** The greatest power left over at any turbine pressure ratio, over what the pumps need there [–]. */
export function closedMargin(cycle: ClosedCycle): number {
  const { best, surplus } = greatestSurplus(cycle);
  return surplus / needAt(cycle, best).power;
}

/** Surplus is concave in π, so that one search finds its only peak. */
function greatestSurplus(cycle: ClosedCycle): { readonly best: number; readonly surplus: number } {
  const end = Math.min(beyondPeak(cycle), cycle.gas.mostRatio);
  const at = (lnRatio: number): number => surplusAt(cycle, Math.exp(lnRatio));
  let [low, high] = [0, Math.log(end)];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [ofA, ofB] = [at(a), at(b)];
  for (let step = 0; step < STEPS; step++) {
    if (ofA < ofB) {
      low = a;
      [a, ofA] = [b, ofB];
      b = low + GOLDEN * (high - low);
      ofB = at(b);
    } else {
      high = b;
      [b, ofB] = [a, ofA];
      a = high - GOLDEN * (high - low);
      ofA = at(a);
    }
  }
  const best = Math.exp(0.5 * (low + high));
  const surplus = surplusAt(cycle, best);
  // Still rising where the data of the gas end: what it would be beyond is not known.
  if (surplus < 0 && end < beyondPeak(cycle) && best > end * (1 - 1e-5)) {
    throw ratioTooLarge(beyondPeak(cycle), cycle.gas.mostRatio);
  }
  return { best, surplus };
}

/** A pressure ratio beyond which the surplus only falls [–]: there even the gas at its inlet’s temperature gives less than more costs. */
function beyondPeak(cycle: ClosedCycle): number {
  const { gas, tankPressure, chamberPressure, drops } = cycle;
  // Below this a pump would have nothing to do.
  const pumping = Math.max(1, tankPressure / pressureBehindPump(chamberPressure, drops.injector));
  const slope = (needAt(cycle, 2 * pumping).power - needAt(cycle, pumping).power) / pumping;
  const perLnRatio =
    turbineFlowOf(cycle) * cycle.efficiency * (MOLAR_GAS_CONSTANT / gas.molarMass) * gas.temperature;
  return Math.max(pumping, perLnRatio / slope);
}

function surplusAt(cycle: ClosedCycle, ratio: number): number {
  return turbineFlowOf(cycle) * cycle.efficiency * cycle.gas.idealWork(ratio) - needAt(cycle, ratio).power;
}

/** [kg/s] of either propellant through the turbine. */
function throughTurbine(cycle: ClosedCycle): { oxidiser: number; fuel: number } {
  const { gas, flow, excess } = cycle;
  const ratio = gas.mixtureRatio ?? 0;
  const through =
    excess === 'fuel'
      ? { oxidiser: flow.fuel * ratio, fuel: flow.fuel }
      : { oxidiser: flow.oxidiser, fuel: flow.oxidiser / ratio };
  if (through.oxidiser > flow.oxidiser || through.fuel > flow.fuel) throw hotterThanChamber(cycle);
  return through;
}

function turbineFlowOf(cycle: ClosedCycle): number {
  const { oxidiser, fuel } = throughTurbine(cycle);
  return oxidiser + fuel;
}

function needAt(cycle: ClosedCycle, ratio: number) {
  const { fed, flow, drops, chamberPressure: p, tankPressure: from, pumpEfficiency, kind } = cycle;
  const inlet = pressureBehindPump(p, drops.injector) * ratio;
  const behindInjector = kind === 'stagedCombustion' ? inlet * (1 + drops.injector) : inlet;
  const first = {
    oxidiser: behindInjector + drops.lines * p,
    fuel: behindInjector + (drops.lines + drops.jacket) * p,
  };
  const rest = {
    oxidiser: pressureBehindPump(p, drops.injector, drops.lines),
    fuel: pressureBehindPump(p, drops.injector, drops.lines, drops.jacket),
  };
  const gas = throughTurbine(cycle);
  let power = 0;
  for (const side of ['oxidiser', 'fuel'] as const) {
    const common = { density: fed[side].density!, efficiency: pumpEfficiency[side], from };
    power += pumpPower({ ...common, massFlow: gas[side], to: first[side] });
    power += pumpPower({ ...common, massFlow: flow[side] - gas[side], to: rest[side] });
  }
  return {
    power,
    oxidiserPressure: gas.oxidiser > 0 ? first.oxidiser : rest.oxidiser,
    fuelPressure: first.fuel,
  };
}

function cannotClose(cycle: ClosedCycle, surplus: number): ProblemError {
  const { chamberPressure, kind } = cycle;
  return new ProblemError({
    code: 'cycle-cannot-close',
    what: `At ${(chamberPressure / 1e5).toPrecision(3)} bar the turbine falls short of what the pumps need, by ${(-surplus / 1e6).toPrecision(2)} MW at best.`,
    why:
      kind === 'closedExpander'
        ? 'An expander has only the heat of its walls, and the higher the pressure the less of it comes with each kilogram of fuel.'
        : 'A higher pressure ahead of the turbine gives more work, but the pumps then need more still.',
    mend: 'Lower the chamber pressure, or raise turbineInletTemperature or the efficiencies; cycle.reachablePressure is the most it can do.',
    where: 'cycle',
    facts: { surplus, chamberPressure },
  });
}

function hotterThanChamber({ gas, flow }: ClosedCycle): ProblemError {
  const chamberRatio = flow.oxidiser / flow.fuel;
  return new ProblemError({
    code: 'turbine-gas-hotter-than-chamber',
    what: `Gas of ${gas.temperature.toFixed(0)} K for the turbine burns at a mixture ratio of ${(gas.mixtureRatio ?? 0).toPrecision(3)}, the chamber at ${chamberRatio.toPrecision(3)}: it takes more of the other propellant than there is.`,
    mend: 'State a lower turbineInletTemperature, the other propellant under rich, or a mixture ratio nearer to complete burning.',
    where: 'cycle.turbineInletTemperature',
    facts: { temperature: gas.temperature, chamberRatio },
  });
}
