/** What the writer wishes, line by line: which must stay with all they rely on, which must go with all that relies on them. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Script } from '../../study/script/model.ts';
import { type Closures, closuresOf, eachBit, hasBit } from './knapsack/closures.ts';
import type { CutWish } from './model.ts';

/** A script's lines by place, and what each relies on. */
export interface Reliance {
  readonly ids: readonly string[];
  /** Places of lines that each relies on itself, or by its scene. */ readonly needs: readonly (readonly number[])[];
  readonly closures: Closures;
  /** Places of the line or of the lines of the scene; null for an unknown id. */
  readonly placesOf: (id: string) => readonly number[] | null;
}

/** @throws ProblemError where a line relies on one that there is not */
export function relianceOf({ scenes }: Script): Reliance {
  const lines = scenes.flatMap((scene) => scene.lines.map((line) => ({ line, scene })));
  const byId = new Map<string, readonly number[]>();
  for (const scene of scenes) {
    const places = lines.flatMap((one, i) => (one.scene === scene ? [i] : []));
    byId.set(scene.id, places);
  }
  lines.forEach(({ line }, i) => {
    byId.set(line.id, [i]);
  });
  const needs = lines.map(({ line, scene }, i) => {
    const found = new Set<number>();
    for (const id of [...line.relies, ...scene.relies]) {
      const places = byId.get(id);
      if (places === undefined) throw unknown(`The line ${line.id} relies on ${id}`);
      for (const place of places) if (place !== i) found.add(place);
    }
    return [...found];
  });
  const ids = lines.map(({ line }) => line.id);
  return { ids, needs, closures: closuresOf(needs), placesOf: (id) => byId.get(id) ?? null };
}

const unknown = (what: string): ProblemError =>
  new ProblemError({
    code: 'line-unknown',
    what: `${what}, and there is no such line or scene.`,
    mend: 'Name a line or scene of the script.',
  });

export interface Settled {
  /** Named by the writer. */ readonly kept: ReadonlySet<number>;
  readonly left: ReadonlySet<number>;
  /** The same with all that follows. */ readonly forced: ReadonlySet<number>;
  readonly barred: ReadonlySet<number>;
}

/** @throws ProblemError where wishes contradict each other; a line's own word counts before that of its scene */
export function settledWishes(reliance: Reliance, { keep, leave }: Pick<CutWish, 'keep' | 'leave'>): Settled {
  const { ids, closures } = reliance;
  const kept = namedBy(reliance, keep, leave, 'kept');
  const left = namedBy(reliance, leave, keep, 'left out');
  for (const place of kept) {
    if (left.has(place)) {
      throw contradiction(`The line ${ids[place]!} is to be kept and to be left out.`, [ids[place]!]);
    }
    for (const other of left) {
      if (!hasBit(closures.below[place]!, other)) continue;
      throw contradiction(
        `The line ${ids[place]!} is to be kept and relies on ${ids[other]!}, which is to be left out.`,
        [ids[place]!, ids[other]!],
      );
    }
  }
  return {
    kept,
    left,
    forced: spread(kept, closures.below),
    barred: spread(left, closures.above),
  };
}

function contradiction(what: string, ids: readonly string[]): ProblemError {
  return new ProblemError({
    code: 'cut-contradiction',
    what,
    why: 'A kept line would stand without what it rests on.',
    mend: 'Take one of them out of keep or leave, or change what the line relies on.',
    where: ids[0]!,
    facts: Object.fromEntries(ids.map((id, i) => [`line${i + 1}`, id])),
  });
}

function namedBy(
  { ids, placesOf }: Reliance,
  named: readonly string[],
  others: readonly string[],
  word: string,
): ReadonlySet<number> {
  const exceptions = new Set(others);
  const found = new Set<number>();
  for (const id of named) {
    const places = placesOf(id);
    if (places === null) throw unknown(`${id} is to be ${word}`);
    const isLine = ids.includes(id);
    for (const place of places) if (isLine || !exceptions.has(ids[place]!)) found.add(place);
  }
  return found;
}

function spread(from: ReadonlySet<number>, closures: Closures['below']): ReadonlySet<number> {
  const found = new Set<number>();
  for (const place of from) eachBit(closures[place]!, (other) => found.add(other));
  return found;
}
