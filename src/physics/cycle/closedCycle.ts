/** Cycles whose turbine stands in series with the chamber: staged combustion, closed expander. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { pressureBehindPump, pumpPower } from './feed.ts';
import type { Balance, ClosedCycle } from './model.ts';

/** [–] highest turbine pressure ratio looked at: beyond, pump pressures leave anything built. */
const MOST_RATIO = 12;
const GRID = 20;
const WIDTH = 1e-10;

/**
 * All of one propellant, and of the other what makes its gas, pass the turbine before the chamber:
 *
 *   p_out = p_c (1 + injector),   p_in = π p_out,   pumps of the turbine’s gas: p_in (1 + preburner injector) + lines (+ jacket) p_c
 *   ṁ_T η_T Δh_ideal(π) = Σ ṁ Δp/(η_p ρ)
 *
 * The left side levels off with π, the right side grows in proportion: the smaller of the two π at which they meet is taken, found
 * between 1 and the π of the greatest surplus. A preburner’s injector drops the same share as the chamber’s; the rest of the other
 * propellant is pumped only to what the chamber needs.
 *
 * @throws ProblemError `cycle-cannot-close` where the turbine never gives as much as the pumps need,
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

function greatestSurplus(cycle: ClosedCycle): { readonly best: number; readonly surplus: number } {
  const at = (i: number): number => MOST_RATIO ** (i / GRID);
  let peak = 1;
  let top = surplusAt(cycle, at(peak));
  for (let i = 2; i <= GRID; i++) {
    const here = surplusAt(cycle, at(i));
    if (here <= top) continue;
    peak = i;
    top = here;
  }
  let [low, high] = [at(peak - 1), at(Math.min(peak + 1, GRID))];
  for (let step = 0; step < 14; step++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (surplusAt(cycle, a) < surplusAt(cycle, b)) low = a;
    else high = b;
  }
  const best = 0.5 * (low + high);
  return { best, surplus: surplusAt(cycle, best) };
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
