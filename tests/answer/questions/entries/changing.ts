/** Nozzles that adapt, or switch. */
import { burnt } from '../burnt.ts';
import { cantera } from '../cantera.ts';
import { areaRatio, machAtArea, machAtPressure, prandtlMeyer, pressureShare } from '../perfectGas.ts';
import { about, between, type Question } from '../question.ts';

const hydrogen = cantera('LOX', 'LH2', 6, 60);
const methane = cantera('LOX', 'LCH4', 3.4, 100);

const idealGain = hydrogen.impulseVacuum(60) - hydrogen.impulseVacuum(20);

export const plugOrBell: Question = {
  slug: 'plug-or-bell',
  asked: 'Are plug nozzles better than bells?',
  starter: 'bell-against-plug',
  numbers: [
    {
      label: 'Gained in vacuum by the plug behind the same throat',
      expression: 'plug.specificImpulse(vacuum) - bell.specificImpulse(vacuum)',
      unit: 's',
      perSI: 1,
      digits: 2,
      band: between(0.98 * idealGain - 0.03 * 0.98 * hydrogen.impulseVacuum(60), 0.98 * idealGain),
      how: 'The ideal gain from area ratio 20 to 60 by Cantera times the stated 98 % of burning; cutting the plug and its second wall cost up to 3 % (G. Hagemann and others, J. Propulsion and Power 14, 1998: several per cent against the ideal, from memory).',
    },
  ],
  answer:
    'In vacuum the plug gains {1}, since its area ratio is three times as large; a bell of that area ratio gains as much, but lets go of the gas at the pad. At the pad the two are close.',
  conditions: 'Oxygen and hydrogen at 60 bar, one throat, bell of area ratio 20, plug of 60 cut to 30 %.',
  trap: 'An ideal plug set against a real bell.',
  figure: { kind: 'specific impulse over altitude' },
};

/** Share of the vacuum thrust [%] of this pressure over p₀, on this share of an exit of area ratio 40. */
const pushOfBase = (area: number, pressure: number): number =>
  (100 * area * 40 * pressure) / ((hydrogen.impulseVacuum(40) * 9.80665) / hydrogen.characteristicVelocity);

export const cutSpike: Question = {
  slug: 'cut-spike',
  asked: 'Why can the spike of a plug nozzle be cut off?',
  starter: 'plug-cut-short',
  numbers: [
    {
      label: 'Share of the vacuum thrust that the base carries',
      expression: 'short.thrustParts.force(vacuum, surface base) / short.thrust(vacuum)',
      unit: '%',
      perSI: 100,
      digits: 2,
      band: between(
        pushOfBase(0.2, 0.25 * hydrogen.pressureShare(20)),
        pushOfBase(0.3, hydrogen.pressureShare(10)),
      ),
      how: 'Pressure on a fifth to three tenths of the exit area: a closed wake has at least a quarter of the pressure ahead of it (the least of the published relations at Mach 3, Fick and Schmucker 1995, from memory), of an ideal expansion to area ratio 20 by Cantera, and never more than all of it, at area ratio 10.',
    },
    {
      label: 'Specific impulse left after the cut from 80 % to 20 %',
      expression: 'short.specificImpulse(vacuum) / long.specificImpulse(vacuum)',
      unit: '%',
      perSI: 100,
      digits: 3,
      band: between(97, 100),
      how: 'The wall behind the cut carries little: plugs cut to a fifth keep 97 to 100 % (M. Onofri, F. Nasuti, AIAA 2002-0584; G. Hagemann and others 1998, from memory).',
    },
  ],
  answer:
    'The tip carries little, and behind the cut the gas that closes in presses on the base: {1} of the thrust in vacuum. From 80 to 20 % of the length {2} of the specific impulse are left. At the pad the base does not push: it may even pull.',
  conditions: 'Oxygen and hydrogen at 60 bar, plug of area ratio 40.',
  trap: '“The base gives free thrust at every height.”',
  figure: { kind: 'sweep', id: 'length-kept' },
};

/**
 * The gas turns at the kink until the extension's wall has its pressure; the flow leaves the kink when that is what the wall can
 * hold against the air. Extensions have some 0.25 to 0.5 of the pressure at the kink (area ratios 20 and 60).
 */
const atSixty = methane.pressureShare(60);
const atTwenty = methane.pressureShare(20);
const altitudeOf = (pressure: number): number => -8.0 * Math.log(pressure / 101_325);

export const dualBellKink: Question = {
  slug: 'dual-bell-kink',
  asked: 'What does the kink in a dual bell do, and when does it switch?',
  starter: 'dual-bell',
  numbers: [
    {
      label: 'Height at which it goes over',
      expression: 'dual.change.altitude',
      unit: 'km',
      perSI: 1e-3,
      digits: 2,
      band: between(
        Math.max(0, altitudeOf((100e5 * atTwenty * 0.6) / 0.25)),
        altitudeOf((100e5 * atSixty) / 0.4),
      ),
      how: 'Where 0.25 to 0.40 of the air’s pressure (Schmucker 1973; Summerfield and others 1954) is the pressure on the extension, which lies between that at its own area ratio and six tenths of that at the kink (ideal expansion by Cantera), in air that thins out e-fold every 8 km.',
    },
  ],
  answer:
    'At the pad the gas lets go at the kink, evenly all round, so it works like the short bell. When the air has become thin enough, here at {1}, it jumps to the lip and the nozzle works like the long one. Published criteria differ by kilometres.',
  conditions: 'Oxygen and methane at 100 bar, area ratios 20 and 60.',
  trap: 'Drawing a smooth best-of-both curve; before the jump it does worse than it could.',
  figure: { kind: 'specific impulse over altitude' },
};

const kerosene = burnt('RP-1', 2.4, 80);
const AT_10_KM = 26_499.9;
const AT_30_KM = 1197;

/** π over the first zero of the Bessel function J₀, 2.404826 (M. Abramowitz, I. A. Stegun, 1964, table 9.5). */
const PRANDTL_PACK = Math.PI / 2.404826;
/** First cell of a jet whose throat has 220 mm [m] */
const cellOf = ({ mach, areaRatio: e }: { readonly mach: number; readonly areaRatio: number }): number =>
  PRANDTL_PACK * 0.22 * Math.sqrt(e) * Math.sqrt(mach ** 2 - 1);
/** Cell at two thirds of full throttle over that at full, of a perfect gas at 10 km. */
const shorter = [1.1, 1.3].map((gamma) => {
  const [full, less] = [80e5, 0.67 * 80e5].map((chamber) => {
    const mach = machAtPressure(AT_10_KM / chamber, gamma);
    return cellOf({ mach, areaRatio: areaRatio(mach, gamma) });
  });
  return (100 * less!) / full!;
});
/** ∫ √(M² − 1) du/u along Cantera’s expansion from the pressure at 10 km to that at 30 km [°]. */
const furtherTurn = kerosene.case.places
  .filter(({ pressure }) => pressure <= AT_10_KM * 1.000001)
  .reduce((sum, there, i, all) => {
    const before = all[i - 1];
    if (before === undefined) return sum;
    const slope = (Math.sqrt(before.mach ** 2 - 1) + Math.sqrt(there.mach ** 2 - 1)) / 2;
    return sum + (slope * Math.log(there.velocity / before.velocity) * 180) / Math.PI;
  }, 0);

const GAMMAS = [1.15, 1.25];

/** Exit of the bell by its area ratio, edge of the jet by its pressure, both of a perfect gas. */
const jets = GAMMAS.map((gamma) => {
  // At the lip the wall has between 1 and 1.3 times the mean pressure of the exit.
  const exit = [1, 1.3].map((over) =>
    machAtPressure(over * pressureShare(machAtArea(15, gamma), gamma), gamma),
  );
  const at30km = machAtPressure(AT_30_KM / 80e5, gamma);
  return {
    turns: exit.map((mach) => ((prandtlMeyer(at30km, gamma) - prandtlMeyer(mach, gamma)) * 180) / Math.PI),
  };
});

export const diamonds: Question = {
  slug: 'diamonds',
  asked: 'What is the pattern of diamonds behind an engine?',
  starter: 'shock-diamonds',
  numbers: [
    {
      label: 'Pressure at the exit, as a share of the air’s at the pad',
      expression: 'booster.exit.pressure / air.pressure(0 km)',
      unit: '%',
      perSI: 100,
      digits: 3,
      band: about((100 * kerosene.pressure(15)) / 101_325, 0.005),
      how: 'The ideal expansion by Cantera to area ratio 15.',
    },
    {
      label: 'Length of the first cell at the pad',
      expression: 'booster.plume.cellLength(pad)',
      unit: 'm',
      perSI: 1,
      digits: 3,
      band: about(cellOf(kerosene.at(101_325)), 0.01),
      how: 'L = (π/2.4048) D_j √(M_j² − 1) (L. Prandtl 1904; D. C. Pack 1950), with M_j and D_j of Cantera’s expansion to 101 325 Pa; 1 % for the curved throat.',
    },
  ],
  answer:
    'The gas leaves with another pressure than the air’s, here {1} of it at the pad. The jet is squeezed, overshoots and widens again, over and over; where it is squeezed it glows. It does so whether the pressure is below the air’s or above. One such cell is {2} long at most.',
  conditions: 'Oxygen and kerosene at 80 bar, bell of area ratio 15, at the pad.',
  trap: '“Only over-expanded nozzles”, “only at the pad”.',
  figure: { kind: 'cut view', altitude: 0 },
};

export const cellSpacing: Question = {
  slug: 'cell-spacing',
  asked: 'What does the spacing of the diamonds tell?',
  starter: 'shock-diamonds',
  numbers: [
    {
      label: 'Length of the first cell at 10 km',
      expression: 'booster.plume.cellLength(10 km)',
      unit: 'm',
      perSI: 1,
      digits: 3,
      band: about(cellOf(kerosene.at(AT_10_KM)), 0.01),
      how: 'L = (π/2.4048) D_j √(M_j² − 1) (L. Prandtl 1904; D. C. Pack 1950), with M_j and D_j of Cantera’s expansion to 26.5 kPa; 1 % for the curved throat.',
    },
    {
      label: 'At 67 % of full throttle, as a share of that',
      expression: 'booster.plume.cellLength(10 km, throttle = 67 %) / booster.plume.cellLength(10 km)',
      unit: '%',
      perSI: 100,
      digits: 3,
      band: between(shorter[0]!, shorter[1]!),
      how: 'The same law in closed form for a perfect gas, γ from 1.1 to 1.3, its chamber at 80 and at 53.6 bar.',
    },
  ],
  answer:
    'How far the pressure in the chamber stands above the air’s. At 10 km the first cell of this jet is {1} long; it grows with height and shrinks with the throttle, to {2} at two thirds of full power. It tells nothing of efficiency.',
  conditions:
    'Oxygen and kerosene at 80 bar, bell of area ratio 15. Measured first cells are some 10 to 20 % shorter.',
  trap: 'Counting diamonds to read off how good an engine is.',
  figure: { kind: 'sweep', id: 'cell-length' },
};

export const balloon: Question = {
  slug: 'ballooning-plume',
  asked: 'Why does the jet balloon at altitude?',
  starter: 'shock-diamonds',
  numbers: [
    {
      label: 'Turn of the edge of the jet at 30 km',
      expression: 'booster.plume.boundaryTurn(30 km)',
      unit: '°',
      perSI: 180 / Math.PI,
      digits: 2,
      band: {
        least: Math.min(...jets.flatMap(({ turns }) => turns)),
        greatest: Math.max(...jets.flatMap(({ turns }) => turns)),
      },
      how: 'ν(M_jet) − ν(M_exit) by Prandtl and Meyer (NACA Report 1135), a perfect gas with γ between 1.15 and 1.25, the lip of the bell holding 1 to 1.3 times the mean pressure; 1 197 Pa at 30 km (U.S. Standard Atmosphere, 1976).',
    },
    {
      label: 'How much of it comes between 10 and 30 km',
      expression: 'booster.plume.boundaryTurn(30 km) - booster.plume.boundaryTurn(10 km)',
      unit: '°',
      perSI: 180 / Math.PI,
      digits: 3,
      band: about(furtherTurn, 0.005),
      how: '∫ √(M² − 1) du/u along Cantera’s expansion from 26.5 to 1.197 kPa (NACA Report 1135): what the lip holds drops out.',
    },
  ],
  answer:
    'The gas leaves with more pressure than the thin air has and turns outwards at the lip: by {1} at 30 km, {2} of it since 10 km. The engine itself works as before.',
  conditions: 'Oxygen and kerosene at 80 bar, bell of area ratio 15.',
  trap: '“The engine has changed.”',
  figure: { kind: 'cut view', altitude: 30_000 },
};
