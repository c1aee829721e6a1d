/** A script and each of its cuts, with numbers and times. */

import type { ToldNumbers } from '../../answer/numbers/index.ts';
import { attempt } from '../../numerics/problem.ts';
import type { Script, ScriptRead } from '../../study/script/model.ts';
import { proposeCut } from '../cut/proposeCut.ts';
import { numbersTold, resolveScript } from '../script/index.ts';
import type { ResolvedScript } from '../script/model.ts';
import type { NumbersTold, TimedScript } from '../time/model.ts';
import { pacesOf, timeScript } from '../time/timeScript.ts';

export interface ScriptParts {
  readonly read: ScriptRead;
  /** `script.md` as its owner wrote it. */ readonly text: string;
  readonly told: ToldNumbers;
}

export interface TimedCut {
  /** Empty for the whole. */ readonly name: string;
  readonly resolved: ResolvedScript;
  readonly timed: TimedScript;
  /** Of its files, without ending; each cut has its own. */ readonly stem: string;
}

export interface TimedCuts {
  /** The whole first. */ readonly cuts: readonly TimedCut[];
  /** Cuts that cannot be made, and why, one line each. */ readonly notes: readonly string[];
  readonly numbers: NumbersTold;
}

export function timedCuts({ read: { script }, told }: ScriptParts): TimedCuts {
  const numbers = numbersTold(told, script.units);
  const paces = pacesOf(script);
  const { made, notes } = cutsOf(script, numbers);
  const all = [{ name: '', script }, ...made];
  const stems = fileNames(all.map(({ name }) => name));
  const cuts = all.map(({ name, script: own }) => ({
    name,
    resolved: resolveScript(own, told),
    timed: timeScript(own, numbers, paces),
    stem: stems.get(name)!,
  }));
  return { cuts, notes, numbers };
}

/** Endings of further files of a cut: no other cut's file may be called so. */
const FURTHER = /-(?:live|chapters|reading)$/;

/**
 * Names of cuts come from the script: only letters, digits and hyphens go into a file's name, and each has one of its own, also
 * where names differ in no more than capitals or dots.
 */
function fileNames(cuts: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  return new Map(
    cuts.map((name) => {
      const plain = name === '' ? 'whole' : `cut-${fileWord(name)}`;
      let free = plain;
      for (let n = 2; taken.has(free) || FURTHER.test(free); n++) free = `${plain}-${n}`;
      taken.add(free);
      return [name, free];
    }),
  );
}

/** Only small letters, digits and hyphens. */
export const fileWord = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '-');

function cutsOf(
  script: Script,
  numbers: NumbersTold,
): {
  readonly made: readonly { readonly name: string; readonly script: Script }[];
  readonly notes: readonly string[];
} {
  const made: { name: string; script: Script }[] = [];
  const notes: string[] = [];
  for (const wish of script.cuts) {
    const outcome = attempt(() => proposeCut(script, numbers, wish));
    if (outcome.ok) made.push({ name: wish.name, script: outcome.value.script });
    else
      notes.push(
        `The cut ${wish.name} is not in the package. ${outcome.problem.what} ${outcome.problem.mend}`,
      );
  }
  return { made, notes };
}
