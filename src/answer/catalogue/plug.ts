import { type CatalogueEntry, UNIT } from './entry.ts';
import { INNER_CONTOUR } from './innerContour.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const ANGELINO = 'G. Angelino, AIAA J. 2(10), 1964, 1834 (design condition; from memory)';
const BASE =
  'H. H. Korst, J. Appl. Mech. 23, 1956; B. Fick, R. Schmucker, AIAA 95-2694, 1995; a fit of unconfirmed author (all from memory)';
const SLIPSTREAM = 'E. L. Fleeman, Tactical Missile Design, AIAA, 2001 (from memory)';
const MODULES =
  'G. Hagemann, H. Immich, T. V. Nguyen, G. E. Dumnov, JPP 14(5), 1998 (from memory, low confidence)';
const ONSET =
  'E. E. Zukoski, AIAA J. 5, 1967 (from memory); T. J. Nussdorfer, NACA RM E51L26, 1954 (abstract read)';

const shape = { ...INNER_CONTOUR, model: 'nozzle-plug' } as const;

const lengths = [
  ['throatGap', 'width of the plug’s throat', 'Gap between cowl and plug at the throat.', 'g'],
  [
    'throatArc',
    'radius of curvature of the plug’s throat',
    'Of both walls ahead of it: three gaps, less where the contraction leaves no room.',
    'r_c',
  ],
  [
    'lipRadius',
    'radius of the plug’s lip',
    'Distance of the lip from the axis, or from the middle plane of a linear plug.',
    'r_lip',
  ],
  [
    'wholeLength',
    'length of the whole plug',
    'From where the lip’s fan first meets the plug to the point it would end in.',
    'L',
  ],
  [
    'keptLength',
    'length of the plug that is kept',
    'From where the lip’s fan first meets the plug to the cut.',
    'L_kept',
  ],
  [
    'baseRadius',
    'radius of the plug’s base',
    'Half the width of the flat end; 0 where the plug is whole.',
    'r_b',
  ],
  ['width', 'width of a linear plug', 'Across both rows.', 'b'],
] as const;

const areas = [
  ['baseArea', 'area of the plug’s base', 'Flat end of a cut plug.', 'A_b'],
  ['plugArea', 'wetted wall of the plug', 'From the throat to the cut.', '∫ 2π r ds'],
  ['cowlArea', 'wetted wall of the cowl', 'Inner side from the throat to the lip.', '∫ 2π r ds'],
] as const;

const wallOf = [
  ['axial', 'distance from the throat, plug side', 'length', UNIT.millimetre, 'x'],
  ['radius', 'radius of the plug’s side', 'length', UNIT.millimetre, 'r(x)'],
  ['angle', 'angle of the plug’s side', 'angle', UNIT.degree, 'θ'],
] as const;

const contour: readonly CatalogueEntry[] = [
  ...lengths.map(
    ([key, label, meaning, equation]): CatalogueEntry => ({
      ...shape,
      name: `contour.plug.${key}`,
      label,
      dimension: 'length',
      unit: UNIT.millimetre,
      digits: 4,
      meaning,
      equation,
    }),
  ),
  ...areas.map(
    ([key, label, meaning, equation]): CatalogueEntry => ({
      ...shape,
      name: `contour.plug.${key}`,
      label,
      dimension: 'area',
      unit: UNIT.squareMetre,
      unitForSmall: UNIT.squareCentimetre,
      digits: 3,
      meaning,
      equation,
    }),
  ),
  {
    ...shape,
    name: 'contour.plug.throatAngle',
    label: 'direction of the flow in the plug’s throat',
    dimension: 'angle',
    unit: UNIT.degree,
    digits: 3,
    meaning: 'Against the axis; negative where it points towards it.',
    equation: 'θ_t ≈ 2 ν_i − ν_e',
    source: ANGELINO,
  },
  ...wallOf.map(
    ([key, label, dimension, unit, equation]): CatalogueEntry => ({
      ...shape,
      name: `contour.plug.wall.${key}`,
      label,
      dimension,
      unit,
      digits: 4,
      meaning: 'Along the plug’s side, from the injector face to the cut.',
      equation,
      place: 'wall',
    }),
  ),
];

const design: readonly CatalogueEntry[] = [
  {
    ...shape,
    name: 'plug.innerMach',
    label: 'Mach number at the plug’s lip',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'What the gas has reached inside the cowl, before the fan at the lip.',
    equation: 'M_i, as stated; else ν_i = max(0, ν_e − 60°)',
    source: ANGELINO,
    limits: 'A purely external plug begins just past Mach 1, where characteristics can begin.',
  },
  {
    ...shape,
    name: 'plug.lipTurn',
    label: 'turn at the plug’s lip',
    dimension: 'angle',
    unit: UNIT.degree,
    digits: 3,
    meaning: 'By how much the fan at the lip turns the flow towards the axis’ direction.',
    equation: 'ν_e − ν_i',
    source: ANGELINO,
  },
  {
    ...shape,
    name: 'plug.designPressureRatio',
    label: 'design pressure ratio of the plug',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Chamber pressure over the air’s at which the jet leaves straight and matches the air.',
    equation: 'p₀ / p_e',
    source: ANGELINO,
  },
  {
    ...shape,
    name: 'plug.straightRayDeparture',
    typicalError: TYPICAL_ERROR.closure,
    label: 'approximate wall against the exact one',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning:
      'Largest distance between the plug’s wall and the one that the published approximation gives, over the lip radius.',
    equation: 'max |r − r_straight rays| / r_lip',
    source: ANGELINO,
  },
  {
    ...shape,
    name: 'plug.untouchedBelow',
    typicalError: TYPICAL_ERROR.plugWall,
    label: 'air pressure up to which the plug’s wall does not feel it',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'Below it the pressure on the plug no longer changes on the way up.',
    equation: 'p at the lip on the ray that ends at the cut',
    source: ANGELINO,
  },
  {
    ...shape,
    name: 'plug.wakeClosesAt',
    label: 'air pressure at which the wake closes',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 2,
    meaning: 'Below it the base no longer feels the air.',
    equation: 'p_a = p_b,closed',
    source: BASE,
    typicalError: TYPICAL_ERROR.basePressure,
    limits: 'As uncertain as the base pressure; hysteresis is left out.',
  },
  ...(
    [
      ['loss', 'thrust lost between modules'],
      ['low', 'thrust lost between modules, least'],
      ['high', 'thrust lost between modules, most'],
    ] as const
  ).map(
    ([key, label]): CatalogueEntry => ({
      ...shape,
      name: `plug.modules.${key}`,
      label,
      dimension: 'ratio',
      unit: UNIT.percent,
      digits: 2,
      meaning: 'Share of the vacuum thrust that gaps and round exits cost against a slot all round.',
      equation: 'a published band by the shape of the modules',
      source: MODULES,
      typicalError: 'The published band, from memory with low confidence.',
      limits: 'A band for well-spaced modules; the number of them does not enter.',
    }),
  ),
  {
    ...shape,
    name: 'plug.modules.gap',
    label: 'gaps between modules',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Share of the ring at the lip that the exits of the modules leave open.',
    equation: '1 − n d / (2π r_lip)',
  },
];

const base = {
  model: 'nozzle-plug',
  source: BASE,
  dimension: 'pressure',
  unit: UNIT.bar,
  unitForSmall: UNIT.pascal,
  digits: 2,
  meaning:
    'On the flat end of a cut plug: the air’s while the wake is open, what the plug’s flow leaves there once it has closed.',
  equation: 'max(p_a, p_b,closed), p_b,closed by three published models',
  typicalError: TYPICAL_ERROR.basePressure,
  limits:
    'The weakest link of plug models: tens of percent of the base’s push, 1 to 3 % of the thrust (from memory).',
  place: 'altitude',
} as const;

const felt = {
  model: 'nozzle-plug',
  source: SLIPSTREAM,
  dimension: 'pressure',
  unit: UNIT.bar,
  unitForSmall: UNIT.pascal,
  digits: 2,
  meaning: 'Pressure of the air round the lip and the open base behind a flying vehicle.',
  equation: 'between p_a (1 − ½ γ M² C) and p_a, C of bodies without a jet',
  typicalError: TYPICAL_ERROR.slipstream,
  limits: 'A band: a jet fills part of the wake that such bodies have.',
  place: 'altitude',
} as const;

const wall = {
  model: 'nozzle-plug',
  dimension: 'ratio',
  unit: UNIT.one,
  digits: 3,
  place: 'altitude',
} as const;

const places: readonly CatalogueEntry[] = [
  { ...base, name: 'plug.base.pressure', label: 'pressure on the plug’s base' },
  { ...base, name: 'plug.base.low', label: 'pressure on the plug’s base, least' },
  { ...base, name: 'plug.base.high', label: 'pressure on the plug’s base, most' },
  {
    ...wall,
    name: 'plug.leastWall',
    label: 'least pressure on the plug over the air’s',
    meaning:
      'Below 1 the gas has expanded past the air’s pressure somewhere on the plug; the lower, the nearer it is to letting go.',
    equation: 'min p_w / p_a',
    source: 'flow field by characteristics and streamtubes',
    typicalError: TYPICAL_ERROR.plugWall,
    limits: 'Without a boundary layer.',
  },
  {
    ...wall,
    name: 'plug.leastCowl',
    label: 'least pressure inside the cowl over the air’s',
    meaning: 'How near the gas is to letting go of the cowl before the lip.',
    equation: 'min p / p_a',
    source: 'flow field by characteristics',
    typicalError: TYPICAL_ERROR.plugWall,
    limits: 'Without a boundary layer; a shock that begins inside the cowl is not computed.',
  },
  {
    ...wall,
    name: 'plug.recompression.pressureRatio',
    label: 'strongest pressure rise on the plug',
    meaning: 'Pressure behind over ahead of the rise that is nearest to where flow begins to let go.',
    equation: 'p₂ / p₁',
    source: 'flow field by streamtubes',
    typicalError: TYPICAL_ERROR.plugWall,
    limits: 'Spread over a few percent of the plug’s length by the net.',
  },
  {
    ...wall,
    name: 'plug.recompression.mach',
    label: 'Mach number ahead of that rise',
    meaning: 'On the plug’s wall, just before the pressure rises.',
    equation: 'M₁',
    source: 'flow field by streamtubes',
    typicalError: TYPICAL_ERROR.plugWall,
    limits: 'Without a boundary layer.',
  },
  {
    ...wall,
    name: 'plug.recompression.shareOfOnset',
    label: 'that rise over the onset of separation',
    unit: UNIT.percent,
    digits: 2,
    meaning: 'Above 100 % a turbulent boundary layer may let go of the plug there.',
    equation: '(p₂/p₁ − 1) / (max(1 + M₁/2, 1.89) − 1)',
    source: ONSET,
    typicalError: TYPICAL_ERROR.criteria,
    limits: 'The onset was measured on other walls; published criteria differ by 15 to 20 %.',
  },
  {
    ...wall,
    name: 'plug.flight.mach',
    label: 'Mach number of the vehicle',
    meaning: 'On its way up, where the study says at what altitude it passes the speed of sound.',
    equation: 'M = √(z / z₁)',
    source: 'steady acceleration in air of one sound speed, no source needed',
    typicalError: 'A stand-in for a flight: as good as the altitude that the study states.',
    limits: 'A stand-in for a flight; the study can leave it out.',
  },
  { ...felt, name: 'plug.flight.pressure', label: 'air pressure felt by the plug in flight' },
  { ...felt, name: 'plug.flight.low', label: 'air pressure felt by the plug in flight, least' },
  { ...felt, name: 'plug.flight.high', label: 'air pressure felt by the plug in flight, most' },
];

/** Of plug nozzles. */
export const plugQuantities: readonly CatalogueEntry[] = [...contour, ...design, ...places];
