/** The inputs as the file had them when this page opened it: what taking back goes back to. */

import { effect, signal } from '@preact/signals';
import type { Study } from '../../../study/model.ts';
import type { ValueEdit } from '../workshop/messages.ts';
import { isSame } from './inputLines.ts';
import { type InputRow, inputRows } from './inputRows.ts';
import { solved } from './studyStore.ts';
import { vehicleRows } from './vehicleRows.ts';

const opened = signal<ReadonlyMap<string, InputRow>>(new Map());
effect(() => {
  const study = solved.value?.study;
  if (study === undefined || opened.peek().size > 0) return;
  opened.value = new Map(rowsOf(study).map((row) => [row.path, row]));
});

function rowsOf({ engines, vehicles }: Study): readonly InputRow[] {
  return [...engines.flatMap(inputRows), ...vehicles.flatMap(vehicleRows)];
}

export interface WayBack {
  /** What it goes back to, in words. */ readonly words: string;
  readonly edits: readonly ValueEdit[];
}

/** Null where the input is as it was, or was not there. */
export function wayBack(row: InputRow): WayBack | null {
  const then = opened.value.get(row.path);
  if (then === undefined || row.fixed || then.fixed) return null;
  if (isSame(then, row) && then.origin === row.origin) return null;
  const { path, origin, text } = then;
  if (path.endsWith('.nozzle.kind'))
    return { words: `${text}, with its own inputs`, edits: nozzleBack(then) };
  const value = origin === 'own' ? text : null;
  return { words: `${text}${originWords[origin]}`, edits: [{ path, value }] };
}

const originWords: Readonly<Record<InputRow['origin'], string>> = {
  own: '',
  shared: ' of the engine that this one is like',
  default: ', the default',
};

/** Another kind had inputs of its own, which come back with it. */
function nozzleBack(kind: InputRow): readonly ValueEdit[] {
  const below = kind.path.slice(0, -'kind'.length);
  const others = [...opened.value.values()].filter(
    ({ path, origin, fixed }) =>
      path.startsWith(below) && path !== kind.path && origin === 'own' && fixed !== true,
  );
  return [kind, ...others].map(({ path, text }) => ({ path, value: text }));
}
