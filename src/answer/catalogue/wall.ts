import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';

const meanState = {
  source: SOURCE.sutton,
  model: 'gas-expansion',
  limits: 'Mean over the cross-section; at the wall itself a boundary layer slows and heats the gas.',
  place: 'wall',
} as const;

const atWall = {
  source: SOURCE.bell,
  model: 'flow-characteristics',
  limits:
    'Edge of the boundary layer, which slows and heats the gas at the wall itself. Ahead of the throat an approximation; the mean where there is no field.',
  place: 'wall',
} as const;

/** Along the wall, injector face to lip. */
export const wallQuantities: readonly CatalogueEntry[] = [
  ...(['wall', 'contour.wall'] as const).flatMap((prefix): readonly CatalogueEntry[] => [
    {
      ...meanState,
      name: `${prefix}.axial`,
      label: 'distance from the throat',
      dimension: 'length',
      unit: UNIT.millimetre,
      digits: 4,
      meaning: 'Along the axis from the throat plane; negative upstream.',
      equation: 'x',
      source: SOURCE.bell,
      model: 'nozzle-contour',
    },
    {
      ...meanState,
      name: `${prefix}.radius`,
      label: 'radius of the wall',
      dimension: 'length',
      unit: UNIT.millimetre,
      digits: 4,
      meaning: 'Distance of the wall from the axis.',
      equation: 'r(x)',
      source: SOURCE.bell,
      model: 'nozzle-contour',
    },
  ]),
  {
    ...meanState,
    name: 'contour.wall.angle',
    label: 'angle of the wall',
    dimension: 'angle',
    unit: UNIT.degree,
    digits: 3,
    meaning: 'Angle between the wall and the axis; positive where the nozzle widens.',
    equation: 'θ = arctan(dr/dx)',
    source: SOURCE.bell,
    model: 'nozzle-contour',
  },
  {
    ...atWall,
    name: 'wall.pressure',
    label: 'pressure on the wall',
    dimension: 'pressure',
    unit: UNIT.bar,
    digits: 4,
    meaning: 'What the wall itself feels at this place, flowing full.',
    equation: 'flow field by characteristics behind the throat; p_cap − ρu²κr/4 ahead of it',
  },
  {
    ...atWall,
    name: 'wall.mach',
    label: 'Mach number at the wall',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Speed of the gas at the wall over its own speed of sound.',
    equation: 'M = u / a',
  },
  {
    ...atWall,
    name: 'wall.temperature',
    label: 'temperature at the wall',
    dimension: 'temperature',
    unit: UNIT.kelvin,
    digits: 4,
    meaning: 'Temperature of the gas just outside the boundary layer, flowing full.',
    equation: 'T on the isentrope where p = p_w',
  },
  {
    ...atWall,
    name: 'wall.velocity',
    label: 'speed at the wall',
    dimension: 'velocity',
    unit: UNIT.metrePerSecond,
    digits: 4,
    meaning: 'Speed of the gas just outside the boundary layer, flowing full.',
    equation: 'u = √(2 (h₀ − h))',
  },
  {
    ...meanState,
    name: 'wall.meanPressure',
    label: 'mean pressure along the nozzle',
    dimension: 'pressure',
    unit: UNIT.bar,
    digits: 4,
    meaning: 'Mean pressure of the gas over the cross-section at this place, flowing full.',
    equation: 'p on the isentrope where A/A_t = (r/r_t)²; on a plug, the wall’s own',
  },
];
