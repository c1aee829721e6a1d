import { beforeAll, describe, expect, test } from 'vitest';
import { localCrew } from '../../src/answer/asked/localCrew.ts';
import {
  mapRequestOf,
  type Sweep,
  type SweepMap,
  sweep,
  sweepMap,
  sweepRequestOf,
} from '../../src/answer/sweeps/index.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { CAUTION_SHORT, figureMap, figureSweep, type Scene, sceneToSvg } from '../../src/telling/index.ts';
import { boxesOverlap, textBox } from '../../src/telling/scene/box.ts';
import { type GroupNode, type SceneNode, textsOf } from '../../src/telling/scene/scene.ts';

/** Invented: two bells of one gas that needs no chemistry, so that the figures come at once. */
const study = `
plumeline: 1
question: Which area ratio?
engines:
  one:
    name: Rowan
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 70 bar, efficiency: 98 % }
    size: { throat: 200 mm }
    nozzle: { kind: bell, areaRatio: 25 }
  two:
    like: one
    name: Hazel
    chamber: { pressure: 40 bar, efficiency: 99 % }
sweeps:
  - { id: one-curve, of: "one.specificImpulse(20 km)", over: nozzle.areaRatio, from: 5, to: 200, points: 17 }
  - id: one-engine
    of: ["one.specificImpulse(vacuum)", "one.specificImpulse(0 km)", "one.specificImpulse(10 km)"]
    over: nozzle.areaRatio
    from: 5
    to: 80
    points: 17
  - { id: up, of: [one.specificImpulse, two.specificImpulse], over: altitude, from: 0 km, to: 40 km, points: 17 }
  - { id: throttled, of: ["one.thrust(0 km)", "two.thrust(0 km)"], over: throttle, from: 1 %, to: 100 %, points: 25 }
  - { id: unlike, of: ["one.thrust(0 km)", one.exit.diameter], over: nozzle.areaRatio, from: 5, to: 80, points: 9 }
maps:
  - id: best
    of: one.specificImpulse(10 km)
    across: { over: nozzle.areaRatio, from: 5, to: 100 }
    up: { over: chamber.pressure, from: 20 bar, to: 200 bar }
    points: 9
  - id: holes
    of: one.thrust(0 km)
    across: { over: throttle, from: 1 %, to: 100 % }
    up: { over: nozzle.areaRatio, from: 5, to: 100 }
    points: 9
`;

const sweeps: Record<string, Sweep> = {};
const maps: Record<string, SweepMap> = {};
beforeAll(async () => {
  const shelf = openDataShelf();
  const outcome = readStudy(study, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const crew = await localCrew(outcome.study, shelf);
  for (const input of outcome.study.sweeps) {
    sweeps[input.id] = await sweep(outcome.study, crew, sweepRequestOf(outcome.study, input));
  }
  for (const input of outcome.study.maps) {
    maps[input.id] = await sweepMap(outcome.study, crew, mapRequestOf(outcome.study, input));
  }
});

const drawn = (name: string, size: '16:9' | '9:16' | '1:1', theme: 'light' | 'dark' = 'light'): Scene =>
  name in sweeps ? figureSweep(sweeps[name]!, { size, theme }) : figureMap(maps[name]!, { size, theme });

const groupsOf = (nodes: readonly SceneNode[], name: RegExp): readonly GroupNode[] =>
  nodes.flatMap((node) => (node.kind === 'group' && name.test(node.name ?? '') ? [node] : []));

const names = ['one-curve', 'one-engine', 'up', 'throttled', 'unlike', 'best', 'holes'];

describe.each(names)('the figure %s', (name) => {
  test.each(['16:9', '9:16', '1:1'] as const)(
    '%s: words inside the picture, none over another, none cut short but in the foot, the caution whole',
    (size) => {
      const scene = drawn(name, size);
      const texts = textsOf(scene.children);
      const boxes = texts.map(textBox);
      boxes.forEach((box, i) => {
        expect(box.x, texts[i]!.text).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width, texts[i]!.text).toBeLessThanOrEqual(scene.width);
        expect(box.y + box.height, texts[i]!.text).toBeLessThanOrEqual(scene.height);
        for (let j = i + 1; j < boxes.length; j++) {
          expect(boxesOverlap(box, boxes[j]!), `${texts[i]!.text} / ${texts[j]!.text}`).toBe(false);
        }
      });
      const foot = textsOf(groupsOf(scene.children, /^foot$/));
      for (const { text } of texts.filter((each) => !foot.includes(each))) expect(text).not.toMatch(/…/);
      expect(foot.map(({ text }) => text).join(' ')).toContain(CAUTION_SHORT);
    },
  );

  test('is the same bytes twice, in both themes', () => {
    for (const theme of ['light', 'dark'] as const) {
      expect(sceneToSvg(drawn(name, '16:9', theme))).toBe(sceneToSvg(drawn(name, '16:9', theme)));
    }
    expect(sceneToSvg(drawn(name, '16:9', 'light'))).not.toBe(sceneToSvg(drawn(name, '16:9', 'dark')));
  });
});

/** Every number with a unit in a text. */
const valuesIn = (text: string): readonly string[] =>
  text.match(/\d[\d.\u202f]*(?=[\u00a0 ](?:s|kN|km|m|bar)\b)/gu) ?? [];

describe('the figure of a sweep', () => {
  test('every value that stands in its labels is one of the answer', () => {
    for (const name of ['one-curve', 'up']) {
      const { curves, crossings, range } = sweeps[name]!;
      const known = [
        ...curves.flatMap(({ highest, lowest, points }) => [
          ...[highest, lowest].flatMap((each) => (each === null ? [] : [each.x, each.y])),
          ...points.flatMap(({ x, y }) => [x, y ?? x]),
        ]),
        ...crossings.flatMap(({ x, y }) => [x, y]),
        range.from,
        range.to,
      ];
      const texts = textsOf(groupsOf(drawn(name, '16:9').children, /^labels$/));
      const values = texts.flatMap(({ text }) => valuesIn(text));
      expect(values.length).toBeGreaterThan(0);
      for (const value of values) {
        // As told: in seconds, or in kilometres; rounded to three digits or more.
        const near = known.some((number) =>
          [number, number / 1000].some((shown) => Math.abs(shown - Number(value)) <= 0.006 * Math.abs(shown)),
        );
        expect(near, `${name}: ${value}`).toBe(true);
      }
    }
  });

  test('altitude runs upward, every other input to the right', () => {
    const title = (name: string): string =>
      textsOf(groupsOf(drawn(name, '16:9').children, /^axis$/))[0]!.text;
    expect(title('up')).toBe('altitude, km');
    expect(title('one-curve')).toBe('specific impulse, s');
  });

  test('curves of one engine differ in their line, and a stretch of it stands before each name', () => {
    const curves = groupsOf(drawn('one-engine', '16:9').children, /curve$/);
    const dashes = curves.map(({ children }) =>
      children.flatMap((node) => (node.kind === 'path' && node.strokeWidth === 7 ? [node.dash?.join()] : [])),
    );
    expect(new Set(dashes.map(([first]) => first)).size).toBe(3);
    const labels = groupsOf(drawn('one-engine', '16:9').children, /^labels$/)[0]!.children;
    for (const own of dashes.flat().filter((dash) => dash !== '')) {
      const [first] = own!.split(',').map(Number);
      // The same pattern on a line a fifth thinner.
      const samples = labels.flatMap((node) => (node.kind === 'path' ? [node.dash?.[0] ?? 0] : []));
      expect(samples.some((each) => Math.abs(each - 0.8 * first!) < 1e-9)).toBe(true);
    }
  });

  test('a stretch without values is hatched where it lies, and the foot says why', () => {
    const found = sweeps.throttled!;
    const holes = found.curves.flatMap((curve) => curve.holes);
    expect(holes.length).toBeGreaterThan(0);
    const scene = drawn('throttled', '16:9');
    const rects = groupsOf(scene.children, /^holes$/).flatMap(({ children }) => children);
    expect(rects.length).toBeGreaterThan(0);
    for (const rect of rects) expect(rect).toMatchObject({ kind: 'rect', fill: { pattern: 'hatch' } });
    const said = textsOf(scene.children)
      .map(({ text }) => text)
      .join(' ')
      .replaceAll('\u00a0', ' ');
    expect(said).toContain(`Hatched: ${holes[0]!.problem.what}`.slice(0, 40));
  });

  test('quantities of unlike dimension stand on scales of their own', () => {
    expect(groupsOf(drawn('unlike', '9:16').children, /^grid$/)).toHaveLength(2);
  });
});

describe('the figure of a map', () => {
  test('names its lines by their values and rings the best place', () => {
    const map = maps.best!;
    const scene = drawn('best', '16:9');
    const texts = textsOf(groupsOf(scene.children, /^labels$/)).map(({ text }) => text);
    const named = map.levels.filter(({ value }) => texts.includes(`${Math.round(value)}\u00a0s`));
    expect(named.length).toBeGreaterThanOrEqual(3);
    expect(texts.some((text) => text.startsWith('highest, '))).toBe(true);
  });

  test('hatches every place without a value', () => {
    const map = maps.holes!;
    expect(map.holes.length).toBeGreaterThan(0);
    const rects = groupsOf(drawn('holes', '16:9').children, /^holes$/).flatMap(({ children }) => children);
    expect(rects.length).toBeGreaterThan(0);
  });
});
