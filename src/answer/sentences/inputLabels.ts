/** Inputs of the study that may move, by path, with the engines that share them. */

import type { EngineInput } from '../../study/model.ts';
import { listed } from '../compare/speech.ts';
import { settableInputs } from '../inputs/index.ts';
import type { EngineInputEntry } from '../inputs/model.ts';

export interface MovableInput {
  readonly entry: EngineInputEntry;
  /** As the study states it [SI]. */ readonly current: number;
  /** Ids of the engines that it moves. */ readonly engines: readonly string[];
  /** `chamber pressure of Alder B`; without an engine where all share it. */ readonly label: string;
}

/** By path; only inputs that have a value. */
export function movableInputs(engines: readonly EngineInput[]): ReadonlyMap<string, MovableInput> {
  const found = new Map<string, { entry: EngineInputEntry; current: number; of: EngineInput[] }>();
  for (const engine of engines) {
    for (const entry of settableInputs(engine)) {
      if (entry.current === null) continue;
      const known = found.get(entry.path);
      if (known === undefined) found.set(entry.path, { entry, current: entry.current, of: [engine] });
      else known.of.push(engine);
    }
  }
  return new Map(
    [...found].map(([path, { entry, current, of }]) => {
      const all = of.length === engines.length;
      const owner = all ? '' : ` of ${listed(of.map(({ name }) => name))}`;
      return [path, { entry, current, engines: of.map(({ id }) => id), label: `${entry.label}${owner}` }];
    }),
  );
}
