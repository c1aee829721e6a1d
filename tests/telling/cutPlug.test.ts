import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { altitudeCurve } from '../../src/answer/conditions.ts';
import { solveStudyLive } from '../../src/answer/solve.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { ambientAt, conditionAt } from '../../src/telling/figures/conditions.ts';
import { type CutEngine, place } from '../../src/telling/figures/cutPlaces.ts';
import { jetBoundary, plugNodes } from '../../src/telling/figures/cutPlug.ts';
import { drawnEngines } from '../../src/telling/figures/drawnEngines.ts';
import { layoutOf } from '../../src/telling/look/formats.ts';
import type { Point } from '../../src/telling/scene/pathData.ts';

/** Corners of a closed path. */
const cornersOf = (d: string): Point[] =>
  [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));

/** By the count of edges that a line to the right crosses. */
function isInside({ x, y }: Point, corners: readonly Point[]): boolean {
  const crossed = corners.filter((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    return a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  });
  return crossed.length % 2 === 1;
}

test('round the jet of a long plug at the pad there is air, not a gap in the drawing', async () => {
  const shelf = openDataShelf();
  const text = readFileSync(new URL('../../starters/plug-cut-short/study.yaml', import.meta.url), 'utf8');
  const read = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { answer, solutions } = await solveStudyLive(read.study, shelf);
  const long = drawnEngines(answer, 2).engines.find(({ engine }) => engine.id === 'long')!;
  const row = conditionAt(altitudeCurve(solutions.get('long')!), ambientAt(0));
  const box = { x: -500, y: 0, width: 1000, height: 1000 };
  const drawn: CutEngine = {
    ...long,
    row,
    axisX: 0,
    mountY: 0,
    faceY: 0,
    scale: 400,
    tint: 'pressure',
    edge: [],
    jetBox: box,
  };
  const [left, right] = plugNodes(drawn, long.engine.contour.plug!, ambientAt(0), layoutOf('16:9'));
  const paper = [left!, right!].map((node) => (node.kind === 'path' ? cornersOf(node.d) : []));
  const boundary = jetBoundary(row.field);
  expect(boundary.length).toBeGreaterThan(10);
  for (const { axial, radius } of boundary.slice(3, -3)) {
    const [outside, inside] = [1.02, 0.98].map((times) => place(drawn, { axial, radius: times * radius }, 1));
    expect(isInside(outside!, paper[1]!), `outside the jet, ${axial} m behind the throat`).toBe(false);
    expect(isInside(inside!, paper[1]!), `inside the jet, ${axial} m behind the throat`).toBe(true);
  }
});
