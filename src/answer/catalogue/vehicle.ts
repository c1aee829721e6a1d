import { type CatalogueEntry, type Dimension, type DisplayUnit, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

type Row = readonly [
  key: string,
  label: string,
  dimension: Dimension,
  unit: DisplayUnit,
  meaning: string,
  small?: DisplayUnit,
];

const entry = (name: string, [, label, dimension, unit, meaning, small]: Row, of = ''): CatalogueEntry => ({
  name: `vehicle.${name}`,
  label: `${label}${of}`,
  dimension,
  unit,
  ...(small && { unitForSmall: small }),
  digits: 4,
  meaning,
  equation: 'as stated',
  source: SOURCE.study,
  model: 'flight',
  limits: 'As good as the number the study states.',
  typicalError: TYPICAL_ERROR.stated,
  place: 'vehicle',
});

const stageRows: readonly Row[] = [
  ['count', 'number of engines', 'ratio', UNIT.one, 'Engines of the stage.'],
  [
    'stopped',
    'engines stopped from the start',
    'ratio',
    UNIT.one,
    'Engines that do not run; their mass stays on board.',
  ],
  ['propellant', 'propellant', 'mass', UNIT.tonne, 'Mass that may be burnt.', UNIT.kilogram],
  ['dry', 'dry mass', 'mass', UNIT.tonne, 'Mass without propellant, engines included.', UNIT.kilogram],
  ['lowestThrottle', 'lowest throttle', 'ratio', UNIT.percent, 'Least flow over full flow.'],
];
const upperRows: readonly Row[] = [
  ...stageRows,
  ['specificImpulse', 'specific impulse in vacuum', 'time', UNIT.second, 'As stated for this stage.'],
  ['thrust', 'thrust in vacuum', 'force', UNIT.kilonewton, 'Of all engines of the stage.', UNIT.newton],
  ['coast', 'coast before ignition', 'time', UNIT.second, 'Time without thrust before its engines start.'],
];
const stages = { first: stageRows, second: upperRows, third: upperRows };

const otherRows: readonly Row[] = [
  ['fairing.mass', 'mass of the fairing', 'mass', UNIT.kilogram, 'Dropped on the way.'],
  [
    'fairing.dropAltitude',
    'altitude at which the fairing is dropped',
    'length',
    UNIT.kilometre,
    'From there on it is not carried.',
  ],
  [
    'drag.area',
    'cross-section of the vehicle',
    'area',
    UNIT.squareMetre,
    'Area that drag coefficients are taken on.',
  ],
  ['drag.factor', 'factor on the drag', 'ratio', UNIT.one, 'Times the table of drag coefficients.'],
  [
    'limits.acceleration',
    'limit of acceleration',
    'acceleration',
    UNIT.metrePerSecondSquared,
    'Kept by throttling.',
  ],
  ['limits.dynamicPressure', 'limit of dynamic pressure', 'pressure', UNIT.kilopascal, 'Kept by throttling.'],
  ['launch.latitude', 'latitude of the pad', 'angle', UNIT.degree, 'How far from the equator it starts.'],
  ['launch.altitude', 'altitude of the pad', 'length', UNIT.metre, 'Above mean sea level.'],
  ['launch.inclination', 'inclination of the orbit', 'angle', UNIT.degree, 'Against the equator.'],
  [
    'steering.turnSpeed',
    'speed at which it leaves the vertical',
    'velocity',
    UNIT.metrePerSecond,
    'Straight up until then.',
  ],
  ['steering.bend', 'stated first bend', 'angle', UNIT.degree, 'From the vertical.'],
  ['orbit.altitude', 'altitude of the orbit', 'length', UNIT.kilometre, 'Where the last engine stops.'],
  ['orbit.apogee', 'highest point of the orbit', 'length', UNIT.kilometre, 'On the other side of the Earth.'],
  ['payload', 'stated payload', 'mass', UNIT.kilogram, 'What it carries.'],
  [
    'reliability.each',
    'chance that one engine works to the end',
    'ratio',
    UNIT.percent,
    'Of each engine of the first stage.',
  ],
  ['reliability.allowedOut', 'engines that may stop', 'ratio', UNIT.one, 'With the flight still a success.'],
  [
    'reliability.uncontained',
    'share of failures not contained',
    'ratio',
    UNIT.percent,
    'That take the stage with them.',
  ],
];

/** What a study states of a vehicle, by its path below the vehicle. */
export const vehicleQuantities: readonly CatalogueEntry[] = [
  ...Object.entries(stages).flatMap(([stage, rows]) =>
    rows.map((row) => entry(`${stage}.${row[0]}`, row, ` of the ${stage} stage`)),
  ),
  ...otherRows.map((row) => entry(row[0], row)),
];
