/**
 * Times a flight, a payload at a fixed way up and one with the way up found anew, for an invented vehicle of two stages whose first
 * stage's thrust is tabulated; writes its section of bench/RESULTS.md.
 *
 *   node bench/flight/run.mjs          after a build
 */
import { cpus, type } from 'node:os';
import {
  EARTH,
  EARTH_ROTATION,
  flyAscent,
  mostToOrbit,
  payloadAt,
  slenderDrag,
  tabulatedThrust,
} from '../../dist/physics/flight/index.js';
import { writeSection } from '../results.mjs';

const table = tabulatedThrust(
  (pressure) => ({ thrust: 4e6 - 5.4 * pressure - 200 * Math.sqrt(pressure) }),
  110_000,
);
const engine = (thrust, vacuumThrust, impulse, exitArea) => ({
  thrust,
  massFlow: vacuumThrust / (impulse * 9.80665),
  vacuumThrust,
  lowestThrottle: 0.5,
  exitArea,
});
const vehicle = {
  stages: [
    { propulsion: engine(table, 4e6, 343, 5.4), dryMass: 16_000, propellantMass: 210_000, coastBefore: 0 },
    { propulsion: engine(() => 3e5, 3e5, 355, 0), dryMass: 3600, propellantMass: 36_000, coastBefore: 4 },
  ],
  referenceArea: 11,
  drag: slenderDrag(),
  fairing: { mass: 1200, dropAltitude: 110_000 },
  mostAcceleration: 45,
  mostDynamicPressure: 34_000,
};
const site = { earth: EARTH, altitude: 0, rotation: EARTH_ROTATION * Math.cos(0.49) };
const orbit = { altitude: 200_000, apogee: 200_000 };
const best = mostToOrbit(vehicle, site, orbit, { kickSpeed: 60 });
const { kickSpeed, kickAngle } = best.steering;
const rows = [
  ['one ascent', 10, () => flyAscent(vehicle, best.payload, site, best.steering)],
  [
    'one ascent, every second of it kept',
    10,
    () => flyAscent(vehicle, best.payload, site, best.steering, { record: true }),
  ],
  ['payload, way up as given', 150, () => payloadAt(vehicle, site, orbit, { kickSpeed, kickAngle })],
  ['payload, way up found anew', 2000, () => mostToOrbit(vehicle, site, orbit, { kickSpeed })],
  ['the same from a neighbour', 2000, () => mostToOrbit(vehicle, site, orbit, { kickSpeed }, best)],
];
const lines = rows.map(([work, may, run]) => {
  const times = Array.from({ length: 15 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return `| ${work} | ${times[7].toFixed(2)} | ${times[0].toFixed(2)} | ${may} |`;
});
const text = [
  `Median and least of 15 on one thread of ${cpus()[0]?.model ?? 'an unknown processor'}, ${type()}, Node ${process.versions.node}; other work may run beside.`,
  '',
  '| work | ms | least ms | may take ms |',
  '| --- | --- | --- | --- |',
  ...lines,
].join('\n');
console.log(text);
writeSection('Flight', text);
