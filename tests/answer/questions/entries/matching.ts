/** Area ratio, pressure at the exit, and what height does to them. */
import { cantera } from '../cantera.ts';
import { about, between, type Question } from '../question.ts';

/** Pressures of the U.S. Standard Atmosphere, 1976 (NOAA-S/T 76-1562, table I, geometric heights) [Pa]. */
const AIR = { pad: 101_325, at10km: 26_500, at60km: 21.96 };

const methane100 = cantera('LOX', 'LCH4', 3.4, 100);
const methane60 = cantera('LOX', 'LCH4', 3.4, 60);
const kerosene = cantera('LOX', 'RP-1', 2.4, 100);
const hydrogen60 = cantera('LOX', 'LH2', 6, 60);

const bestAtPad = methane100.areaRatioAt(AIR.pad / 100e5);
/** Thrust over p₀ A_t at the pad, ideal. */
const coefficient = (areaRatio: number): number =>
  (methane100.impulseVacuum(areaRatio) * 9.80665) / methane100.characteristicVelocity -
  (AIR.pad / 100e5) * areaRatio;

export const matchedExit: Question = {
  slug: 'matched-exit',
  asked: 'Why is the best nozzle the one whose exit pressure equals the pressure outside?',
  starter: 'exit-pressure-match',
  numbers: [
    {
      label: 'Area ratio of the greatest thrust at the pad',
      expression: 'placeOfHighest(engine.thrust(pad, nozzle.areaRatio = e) for e from 10 to 18)',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(0.93 * bestAtPad, 1.005 * bestAtPad),
      how: 'Where an ideal expansion computed by Cantera reaches 101 325 Pa; friction on the wall, which grows with it, may make the best one up to 7 % smaller; half a per cent for placing a flat top.',
    },
    {
      label: 'Thrust with an area ratio of 20, as a share of that with 10',
      expression: 'engine.thrust(pad, nozzle.areaRatio = 20) / engine.thrust(pad, nozzle.areaRatio = 10)',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: between(99.4 * (coefficient(20) / coefficient(10)), 100 * (coefficient(20) / coefficient(10))),
      how: 'Thrust coefficients of the ideal expansion by Cantera; friction on the larger wall takes up to 0.6 % more.',
    },
  ],
  answer:
    'Each further ring of wall pushes forward as long as the gas on its inside presses harder than the air on its outside; past the match it pulls back. Here that is at an area ratio of {1}. The top is flat: twice the area ratio, from 10 to 20, leaves {2} of the thrust.',
  conditions: 'Oxygen and methane at 100 bar, ideal contour, at the pad.',
  trap: 'Arguing from the speed or from the pressure alone, and forgetting how flat the top is.',
  figure: { kind: 'sweep', id: 'area-ratio' },
};

export const wideningSpeedsUp: Question = {
  slug: 'widening-speeds-up',
  asked: 'A widening pipe slows water. Why does the bell speed the gas up?',
  starter: 'nozzle-speeds-up',
  numbers: [
    {
      label: 'How many times thinner the gas at the exit is than at the throat',
      expression: 'engine.areaRatio * engine.exit.velocity / engine.wall.velocity(throat)',
      unit: '',
      perSI: 1,
      digits: 2,
      band: about(1 / hydrogen60.densityShare(40), 0.12),
      how: 'Densities at throat and exit of an ideal expansion by Cantera; along the wall of a round throat the gas is up to a tenth faster than on average (transonic theory, I. M. Hall 1962, from memory).',
    },
    {
      label: 'Speed at the exit, before losses',
      expression: 'engine.exit.velocity',
      unit: 'm/s',
      perSI: 1,
      digits: 3,
      band: about(hydrogen60.speed(40), 0.002),
      how: 'The ideal expansion by Cantera: this is the speed before losses.',
    },
  ],
  answer:
    'Past the speed of sound a gas thins out faster than the pipe widens: here {1} times from throat to exit, while the area grows 40 times only. The same flow must then go faster: {2} at the exit.',
  conditions: 'Oxygen and hydrogen at 60 bar, bell of area ratio 40.',
  trap: 'The picture of the garden hose, carried past the throat.',
  figure: { kind: 'cut view', altitude: 30_000 },
};

const largeLess = methane60.impulseVacuum(300) - methane60.impulseVacuum(80);

export const perfectVacuumNozzle: Question = {
  slug: 'perfect-vacuum-nozzle',
  asked: 'How large would the perfect nozzle for vacuum be, and why stop before?',
  starter: 'perfect-vacuum-nozzle',
  numbers: [
    {
      label: 'Gained in vacuum by an area ratio of 300 instead of 80',
      expression: 'engine.specificImpulse(vacuum, nozzle.areaRatio = 300) - engine.specificImpulse(vacuum)',
      unit: 's',
      perSI: 1,
      digits: 2,
      band: between(0.975 * largeLess - 4, 0.975 * largeLess),
      how: 'The ideal gain by Cantera times the stated 97.5 % of burning; the wall of the larger bell may rub away up to 1 % of the whole more (0.5 to 1.5 % are common, G. P. Sutton and O. Biblarz 2001, from memory).',
    },
    {
      label: 'Its exit, as wide as so many of the smaller ones',
      expression: 'engine.exit.diameter(nozzle.areaRatio = 300) / engine.exit.diameter',
      unit: '',
      perSI: 1,
      digits: 3,
      band: about(
        Math.sqrt((300 / 80) * (methane60.impulseVacuum(80) / methane60.impulseVacuum(300))),
        0.006,
      ),
      how: 'Exit area over throat area, the throat sized for the same thrust: √(300/80) times the root of the ratio of ideal impulses.',
    },
  ],
  answer:
    'There is none: in vacuum each larger bell gives more, for ever less. From an area ratio of 80 to 300 this engine gains {1}, and its exit becomes {2} times as wide.',
  conditions: 'Oxygen and methane at 60 bar, thrust held at 100 kN in vacuum.',
  trap: 'Taking “vacuum-optimised” at its word.',
  figure: { kind: 'sweep', id: 'area-ratio' },
};

const boosterExit = 15 * (Math.PI / 4) * 0.22 ** 2;

export const strongerInVacuum: Question = {
  slug: 'stronger-in-vacuum',
  asked: 'Why does the same engine push harder in vacuum?',
  starter: 'thrust-grows-with-altitude',
  numbers: [
    {
      label: 'Thrust gained from the pad to vacuum',
      expression: 'engine.thrust(vacuum) - engine.thrust(pad)',
      unit: 'kN',
      perSI: 1e-3,
      digits: 3,
      band: about((AIR.pad * boosterExit) / 1000, 0.003),
      how: 'p_a A_e: 101 325 Pa on fifteen times the area of a throat of 220 mm.',
    },
  ],
  answer:
    'Nothing changes inside. The air presses on the exit from outside, and in vacuum it does not: {1}, the pressure of the air times the area of the exit.',
  conditions: 'Oxygen and kerosene at 80 bar, bell of area ratio 15 behind a throat of 220 mm, flowing full.',
  trap: '“The exhaust leaves faster in vacuum.”',
  figure: { kind: 'thrust over altitude' },
};

export const aboveTheDesignHeight: Question = {
  slug: 'above-the-design-height',
  asked: 'Does the thrust fall again above the height for which the nozzle is made?',
  starter: 'thrust-grows-with-altitude',
  numbers: [
    {
      label: 'Thrust gained from 10 km to 60 km',
      expression: 'engine.thrust(60 km) - engine.thrust(10 km)',
      unit: 'kN',
      perSI: 1e-3,
      digits: 3,
      band: about(((AIR.at10km - AIR.at60km) * boosterExit) / 1000, 0.003),
      how: 'The difference of the pressures at 10 km and 60 km (U.S. Standard Atmosphere, 1976, table I) on the area of the exit.',
    },
  ],
  answer:
    'No. It rises all the way: {1} more at 60 km than at 10 km. It is only less than it could be with a larger nozzle.',
  conditions: 'Oxygen and kerosene at 80 bar, bell of area ratio 15 behind a throat of 220 mm.',
  trap: 'Taking “less than it could be” for “less than before”.',
  figure: { kind: 'thrust over altitude' },
};

const twoNozzles = kerosene.impulseVacuum(120) - kerosene.impulseVacuum(16);

export const twoNozzlesOneEngine: Question = {
  slug: 'two-nozzles-one-engine',
  asked: 'Are engines for vacuum and for the pad different machines?',
  starter: 'sea-level-or-vacuum-nozzle',
  numbers: [
    {
      label: 'Gained in vacuum by the large nozzle',
      expression: 'space.specificImpulse(vacuum) - ground.specificImpulse(vacuum)',
      unit: 's',
      perSI: 1,
      digits: 2,
      band: between(0.97 * twoNozzles - 5, 0.97 * twoNozzles),
      how: 'The ideal gain from area ratio 16 to 120 by Cantera times the stated 97 % of burning; the wall of the larger bell, and chemistry that no longer keeps up, may take up to 5 s (0.5 to 2 % for kerosene, G. P. Sutton and O. Biblarz 2001, from memory).',
    },
    {
      label: 'Flow of the one, as a share of that of the other',
      expression: 'space.massFlow / ground.massFlow',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: about(100, 0.001),
      how: 'The throat alone sets the flow: ṁ = p₀ A_t/c*, and all three are the same.',
    },
  ],
  answer:
    'The same chamber and throat may carry either nozzle: the flow is {2} of the other’s. The large one gives {1} more in vacuum, and less at the pad.',
  conditions: 'Oxygen and kerosene at 100 bar, area ratios 16 and 120 behind one throat.',
  trap: '“One bar outside is tiny beside a hundred inside, so it cannot matter.”',
  figure: { kind: 'outlines' },
};
