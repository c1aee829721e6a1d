/** Gas that lets go of the wall. */
import { cantera } from '../cantera.ts';
import { between, type Question } from '../question.ts';

const PAD = 101_325;
/**
 * The wall holds the gas down to a share of the air's pressure: 0.4 (M. Summerfield, C. Foster, W. Swan, Jet Propulsion 24,
 * 1954), 0.25 at the highest Mach numbers (R. H. Schmucker 1973; both from memory).
 */
const LETS_GO = { highest: 0.4, lowest: 0.25 };
/**
 * Far down a bell the turning wall holds up to half as much more pressure than the mean of its cross-section (measured on bells:
 * J. Östlund, KTH Stockholm 2002, from memory).
 */
const WALL_OVER_MEAN = 1.5;

const methane80 = cantera('LOX', 'LCH4', 3.4, 80);
const methane50 = cantera('LOX', 'LCH4', 3.4, 50);
const methane35 = cantera('LOX', 'LCH4', 3.4, 35);

/** Area ratios between which an ideal flow falls to that pressure. */
const placesOf = (expansion: typeof methane80, chamber: number): readonly [number, number] => [
  expansion.areaRatioAt((LETS_GO.highest * PAD) / chamber),
  expansion.areaRatioAt((LETS_GO.lowest * PAD) / (WALL_OVER_MEAN * chamber)),
];

const [near, far] = placesOf(methane80, 80e5);
/** Thrust over p₀ A_t of the part that flows full; the air holds the rest of the wall in balance. */
const left = (areaRatio: number): number =>
  (methane80.impulseVacuum(areaRatio) * 9.80665) / methane80.characteristicVelocity -
  (PAD / 80e5) * areaRatio;
const whole = (methane80.impulseVacuum(120) * 9.80665) / methane80.characteristicVelocity;

export const bigBellAtThePad: Question = {
  slug: 'big-bell-at-the-pad',
  asked: 'What happens if a large nozzle for vacuum fires at the pad?',
  starter: 'vacuum-bell-at-the-pad',
  numbers: [
    {
      label: 'Area ratio at which the gas lets go of the wall',
      expression: 'upper.separation.place.areaRatio(pad)',
      unit: '',
      perSI: 1,
      digits: 2,
      band: between(near, far),
      how: 'Where an ideal expansion by Cantera falls to between 0.40 (Summerfield, Foster and Swan 1954) and 0.25 of the air’s pressure (Schmucker 1973 at high Mach numbers), the wall of the bell holding 1 to 1.5 times the mean pressure there.',
    },
    {
      label: 'Thrust that is left, as a share of that in vacuum',
      expression: 'upper.thrust(pad) / upper.thrust(vacuum)',
      unit: '%',
      perSI: 100,
      digits: 2,
      band: between(94 * (left(far) / whole), 103 * (left(near) / whole)),
      how: 'Thrust coefficient of the part ahead of that place less the air on its area, over the vacuum coefficient of the whole bell, both ideal by Cantera; 6 % down for the pressure behind that place, which stays a little below the air’s, 3 % up for losses that the part ahead does not have.',
    },
  ],
  answer:
    'The gas lets go of the wall at an area ratio of {1} of the 120; {2} of its vacuum thrust is left. How it lets go is not even: loads from the side can break the bell.',
  conditions:
    'Oxygen and methane at 80 bar, bell of area ratio 120. The criteria of separation differ by 15 to 20 %.',
  trap: '“It makes no thrust at all.”',
  figure: { kind: 'pressure along the wall', altitude: 0 },
};

export const landingBell: Question = {
  slug: 'landing-bell',
  asked: 'Why can a booster that lands not have a bigger bell?',
  starter: 'throttled-landing',
  numbers: [
    {
      label: 'Pressure of the gas at the exit at half throttle, as a share of the air’s',
      expression: 'bigger.exit.pressure(throttle = 50 %) / air.pressure(0 km)',
      unit: '%',
      perSI: 100,
      digits: 2,
      band: between(
        (94 * methane50.pressureShare(24) * 50e5) / PAD,
        (106 * methane50.pressureShare(24) * 50e5) / PAD,
      ),
      how: 'The ideal expansion by Cantera from 50 bar; 6 % for the shape of the bell.',
    },
  ],
  answer:
    'It lands throttled. At half throttle the gas of the bigger bell leaves with {1} of the air’s pressure; below some 25 to 40 % it lets go of the wall.',
  conditions: 'Oxygen and methane, 100 bar at full power, bell of area ratio 24, at the pad.',
  trap: 'Looking at full power only.',
  figure: { kind: 'pressure along the wall', altitude: 0 },
};

const [nearThrottled, farThrottled] = placesOf(methane35, 35e5);

export const ringsAtShutdown: Question = {
  slug: 'rings-at-shutdown',
  asked: 'What are the rings that run up inside the bell as an engine shuts down?',
  starter: 'throttled-landing',
  numbers: [
    {
      label: 'Area ratio at which the gas lets go at 35 % of the pressure',
      expression: 'bigger.separation.place.areaRatio(pad, throttle = 35 %)',
      unit: '',
      perSI: 1,
      digits: 2,
      band: between(nearThrottled, farThrottled),
      how: 'Where an ideal expansion by Cantera from 35 bar falls to between 0.40 and 0.25 of the air’s pressure (Summerfield, Foster and Swan 1954; Schmucker 1973), the wall holding 1 to 1.5 times the mean pressure there.',
    },
  ],
  answer:
    'The ring is where the gas lets go of the wall. As the pressure in the chamber falls, it walks up the bell: at 35 % it stands at an area ratio of {1}, at full power the bell of 24 is full.',
  conditions: 'Oxygen and methane, bell of area ratio 24, at the pad.',
  trap: '“Glowing cooling channels.”',
  figure: { kind: 'pressure along the wall', altitude: 0 },
};
