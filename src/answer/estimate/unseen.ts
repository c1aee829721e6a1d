/** Which changes of inputs a first estimate cannot see. */

import type { EngineInput } from '../../study/model.ts';

/** Inputs of a nozzle that the mean flow and a formula know all about, besides its area ratio. */
const SEEN: Readonly<Record<EngineInput['nozzle']['kind'], readonly string[]>> = {
  ideal: [],
  adapting: [],
  cone: ['halfAngle'],
  bell: ['length', 'throatAngle', 'lipAngle'],
  idealBell: [],
  plug: [],
  extendableSkirt: ['shortAreaRatio'],
  insert: ['insertAreaRatio'],
  expansionDeflection: [],
  dualBell: ['baseAreaRatio'],
};

/** What a plug cut anew knows besides. */
const SEEN_BY_RECUT: readonly string[] = ['kept', 'innerMach'];

/** Whether only the full answer can say what this change does. @param isRecut a plug has been cut anew */
export function isUnseen(before: EngineInput, now: EngineInput, isRecut = false): boolean {
  const { nozzle: was } = before;
  const { nozzle: is } = now;
  if (was.kind !== is.kind || before.losses !== now.losses) return true;
  if (leavesAnInputOpen(before) || leavesAnInputOpen(now)) return true;
  const seen = ['kind', 'areaRatio', ...SEEN[is.kind], ...(isRecut ? SEEN_BY_RECUT : [])];
  const [left, right] = [was, is] as unknown as readonly Readonly<Record<string, unknown>>[];
  return Object.keys({ ...left, ...right }).some(
    (key) => !seen.includes(key) && !areAlike(left?.[key], right?.[key]),
  );
}

/** Its published figures settle one of its inputs: that takes the full model many times over. */
function leavesAnInputOpen({ published }: EngineInput): boolean {
  return published?.solveFor !== null && published?.solveFor !== undefined;
}

/** The same values, wherever and in whichever words they are written. */
export function areAlike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [left, right] = [a, b] as readonly Readonly<Record<string, unknown>>[];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every(
    (key) => key === 'path' || key === 'text' || areAlike(left?.[key], right?.[key]),
  );
}
