/** Every number of a cycle that is one an engine, by its name below `cycle` or `mass`. */

import { ProblemError } from '../../numerics/problem.ts';
import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import {
  type Balance,
  batteryMass,
  bottleVolume,
  pressurantMass,
  pressureBehindPump,
  tankMass,
  ULLAGE,
  withDump,
} from '../../physics/cycle/index.ts';
import { figuresAt } from '../conditions.ts';
import type { EngineSolution } from '../solution.ts';
import { isOpen } from './asStated.ts';
import type { EngineCycle } from './engineCycle.ts';
import { noFigure } from './noFigure.ts';

export type Figure = (solution: EngineSolution) => number;

const NO_TURBINE = ['There is no turbine.', 'Ask a cycle with one, such as a gas generator.'] as const;
const NOTHING_DUMPED = [
  'This cycle dumps nothing: all propellant burns in the chamber.',
  'Ask an open cycle, such as a gas generator.',
] as const;

const balance = (of: (balance: Balance) => number | null): Figure => {
  return ({ cycle }) => of(cycle().balance()) ?? noFigure(...NO_TURBINE);
};

/** Thrown away over all that the engine takes [–]. */
export function dumpShareOf(cycle: EngineCycle, at: Balance = cycle.balance()): number {
  const { flow } = cycle.pumped;
  const dumped = at.dumped.oxidiser + at.dumped.fuel;
  return dumped / (dumped + flow.oxidiser + flow.fuel);
}

/** In vacuum [s]; 0 where nothing is dumped. */
export function dumpImpulseOf(cycle: EngineCycle, ambientPressure: number): number {
  return (cycle.exhaust()?.at(ambientPressure) ?? 0) / STANDARD_GRAVITY;
}

/** Of the dumped gas [N]. */
export function dumpThrustAt(cycle: EngineCycle, ambientPressure: number): number {
  const { dumped } = cycle.balance();
  return (dumped.oxidiser + dumped.fuel) * STANDARD_GRAVITY * dumpImpulseOf(cycle, ambientPressure);
}

function lostIn(solution: EngineSolution, at: Balance): number {
  const cycle = solution.cycle();
  const chamber = figuresAt(solution, 0, null).figures.specificImpulse!;
  return chamber - withDump(chamber, dumpImpulseOf(cycle, 0), dumpShareOf(cycle, at));
}

const HUNDRED_BAR = 100e5;
/** Step of the difference, as a share of the chamber pressure. */
const STEP = 0.05;

function lostPerHundredBar(solution: EngineSolution): number {
  const cycle = solution.cycle();
  if (!isOpen(cycle.stated)) return noFigure(...NOTHING_DUMPED);
  const { chamberPressure } = cycle.pumped;
  const at = (share: number): number => lostIn(solution, cycle.balanceAt(share * chamberPressure));
  return ((at(1 + STEP) - at(1 - STEP)) / (2 * STEP * chamberPressure)) * HUNDRED_BAR;
}

function mixtureRatio({ cycle }: EngineSolution): number {
  const { pumped, balance: of } = cycle();
  const { dumped } = of();
  return (pumped.flow.oxidiser + dumped.oxidiser) / (pumped.flow.fuel + dumped.fuel);
}

/** Through the engine [kg/s]. */
export function engineFlow({ cycle }: EngineSolution): number {
  const { pumped, balance: of } = cycle();
  const { dumped } = of();
  return pumped.flow.oxidiser + pumped.flow.fuel + dumped.oxidiser + dumped.fuel;
}

/** Pressure in the tanks [Pa], the higher of the two where they are made for what the chamber needs. */
function tankPressure({ cycle }: EngineSolution): number {
  const { stated, pumped } = cycle();
  const { injector, lines, jacket } = pumped.drops;
  return stated.tankPressure?.value ?? pressureBehindPump(pumped.chamberPressure, injector, lines, jacket);
}

/** [m³] of either tank, gas above the propellant counted. */
function tankVolumes({ cycle }: EngineSolution): { readonly oxidiser: number; readonly fuel: number } {
  const { stated, pumped, balance: of } = cycle();
  const { dumped } = of();
  const one = (side: 'oxidiser' | 'fuel'): number =>
    (ULLAGE * (pumped.flow[side] + dumped[side]) * stated.burnTime.value) / pumped.fed[side].density!;
  return { oxidiser: one('oxidiser'), fuel: one('fuel') };
}

/** Both tanks, between spheres and long cylinders [kg]. */
export function tankMassBand(solution: EngineSolution): { readonly low: number; readonly high: number } {
  const { stated } = solution.cycle();
  const { oxidiser, fuel } = tankVolumes(solution);
  const material = { stress: stated.tankStress.value, density: stated.tankDensity.value };
  return tankMass(tankPressure(solution), oxidiser + fuel, material);
}

/** Helium in a bottle that begins at room temperature [K]. Common practice, no source. */
const BOTTLE_TEMPERATURE = 293;

function helium(solution: EngineSolution) {
  const { stated } = solution.cycle();
  if (stated.kind !== 'pressureFed') {
    return noFigure(
      'Pumps raise the pressure; little gas is needed above the propellant.',
      'Ask a pressure-fed cycle.',
    );
  }
  const { oxidiser, fuel } = tankVolumes(solution);
  const stored = { storedPressure: stated.heliumPressure.value, temperature: BOTTLE_TEMPERATURE };
  const mass = pressurantMass(tankPressure(solution), oxidiser + fuel, stored);
  if (mass === null) {
    return noFigure(
      'The helium is stored at no higher pressure than the tanks hold.',
      'Raise heliumPressure.',
    );
  }
  const material = { stress: stated.tankStress.value, density: stated.tankDensity.value };
  const bottle = tankMass(stored.storedPressure, bottleVolume(mass, stored), material);
  return { mass, bottle };
}

function battery(solution: EngineSolution): number {
  const { stated, balance: of } = solution.cycle();
  if (stated.kind !== 'electricPump') {
    return noFigure('No battery drives these pumps.', 'Ask a cycle of the kind electricPump.');
  }
  return batteryMass(of().pumpPower, stated.motorEfficiency.value, stated.burnTime.value, {
    specificEnergy: stated.batteryEnergy.value,
    specificPower: stated.batteryPower.value,
    used: 1,
  });
}

export const cycleFigures = {
  massFlow: engineFlow,
  mixtureRatio,
  dumpShare: ({ cycle }) => dumpShareOf(cycle()),
  dumpFlow: balance(({ dumped }) => dumped.oxidiser + dumped.fuel),
  dumpImpulse: ({ cycle }) =>
    cycle().exhaust() === null ? noFigure(...NOTHING_DUMPED) : dumpImpulseOf(cycle(), 0),
  dumpTemperature: ({ cycle }) => cycle().exhaust()?.temperature ?? noFigure(...NOTHING_DUMPED),
  impulseLost: (solution) => lostIn(solution, solution.cycle().balance()),
  lostPerHundredBar,
  pumpPower: ({ cycle }) =>
    cycle().stated.kind === 'pressureFed'
      ? noFigure('There are no pumps.', 'Ask a cycle with pumps.')
      : cycle().balance().pumpPower,
  oxidiserPressure: balance(({ oxidiserPressure }) => oxidiserPressure),
  fuelPressure: balance(({ fuelPressure }) => fuelPressure),
  turbineFlow: balance(({ turbineFlow, work }) => (work === null ? null : turbineFlow)),
  turbineWork: balance(({ work }) => work),
  turbinePressureRatio: balance(({ pressureRatio }) => pressureRatio),
  turbineInletTemperature: ({ cycle }) => cycle().gas()?.temperature ?? noFigure(...NO_TURBINE),
  gasMixtureRatio: ({ cycle }) => {
    const gas = cycle().gas();
    if (gas === null) return noFigure(...NO_TURBINE);
    return gas.mixtureRatio ?? noFigure('The turbine’s gas is fuel alone.', 'Ask a cycle that burns it.');
  },
  gasMolarMass: ({ cycle }) => cycle().gas()?.molarMass ?? noFigure(...NO_TURBINE),
  gasHeatCapacity: ({ cycle }) => cycle().gas()?.heatCapacity ?? noFigure(...NO_TURBINE),
  reachablePressure: ({ cycle }) => cycle().reach().pressure,
  pressureMargin: ({ cycle }) => cycle().reach().pressure / cycle().pumped.chamberPressure,
  tankPressure,
  tankMass: (solution) => {
    const { low, high } = tankMassBand(solution);
    return 0.5 * (low + high);
  },
  pressurantMass: (solution) => helium(solution).mass,
  bottleMass: (solution) => {
    const { low, high } = helium(solution).bottle;
    return 0.5 * (low + high);
  },
  batteryMass: battery,
} as const satisfies Readonly<Record<string, Figure>>;

export type CycleFigure = keyof typeof cycleFigures;

/** Thrust [N] and specific impulse [s] of the whole engine at a place, the dump counted. @throws ProblemError */
export function engineFiguresAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): { readonly thrust: number; readonly specificImpulse: number; readonly dumpThrust: number } {
  const cycle = solution.cycle();
  const { figures, absent } = figuresAt(solution, ambientPressure, altitude);
  if (figures.thrust === null) {
    throw new ProblemError({
      code: 'no-value',
      what: absent ?? 'The chamber has no thrust here.',
      mend: 'Ask at a lower ambient pressure.',
    });
  }
  const dumpThrust = dumpThrustAt(cycle, ambientPressure);
  const thrust = figures.thrust + dumpThrust;
  return { thrust, dumpThrust, specificImpulse: thrust / (engineFlow(solution) * STANDARD_GRAVITY) };
}
