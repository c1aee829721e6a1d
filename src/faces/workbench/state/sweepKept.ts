/** A sweep or map that was tried out, written into the study. */

import type { ListEntry } from '../../../study/listEdit.ts';
import { mapKey } from './ownSweeps.ts';
import { commitEdits } from './studyEdits.ts';
import { solved } from './studyStore.ts';
import {
  chosenSweep,
  ends,
  sweepProblem,
  triedMap,
  triedQuantity,
  triedRequest,
  typedEnds,
} from './sweepTrial.ts';

/** Writes what is tried out into the study, and shows it as the study's own. */
export async function keepSweep(): Promise<void> {
  const [map, tried] = [triedMap.value, triedRequest.value];
  const study = solved.value?.study;
  if (map !== null) {
    const id = freshId([triedQuantity.value, map.across.over, map.up.over], study?.maps);
    const sides = { across: { over: map.across.over, ...keptEnds() }, up: { over: map.up.over } };
    await keep('maps', { id, of: map.of, ...sides }, mapKey(id));
  } else if (tried !== null) {
    const id = freshId([triedQuantity.value, tried.range.over], study?.sweeps);
    await keep('sweeps', { id, of: tried.of, over: tried.range.over, ...keptEnds() }, id);
  }
}

/** Ends as they were typed, the lower one first; none where the usual ones stand. */
function keptEnds(): { readonly from?: string; readonly to?: string } {
  const [typed, shown] = [typedEnds.value, ends.value];
  if (shown === null || shown.isFault || (typed.from === null && typed.to === null)) return {};
  const { from, to, words } = shown;
  return words === null ? { from, to } : { from: to, to: from };
}

async function keep(list: 'sweeps' | 'maps', add: ListEntry, key: string): Promise<void> {
  const [problem] = await commitEdits([{ list, add }]);
  if (problem !== undefined) sweepProblem.value = problem;
  else chosenSweep.value = key;
}

function freshId(words: readonly string[], others: readonly { readonly id: string }[] = []): string {
  const taken = new Set(others.map(({ id }) => id));
  const plain = words.join('-').replace(/[^A-Za-z0-9-]+/g, '-');
  let id = plain;
  for (let number = 2; taken.has(id); number++) id = `${plain}-${number}`;
  return id;
}
