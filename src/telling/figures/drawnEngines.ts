/** Which engines a figure draws, and in which style: the order of the study decides, and never changes. */

import type { EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { ENGINE_STYLES, type EngineStyle } from '../look/engineStyles.ts';
import type { FigureOptions } from './options.ts';

export interface DrawnEngine {
  readonly engine: EngineAnswer;
  readonly style: EngineStyle;
}

export interface Drawn {
  readonly engines: readonly DrawnEngine[];
  /** Names of the engines for which there was no room. */ readonly leftOut: readonly string[];
}

/** The first `most` engines of the study, the compared ones before others. */
export function drawnEngines(answer: StudyAnswer, most: 2 | 4, styles: FigureOptions['styles'] = {}): Drawn {
  const all = Object.values(answer.engines);
  const first = all[0];
  if (!first)
    throw new ProblemError({
      code: 'nothing-to-draw',
      what: 'No engine of this study could be computed, so there is nothing to draw.',
      mend: 'Mend the problems that the answer lists under `failed`.',
    });
  const pair = answer.comparison ? [answer.comparison.base, answer.comparison.other] : [];
  const ranked = [...all].sort((a, b) => Number(pair.includes(b.id)) - Number(pair.includes(a.id)));
  const chosen = new Set(ranked.slice(0, most));
  const engines = all.filter((engine) => chosen.has(engine));
  return {
    engines: engines.map((engine) => ({ engine, style: styles[engine.id] ?? styleOf(all, engine, engines) })),
    leftOut: all.filter((engine) => !chosen.has(engine)).map((engine) => engine.name),
  };
}

/** Styles of all engines as they are drawn, by their id. */
export function drawnStyles(answer: Pick<StudyAnswer, 'engines'>): Readonly<Record<string, EngineStyle>> {
  const all = Object.values(answer.engines);
  return Object.fromEntries(all.map((engine) => [engine.id, styleOf(all, engine, all)]));
}

/** Style by place in the study; a fifth engine takes a style that no other drawn engine has. */
function styleOf(
  all: readonly EngineAnswer[],
  engine: EngineAnswer,
  drawn: readonly EngineAnswer[],
): EngineStyle {
  const own = ENGINE_STYLES[all.indexOf(engine)];
  if (own) return own;
  const taken = new Set(drawn.map((other) => all.indexOf(other)).filter((i) => i < ENGINE_STYLES.length));
  const free = ENGINE_STYLES.filter((_, i) => !taken.has(i));
  const late = drawn.filter((other) => all.indexOf(other) >= ENGINE_STYLES.length);
  return free[late.indexOf(engine)] ?? ENGINE_STYLES[3];
}

/** True for the bound that no real nozzle beats: its exit pressure follows the air. */
export function adapts(engine: EngineAnswer): boolean {
  return engine.models.includes('nozzle-adapting');
}

/** The engine with the wall and bodies of the mode in use: a skirt drawn up or out, an insert in place or gone. */
export function inMode(engine: EngineAnswer, mode: string | undefined): EngineAnswer {
  const position = engine.positions.find((each) => each.mode === mode);
  return position === undefined ? engine : { ...engine, contour: position.contour, wall: position.wall };
}
