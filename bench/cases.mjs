/**
 * What is timed. Species lists: every gas of the data made of these elements (`all`), or the short list that is
 * enough for rocket gases (`core`); helium and argon are not among the elements, condensed species left out on both sides.
 */
const pressures = [10e5, 60e5, 100e5, 200e5];

export const burnCases = [
  { name: 'H/O', oxidiser: 'LOX', fuel: 'LH2', ratios: [4, 5, 6, 7], pressures, list: 'all', species: 9 },
  {
    name: 'C/H/O',
    oxidiser: 'LOX',
    fuel: 'LCH4',
    ratios: [2.6, 3, 3.4, 3.8],
    pressures,
    list: 'core',
    species: 35,
  },
  {
    name: 'C/H/O',
    oxidiser: 'LOX',
    fuel: 'LCH4',
    ratios: [2.6, 3, 3.4, 3.8],
    pressures,
    list: 'all',
    species: 70,
  },
  {
    name: 'C/H/O/N',
    oxidiser: 'N2O4',
    fuel: 'MMH',
    ratios: [1.6, 1.9, 2.2, 2.5],
    pressures,
    list: 'core',
    species: 57,
  },
  {
    name: 'C/H/O/N',
    oxidiser: 'N2O4',
    fuel: 'MMH',
    ratios: [1.6, 1.9, 2.2, 2.5],
    pressures,
    list: 'all',
    species: 106,
  },
];

/** A burnt chamber and 100 stations down its isentrope, pressures in equal steps of ln p to a thousandth. */
export const expansionCases = [
  { name: 'H/O', oxidiser: 'LOX', fuel: 'LH2', ratios: [6], pressures: [100e5], list: 'all', species: 9 },
  {
    name: 'C/H/O',
    oxidiser: 'LOX',
    fuel: 'LCH4',
    ratios: [3.4],
    pressures: [100e5],
    list: 'all',
    species: 70,
  },
  {
    name: 'C/H/O/N',
    oxidiser: 'N2O4',
    fuel: 'MMH',
    ratios: [2.05],
    pressures: [70e5],
    list: 'all',
    species: 106,
  },
];

export const stationCount = 100;
export const lastPressureShare = 1e-3;
