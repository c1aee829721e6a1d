/** Heat, cooling, pumps. */
import { cantera } from '../cantera.ts';
import { between, type Question } from '../question.ts';

export const chamberSurvives: Question = {
  slug: 'chamber-survives',
  asked: 'The gas is hotter than any metal melts at. Why does the chamber survive?',
  starter: 'why-the-chamber-survives',
  numbers: [
    {
      label: 'Heat through the wall where it is greatest',
      expression: 'engine.heat.peakFlux',
      unit: 'MW/m²',
      perSI: 1e-6,
      digits: 2,
      band: between(5, 50),
      how: 'Walls of engines take 10 to 100 MW/m² (M. Martinez-Sanchez, MIT lectures 16.512) at pressures up to 200 bar; by p^0.8 this chamber of 40 bar takes some 0.3 to 0.5 of that.',
    },
    {
      label: 'Temperature of the copper on the gas side of the throat',
      expression: 'engine.cooling.wallHot(throat)',
      unit: 'K',
      perSI: 1,
      digits: 2,
      band: between(400, 1000),
      how: 'Above the coolant’s, and below what copper alloys bear, some 800 to 1000 K (design practice, from memory).',
    },
  ],
  answer:
    'Because the heat is carried off behind the wall faster than it comes: {1} at the worst place, with the copper at {2}. The gas itself never meets the metal at its own temperature: a thin layer lies between.',
  conditions: 'Oxygen and methane at 40 bar, all the fuel through channels in copper.',
  trap: '“Special metals.”',
  figure: { kind: 'pressure along the wall', altitude: 0 },
};

export const bigEngines: Question = {
  slug: 'big-engines',
  asked: 'Are big engines harder to cool?',
  starter: 'big-engines-and-cooling',
  numbers: [
    {
      label: 'Heat for each kilogram of propellant with a throat four times as wide, as a multiple',
      expression: '(big.heat.total / big.massFlow) / (small.heat.total / small.massFlow)',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(4 ** -1.2, 1.05 * 4 ** -0.2),
      how: 'By Bartz h ~ D^−0.2 (D. R. Bartz, Jet Propulsion 27, 1957); the walls grow as D² where all is to scale, as D where the chamber keeps its length, and the flow as D²: 4^−1.2 to 4^−0.2, 5 % for radiation, which does not scale so.',
    },
    {
      label: 'Greatest heat through the wall at twice the pressure, as a multiple',
      expression: 'big.heat.peakFlux(chamber.pressure = 120 bar) / big.heat.peakFlux',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(0.95 * 2 ** 0.8, 1.06 * 2 ** 0.8),
      how: 'By Bartz h ~ p^0.8: 2^0.8 = 1.74; a gas at higher pressure is a little hotter.',
    },
  ],
  answer:
    'No: for each kilogram of propellant there is {1} times the heat. What makes a throat hard to cool is pressure: twice as much of it means {2} times the heat at the throat.',
  conditions:
    'Oxygen and methane at 60 bar, throats of 60 and 240 mm, the chambers of one characteristic length.',
  trap: 'Going by intuition, and forgetting the pressure.',
  figure: { kind: 'sweep', id: 'margin-over-throat' },
};

/** Work of the pumps for each kilogram of propellant [J/kg], and of the turbine for each kilogram of its gas. */
const pumpWork = (rise: number, efficiency: number): number =>
  ((3.4 / 4.4) * (rise / 1141) + (1 / 4.4) * (rise / 423)) / efficiency;
const turbineWork = (heatCapacity: number, gamma: number, efficiency: number): number =>
  efficiency * heatCapacity * 900 * (1 - 20 ** (-(gamma - 1) / gamma));

export const openCycle: Question = {
  slug: 'open-cycle',
  asked: 'How much does an open cycle waste?',
  starter: 'open-or-closed-cycle',
  numbers: [
    {
      label: 'Share of the propellant that goes through the turbine and overboard',
      expression: 'open.cycle.dumpShare',
      unit: '%',
      perSI: 100,
      digits: 2,
      band: between(
        (100 * pumpWork(120e5, 0.8)) / turbineWork(3600, 1.25, 0.75),
        (100 * pumpWork(180e5, 0.6)) / turbineWork(2200, 1.15, 0.5),
      ),
      how: 'Work of the pumps over work of the turbine by hand: rises of 1.2 to 1.8 chamber pressures, pumps of 60 to 80 %, gas of 900 K with 2.2 to 3.6 kJ/(kg K) and γ of 1.15 to 1.25, turbine of 50 to 75 %, pressure ratio 20 (A. J. Sobin, W. R. Bissell, NASA SP-8107, 1974, for what is usual, from memory).',
    },
    {
      label: 'Specific impulse that it costs in vacuum',
      expression: 'open.cycle.impulseLost',
      unit: 's',
      perSI: 1,
      digits: 2,
      band: between(1, 12),
      how: '1.5 to 4 s for each 100 atm (M. Martinez-Sanchez, MIT lectures 16.512) for gas that expands well; up to three times as much for one that hardly does.',
    },
  ],
  answer:
    'Here {1} of the propellant go overboard by way of the turbine. They still push a little, so that {2} of specific impulse are lost.',
  conditions: 'Oxygen and methane at 100 bar, gas generator of 900 K.',
  trap: 'Showing hydrogen against kerosene as an effect of the cycle.',
  figure: { kind: 'sweep', id: 'what-pressure-costs' },
};

const ideal =
  cantera('LOX', 'RP-1', 2.4, 80).impulseVacuum(40) - cantera('LOX', 'RP-1', 2.4, 20).impulseVacuum(15);

export const pumpsOrTanks: Question = {
  slug: 'pumps-or-tanks',
  asked: 'Pumps, or tanks under pressure?',
  starter: 'pumps-or-tanks',
  numbers: [
    {
      label: 'Mass of the tanks at twice the chamber pressure, as a multiple',
      expression: 'pressed.cycle.tankMass(chamber.pressure = 40 bar) / pressed.cycle.tankMass',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(1.9, 2.05),
      how: 'A tank weighs m = k p V ρ/σ: in proportion to its pressure, which goes with the chamber’s; a little less propellant is needed at the higher one.',
    },
    {
      label: 'Gained in vacuum by pumps, with four times the pressure',
      expression: 'pumped.cycle.specificImpulse(vacuum) - pressed.cycle.specificImpulse(vacuum)',
      unit: 's',
      perSI: 1,
      digits: 2,
      band: between(0.96 * ideal - 12, 0.96 * ideal),
      how: 'The ideal gain by Cantera times the stated 96 % of burning; the open cycle dumps up to 12 s of it.',
    },
  ],
  answer:
    'Tanks that press the propellant in must hold more than the chamber, and weigh in proportion: {1} times for twice the pressure. Pumps leave the tanks thin and allow more pressure: {2} more, what their turbine dumps taken off.',
  conditions: 'Oxygen and kerosene, 20 bar from the tanks against 80 bar with pumps.',
  trap: '“With pumps the tanks are without pressure.”',
  figure: { kind: 'outlines' },
};
