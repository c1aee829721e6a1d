/** What an edit does to the study, in a few words: for the buttons that take it back and do it again. */

import type { Study } from '../../../study/model.ts';
import type { Edit } from '../workshop/messages.ts';
import { inputRows } from './inputRows.ts';
import { vehicleRows } from './vehicleRows.ts';

const singular: Readonly<Record<string, string>> = {
  sentences: 'sentence',
  sweeps: 'sweep',
  maps: 'map',
};

export function editWords(edits: readonly Edit[], study: Study | undefined): string {
  const [first] = edits;
  if (first === undefined) return 'a change';
  if ('list' in first) {
    const what = singular[first.list] ?? first.list;
    return 'add' in first ? `a ${what} added` : `a ${what} taken out`;
  }
  const [list = '', id = ''] = first.path.split('.');
  const what = singular[list];
  if (what !== undefined) return `the ${what} “${id}” changed`;
  return `${placesWords(first.path, edits, study)}: ${first.value === null ? 'taken out' : String(first.value)}`;
}

/** The same input of two engines is told once: `Alder B and Alder P, chamber pressure`. */
function placesWords(path: string, edits: readonly Edit[], study: Study | undefined): string {
  const names = edits.flatMap((edit) => {
    const engine = 'path' in edit && tailOf(edit.path) === tailOf(path) ? edit.path.split('.')[1] : undefined;
    return study?.engines.find(({ id }) => id === engine)?.name ?? [];
  });
  const words = placeWords(path, study);
  return names.length < 2 ? words : words.replace(names[0]!, names.join(' and '));
}

const tailOf = (path: string): string => path.split('.').slice(2).join('.');

/** `Alder B, chamber pressure`. */
function placeWords(path: string, study: Study | undefined): string {
  for (const owner of study?.engines ?? []) {
    const row = inputRows(owner).find((one) => one.path === path);
    if (row !== undefined) return `${owner.name}, ${row.label.toLowerCase()}`;
  }
  for (const owner of study?.vehicles ?? []) {
    const row = vehicleRows(owner).find((one) => one.path === path);
    if (row !== undefined) return `${owner.name}, ${row.label.toLowerCase()}`;
  }
  return path;
}

/** Edits of the same places belong to one gesture; lists are added to one entry at a time. */
export function gestureOf(edits: readonly Edit[]): string | null {
  if (edits.some((edit) => 'list' in edit)) return null;
  return edits.map((edit) => ('path' in edit ? edit.path : '')).join(' ');
}
