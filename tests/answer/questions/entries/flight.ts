/** What a vehicle makes of its engines. */
import { cantera } from '../cantera.ts';
import { about, between, type Question } from '../question.ts';
import { type PlainStage, payloadFor, SPEEDS_NEEDED } from '../rocketEquation.ts';

const kerosene = cantera('LOX', 'RP-1', 2.5, 90);
const at = (areaRatio: number): { readonly pad: number; readonly vacuum: number } => ({
  vacuum: 0.97 * kerosene.impulseVacuum(areaRatio),
  pad:
    0.97 *
    (kerosene.impulseVacuum(areaRatio) -
      (101_325 / 90e5) * areaRatio * (kerosene.characteristicVelocity / 9.80665)),
});
const booster = at(16);
/** Of the first stage over its climb: nearer to vacuum than to the pad. */
const mean = 0.5 * (booster.vacuum + 0.5 * (booster.pad + booster.vacuum));

const first: PlainStage = { impulse: mean, propellant: 220_000, dry: 18_000 };
const FAIRING = 1300;

export const areaRatioOverTheAscent: Question = {
  slug: 'area-ratio-over-the-ascent',
  asked: 'How is the area ratio of a booster picked?',
  starter: 'area-ratio-over-the-ascent',
  numbers: [
    {
      label: 'Specific impulse of the booster, weighted by propellant over the ascent',
      expression: 'larch.meanSpecificImpulse',
      unit: 's',
      perSI: 1,
      digits: 3,
      band: between(0.96 * 0.5 * (booster.pad + booster.vacuum), booster.vacuum),
      how: 'More than the mean of pad and vacuum, less than vacuum: ideal impulses by Cantera times the stated 97 % of burning, slow chemistry taking up to 4 %.',
    },
    {
      label: 'Height below which half of its propellant is burnt',
      expression: 'larch.halfPropellantAltitude',
      unit: 'km',
      perSI: 1e-3,
      digits: 3,
      band: between(12, 22),
      how: 'A straight climb with the same thrust, h = v_e t [1 − ln R/(R − 1)] − g t²/2 with half the propellant burnt, is at 21 km; a way that bends over is lower, down to some 60 % of that.',
    },
  ],
  answer:
    'By what it carries. Half of the propellant is burnt below {2}, in thick air, so what counts is the specific impulse weighted by propellant: {1}. It favours a nozzle larger than the best one at the pad; how much larger is set by where the gas lets go of the wall.',
  conditions: 'Oxygen and kerosene at 90 bar, first of two stages, to 200 km.',
  trap: 'Weighting by height instead of by propellant.',
  figure: { kind: 'sweep', id: 'payload' },
};

const upper = (impulse: number, propellant: number, dry: number): PlainStage => ({
  impulse,
  propellant,
  dry,
});
const larch = (impulse: number, speed: number): number =>
  payloadFor(speed, [first, upper(impulse, 60_000, 4500)], FAIRING);
const [LEAST, MOST] = SPEEDS_NEEDED;
const space = at(120).vacuum;
const shareLeft = SPEEDS_NEEDED.map((speed) => (100 * larch(booster.vacuum, speed)) / larch(space, speed));

export const boosterEngineAbove: Question = {
  slug: 'booster-engine-above',
  asked: 'What if the upper stage flew with the booster’s engine?',
  starter: 'a-second-of-impulse',
  numbers: [
    {
      label: 'Payload left, as a share of that with the nozzle for vacuum',
      expression: 'mixed.payload / larch.payload',
      unit: '%',
      perSI: 100,
      digits: 2,
      band: between(shareLeft[0]! + 4, shareLeft[1]! - 6),
      how: 'Tsiolkovsky’s equation over both stages with ideal impulses by Cantera, for speeds of 8.7 to 9.5 km/s as real vehicles need (Humble, Henry and Larson 1995); 4 and 6 points for losses of the nozzles.',
    },
  ],
  answer:
    'It works in space as well as below; it only gets less out of each kilogram. Of the payload {1} are left.',
  conditions: 'Oxygen and kerosene at 90 bar, area ratios 16 and 120, two stages to 200 km.',
  trap: '“Engines for the pad do not work in space.”',
  figure: { kind: 'specific impulse over altitude' },
};

const perSecond = (speed: number): number => larch(341, speed) - larch(340, speed);

export const oneSecond: Question = {
  slug: 'one-second',
  asked: 'What is one second of specific impulse worth?',
  starter: 'a-second-of-impulse',
  numbers: [
    {
      label: 'Payload for one second more in the upper stage',
      expression: 'stated.payload(second.specificImpulse = 341 s) - stated.payload',
      unit: 'kg',
      perSI: 1,
      digits: 2,
      band: between(0.95 * perSecond(MOST), 1.05 * perSecond(LEAST)),
      how: 'The same difference by Tsiolkovsky’s equation alone, for speeds of 8.7 to 9.5 km/s as real vehicles need (Humble, Henry and Larson 1995); 5 % for losses that move along.',
    },
    {
      label: 'Payload for a hundred kilograms less on the upper stage',
      expression: 'stated.payload - stated.payload(second.dry = 4.6 t)',
      unit: 'kg',
      perSI: 1,
      digits: 3,
      band: about(100, 0.003),
      how: 'Kilogram for kilogram: both arrive in orbit together.',
    },
  ],
  answer:
    'In this upper stage {1} of payload. A hundred kilograms less of the stage itself are {2} of payload: both buy the same thing.',
  conditions: 'Two stages to 200 km, upper stage of 60 t of propellant at 340 s.',
  trap: 'Taking a per cent of specific impulse for a per cent of payload.',
  figure: { kind: 'specific impulse over altitude' },
};

/** Mass at lift-off without the payload [t]. */
const BIG = 220 + 17 + 38 + 4 + 1.3;
const payloads = SPEEDS_NEEDED.map(
  (speed) =>
    payloadFor(
      speed,
      [{ impulse: mean, propellant: 220_000, dry: 17_000 }, upper(345, 38_000, 4000)],
      FAIRING,
    ) / 1000,
);
const toWeight = (payload: number): number => 3500 / ((BIG + payload) * 9.80665);

export const slowRise: Question = {
  slug: 'slow-rise',
  asked: 'Why do big rockets rise so slowly?',
  starter: 'why-big-rockets-rise-slowly',
  numbers: [
    {
      label: 'Thrust at lift-off over weight',
      expression: 'five.liftoffThrustToWeight',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(toWeight(payloads[0]!), toWeight(payloads[1]!)),
      how: 'Five times 700 kN over the stated masses and a payload by Tsiolkovsky’s equation for 8.7 to 9.5 km/s.',
    },
    {
      label: 'Speed that gravity takes on the way',
      expression: 'five.gravityLoss',
      unit: 'm/s',
      perSI: 1,
      digits: 3,
      band: between(1150, 1750),
      how: 'Real vehicles to low orbits lose 1150 to 1580 m/s (Humble, Henry and Larson 1995, from memory); up to a tenth more for a lift-off as slow as this.',
    },
  ],
  answer:
    'Because they have hardly more thrust than weight: {1} times. Gravity takes {2} on the way. More engines would rise faster and lose less, and would weigh and cost.',
  conditions: 'Two stages of 280 t together, five engines of 700 kN.',
  trap: '“Thrust builds up slowly.”',
  figure: { kind: 'thrust over altitude' },
};

export const throttlingDown: Question = {
  slug: 'throttling-down',
  asked: 'Why do rockets throttle down a minute after lift-off?',
  starter: 'throttle-on-the-way-up',
  numbers: [
    {
      label: 'Greatest dynamic pressure, throttled',
      expression: 'kept.maxDynamicPressure',
      unit: 'kPa',
      perSI: 1e-3,
      digits: 3,
      band: between(24, 26),
      how: 'The stated limit of 26 kPa, which throttling keeps from below.',
    },
    {
      label: 'Mach number at the greatest dynamic pressure, at full thrust',
      expression: 'free.maxDynamicPressureMach',
      unit: '',
      perSI: 1,
      digits: 2,
      band: between(1.2, 2.2),
      how: 'ρ v² is greatest where the air thins out as fast as speed grows: 2 a = v² sin γ/H with H = 7 km and 8 to 20 m/s² along a way that still climbs steeply, 330 to 530 m/s, where sound has 295 to 300 m/s; up to a fifth more for a way that bends over.',
    },
  ],
  answer:
    'To spare the vehicle the push of the air, not for the sake of the speed of sound: at full thrust the air presses hardest at Mach {2}. Throttled, it stays at {1}.',
  conditions: 'Two stages, six engines, a limit of 26 kPa.',
  trap: '“It is the sound barrier.”',
  figure: { kind: 'thrust over altitude' },
};

const p = 0.995;
const spare = p ** 9 + 9 * p ** 8 * (1 - p) * 0.9;

export const moreEngines: Question = {
  slug: 'more-engines',
  asked: 'Do more engines make a rocket more or less reliable?',
  starter: 'more-engines',
  numbers: [
    {
      label: 'Chance that nine engines suffice, one being spare',
      expression: 'nine.chanceOfSuccess',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: about(100 * spare, 1e-4),
      how: 'p⁹ + 9 p⁸ (1 − p)(1 − u), p = 99.5 % and a tenth of the failures not contained.',
    },
    {
      label: 'If each of the nine is needed',
      expression: 'nine.chanceOfSuccess(reliability.allowedOut = 0)',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: about(100 * p ** 9, 1e-4),
      how: 'p⁹ with p = 99.5 %: each of them must work.',
    },
  ],
  answer:
    'It hangs on whether one may be lost. Nine engines that are all needed suffice with {2}; with one to spare with {1}, as good as a single engine of 99.5 %. What counts then is the share of failures that take others along.',
  conditions: 'Engines that fail by themselves, 99.5 % each, a tenth of the failures not contained.',
  trap: 'pⁿ and no more.',
  figure: { kind: 'thrust over altitude' },
};
