import { ProblemError } from '../../src/numerics/problem.ts';
import type { Script } from '../../src/study/script/model.ts';
import type { Cut, CutWish } from '../../src/telling/cut/model.ts';
import { proposeCut } from '../../src/telling/cut/proposeCut.ts';
import { pacesOf, timeScript } from '../../src/telling/time/timeScript.ts';
import { lineOf, PRESSURE, sceneOf, scriptOf } from '../telling/time/buildScript.ts';
import { type Random, randomFrom } from './random.ts';

export interface CutCase {
  readonly script: Script;
  readonly wish: CutWish;
}

const whole = (random: Random, low: number, high: number): number =>
  Math.floor(random.between(low, high + 1));

/** Scenes of a few lines with weights, reliances onto lines and scenes, and a writer's wishes. */
export function makeCutCase(
  seed: number,
  most: { readonly scenes: number; readonly lines: number },
): CutCase {
  const random = randomFrom(seed);
  const sizes = Array.from({ length: whole(random, 1, most.scenes) }, () => whole(random, 1, most.lines));
  const ids = sizes.flatMap((size, s) => [
    `s${s}`,
    ...Array.from({ length: size }, (_, i) => `s${s}.${i + 1}`),
  ]);
  const density = random.pick([0, 0.15, 0.3, 0.5]);
  const relies = (self: string): readonly string[] =>
    random.chance(density)
      ? [random.pick(ids), random.pick(ids)].slice(whole(random, 0, 1)).filter((id) => id !== self)
      : [];
  const heavy = random.pick([1, 10, 100]);
  const scenes = sizes.map((size, s) =>
    sceneOf(
      `s${s}`,
      Array.from({ length: size }, (_, i) => {
        const id = `s${s}.${i + 1}`;
        const words = 'word '.repeat(whole(random, 1, 25)) + (random.chance(0.2) ? '{{p}}' : '');
        const weight = random.chance(0.3) ? 1 : whole(random, 0, 2 * heavy) / 2;
        return lineOf(id, words, { weight, relies: relies(id), pause: random.chance(0.2) ? 0.7 : 0 });
      }),
      {
        weight: random.chance(0.4) ? whole(random, 0, heavy) : 0,
        relies: random.chance(0.3) ? relies(`s${s}`) : [],
      },
    ),
  );
  const script = scriptOf(scenes);
  const { seconds } = timeScript(script, PRESSURE);
  const named = (share: number): readonly string[] => (random.chance(share) ? [random.pick(ids)] : []);
  return { script, wish: { length: seconds * random.between(0.05, 1), keep: named(0.3), leave: named(0.2) } };
}

/** What a law of cuts says of this one; null where it keeps them all. */
export function breachOf({ script, wish }: CutCase, cut: Cut): string | null {
  const kept = new Set(cut.script.scenes.flatMap(({ lines }) => lines.map(({ id }) => id)));
  const { seconds } = timeScript(cut.script, PRESSURE, pacesOf(script));
  if (Math.abs(seconds - cut.seconds) > 1e-9) return `told ${cut.seconds} s, takes ${seconds} s`;
  if (Math.round(10 * seconds) > Math.round(10 * wish.length))
    return `${seconds} s are more than ${wish.length} s`;
  for (const scene of script.scenes) {
    for (const line of scene.lines) {
      if (!kept.has(line.id)) continue;
      for (const id of [...line.relies, ...scene.relies]) {
        const missing = linesBehind(script, id).find((one) => !kept.has(one));
        if (missing !== undefined) return `${line.id} stands without ${missing}`;
      }
    }
  }
  const told = cut.lines.filter((line) => line.kept).map(({ id }) => id);
  if (told.join() !== [...kept].join()) return 'the list of lines is not that of the script';
  if (Math.abs(weightOf(script, kept) - cut.weight) > 1e-9) return 'the weight told is not that of the lines';
  return null;
}

const linesBehind = ({ scenes }: Script, id: string): readonly string[] => {
  const scene = scenes.find((one) => one.id === id);
  return scene === undefined ? [id] : scene.lines.map((line) => line.id);
};

function weightOf({ scenes }: Script, kept: ReadonlySet<string>): number {
  return scenes.reduce((sum, { weight, lines }) => {
    const own = lines.filter(({ id }) => kept.has(id));
    return sum + (own.length > 0 ? weight : 0) + own.reduce((all, line) => all + line.weight, 0);
  }, 0);
}

/** By looking at every set of lines; null where none meets the wishes. A line's own word counts before its scene's. */
export function bruteForce({ script, wish }: CutCase): number | null {
  const lines = script.scenes.flatMap((scene) => scene.lines.map((line) => ({ line, scene })));
  const ids = lines.map(({ line }) => line.id);
  const tenths = timeScript(script, PRESSURE).scenes.flatMap((scene) =>
    scene.lines.map(({ seconds }) => Math.round(10 * seconds)),
  );
  const bits = (named: readonly string[]): number =>
    named.reduce(
      (sum, id) => linesBehind(script, id).reduce((all, one) => all | (1 << ids.indexOf(one)), sum),
      0,
    );
  const own = (named: readonly string[]): number => bits(named.filter((id) => ids.includes(id)));
  const needs = lines.map(({ line, scene }) => bits([...line.relies, ...scene.relies]));
  const must = own(wish.keep) | (bits(wish.keep) & ~own(wish.leave));
  const mustNot = own(wish.leave) | (bits(wish.leave) & ~own(wish.keep));
  const scenes = script.scenes.map(({ id, weight }) => [bits([id]), weight] as const);
  const room = Math.round(10 * wish.length);
  let best: number | null = null;
  for (let set = 0; set < 1 << lines.length; set++) {
    if ((set & must) !== must || (set & mustNot) !== 0) continue;
    let time = 0;
    let isClosed = true;
    for (let i = 0; i < lines.length && isClosed; i++) {
      if (((set >> i) & 1) === 0) continue;
      time += tenths[i]!;
      isClosed = (needs[i]! & ~set) === 0 && time <= room;
    }
    if (!isClosed) continue;
    let weight = scenes.reduce((sum, [own_, bonus]) => sum + ((set & own_) !== 0 ? bonus : 0), 0);
    for (let i = 0; i < lines.length; i++) if (((set >> i) & 1) === 1) weight += lines[i]!.line.weight;
    if (best === null || weight > best) best = weight;
  }
  return best;
}

export interface CutOutcome {
  /** `cut`, the code of the typed problem, or `wrong`. */ readonly outcome: string;
  readonly detail: string;
  /** Weight by which the best cut may be heavier. */ readonly short: number;
}

/** @param isSmall small enough for every set of lines to be looked at */
export function runCutCase(one: CutCase, isSmall: boolean): CutOutcome {
  const wrong = (detail: string): CutOutcome => ({ outcome: 'wrong', detail, short: 0 });
  const best = isSmall ? bruteForce(one) : null;
  try {
    const cut = proposeCut(one.script, PRESSURE, one.wish);
    const breach = breachOf(one, cut);
    if (breach !== null) return wrong(breach);
    if (isSmall && (best === null || Math.abs(best - cut.weight) > 1e-9)) {
      return wrong(`weight ${cut.weight}, by every set ${best ?? 'none'}`);
    }
    if (isSmall && cut.short !== 0) return wrong('a small script is not settled');
    return { outcome: 'cut', detail: '', short: cut.short };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const { code } = error.problem;
    // Nothing of weight fits: the empty cut is the best of all.
    const agrees = code === 'cut-empty' ? best === 0 : best === null;
    return isSmall && !agrees
      ? wrong(`${code}, by every set ${best ?? 'none'}`)
      : { outcome: code, detail: '', short: 0 };
  }
}
