/** What the state of an engine hangs on, as text: equal texts are equal states. */

import type { EngineInput, Study } from '../../study/model.ts';
import type { ChangedInput } from './model.ts';

/** All of it, but for the engine that it may take its size from. */
export function stateKey(input: EngineInput): string {
  const { propellants, chemistry, chamber, nozzle, size, losses, cooling, cycle, published } = input;
  return textOf([input.id, propellants, chemistry, chamber, nozzle, size, losses, cooling, cycle, published]);
}

/** The gas alone. */
export function chamberKey({ propellants, chemistry, chamber }: EngineInput): string {
  const { pressure, pressureAt, contractionRatio } = chamber;
  return textOf([propellants, chemistry, pressure, pressureAt, contractionRatio]);
}

/** The nozzle on its gas, without a size. */
export function nozzleKey(input: EngineInput): string {
  return chamberKey(input) + textOf([input.nozzle, input.losses]);
}

/** An engine of a study with some of its inputs set, and those that it takes its size from. */
export function engineKey(
  study: Study,
  id: string,
  set: readonly ChangedInput[],
  seen: readonly string[] = [],
): string {
  const input = study.engines.find((engine) => engine.id === id);
  if (input === undefined || seen.includes(id)) return id;
  const { size } = input;
  const below = size.by === 'same' ? engineKey(study, size.as, [], [...seen, id]) : '';
  return `${stateKey(input)}${textOf(set)}${below}`;
}

/** Of a quantity only its value counts. */
export function textOf(parts: readonly unknown[]): string {
  return JSON.stringify(parts, (_, part: unknown) =>
    typeof part === 'object' && part !== null && 'plusMinus' in part && 'value' in part ? part.value : part,
  );
}
