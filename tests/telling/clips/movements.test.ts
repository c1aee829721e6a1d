import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { gatherMaterials } from '../../../src/answer/materials.ts';
import { type SolvedStudy, solveStudyLive } from '../../../src/answer/solve.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { CAUTION_SHORT } from '../../../src/telling/caution.ts';
import {
  type Clip,
  type ClipRequest,
  clipFigures,
  clipOf,
  frameRateOf,
  movementOf,
  USUAL_TIMING,
} from '../../../src/telling/clips/index.ts';
import type { Anew } from '../../../src/telling/clips/throttledEngines.ts';
import { formatSpoken } from '../../../src/telling/numbers/formatNumber.ts';
import { textBox } from '../../../src/telling/scene/box.ts';
import { type Scene, textsOf } from '../../../src/telling/scene/scene.ts';
import { sceneToSvg } from '../../../src/telling/scene/svg.ts';
import { shelf } from '../../answer/solveText.ts';

let solved: SolvedStudy;
let anew: Anew;

beforeAll(async () => {
  const text = await readFile(new URL('../../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  solved = await solveStudyLive(outcome.study, shelf);
  anew = { study: outcome.study, materials: await gatherMaterials(outcome.study.engines, shelf) };
});

const usual: Omit<ClipRequest, 'figure'> = {
  size: '16:9',
  theme: 'light',
  transparent: false,
  from: 0,
  to: 'vacuum',
  at: 0,
};
const timing = { ...USUAL_TIMING, rate: frameRateOf('24'), seconds: 2, holdFirst: 0, holdLast: 0 };
const made = (request: Partial<ClipRequest> & { figure: string }): Clip =>
  clipOf(movementOf(solved, [], [], { ...usual, ...request }), timing);
const inFrames = (clip: Clip, frames: readonly number[]): string[] =>
  frames.map((n) => sceneToSvg(clip.frame(n)));

const all = [
  { figure: 'cut' },
  { figure: 'specific-impulse' },
  { figure: 'thrust', kind: 'build-up' },
  { figure: 'push', engine: 'plug' },
  { figure: 'pressure-along-wall' },
  { figure: 'pressure-along-wall', kind: 'altitude' },
  { figure: 'ascent-booster' },
] as const;

describe.each(all)('the clip of %o', (request) => {
  it('has the same frame n on every run and in any order, and moves', () => {
    const [first, second] = [made(request), made(request)];
    const there = inFrames(first, [0, 20, 47]);
    expect(inFrames(second, [47, 20, 0]).reverse()).toEqual(there);
    expect(new Set(there).size).toBe(3);
  });

  it('carries the caution in every frame, and keeps all words on the picture', () => {
    const clip = made({ ...request, size: '9:16', theme: 'dark' });
    for (const n of [0, 30, 47]) {
      const scene = clip.frame(n);
      const texts = textsOf(scene.children);
      expect(texts.map(({ text }) => text).join(' ')).toContain(
        CAUTION_SHORT.split(' ').slice(0, 4).join(' '),
      );
      for (const text of texts) {
        const box = textBox(text);
        expect(box.x, text.text).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width, text.text).toBeLessThanOrEqual(scene.width);
      }
    }
  });
});

describe('a climb', () => {
  it('shows in each frame the number that the engine has at its altitude', () => {
    const clip = made({ figure: 'cut', from: 10_000, to: 10_000.4 });
    const texts = textsOf(clip.frame(0).children).map(({ text }) => text.replaceAll('\u00a0', ' '));
    expect(texts).toContain('10.0 km');
    // U.S. Standard Atmosphere 1976, table I: 2.6500e4 Pa at 10 km geometric.
    expect(texts).toContain('0.265 bar');
  });

  it('moves nothing but what changes: words stand where they stood, digits keep their place', () => {
    const clip = made({ figure: 'cut' });
    const places = (n: number) =>
      new Map(
        textsOf(clip.frame(n).children).map((text) => [text.text, `${text.x.toFixed(2)} ${text.size}`]),
      );
    const [low, high] = [places(5), places(40)];
    for (const standing of ['Alder B', 'Alder P', 'air outside', 'vacuum', '40'])
      expect(high.get(standing), standing).toBe(low.get(standing));
    const number = (n: number) =>
      textsOf(clip.frame(n).children).find(({ text }) => text.endsWith('km') && text.includes('.'));
    expect(number(5)).toMatchObject({ anchor: 'end', x: number(40)?.x });
  });

  it('ends in vacuum', () => {
    const texts = textsOf(made({ figure: 'specific-impulse' }).frame(47).children).map(({ text }) => text);
    expect(texts.filter((text) => text === 'vacuum').length).toBe(2);
    expect(texts).toContain('none');
  });
});

describe('a throttle ramp', () => {
  it('shows at each step the thrust that an ask at that throttle is told, and the step it is drawn for', async () => {
    const clip = made({ figure: 'cut', kind: 'throttle', anew, throttles: [1, 0.96], at: 20_000 });
    const texts = (n: number) =>
      textsOf(clip.frame(n).children).map(({ text }) => text.replaceAll('\u00a0', ' '));
    expect(texts(0)).toContain('100 %');
    const crew = await localCrew(anew.study, shelf);
    const ambient = { kind: 'altitude', altitude: 20_000 } as const;
    const ask = { engine: 'bell', quantity: 'thrust', ambient, throttle: 0.96, station: null, inputs: [] };
    const [[told] = []] = await crew.tell([ask], [{}]);
    if (!told?.ok) throw new Error('no thrust was told');
    expect(texts(47)).toEqual(
      expect.arrayContaining(['96 %', formatSpoken('thrust', told.value).replaceAll('\u00a0', ' ')]),
    );
  });

  it('that does not move is refused', () => {
    expect(() => made({ figure: 'cut', kind: 'throttle', anew, throttles: [0.5, 0.5] })).toThrow(
      /does not move/,
    );
  });
});

describe('what is asked for', () => {
  it('is refused where there is no such figure, or it does not move so', () => {
    expect(() => made({ figure: 'outlines' })).toThrow(/no figure “outlines”/);
    expect(() => made({ figure: 'cut', kind: 'build-up' })).toThrow(/cannot move by build-up/);
    expect(() => made({ figure: 'push', engine: 'nobody' })).toThrow(/no engine “nobody”/);
    expect(() => made({ figure: 'push', engine: 'adapting' })).toThrow(/not known where the thrust/);
  });

  it('is among the figures listed', () => {
    expect(clipFigures(solved, ['area-ratio']).map(({ name }) => name)).toEqual(
      expect.arrayContaining(['cut', 'push', 'ascent-booster', 'sweep-area-ratio']),
    );
  });
});

describe('pressure along the wall while the engines climb', () => {
  it('has one scale and one head all the way, and the wall of the plug at each altitude as it is found there', () => {
    const movement = movementOf(solved, [], [], {
      ...usual,
      figure: 'pressure-along-wall',
      kind: 'altitude',
    });
    const scenes = [0, 0.3, 0.7, 1].map((share) => movement.at(share));
    const named = (scene: Scene, name: string): string =>
      JSON.stringify(scene.children.filter((node) => node.kind === 'group' && node.name === name));
    for (const part of ['grid', 'axis', 'head', 'foot'])
      expect(new Set(scenes.map((scene) => named(scene, part))).size, part).toBe(1);
    const curve = (scene: Scene): string => named(scene, 'engine-2 curve');
    expect(curve(scenes[0]!)).not.toBe(curve(scenes[3]!));
    expect(named(scenes[0]!, 'engine-1 curve')).toBe(named(scenes[3]!, 'engine-1 curve'));
    const texts = scenes.map((scene) =>
      textsOf(scene.children)
        .map(({ text }) => text)
        .join(' '),
    );
    expect(texts[0]).toContain('0.0\u00a0km');
    // U.S. Standard Atmosphere 1976 at sea level: 1.01325 bar.
    expect(texts[0]).toContain('1.013\u00a0bar');
    expect(texts[3]).toContain('vacuum');
  });
});
