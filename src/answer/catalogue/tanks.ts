/** Tanks, pressing gas and battery: what an engine without a turbine needs beside it. */

import { type CycleRow, cycleEntry, ofCycle } from './cycleRow.ts';
import { type CatalogueEntry, UNIT } from './entry.ts';

const rows: readonly CycleRow[] = [
  [
    'tankPressure',
    'pressure in the tanks',
    'pressure',
    UNIT.bar,
    'As stated; without pumps and not stated, what the chamber needs.',
    'p_c (1 + drops)',
    { unitForSmall: UNIT.pascal },
  ],
  [
    'tankMass',
    'mass of the tanks’ walls',
    'mass',
    UNIT.kilogram,
    'Of both tanks for the stated burn, by strength alone: between spheres and long cylinders.',
    'm = (3/2 … 2) p V ρ/σ',
    {
      source: 'membrane stress; D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed. 1971, ch. 8',
      typicalError: 'The wall alone: real tanks weigh more, at low pressure several times as much.',
      limits:
        'No ends, fittings, insulation or least thickness. For comparison, not for building or pressurising anything.',
    },
  ],
  [
    'pressurantMass',
    'mass of the pressing gas',
    'mass',
    UNIT.kilogram,
    'Helium that drives the propellant out.',
    'm = p V M/(R T) · γ/(1 − p/p₀)',
    { source: 'G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 6 (from memory)' },
  ],
  [
    'bottleMass',
    'mass of the bottle of pressing gas',
    'mass',
    UNIT.kilogram,
    'Its wall, of the tanks’ material.',
    'm = (3/2 … 2) p₀ V₀ ρ/σ',
    { source: 'membrane stress' },
  ],
  [
    'batteryMass',
    'mass of the battery',
    'mass',
    UNIT.kilogram,
    'As much as holds the energy for the burn or gives the power, whichever is more.',
    'm = max(P t/(η e), P/(η p))',
    {
      source: 'energy balance, no source needed',
      typicalError: 'As good as the stated energy and power of a kilogram.',
    },
  ],
];

export const tankQuantities: readonly CatalogueEntry[] = rows.map((row) =>
  cycleEntry({ ...ofCycle, place: 'engine' }, row),
);
