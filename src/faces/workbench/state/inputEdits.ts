/** What an edit of one input writes: with a lock, for both engines. */

import type { ValueEdit } from '../workshop/messages.ts';
import type { InputCell, InputLine } from './inputLines.ts';
import { locks } from './inputLocks.ts';
import { wayBack } from './openedInputs.ts';

/** Writing `text` for one engine of a line. */
export function editsOf({ key, cells }: InputLine, cell: InputCell, text: string): readonly ValueEdit[] {
  const own = cell.row === undefined ? [] : [cell.row.path];
  const other = cells.find((one) => one !== cell);
  const isLocked = locks.value.has(key) && other?.row !== undefined && other.row.fixed !== true;
  const paths = isLocked ? lockedPaths(cell, other) : own;
  return paths.map((path) => ({ path, value: text }));
}

/** An engine that takes the input from the other follows by itself. */
function lockedPaths(cell: InputCell, other: InputCell): readonly string[] {
  const [own, its] = [cell.row?.path, other.row?.path].filter((path) => path !== undefined);
  if (own === undefined || its === undefined) return [];
  if (follows(other, cell)) return [own];
  if (follows(cell, other)) return [its];
  return [own, its];
}

function follows({ row, engine }: InputCell, leader: InputCell): boolean {
  if (row?.origin === 'shared') return row.stated?.path.startsWith(`engines.${leader.engine.id}.`) === true;
  return row?.origin === 'default' && engine.input.like === leader.engine.id;
}

/** What `from` has, written for the other; empty where one of them has no such input. */
export function copyEdits({ cells, stands }: InputLine, from: InputCell): readonly ValueEdit[] {
  const to = cells.find((cell) => cell !== from)?.row;
  if (stands !== 'differs' || to === undefined || to.fixed || from.row === undefined) return [];
  return [{ path: to.path, value: from.row.text }];
}

export interface LineBack {
  readonly words: string;
  readonly edits: readonly ValueEdit[];
}

/** All of a line as it was when the file was opened; null where it is. */
export function lineBack({ cells }: InputLine): LineBack | null {
  const ways = cells.flatMap(({ row, engine }) => {
    const way = row === undefined ? null : wayBack(row);
    return way === null ? [] : [{ name: engine.input.name, ...way }];
  });
  if (ways.length === 0) return null;
  return {
    words: ways.map(({ name, words }) => `${name} ${words}`).join(', '),
    edits: ways.flatMap(({ edits }) => edits),
  };
}
