/** Measured points over the curves that they belong to: sweeps, heat along the wall, a vehicle's way up. Data invented. */

import { beforeAll, describe, expect, it } from 'vitest';
import { localCrew } from '../../src/answer/asked/localCrew.ts';
import { fieldAlong } from '../../src/answer/flow/index.ts';
import { holdMeasured } from '../../src/answer/measured/holdMeasured.ts';
import type { MeasuredSeries } from '../../src/answer/measured/model.ts';
import { findNeed, type Need, needRequestOf } from '../../src/answer/needs/index.ts';
import type { SolvedStudy } from '../../src/answer/solve.ts';
import { solveStudyLive } from '../../src/answer/solve.ts';
import { type Sweep, sweep, sweepRequestOf } from '../../src/answer/sweeps/index.ts';
import { readMeasuredTable } from '../../src/study/measured/readTable.ts';
import type { Study } from '../../src/study/model.ts';
import { figureAscent } from '../../src/telling/figures/figureAscent.ts';
import { figureFlowAlong } from '../../src/telling/figures/figureFlowAlong.ts';
import { figureHeat } from '../../src/telling/figures/figureHeat.ts';
import { figureKinds } from '../../src/telling/figures/figureKinds.ts';
import { figureSweep } from '../../src/telling/figures/figureSweep.ts';
import { temperaturesAlongWall } from '../../src/telling/figures/figureTemperatures.ts';
import { ENGINE_STYLES } from '../../src/telling/look/engineStyles.ts';
import type { Scene, SceneNode } from '../../src/telling/scene/scene.ts';
import { textsOf } from '../../src/telling/scene/scene.ts';
import { shelf, studyOf } from '../answer/solveText.ts';
import { field } from './jetField.ts';

const files = {
  width: 'nozzle.areaRatio,specificImpulse [s],± specificImpulse [s]\n15,300,5\n40,330,5\n90,330,5\n',
  wall: 'wall.axial [mm],heat.flux [MW/m2]\n100,20\n',
  probes: 'wall.axial [mm],cooling.coolantTemperature [K],cooling.wallCold [K]\n-100,150,400\n9000,150,400\n',
  radar: 'time [s],flight.points.altitude [km]\n20,1\n60,11\n',
} as const;
let study: Study;
let solved: SolvedStudy;
let curves: Sweep;
let need: Need;
let measured: readonly MeasuredSeries[];

beforeAll(async () => {
  study = await studyOf(
    `bell:
  propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 6 }
  chamber: { pressure: 100 bar, efficiency: 98 % }
  size: { thrust: 800 kN, at: vacuum }
  nozzle: { kind: bell, areaRatio: 25 }
  cooling: { coolant: fuel, wall: copper-chromium-niobium, thickness: 0.7 mm }`,
    `vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
measured:
  - { id: width, file: width.csv, of: bell, source: report, at: vacuum }
  - { id: wall, file: wall.csv, of: bell, source: report }
  - { id: probes, file: probes.csv, of: bell, source: report }
  - { id: radar, file: radar.csv, of: booster, source: report }
sweeps:
  - { id: width, of: [bell.specificImpulse(vacuum), bell.specificImpulse(pad)], over: nozzle.areaRatio, from: 10, to: 60, points: 7 }
needs:
  - { id: wide, so: bell.specificImpulse(vacuum) >= 331 s, over: nozzle.areaRatio, engines: bell, from: 10, to: 60 }
sources:
  report: { title: Runs on an invented stand }`,
  );
  solved = await solveStudyLive(study, shelf);
  const crew = await localCrew(study, shelf);
  curves = await sweep(study, crew, sweepRequestOf(study, study.sweeps[0]!));
  need = await findNeed(study, crew, needRequestOf(study, study.needs[0]!), { bands: false });
  const sets = study.measured.map((input) => {
    const read = readMeasuredTable(files[input.id as keyof typeof files], input.file);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return { input, table: read.table };
  });
  measured = await holdMeasured(study, sets, crew);
}, 240_000);

const marks = ({ children }: Scene): readonly SceneNode[] =>
  children.flatMap((node) =>
    node.kind === 'group' && node.name === 'measured' && node.children.length > 0 ? [node] : [],
  );
const squares = (scene: Scene): number =>
  marks(scene).reduce(
    (sum, node) =>
      sum +
      (node.kind === 'group'
        ? node.children.filter((each) => each.kind === 'path' && each.fill === 'paper').length
        : 0),
    0,
  );
const words = ({ children }: Scene): string =>
  textsOf(children)
    .map(({ text }) => text)
    .join(' ');
const options = { size: '16:9', theme: 'light' } as const;

describe('measured points', () => {
  it('stand over the one curve of a sweep on which their computed values lie, those beyond its end told', () => {
    const scene = figureSweep(curves, { ...options, measured });
    expect(squares(scene)).toBe(2);
    expect(words(scene)).toMatch(/Hollow squares: measured, width \(report\)/);
    expect(words(scene)).toContain('1 measured point lies outside the axis.');
    expect(words(scene)).toMatch(/Measured less computed, root mean square: [\d.]+\u00a0s \(bell\)/);
    expect(squares(figureSweep(curves, options))).toBe(0);
    // Points of the pad are none of the curve in vacuum, and no other curve is theirs.
    const atPad = measured.map((series) => ({
      ...series,
      points: series.points.map((point) => ({ ...point, computed: point.computed! + 20 })),
    }));
    expect(squares(figureSweep(curves, { ...options, measured: atPad }))).toBe(0);
  });

  it('stand over what an input would have to be, as every other figure of the study is drawn', () => {
    const kinds = figureKinds({ answer: solved.answer, curves: {}, needs: [need], measured });
    const scene = kinds.find(({ name }) => name === 'need-wide')!.draw(options)!;
    expect(squares(scene)).toBe(2);
    expect(words(scene)).toMatch(/Hollow squares: measured, width \(report\)/);
  });

  it('stand over heat along the wall', () => {
    const scene = figureHeat(solved.answer, { ...options, measured })!;
    expect(squares(scene)).toBe(1);
    expect(words(scene)).toMatch(/Hollow squares: measured, wall \(report\)/);
  });

  it('stand over the temperatures along a cooled wall, on the wall alone', () => {
    const scene = temperaturesAlongWall(solved.answer, { ...options, measured })!;
    expect(squares(scene)).toBe(2);
    expect(words(scene)).toMatch(/Hollow squares: measured, probes \(report\)/);
    expect(words(scene)).toContain('2 measured points lie outside the axis.');
    expect(squares(temperaturesAlongWall(solved.answer, options)!)).toBe(0);
  });

  it('stand over a computed field along its wall, with residuals against the field', () => {
    const side = { block: 0, row: 4, from: 0, to: 8 };
    const own = field({ walls: [{ kind: 'wall', line: [], side }] });
    const [wall] = fieldAlong(own).filter(({ line }) => line === 'wall');
    expect(wall!.points.length).toBeGreaterThan(1);
    const [a, b] = wall!.points;
    const [series] = measured;
    const at = (a!.axial + b!.axial) / 2;
    const computed = (a!.pressure + b!.pressure) / 2;
    const points = [at, 50].map((place) => ({ ...series!.points[0]!, at: place, value: computed + 3e3 }));
    const probes = { ...series!, engine: 'bell', quantity: 'wall.pressure', place: 'wall.axial', points };
    const drawn = (over: object) =>
      figureFlowAlong({ ...own, ...over }, null, ENGINE_STYLES[0]!, { ...options, measured: [probes] });
    expect(squares(drawn({}))).toBe(1);
    expect(words(drawn({}))).toContain('1 measured point lies outside the axis.');
    expect(words(drawn({}))).toMatch(/Measured less computed, root mean square: 0\.03\d*\u00a0bar \(bell\)/);
    expect(squares(drawn({ engine: 'other' }))).toBe(0);
    expect(squares(drawn({ moment: { event: 'start' } }))).toBe(0);
  });

  it('stand over the way up of a vehicle, with residuals against its flight', () => {
    const vehicle = solved.answer.vehicles[0]!;
    const scene = figureAscent(vehicle, solved.answer, { ...options, measured })!;
    expect(squares(scene)).toBe(2);
    const radar = measured.find(({ id }) => id === 'radar')!;
    expect(radar.engine).toBe('booster');
    const { points } = vehicle.own!;
    for (const { at, computed, value, residual } of radar.points) {
      const after = points.findIndex(({ time }) => time >= at);
      const [low, high] = [points[after - 1]!.altitude, points[after]!.altitude];
      expect(computed).toBeGreaterThanOrEqual(low);
      expect(computed).toBeLessThanOrEqual(high);
      expect(residual).toBeCloseTo(value - computed!, 9);
    }
  });
});
