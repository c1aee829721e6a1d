/** Flow, pressure, mixture, molecules. */
import { burnt } from '../burnt.ts';
import { cantera } from '../cantera.ts';
import { machAtArea, speedAt } from '../perfectGas.ts';
import { about, between, type Question } from '../question.ts';

const ethanol = cantera('LOX', 'ethanol', 1.4, 30);
const throat = (Math.PI / 4) * 0.08 ** 2;
const choked = (30e5 * throat) / (0.95 * ethanol.characteristicVelocity);

export const choking: Question = {
  slug: 'choking',
  asked: 'What does it mean that a nozzle is choked?',
  starter: 'choking',
  numbers: [
    {
      label: 'Flow through the throat, the same from 10 bar outside down to vacuum',
      expression: 'engine.massFlow',
      unit: 'kg/s',
      perSI: 1,
      digits: 3,
      band: between(0.975 * choked, choked),
      how: 'ṁ = p₀ A_t/c*, c* by Cantera times the stated 95 %; the curved throat of a nozzle lets 0 to 2.5 % less through.',
    },
    {
      label: 'Flow with a tenth more pressure in the chamber, as a share',
      expression: 'engine.massFlow(throttle = 110 %) / engine.massFlow',
      unit: '%',
      perSI: 100,
      digits: 4,
      band: between(109.5, 110.1),
      how: 'In proportion to the pressure; c* grows by up to half a per cent, as fewer molecules break up.',
    },
  ],
  answer:
    'The gas runs through the throat as fast as sound, so no news of the air outside comes upstream: {1}, whatever the air does. More pressure in the chamber still means more flow: a tenth more gives {2}.',
  conditions: 'Oxygen and ethanol at 30 bar, throat of 80 mm.',
  trap: '“More pressure gives no more flow.”',
  figure: { kind: 'sweep', id: 'chamber-pressure' },
};

const at80 = burnt('LCH4', 3.4, 80);
const at160 = burnt('LCH4', 3.4, 160);

/** Pad thrust at 160 bar over that at 80 bar with half the throat, for a share of the ideal vacuum thrust that is left. */
const padGain = (left: number): number =>
  (left * at160.coefficient(20) - (101_325 * 20) / 160e5) /
  (left * at80.coefficient(20) - (101_325 * 20) / 80e5);

export const largerThroat: Question = {
  slug: 'larger-throat',
  asked: 'For more thrust, a larger or a smaller throat?',
  starter: 'larger-or-smaller-throat',
  numbers: [
    {
      label: 'Thrust with twice the throat area at the same pressure, as a multiple',
      expression: 'engine.thrust(vacuum, size.throat = 282.84 mm) / engine.thrust(vacuum)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: between(1.999, 2.005),
      how: 'F = C_F p₀ A_t; a larger wall rubs a little less, by a quarter of a per cent at most (losses of the layer go as D^−0.2).',
    },
    {
      label: 'Thrust with half the throat area at the same flow, as a multiple in vacuum',
      expression: 'narrow.thrust(vacuum) / engine.thrust(vacuum)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: about(at160.coefficient(20) / at80.coefficient(20), 0.002),
      how: 'F/(p₀ A_t) at 160 and at 80 bar by Cantera; p₀ A_t is the same for both.',
    },
    {
      label: 'The same at the pad',
      expression: 'narrow.thrust(pad) / engine.thrust(pad)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: between(padGain(1) - 0.001, padGain(0.96) + 0.001),
      how: 'C_F − p_a ε/p₀ at both pressures, C_F by Cantera, with 0 to 4 % of the vacuum thrust lost alike in both (common practice, no source).',
    },
  ],
  answer:
    'It hangs on what is held. At the same chamber pressure twice the throat gives {1} times the thrust. With the same flow, half the throat doubles the pressure and changes next to nothing in vacuum: {2} times. At the pad it gains, since the air presses on half the exit: {3} times.',
  conditions: 'Oxygen and methane, 80 bar behind 200 mm; area ratio 20.',
  trap: 'Not saying what is held.',
  figure: { kind: 'sweep', id: 'throat' },
};

const low = burnt('LCH4', 3.4, 50);
const high = burnt('LCH4', 3.4, 200);
const impulseGain = (left: number): number =>
  (left * high.impulse(22) - high.airOn(22)) / (left * low.impulse(8) - low.airOn(8));

export const highPressure: Question = {
  slug: 'high-pressure',
  asked: 'Why run an engine at high pressure?',
  starter: 'high-chamber-pressure',
  numbers: [
    {
      label: 'Specific impulse at the pad at 200 bar, as a multiple of that at 50 bar',
      expression: 'high.specificImpulse(pad) / low.specificImpulse(pad)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: between(impulseGain(1) - 0.002, impulseGain(0.96) + 0.002),
      how: 'I_vac − p_a ε c*/(p₀ g₀) by Cantera at both pressures and area ratios, 0 to 4 % of I_vac lost; 0.2 % for losses that differ (common practice, no source).',
    },
    {
      label: 'In vacuum behind the same nozzle',
      expression: 'low.specificImpulse(vacuum, chamber.pressure = 200 bar) / low.specificImpulse(vacuum)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: about(high.impulse(8) / low.impulse(8), 0.002),
      how: 'Ideal vacuum impulses by Cantera at area ratio 8.',
    },
  ],
  answer:
    'Because a higher pressure can be expanded further against the air: {1} times the specific impulse at the pad, with a smaller engine. Behind the same nozzle in vacuum it gives {2} times only.',
  conditions: 'Oxygen and methane, 50 bar with area ratio 8, 200 bar with 22, the same thrust at the pad.',
  trap: '“Pressure makes the gas faster”, full stop.',
  figure: { kind: 'sweep', id: 'chamber-pressure' },
};

/** Place of the top of a parabola through three points. */
function topOf(points: readonly (readonly [number, number])[]): number {
  const [[a, fa], [b, fb], [c, fc]] = points as [[number, number], [number, number], [number, number]];
  return (
    b -
    0.5 *
      (((b - a) ** 2 * (fb - fc) - (b - c) ** 2 * (fb - fa)) / ((b - a) * (fb - fc) - (b - c) * (fb - fa)))
  );
}
const hydrogenAt = (ratio: number): number => burnt('LH2', ratio, 70).impulse(60);

export const exactMixture: Question = {
  slug: 'exact-mixture',
  asked: 'Why not burn at the exact chemical mixture?',
  starter: 'mixture-ratio',
  numbers: [
    {
      label: 'Mixture of the highest specific impulse in vacuum',
      expression: 'placeOfHighest(engine.specificImpulse(vacuum, propellants.ratio = r) for r from 2 to 9)',
      unit: '',
      perSI: 1,
      digits: 3,
      band: about(topOf([4.75, 5, 5.25].map((ratio) => [ratio, hydrogenAt(ratio)] as const)), 0.008),
      how: 'The top of the parabola through ideal impulses by Cantera at 4.75, 5 and 5.25; 0.8 % since the top is flat.',
    },
    {
      label: 'Specific impulse at 8, as a share of that at 5',
      expression:
        'engine.specificImpulse(vacuum, propellants.ratio = 8) / engine.specificImpulse(vacuum, propellants.ratio = 5)',
      unit: '%',
      perSI: 100,
      digits: 3,
      band: about((100 * hydrogenAt(8)) / hydrogenAt(5), 0.001),
      how: 'Ideal vacuum impulses by Cantera.',
    },
  ],
  answer:
    'Hydrogen left over makes the gas lighter, and light gas leaves faster: the best mixture is {1}, far on the rich side of 8, where all burns to water. There only {2} of the specific impulse at 5 would be left. Flown mixtures lie higher than the best one, for the sake of smaller tanks.',
  conditions: 'Oxygen and hydrogen at 70 bar, area ratio 60, without losses.',
  trap: '“Rich is wasteful.”',
  figure: { kind: 'sweep', id: 'mixture' },
};

/** At the normal boiling points (CRC Handbook of Chemistry and Physics); kerosene between the limits of MIL-DTL-25576 [kg/m³]. From memory. */
const DENSITY = { oxygen: 1141, hydrogen: 70.8, kerosene: [799, 815] } as const;
const bulk = (ratio: number, fuel: number): number => (1 + ratio) / (ratio / DENSITY.oxygen + 1 / fuel);
const hydrogen = burnt('LH2', 6, 100);
const kerosene = burnt('RP-1', 2.6, 100);
/** Of the vacuum impulses; slow chemistry costs kerosene up to 2 % more. */
const impulses = hydrogen.impulse(20) / kerosene.impulse(20);
const denser = (fuel: number): number => bulk(2.6, fuel) / bulk(6, DENSITY.hydrogen);
/** Speed gained from 500 m³ on 120 t, kerosene over hydrogen, at the pressure of 10 km. */
const sameTank = (fuel: number, left: number): number =>
  ((left * kerosene.impulse(20) - kerosene.airOn(20, 26_500)) *
    Math.log(1 + (bulk(2.6, fuel) * 500) / 120e3)) /
  ((hydrogen.impulse(20) - hydrogen.airOn(20, 26_500)) *
    Math.log(1 + (bulk(6, DENSITY.hydrogen) * 500) / 120e3));

export const whyKerosene: Question = {
  slug: 'why-kerosene',
  asked: 'If hydrogen has the best specific impulse, why do first stages burn kerosene?',
  starter: 'three-fuels',
  numbers: [
    {
      label: 'Specific impulse of hydrogen in vacuum, as a multiple of kerosene’s',
      expression: 'hydrogen.specificImpulse(vacuum) / kerosene.specificImpulse(vacuum)',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(0.998 * impulses, 1.02 * impulses),
      how: 'Ideal vacuum impulses by Cantera; slow chemistry costs kerosene up to 2 % more (G. P. Sutton and O. Biblarz 2001, from memory).',
    },
    {
      label: 'Density of kerosene and oxygen together, as a multiple of hydrogen’s',
      expression: 'kerosene.bulkDensity / hydrogen.bulkDensity',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(denser(DENSITY.kerosene[0]), denser(DENSITY.kerosene[1])),
      how: '(1 + r)/(r/ρ_oxygen + 1/ρ_fuel) with handbook densities at the normal boiling points and of kerosene from 799 to 815 kg/m³ (MIL-DTL-25576, from memory).',
    },
    {
      label: 'Speed gained in the same tanks by kerosene, as a multiple of hydrogen’s',
      expression:
        'kerosene.specificImpulse(10 km) * ln(1 + kerosene.bulkDensity * 500 m³ / (120 t)) / (hydrogen.specificImpulse(10 km) * ln(1 + hydrogen.bulkDensity * 500 m³ / (120 t)))',
      unit: '',
      perSI: 1,
      digits: 3,
      band: between(sameTank(DENSITY.kerosene[0], 0.98), sameTank(DENSITY.kerosene[1], 1.002)),
      how: 'Ratio of I ln(1 + ρV/m) with the same densities and the impulses of Cantera at 26.5 kPa (U.S. Standard Atmosphere, 1976), kerosene losing up to 2 % more than hydrogen.',
    },
  ],
  answer:
    'A kilogram of hydrogen and oxygen gives {1} times the push of one of kerosene and oxygen, but a litre of kerosene and oxygen weighs {2} times as much. A first stage is mostly tank: 500 m³ of tanks under 120 t gain {3} times the speed with kerosene.',
  conditions: 'Chamber at 100 bar, area ratio 20; mixtures 6 and 2.6.',
  trap: 'Comparing specific impulse alone.',
  figure: { kind: 'specific impulse over altitude' },
};

const helium = speedAt(machAtArea(20, 5 / 3), 5 / 3, 8.314462618 / 0.0040026, 1200);
const nitrogen = speedAt(machAtArea(20, 1.4), 1.4, 8.314462618 / 0.0280134, 300);

export const pressureAlone: Question = {
  slug: 'pressure-alone',
  asked: 'Could pressure alone do it, without burning?',
  starter: 'pressure-temperature-molar-mass',
  numbers: [
    {
      label: 'Speed of helium at 1 200 K at the exit',
      expression: 'light.exit.velocity',
      unit: 'm/s',
      perSI: 1,
      digits: 4,
      band: about(helium, 0.0003),
      how: 'A perfect gas of single atoms, γ = 5/3, M = 4.0026 g/mol, expanded to area ratio 20 (NACA Report 1135).',
    },
    {
      label: 'Speed of cold nitrogen at ten times the pressure, as a multiple',
      expression:
        'cold.exit.velocity(chamber.pressure = 100 bar) / cold.exit.velocity(chamber.pressure = 10 bar)',
      unit: '',
      perSI: 1,
      digits: 4,
      band: between(0.9999, 1.0001),
      how: 'Of an ideal gas 1 exactly: pressure is not in the equation of the speed.',
    },
    {
      label: 'Hot helium’s speed as a multiple of cold nitrogen’s',
      expression: 'light.exit.velocity / cold.exit.velocity',
      unit: '',
      perSI: 1,
      digits: 3,
      band: about(helium / nitrogen, 0.002),
      how: '√(T/M) times the closed form for γ = 5/3 and 7/5 behind the same area ratio (NACA Report 1135); 0.2 % since nitrogen still trembles a little at 300 K.',
    },
  ],
  answer:
    'Pressure makes thrust, not speed: ten times the pressure gives {2} times the speed. Speed comes from heat and from light molecules: helium at 1 200 K leaves at {1}, {3} times as fast as nitrogen at 300 K.',
  conditions: 'Ideal nozzle of area ratio 20, vacuum, no losses.',
  trap: 'Equating pressure with speed.',
  figure: { kind: 'sweep', id: 'temperature' },
};
