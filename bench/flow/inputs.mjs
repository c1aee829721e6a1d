/**
 * What both sides are given as arrays: a bell and a plug nozzle of a perfect gas, γ 1.2 (22 g/mol, 3600 K, 100 bar).
 */
import { pathToFileURL } from 'node:url';

export const ambients = 60;
const tubes = 32;
const gas = { gamma: 1.2, molarMass: 0.022, temperature: 3600, pressure: 100e5 };
/** Area ratio 40, 80 % of the length of a 15° cone; lengths in throat radii. */
const bell = { kind: 'bell', areaRatio: 40, length: 0.8 };
/** Nodes across the throat, wall points on the arc behind it and on the rest: the mesh that the program works with. */
const bellMesh = { start: 40, arc: 60, rest: 110, crowding: 2 };
/** Area ratio 60, the whole plug. */
const plug = { kind: 'plug', form: 'annular', areaRatio: 60, kept: 1 };

/** The modules of the build that hold the kernels. */
export async function loadKernels(dist) {
  const load = (path) => import(pathToFileURL(`${dist}/physics/${path}.js`).href);
  return Object.assign(
    {},
    ...(await Promise.all(
      [
        'gas/index',
        'flow/index',
        'flow/streamtubes/index',
        'nozzle/roundWall',
        'nozzle/roundField',
        'nozzle/plug/design',
        'nozzle/plug/offDesign',
      ].map(load),
    )),
  );
}

/** Table, start line and wall points of a bell. */
export function bellInput(kernels) {
  const expansion = kernels.expandPerfect(gas);
  const exit = expansion.atAreaRatio(bell.areaRatio, 'supersonic');
  const table = kernels.tabulateSupersonic(expansion, exit.pressure * 1e-5, 96);
  const wall = kernels.roundWallOf(bell);
  const start = kernels.throatCharacteristic(
    { table, gamma: gas.gamma, criticalSpeed: expansion.throat.velocity },
    1,
    1.5,
    bellMesh.start,
  );
  const rest = Array.from({ length: bellMesh.rest }, (_, i) =>
    wall.at(((i + 1) / bellMesh.rest) ** bellMesh.crowding),
  );
  return {
    table,
    start,
    wall: [...kernels.arcPoints(wall, bellMesh.arc), ...rest],
    whole: () => kernels.computeRoundField(wall, expansion, exit.pressure),
  };
}

/**
 * Gas, and for every ambient pressure the front and the wall line from which the march sets out: the ray of the lip's fan on
 * which the gas has come down to ambient. Above the design pressure ratio nothing is marched.
 */
export function plugInput(kernels) {
  const expansion = kernels.expandPerfect(gas);
  const exit = expansion.atAreaRatio(plug.areaRatio, 'supersonic');
  const geometry = kernels.plugDesign(plug, expansion, exit);
  const tubeGas = kernels.tubeGas(geometry.table);
  const design = gas.pressure / exit.pressure;
  const lowest = 20;
  const pressures = Array.from(
    { length: ambients },
    (_, i) => gas.pressure / (lowest * ((2 * design) / lowest) ** (i / (ambients - 1))),
  );
  const marches = pressures
    .filter((pressure) => pressure > exit.pressure * (1 + 1e-6))
    .map((pressure) => {
      const share = rayShare(kernels, geometry, pressure);
      const start = rayAt(kernels, geometry.rays, share);
      const onWall = geometry.lipRayFoot + share;
      const least = 0.01 * geometry.lip.radius;
      const foot = { axial: start[0], radius: start[1], angle: start[2] };
      const rest = geometry.wall.filter(
        ({ axial, radius }, i) => i > onWall && axial > foot.axial && radius > least,
      );
      return {
        boundary: kernels.pressureBoundary(tubeGas, pressure),
        front: kernels.frontAlong(tubeGas, geometry.symmetry, start, tubes),
        line: kernels.wallLine(smoothed([foot, ...rest])),
      };
    });
  return { geometry, tubeGas, pressures, marches };
}

/** Number of the ray, with its fraction, on which the lip's side has the ambient pressure. */
function rayShare(kernels, { table, rays }, pressure) {
  const nu = kernels.nuAtPressure(table, pressure);
  const found = rays.findIndex((ray) => ray[3] >= nu);
  const after = found < 0 ? rays.length - 1 : Math.max(found, 1);
  return after - 1 + Math.min((nu - rays[after - 1][3]) / (rays[after][3] - rays[after - 1][3]), 1);
}

/** Nodes of that ray, wall first, at equal shares of its length: linear between the two rays beside it. */
function rayAt({ NODE }, rays, share) {
  const k = Math.min(Math.floor(share), rays.length - 2);
  const count = 2 * tubes + 1;
  const [low, high] = [rays[k], rays[k + 1]].map((ray) => evenly(ray, NODE, count));
  return low.map((value, i) => value + (share - k) * (high[i] - value));
}

/** The ray's nodes moved to equal shares of its chord, last first. */
function evenly(ray, size, count) {
  const last = ray.length - size;
  const chord = [ray[last] - ray[0], ray[last + 1] - ray[1]];
  const shareOf = (at) =>
    ((ray[at] - ray[0]) * chord[0] + (ray[at + 1] - ray[1]) * chord[1]) / (chord[0] ** 2 + chord[1] ** 2);
  return Float64Array.from({ length: count * size }, (_, i) => {
    const share = 1 - Math.floor(i / size) / (count - 1);
    let at = 0;
    while (at + size < last && shareOf(at + size) < share) at += size;
    const t = (share - shareOf(at)) / (shareOf(at + size) - shareOf(at));
    const c = at + (i % size);
    return ray[c] + t * (ray[c + size] - ray[c]);
  });
}

/** Six pieces between two wall points, on the cubic with the wall's own slopes. */
function smoothed(points) {
  const line = [points[0]];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const chord = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    const cubic = (from, slope, to, lastSlope, t) =>
      from +
      t * (slope + t * (3 * (to - from) - 2 * slope - lastSlope + t * (slope + lastSlope - 2 * (to - from))));
    for (let k = 1; k <= 6; k++) {
      line.push({
        axial: cubic(a.axial, chord * Math.cos(a.angle), b.axial, chord * Math.cos(b.angle), k / 6),
        radius: cubic(a.radius, chord * Math.sin(a.angle), b.radius, chord * Math.sin(b.angle), k / 6),
      });
    }
  }
  return line;
}

/** Everything as numbers one after the other, in the order in which worker.c reads them. */
export function packed(bellCase, plugCase) {
  const numbers = [];
  const put = (...parts) => {
    for (const part of parts) {
      if (typeof part === 'number') numbers.push(part);
      else for (const value of part) numbers.push(value);
    }
  };
  const table = ({ nuMax, step, cells, knots }) => put(nuMax, step, cells, knots.mu, knots.speed);
  table(bellCase.table);
  put(bellCase.start.length / 5, bellCase.start, bellCase.wall.length);
  for (const { axial, radius, angle } of bellCase.wall) put(axial, radius, angle);
  const { tubeGas, marches } = plugCase;
  table(tubeGas.table);
  put(tubeGas.slowest, tubeGas.fastest, tubeGas.step, tubeGas.cells, tubeGas.knots);
  put(tubes, marches.length);
  for (const { boundary, front, line } of marches) {
    for (const name of frontArrays) put(front[name]);
    put(boundary.lnP, boundary.nu, line.x.length, line.x, line.r, line.along);
  }
  return Float64Array.from(numbers);
}

/** Give `front` the numbers of another. */
export function setFront(front, from) {
  for (const name of frontArrays) front[name].set(from[name]);
}

const frontArrays = [
  'x',
  'r',
  'mass',
  'momentumX',
  'momentumR',
  'speed',
  'theta',
  'cosine',
  'sine',
  'lnP',
  'pressure',
  'lnSigma',
  'bend',
  'beta',
  'faceLnP',
  'faceP',
  'faceTheta',
];
