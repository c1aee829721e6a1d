/** The captions of the finished film laid beside its script: when each line is said, and what is said otherwise. */

import type { Passage } from '../../answer/claims/model.ts';
import type { Script } from '../../study/script/model.ts';
import type { NumbersTold } from '../time/model.ts';
import { align } from './align.ts';
import { type FilmToken, filmTokens } from './filmTokens.ts';
import type { Laid } from './laid.ts';
import type { FilmLine, FilmRead, FilmScene } from './model.ts';
import { isSameNumber } from './sameNumber.ts';
import { placedLines, type ScriptToken, scriptTokens } from './scriptTokens.ts';
import { slipsOf } from './slips.ts';

/** A line of which less is said is not said. */
const SAID_FROM = 0.3;

/** @throws ProblemError where both are too long to be held against each other */
export function readFilm(script: Script, numbers: NumbersTold, passages: readonly Passage[]): FilmRead {
  const lines = placedLines(script, numbers);
  const [meant, film] = [scriptTokens(lines, numbers), filmTokens(passages)];
  const isSame = (a: ScriptToken, b: FilmToken): boolean => isSameNumber(a.number!, b.number!, a.live);
  const pairs = align(meant, film, (a, b) => isSame(a as ScriptToken, b as FilmToken));
  const laid: Laid = { lines, script: meant, film, pairs };
  const filmLines = lineTimes(laid);
  const found = filmLines.map(({ found: words }) => words).reduce((sum, words) => sum + words, 0);
  const told = filmLines.map(({ found: _, ...line }): FilmLine => line);
  return {
    lines: told,
    scenes: sceneTimes(script, told),
    slips: slipsOf(laid, told),
    said: meant.length === 0 ? 0 : found / meant.length,
  };
}

/** From the first word said to the last. */
function lineTimes({ lines, script, film, pairs }: Laid): readonly (FilmLine & { readonly found: number })[] {
  const spans = lines.map(() => ({ start: Number.POSITIVE_INFINITY, end: 0, found: 0, of: 0 }));
  for (const { line } of script) spans[line]!.of += 1;
  for (const { a, b } of pairs) {
    if (a === null || b === null || !isSaid(script[a]!, film[b]!)) continue;
    const span = spans[script[a]!.line]!;
    span.found += 1;
    span.start = Math.min(span.start, film[b]!.start);
    span.end = Math.max(span.end, film[b]!.end);
  }
  return lines.map(({ line, scene }, i) => {
    const { start, end, found, of } = spans[i]!;
    const said = of === 0 ? 0 : found / of;
    const isThere = found > 0 && said >= SAID_FROM;
    return { id: line.id, scene, start: isThere ? start : null, end: isThere ? end : null, said, found };
  });
}

/** The same word, or a number where a number is meant. */
const isSaid = (meant: ScriptToken, said: FilmToken): boolean => meant.key === said.key;

function sceneTimes({ scenes }: Script, lines: readonly FilmLine[]): readonly FilmScene[] {
  return scenes.map(({ id, name }) => {
    const own = lines.flatMap(({ scene, start, end }) =>
      scene === id && start !== null && end !== null ? [{ start, end }] : [],
    );
    if (own.length === 0) return { id, name, start: null, end: null };
    return {
      id,
      name,
      start: Math.min(...own.map((one) => one.start)),
      end: Math.max(...own.map((one) => one.end)),
    };
  });
}
