/** Nozzles that adapt, or switch. */
import { cantera } from '../cantera.ts';
import { areaRatio, machAtArea, machAtPressure, prandtlMeyer, pressureShare } from '../perfectGas.ts';
import { between, type Question } from '../question.ts';

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
        0,
        // Base of a plug cut to 20 %: up to three tenths of the exit area.
        (100 * 0.3 * 40 * hydrogen.pressureShare(10)) /
          ((hydrogen.impulseVacuum(40) * 9.80665) / hydrogen.characteristicVelocity),
      ),
      how: 'More than nothing, and no more than the pressure on the wall ahead of the cut can give: bounded by that of an ideal expansion to area ratio 10 (Cantera) on three tenths of the exit area.',
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
  figure: { kind: 'cut view', altitude: 30_000 },
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

const kerosene = cantera('LOX', 'RP-1', 2.4, 80);
const GAMMAS = [1.15, 1.25];

/** Exit of the bell by its area ratio, jet by its pressure, both of a perfect gas. */
const jets = GAMMAS.map((gamma) => {
  // At the lip the wall has between 1 and 1.3 times the mean pressure of the exit.
  const exit = [1, 1.3].map((over) =>
    machAtPressure(over * pressureShare(machAtArea(15, gamma), gamma), gamma),
  );
  const at10km = machAtPressure(26_500 / 80e5, gamma);
  const at30km = machAtPressure(1197 / 80e5, gamma);
  const exitDiameter = Math.sqrt(15) * 0.22;
  const jet = exitDiameter * Math.sqrt(areaRatio(at10km, gamma) / 15);
  return {
    cell: 1.3063 * jet * Math.sqrt(at10km ** 2 - 1),
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
      digits: 2,
      band: between(
        (94 * kerosene.pressureShare(15) * 80e5) / 101_325,
        (106 * kerosene.pressureShare(15) * 80e5) / 101_325,
      ),
      how: 'The ideal expansion by Cantera; 6 % for the shape of the bell.',
    },
  ],
  answer:
    'The gas leaves with another pressure than the air’s, here {1} of it at the pad. The jet is squeezed, overshoots and widens again, over and over; where it is squeezed it glows. It does so whether the pressure is below the air’s or above.',
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
      digits: 2,
      band: between(jets[0]!.cell, jets[1]!.cell),
      how: 'L = 1.306 D_j √(M_j² − 1) (L. Prandtl 1904; D. C. Pack 1950), the jet of a perfect gas with γ between 1.15 and 1.25.',
    },
  ],
  answer:
    'How far the pressure in the chamber stands above the air’s. At 10 km the first cell of this jet is {1} long; it grows with height and shrinks with the throttle. It tells nothing of efficiency.',
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
  ],
  answer:
    'The gas leaves with more pressure than the thin air has and turns outwards at the lip: by {1} at 30 km. The engine itself works as before.',
  conditions: 'Oxygen and kerosene at 80 bar, bell of area ratio 15.',
  trap: '“The engine has changed.”',
  figure: { kind: 'cut view', altitude: 30_000 },
};
