/** Inputs of the study that may move, by path, with the engines and vehicles that share them. */

import { isVehicle, type Owner } from '../../study/owners.ts';
import { listed } from '../compare/speech.ts';
import { settableInputs } from '../inputs/index.ts';
import type { EngineInputEntry } from '../inputs/model.ts';

export interface MovableInput {
  readonly entry: EngineInputEntry;
  /** As the study states it [SI]. */ readonly current: number;
  /** Ids of the engines and vehicles that it moves. */ readonly engines: readonly string[];
  /** `chamber pressure of Alder B`; without an owner where all of its kind share it. */ readonly label: string;
}

/** By path; only inputs that have a value. */
export function movableInputs(owners: readonly Owner[]): ReadonlyMap<string, MovableInput> {
  const found = new Map<string, { entry: EngineInputEntry; current: number; of: Owner[] }>();
  for (const engine of owners) {
    for (const entry of settableInputs(engine)) {
      if (entry.current === null) continue;
      const known = found.get(entry.path);
      if (known === undefined) found.set(entry.path, { entry, current: entry.current, of: [engine] });
      else known.of.push(engine);
    }
  }
  return new Map(
    [...found].map(([path, { entry, current, of }]) => {
      const alike = owners.filter((owner) => isVehicle(owner) === isVehicle(of[0]!));
      const all = of.length === alike.length;
      const owner = all ? '' : ` of ${listed(of.map(({ name }) => name))}`;
      return [path, { entry, current, engines: of.map(({ id }) => id), label: `${entry.label}${owner}` }];
    }),
  );
}
