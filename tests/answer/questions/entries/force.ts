/** Where the push acts, and what it does to a rocket. */
import { burnt } from '../burnt.ts';
import { cantera } from '../cantera.ts';
import { about, between, type Question } from '../question.ts';

const methane = burnt('LCH4', 3.4, 100);
/** What the bell carries if the whole is this share of the ideal thrust. */
const bellShare = (left: number): number =>
  100 * (1 - methane.throatCoefficient / (left * methane.coefficient(30)));
const idealThrust = (100e5 * (Math.PI / 4) * 0.2 ** 2 * methane.coefficient(30)) / 1000;

export const whereThePushActs: Question = {
  slug: 'where-the-push-acts',
  asked: 'On which metal does a rocket engine push?',
  starter: 'where-the-push-acts',
  numbers: [
    {
      label: 'Share of the vacuum thrust that the bell itself carries',
      expression: 'bell.thrustParts.force(vacuum, surface nozzle wall) / bell.thrustParts.sum(vacuum)',
      unit: '%',
      perSI: 100,
      digits: 3,
      band: between(bellShare(0.98), bellShare(1)),
      how: 'What the momentum of the gas grows by from throat to exit: 1 − C_throat/C_F of an ideal expansion by Cantera; a bell of 80 % length sends up to 2 % astray (G. V. R. Rao, ARS Journal 30, 1960, from memory).',
    },
  ],
  answer:
    'On all of it. The front of the chamber takes more than the whole thrust, the narrowing wall gives part of that back, and the bell adds {1}.',
  conditions: 'Oxygen and methane at 100 bar, bell of area ratio 30, in vacuum.',
  trap: '“All on the injector”, or “all on the nozzle”.',
  figure: { kind: 'pressure along the wall', altitude: 100_000 },
};

export const pushAgainst: Question = {
  slug: 'push-against-nothing',
  asked: 'What does a rocket push against in space?',
  starter: 'where-the-push-acts',
  numbers: [
    {
      label: 'Pressure on the metal, as a share of the momentum that leaves',
      expression: 'bell.thrustParts.sum(vacuum) / bell.thrustParts.boundary(vacuum)',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: about(100, 0.002),
      how: 'The theorem of momentum: both must be equal; 0.2 % for two ways of adding up.',
    },
    {
      label: 'Pressure added up over the metal',
      expression: 'bell.thrustParts.sum(vacuum)',
      unit: 'kN',
      perSI: 1e-3,
      digits: 3,
      band: between(0.98 * idealThrust, idealThrust),
      how: 'ṁ u + p A of the jet by Cantera at area ratio 30, no wall in it; a bell of 80 % length sends up to 2 % astray (G. V. R. Rao, ARS Journal 30, 1960, from memory).',
    },
  ],
  answer:
    'Against its own gas. Added up over the metal, the pressure inside gives {2}, {1} of the momentum that leaves with the jet: the same push, reckoned twice.',
  conditions: 'Oxygen and methane at 100 bar, bell of area ratio 30, in vacuum.',
  trap: 'A slogan in place of a force.',
  figure: { kind: 'thrust over altitude' },
};

const standExit = 25 * (Math.PI / 4) * 0.15 ** 2;

export const standReading: Question = {
  slug: 'stand-reading',
  asked: 'How does the reading of a test stand become a figure for vacuum?',
  starter: 'stand-to-vacuum',
  numbers: [
    {
      label: 'To be added to the reading',
      expression: 'engine.thrust(vacuum) - engine.thrust(pad)',
      unit: 'kN',
      perSI: 1e-3,
      digits: 3,
      band: about((101_325 * standExit) / 1000, 0.0005),
      how: 'p_a A_e: 101 325 Pa on twenty-five times the area of a throat of 150 mm.',
    },
  ],
  answer:
    'Add the pressure of the air at the stand times the area of the exit, {1} here, as long as the gas has not left the wall.',
  conditions: 'Bell of area ratio 25 behind a throat of 150 mm, flowing full, stand at sea level.',
  trap: 'Comparing the stand’s figure of one engine with the vacuum figure of another.',
  figure: { kind: 'thrust over altitude' },
};

/** Mass at the start over mass at the end when the speed is that of the exhaust: small throws, one by one, each balanced. */
function startOverEnd(throws: number): number {
  const thrown = 1 / throws;
  let [mass, speed] = [1, 0];
  while (speed < 1) {
    const left = mass * (1 - thrown);
    // mass · speed = left · after + (mass − left) · (after − 1), the exhaust leaving the rocket at 1.
    speed += (mass - left) / mass;
    mass = left;
  }
  return 1 / mass;
}
const asFast = startOverEnd(100_000);

const upper = cantera('LOX', 'LH2', 5.5, 60).impulseVacuum(80) * 0.98 * 9.80665;

export const outrun: Question = {
  slug: 'outrun-the-exhaust',
  asked: 'Can a rocket outrun its own exhaust?',
  starter: 'outrun-the-exhaust',
  numbers: [
    {
      label: 'Speed gained with nine tenths of the start being propellant',
      expression: '9.80665 m/s² * engine.specificImpulse(vacuum) * ln(1 / 0.1)',
      unit: 'km/s',
      perSI: 1e-3,
      digits: 3,
      band: between((0.965 * upper * Math.LN10) / 1000, (upper * Math.LN10) / 1000),
      how: 'K. E. Tsiolkovsky’s equation, v_e ln 10, with the ideal impulse by Cantera times the stated 98 % of burning; nozzles lose up to 3.5 % more.',
    },
    {
      label: 'Speed of the exhaust',
      expression: '9.80665 m/s² * engine.specificImpulse(vacuum)',
      unit: 'km/s',
      perSI: 1e-3,
      digits: 3,
      band: between((0.965 * upper) / 1000, upper / 1000),
      how: 'The same impulse times g₀.',
    },
    {
      label: 'Start over end when it flies as fast as its exhaust leaves',
      expression:
        'placeOfLowest((9.80665 m/s² * engine.specificImpulse(vacuum) * ln(m) / (engine.thrust(vacuum) / engine.massFlow) - 1) ^ 2 for m from 1.5 to 20)',
      unit: '',
      perSI: 1,
      digits: 3,
      band: about(asFast, 0.001),
      how: 'Momentum balanced throw by throw, a hundred-thousandth of the rest each, until the speed of the exhaust is reached: no logarithm in it.',
    },
  ],
  answer:
    'Yes. Each kilogram is thrown from a rocket that already moves. This engine throws at {2}; with nine tenths of the start being propellant it gains {1}, more than twice that. It is as fast as its exhaust once the start weighs {3} times the end.',
  conditions: 'Oxygen and hydrogen at 60 bar, area ratio 80, in vacuum, no gravity.',
  trap: 'Balancing the momentum as if all were thrown in one go.',
  figure: { kind: 'sweep', id: 'mixture' },
};
