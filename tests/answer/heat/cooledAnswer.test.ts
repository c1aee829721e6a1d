/** The printed answer of a cooled engine: every number is in the catalogue, and asked for alone it is the same. */

import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { tell } from '../../../src/answer/asked/tell.ts';
import { findQuantity, quantityNameAt } from '../../../src/answer/catalogue.ts';
import { coolingRows, coolingVerdict, heatRows } from '../../../src/answer/heat/heatWords.ts';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { CORRELATIONS } from '../../../src/physics/heat/index.ts';
import { COOLANTS, CORRELATION_WORDS, WALLS } from '../../../src/study/coolingForm.ts';
import { askOfPath } from '../asked/askOfPath.ts';
import { leaves } from '../asked/leaves.ts';
import { solveText } from '../solveText.ts';

let solved: SolvedStudy;
beforeAll(async () => {
  solved = await solveText(`engine:
  propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 6 }
  chamber: { pressure: 60 bar, efficiency: 98 % }
  size: { throat: 120 mm }
  nozzle: { kind: bell, areaRatio: 60, length: 80 % }
  cooling: { skirtFrom: 30, skirtWall: niobium }
plug:
  like: engine
  nozzle: { kind: plug, form: linear, areaRatio: 30, kept: 30 % }
`);
});

test.each(['engine', 'plug'])('%s: every number of its cooling is asked for by its path', (id) => {
  const answer = solved.answer.engines[id]!;
  expect(answer.cooling).not.toBeNull();
  const numbers = leaves(answer).filter(
    ({ path, value }) =>
      /^(heat|cooling)\./.test(path) &&
      typeof value === 'number' &&
      !/(points|skirt)\[(?!(3|30|90)\])/.test(path),
  );
  expect(numbers.length).toBeGreaterThan(60);
  for (const { path, value } of numbers) {
    const name = quantityNameAt(`engines.${id}.${path}`);
    expect(name === undefined ? undefined : findQuantity(name), path).toBeDefined();
    const ask = askOfPath(answer, path);
    // The depth of a wall’s own channels and the course along a skirt are told of the engine as a whole.
    if (ask === null || /channelDepth|skirt\[/.test(path)) continue;
    const told = tell(solved.solutions.get(id)!, { engine: id, throttle: null, inputs: [], ...ask });
    expect(told.ok && told.value, path).toBeCloseTo(value as number, 6);
  }
});

test('the skirt radiates behind its area ratio, and its limit is told', () => {
  const { cooling, contour } = solved.answer.engines['engine']!;
  const { points, skirt } = cooling!.walls[0]!;
  expect(points.at(-1)!.radius).toBeCloseTo(skirt[0]!.radius, 12);
  expect((skirt[0]!.radius / contour.throatRadius) ** 2).toBeGreaterThan(29.9);
  expect(cooling!.skirtTemperature).toBeGreaterThan(skirt.at(-1)!.wallHot - 1e-9);
  expect(cooling!.skirtLimit).toBe(1640);
  expect(solved.answer.engines['plug']!.cooling!.notes.join(' ')).toContain('cones and bells only');
});

test('the verdict judges the skirt by itself, and the rows have its limit', () => {
  const engine = solved.answer.engines['engine']!;
  const cooling = engine.cooling!;
  expect(coolingRows(engine).map(({ quantity }) => quantity)).toContain('cooling.skirtLimit');
  const words = (skirtTemperature: number): string =>
    coolingVerdict({ ...cooling, skirtTemperature }).replaceAll('\u00a0', ' ');
  expect(words(2000)).toMatch(
    /The skirt, which only radiates, does not live: it reaches 2000 K and stands 1640 K\.$/,
  );
  expect(words(1600)).toMatch(/lives: it reaches 1600 K and stands 1640 K\.$/);
  expect(coolingVerdict(solved.answer.engines['plug']!.cooling!)).not.toContain('skirt');
});

test('a tenth of a millimetre at the throat is told in area, flow and pressure', () => {
  const rows = heatRows(solved.answer.engines['engine']!);
  const of = (key: string): number =>
    rows.find(({ quantity }) => quantity === `heat.gapError.${key}`)!.value!;
  // Ø 120 mm, a tenth more: (120.1/120)² − 1; the pressure at the same flow falls by as much.
  expect(of('area')).toBeCloseTo((120.1 / 120) ** 2 - 1, 12);
  expect(of('flow')).toBeCloseTo(of('area'), 12);
  expect(of('pressure')).toBeCloseTo((120 / 120.1) ** 2 - 1, 12);
});

test('the words of the study are the rows of the data', () => {
  const data = (path: string): unknown =>
    JSON.parse(readFileSync(new URL(`../../../data/${path}`, import.meta.url), 'utf8'));
  const { coolants } = data('coolants/index.json') as { coolants: { id: string }[] };
  const { walls } = data('walls.json') as {
    walls: { id: string; source: string; limit: { source: string } }[];
  };
  expect(coolants.map(({ id }) => id)).toEqual([...COOLANTS]);
  expect(walls.map(({ id }) => id)).toEqual([...WALLS]);
  expect([...CORRELATION_WORDS]).toEqual([...CORRELATIONS]);
  expect(walls.every(({ source, limit }) => source.length > 10 && limit.source.length > 10)).toBe(true);
});

test('what leaves the range of a correlation or of the wall’s data is in the notes', async () => {
  const water = (cooling: string): string =>
    `{ propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 6 }, chamber: { pressure: 60 bar, efficiency: 98 % }, size: { throat: 120 mm }, nozzle: { kind: bell, areaRatio: 10 }, cooling: { coolant: water, flow: 20 kg/s, ${cooling} } }`;
  const { answer } = await solveText(
    `low: ${water('correlation: bishop, wall: copper')}\nhigh: ${water('correlation: bishop, inletPressure: 400 bar, wall: copper')}`,
  );
  const notesOf = (id: string): string => answer.engines[id]!.cooling!.notes.join(' ');
  // Water’s critical pressure is 220.6 bar.
  expect(notesOf('low')).toContain('below its critical pressure');
  expect(notesOf('high')).not.toContain('outside its range');
  // Hydrogen keeps the wall colder than the rows of the copper alloy, which begin at 300 K.
  const cold = solved.answer.engines['engine']!.cooling!;
  const coldest = Math.min(...cold.walls[0]!.points.map(({ wallCold }) => wallCold));
  expect(coldest).toBeLessThan(300);
  expect(cold.notes.join(' ')).toContain('is known from 300 K to 800 K');
  expect(notesOf('high')).not.toContain('is known from');
});
