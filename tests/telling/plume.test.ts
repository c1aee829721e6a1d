import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type SolvedStudy, solveStudyLive } from '../../src/answer/solve.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { ambientAt } from '../../src/telling/figures/conditions.ts';
import { jetEdge } from '../../src/telling/figures/plumeHere.ts';
import { cutView } from '../../src/telling/index.ts';
import type { GroupNode, PathNode, SceneNode } from '../../src/telling/scene/scene.ts';

const text = readFileSync(new URL('../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
let solved: SolvedStudy;
beforeAll(async () => {
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  solved = await solveStudyLive(outcome.study, shelf);
});

/** Groups whose name ends so. */
function groupsNamed(nodes: readonly SceneNode[], end: string): readonly GroupNode[] {
  return nodes.flatMap((node) =>
    node.kind !== 'group'
      ? []
      : [...(node.name?.endsWith(end) ? [node] : []), ...groupsNamed(node.children, end)],
  );
}

const strokes = (group: GroupNode): readonly PathNode[] =>
  group.children.filter((node): node is PathNode => node.kind === 'path' && node.stroke !== undefined);

describe('the plume in the picture', () => {
  test('is solid where computed and dashed where a sketch, one jet an engine, and the subtitle says so', () => {
    const scene = cutView(solved.answer, { size: '16:9', theme: 'light', altitude: 10_000 });
    const jets = groupsNamed(scene.children, ' jet');
    expect(jets).toHaveLength(2);
    for (const jet of jets) {
      const dashed = strokes(jet).filter(({ dash }) => dash !== undefined);
      const solid = strokes(jet).filter(({ dash }) => dash === undefined);
      expect(dashed).toHaveLength(1);
      expect(solid).toHaveLength(1);
    }
    expect(JSON.stringify(scene.children)).toContain('dashed plume a sketch');
  });

  test('follows the altitude: wider the thinner the air, without leaps between the rows of the answer', () => {
    const { bell } = solved.answer.engines;
    const reach = (altitude: number): number =>
      Math.max(
        ...jetEdge(bell!, ambientAt(altitude))
          .filter(({ sketch }) => !sketch)
          .map(({ radius }) => radius),
      );
    let last = reach(6_000);
    for (let altitude = 6_500; altitude <= 15_000; altitude += 500) {
      const here = reach(altitude);
      expect(here).toBeGreaterThan(last);
      expect(here / last).toBeLessThan(1.15);
      last = here;
    }
  });

  test('at a row of the answer it is that row’s own edge', () => {
    const { bell } = solved.answer.engines;
    const row = bell!.plume.altitudes.find(({ altitude }) => altitude === 10_000);
    expect(jetEdge(bell!, ambientAt(10_000))).toEqual(row!.boundary);
  });
});
