/** A problem of a sentence’s test as a problem of the study’s file, with line and column. */

import type { StudyProblem } from '../../study/model.ts';
import { placeInTest } from '../../study/placeInTest.ts';
import type { ExpressionProblem } from './model.ts';

/**
 * @param file  how the file is called in messages
 * @param text  of the whole study
 * @param id    of the sentence whose test has the problem
 */
export function testProblem(
  file: string,
  text: string,
  id: string,
  problem: ExpressionProblem,
): StudyProblem {
  const { start: _start, end: _end, ...plain } = problem;
  const place = placeInTest(text, id, problem.start);
  const path = `sentences.${id}.holds`;
  const line = place === null ? '' : `:${place.line}:${place.column}`;
  return { ...plain, where: `${file}${line} (${path})`, file, place, path };
}
