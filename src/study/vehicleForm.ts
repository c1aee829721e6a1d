/** The form of a vehicle: every key, its range and its default. */

import {
  altitudeRange,
  type ChoiceField,
  degrees,
  type Fields,
  positive,
  quantity,
  shareRange,
} from './form.ts';

const none = (words: string) => ({ from: 0, words });

const stage = {
  engine: { is: 'engine', meaning: 'Id of the engine of this study that pushes it.' },
  count: quantity(
    'number',
    { from: 1, upTo: 100, words: '1 to 100, a whole number' },
    '9',
    'Number of engines.',
    {
      byDefault: '1',
    },
  ),
  stopped: quantity(
    'number',
    { from: 0, upTo: 99, words: '0 to 99, a whole number' },
    '1',
    'Engines that have stopped by the start; their mass and their propellant stay on board.',
    { byDefault: '0' },
  ),
  propellant: quantity('mass', positive('more than 0 kg'), '240 t', 'Mass of propellant that may be burnt.'),
  dry: quantity(
    'mass',
    positive('more than 0 kg'),
    '18 t',
    'Mass without propellant, engines included; without them where `engineMass` is estimated.',
  ),
  engineMass: {
    is: 'choice',
    options: ['included', 'estimated'],
    byDefault: 'included',
    meaning:
      'Whether `dry` includes the engines, or each weighs what published relations estimate from its thrust, area ratio and fuel (`mass.engine`, with its band): then another engine below the vehicle brings its own mass. The engine needs a `cycle` with a turbine. The relations know no kind of nozzle: a plug’s extra walls are not in them.',
  },
  lowestThrottle: quantity(
    'share',
    shareRange,
    '40 %',
    'Least flow to which the engines can be throttled, as a share of full flow; 100 %: not at all.',
    { byDefault: '100 %' },
  ),
} as const satisfies Fields;

const upperStage = {
  ...stage,
  specificImpulse: quantity(
    'time',
    { above: 0, upTo: 2000, words: 'more than 0 s and up to 2000 s' },
    '355 s',
    'Instead of `engine`: specific impulse in vacuum.',
    { optional: true },
  ),
  thrust: quantity(
    'force',
    positive('more than 0 N'),
    '120 kN',
    'With `specificImpulse`: thrust in vacuum, all engines together.',
    {
      optional: true,
    },
  ),
  coast: quantity('time', none('0 s or more'), '5 s', 'Time without thrust before its engines start.', {
    byDefault: '0 s',
  }),
} as const satisfies Fields;

/** Sections of a vehicle. */
export const vehicleForms = {
  first: stage,
  second: upperStage,
  third: upperStage,
  fairing: {
    mass: quantity('mass', positive('more than 0 kg'), '1.2 t', 'Mass of the fairing.'),
    dropAltitude: quantity('length', altitudeRange, '110 km', 'Altitude at which it is dropped.', {
      byDefault: '110 km',
    }),
  },
  drag: {
    area: quantity('area', positive('more than 0 m²'), '10 m2', 'Largest cross-section of the vehicle.'),
    table: {
      is: 'choice',
      options: ['slender', 'none'],
      byDefault: 'slender',
      meaning:
        'Drag coefficient over the Mach number: that of a slender body without its base, to which the part of the base that no jet fills is added; or no drag at all.',
    },
    factor: quantity('number', { from: 0, upTo: 10, words: '0 to 10' }, '1.1', 'Times the table.', {
      byDefault: '1 ± 0.2',
    }),
  },
  limits: {
    acceleration: quantity(
      'acceleration',
      positive('more than 0 m/s²'),
      '40 m/s2',
      'Kept by throttling, as a scale on board reads it.',
      {
        optional: true,
      },
    ),
    dynamicPressure: quantity('pressure', positive('more than 0 Pa'), '32 kPa', 'Kept by throttling.', {
      optional: true,
    }),
  },
  launch: {
    latitude: quantity(
      'angle',
      { from: degrees(-90), upTo: degrees(90), words: '−90° to 90°' },
      '28 deg',
      'Latitude of the pad.',
      {
        byDefault: '0 deg',
      },
    ),
    altitude: quantity(
      'length',
      { from: -500, upTo: 30_000, words: '−0.5 km to 30 km' },
      '200 m',
      'Altitude of the pad.',
      {
        byDefault: '0 m',
      },
    ),
    inclination: quantity(
      'angle',
      { from: 0, upTo: degrees(180), words: '0° to 180°' },
      '51.6 deg',
      'Angle of the orbit’s plane against the equator. Absent: the latitude, a launch due east.',
      { optional: true },
    ),
  },
  steering: {
    turnSpeed: quantity(
      'speed',
      { above: 0, upTo: 2000, words: 'more than 0 m/s and up to 2000 m/s' },
      '60 m/s',
      'Speed at which it leaves the vertical.',
      {
        byDefault: '60 m/s',
      },
    ),
    bend: quantity(
      'angle',
      { from: 0, below: degrees(60), words: '0° or more and less than 60°' },
      '4 deg',
      'First bend away from the vertical. Absent: the one that carries most to the orbit; none where no orbit is asked for.',
      { optional: true },
    ),
  },
  orbit: {
    altitude: quantity(
      'length',
      { from: 100_000, upTo: 2_000_000, words: '100 km to 2000 km' },
      '200 km',
      'Altitude at which the last engine stops, in level flight.',
    ),
    apogee: quantity(
      'length',
      { from: 100_000, upTo: 1_000_000_000, words: '100 km to 1 000 000 km' },
      '600 km',
      'Highest point of the orbit. Absent: a circle.',
      {
        optional: true,
      },
    ),
  },
  reliability: {
    each: quantity(
      'share',
      { from: 0, upTo: 1, words: '0 % to 100 %' },
      '99.5 %',
      'Chance that one engine of the first stage works to the end.',
    ),
    allowedOut: quantity(
      'number',
      { from: 0, upTo: 100, words: '0 to 100, a whole number' },
      '1',
      'Engines of the first stage that may stop with the flight still a success.',
      {
        byDefault: '0',
      },
    ),
    uncontained: quantity(
      'share',
      { from: 0, upTo: 1, words: '0 % to 100 %' },
      '20 %',
      'Share of the failures that take the stage with them, whatever is allowed.',
      {
        byDefault: '0 %',
      },
    ),
  },
} as const satisfies Record<string, Fields>;

export type VehicleSection = keyof typeof vehicleForms;

export const vehicleMeaning: Readonly<Record<VehicleSection, string>> = {
  first: 'The first stage.',
  second:
    'The second stage, if there is one: pushed by an `engine`, or given by `specificImpulse` and `thrust`.',
  third: 'The third stage, if there is one.',
  fairing: 'What covers the payload and is dropped on the way, if there is one.',
  drag: 'Drag of the vehicle. The base is booked here once, for every kind of engine alike: what the jets fill counts as no base.',
  limits: 'What is kept by throttling, as far as the engines can be throttled.',
  launch: 'Where it starts.',
  steering: 'How it leaves the vertical; above, it flies along its way, then by a law that is found.',
  orbit:
    'The orbit to which the payload is looked for. Instead of it, `payload` states a payload, and the highest point is looked for.',
  reliability: 'Chance of success of several engines.',
};

export const payloadField = quantity(
  'mass',
  none('0 kg or more'),
  '50 kg',
  'Instead of `orbit`: what it carries; the highest point is then looked for.',
  { optional: true },
);

export const heldField = {
  is: 'choice',
  options: ['engines', 'liftoffThrust', 'massFlow'],
  byDefault: 'engines',
  meaning:
    'What stays the same when a sentence exchanges the engine of the first stage, `booster.payload(engine = plug)`: the number of engines, each as the study sizes it; or the thrust at lift-off, or the mass flow, the other engine being scaled.',
} as const satisfies ChoiceField;

export const vehicleKeys = [
  'name',
  'like',
  ...(Object.keys(vehicleForms) as VehicleSection[]),
  'payload',
  'held',
] as const;
