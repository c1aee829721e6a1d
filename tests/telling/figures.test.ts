import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, test } from 'vitest';
import { altitudeCurve } from '../../src/answer/conditions.ts';
import type { StudyAnswer } from '../../src/answer/model.ts';
import { type SolvedStudy, solveStudyLive } from '../../src/answer/solve.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { ambientAt, conditionAt, rowsOf } from '../../src/telling/figures/conditions.ts';
import { cutPanel } from '../../src/telling/figures/cutPanel.ts';
import {
  CAUTION_SHORT,
  cutView,
  type FigureOptions,
  impulseOverAltitude,
  pressureAlongWall,
  type Scene,
  sceneToSvg,
  sizeOutlines,
  thrustOverAltitude,
} from '../../src/telling/index.ts';
import { layoutOf } from '../../src/telling/look/formats.ts';
import { boxesOverlap, textBox } from '../../src/telling/scene/box.ts';
import { type SceneNode, textsOf } from '../../src/telling/scene/scene.ts';

const example = readFileSync(new URL('../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
const starter = readFileSync(new URL('../../starters/blank/study.yaml', import.meta.url), 'utf8');
/** The same study with the bound instead of the plug beside the bell. */
const bound = example.replace('other: plug', 'other: adapting');
/** A long bell that lets go at the pad, and a study with one engine. */
const lone = starter
  .replace(/ {2}long:[\s\S]*?\n\n/, '\n')
  .replace(/^compare:.*$/m, '')
  .replace(/^sentences:[\s\S]*?\n\n/m, '\n');

const studies: Record<string, SolvedStudy> = {};
beforeAll(async () => {
  const shelf = openDataShelf();
  for (const [name, text] of Object.entries({ example, bound, starter, lone })) {
    const outcome = readStudy(text, { file: name, ...knownNames(await shelf.propellants()) });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    studies[name] = await solveStudyLive(outcome.study, shelf);
  }
});

const kinds: Readonly<Record<string, (answer: StudyAnswer, options: FigureOptions) => Scene>> = {
  'specific impulse': impulseOverAltitude,
  thrust: thrustOverAltitude,
  'cut at the pad': (answer, options) => cutView(answer, { ...options, altitude: 0 }),
  'cut at 12 km': (answer, options) => cutView(answer, { ...options, altitude: 12_000 }),
  'cut in vacuum': (answer, options) => cutView(answer, { ...options, altitude: 'vacuum' }),
  'pressure along the wall': (answer, options) => pressureAlongWall(answer, { ...options, altitude: 0 }),
  outlines: sizeOutlines,
};
const cases = ['example', 'bound', 'starter', 'lone'].flatMap((study) =>
  Object.keys(kinds).flatMap((kind) =>
    (['16:9', '9:16', '1:1', 'print'] as const).map((size) => [study, kind, size] as const),
  ),
);

function draw(study: string, kind: string, options: FigureOptions): Scene {
  const { answer, solutions } = studies[study]!;
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  return kinds[kind]!(answer, { ...options, curves });
}

/** Points of the lines in a group, each stretch between two of them filled in at most 4 px apart. */
function pointsOf(node: SceneNode): { readonly x: number; readonly y: number }[] {
  if (node.kind === 'group') return node.children.flatMap(pointsOf);
  if (node.kind !== 'path' || node.stroke === undefined || (node.strokeWidth ?? 0) < 4) return [];
  return node.d.split('M').flatMap((piece) => {
    const points = [...piece.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({
      x: Number(x),
      y: Number(y),
    }));
    return points.flatMap((to, i) => {
      const from = points[i - 1] ?? to;
      const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4) || 1;
      return Array.from({ length: steps }, (_, k) => ({
        x: from.x + ((k + 1) / steps) * (to.x - from.x),
        y: from.y + ((k + 1) / steps) * (to.y - from.y),
      }));
    });
  });
}

describe('every figure', () => {
  test.each(cases)(
    'of the %s, %s, %s: words inside the picture, none over another, the caution whole',
    (study, kind, size) => {
      const scene = draw(study, kind, { size, theme: 'light' });
      const texts = textsOf(scene.children);
      expect(texts.length).toBeGreaterThan(5);
      const boxes = texts.map((node) => ({ text: node.text, box: textBox(node) }));
      for (const { text, box } of boxes) {
        expect(box.x >= 0 && box.y >= 0, text).toBe(true);
        expect(box.x + box.width <= scene.width + 1 && box.y + box.height <= scene.height + 1, text).toBe(
          true,
        );
      }
      const over: string[] = [];
      boxes.forEach((one, i) => {
        for (const other of boxes.slice(i + 1)) {
          // Letters seldom fill their box; a hair of overlap of the boxes is none of the letters.
          const tight = (box: typeof one.box) => ({
            x: box.x + 1,
            y: box.y + 2,
            width: box.width - 2,
            height: box.height - 4,
          });
          if (boxesOverlap(tight(one.box), tight(other.box))) over.push(`${one.text} / ${other.text}`);
        }
      });
      expect(over).toEqual([]);
      expect(texts.map((node) => node.text).join(' ')).toContain(CAUTION_SHORT);
      expect(scene.description).toMatch(/not for building, pressurising or firing/);
      for (const { name } of Object.values(studies[study]!.answer.engines))
        expect(texts.map((node) => node.text).join(' '), 'engines without a name').toContain(name);
    },
  );

  test.each(cases.filter(([, kind]) => !kind.startsWith('cut') && kind !== 'outlines'))(
    'of the %s, %s, %s: no curve runs behind words',
    (study, kind, size) => {
      const scene = draw(study, kind, { size, theme: 'light' });
      const curves = scene.children.flatMap((node) =>
        node.kind === 'group' && node.name?.endsWith(' curve') ? pointsOf(node) : [],
      );
      expect(curves.length).toBeGreaterThan(50);
      const covered = textsOf(scene.children).filter((node) => {
        const box = textBox(node);
        return curves.some(
          ({ x, y }) => x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height,
        );
      });
      expect(covered.map((node) => node.text)).toEqual([]);
    },
  );

  test('a nozzle that stands for a bound leads by at most so much, and is named', () => {
    const titles = (['specific impulse', 'thrust'] as const).map(
      (kind) => draw('bound', kind, { size: '16:9', theme: 'light' }).title,
    );
    for (const title of titles) expect(title).toMatch(/^Alder A\b.* at most /);
  });

  test('in the shapes of a film nothing in the foot is cut short', () => {
    for (const [study, kind, size] of cases) {
      const words = textsOf(draw(study, kind, { size, theme: 'light' }).children).map((node) => node.text);
      expect(
        words.filter((text) => text.includes('…')),
        `${study} ${kind} ${size}`,
      ).toEqual([]);
    }
  });

  test.each(['example', 'bound', 'starter', 'lone'])('cut open, the engines of the %s are large', (study) => {
    for (const size of ['16:9', '9:16', '1:1', 'print'] as const) {
      const { answer } = studies[study]!;
      const layout = layoutOf(size);
      const { safe } = layout;
      const room = {
        x: safe.left,
        y: 0.35 * layout.height,
        width: safe.right - safe.left,
        height: (layout.upright ? 0.45 : 0.36) * layout.height,
      };
      const { scale } = cutPanel(answer, 0, room, layout, { size, theme: 'light' });
      const longest = Math.max(...Object.values(answer.engines).map(({ contour }) => contour.totalLength));
      const widest = Math.max(...Object.values(answer.engines).map(({ exit }) => exit.diameter));
      // House rule: the drawing is the largest thing on the picture. Two fifths of its room upward (less a hair), or a quarter of it across.
      const large = longest * scale > 0.38 * room.height || widest * scale > 0.25 * room.width;
      expect(large, `${size}: ${Math.round(scale)} px/m`).toBe(true);
    }
  });

  test('where thrust has no value, the figure says what its thin dashes are', () => {
    const words = (study: string): string =>
      textsOf(draw(study, 'thrust', { size: '16:9', theme: 'light' }).children)
        .map((node) => node.text)
        .join(' ');
    expect(words('starter')).toContain('Thin dashes: if the gas filled the nozzle.');
    expect(words('example')).not.toContain('Thin dashes');
  });

  test('between two known altitudes a nozzle that adapts has the pressure of the air at its exit', () => {
    const { answer } = studies.example!;
    const adapting = Object.values(answer.engines).find(({ contourIs }) => contourIs === 'notional')!;
    const rows = rowsOf(adapting, { size: '16:9', theme: 'light' });
    for (const altitude of [3_000, 7_000, 12_000]) {
      const ambient = ambientAt(altitude);
      expect(conditionAt(rows, ambient).exitPressure / ambient).toBeCloseTo(1, 9);
    }
    const high = ambientAt(adapting.matched.altitude! + 1000);
    expect(conditionAt(rows, high).exitPressure).toBeGreaterThan(high);
  });

  test.each(Object.keys(kinds))(
    '%s is the same bytes twice, in both themes, and an outside reader draws it',
    (kind) => {
      for (const theme of ['light', 'dark'] as const) {
        const svg = sceneToSvg(draw('example', kind, { size: '16:9', theme }));
        expect(sceneToSvg(draw('example', kind, { size: '16:9', theme }))).toBe(svg);
        const png = new Resvg(svg, { font: { loadSystemFonts: false } }).render().asPng();
        expect(png.length).toBeGreaterThan(10_000);
      }
    },
  );

  test('the light and the dark theme differ only in colour', () => {
    const shape = (svg: string): string => svg.replaceAll(/#[0-9a-f]{6}/g, '#');
    const [light, dark] = (['light', 'dark'] as const).map((theme) =>
      shape(sceneToSvg(draw('example', 'specific impulse', { size: '16:9', theme }))),
    );
    expect(dark).toBe(light);
  });

  test('no label is smaller than 2.6 % of the short side', () => {
    for (const [study, kind, size] of cases) {
      const scene = draw(study, kind, { size, theme: 'light' });
      const least = 0.026 * Math.min(scene.width, scene.height) * 0.999;
      for (const node of textsOf(scene.children))
        expect(node.size, `${kind} ${size} ${node.text}`).toBeGreaterThanOrEqual(least);
    }
  });
});
