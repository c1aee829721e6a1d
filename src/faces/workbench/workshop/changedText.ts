/** The text of a study after edits made on the page. */

import { editStudy, placeInList, type StudyChange } from '../../../study/edit.ts';
import { editsForNozzleKind, nozzleKinds } from '../../../study/nozzleKind.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import type { Edit, ValueEdit } from './messages.ts';

/** @throws ProblemError where the result would be no valid study */
export function changedText(text: string, edits: readonly Edit[], options: ReadOptions): string {
  const changes = edits.flatMap((one) => ('list' in one ? [one] : changesFor(text, one, options)));
  return editStudy(text, changes, options);
}

/** One value is one edit; another kind of nozzle takes other keys along. */
function changesFor(text: string, { path, value }: ValueEdit, options: ReadOptions): readonly StudyChange[] {
  const [, id] = /^engines\.([^.]+)\.nozzle\.kind$/.exec(path) ?? [];
  const kind = nozzleKinds.find((each) => each === value);
  if (id !== undefined && kind !== undefined) {
    const outcome = readStudy(text, options);
    const engine = outcome.ok ? outcome.study.engines.find((each) => each.id === id) : undefined;
    if (engine !== undefined) return editsForNozzleKind(text, engine, kind);
  }
  return [{ path: stepsOf(text, path), value }];
}

/** In a list an entry is reached by its place. */
function stepsOf(text: string, path: string): readonly (string | number)[] {
  const [, id, key] = /^sentences\.(.+)\.(\w+)$/.exec(path) ?? [];
  const place = id === undefined ? null : placeInList(text, 'sentences', id);
  return place === null || key === undefined ? path.split('.') : ['sentences', place, key];
}
