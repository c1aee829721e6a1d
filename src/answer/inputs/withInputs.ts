/** An engine with some of its own inputs set to other values. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import type { EngineInput, Quantity, VehicleInput } from '../../study/model.ts';
import { nearestName } from '../../study/nearest.ts';
import { isVehicle, type Owner } from '../../study/owners.ts';
import { settledAt } from '../../study/publishedForm.ts';
import { listNames } from '../../study/report.ts';
import type { ChangedInput } from '../asked/model.ts';
import { showStated } from '../display.ts';
import { isAllowed } from './settableInputs.ts';
import type { InputSlot } from './slot.ts';
import { slotsOf } from './slots.ts';
import { vehicleSlots } from './vehicleSlots.ts';

/**
 * The engine with these values [SI] in place of its own; what it does not name stays, and is the same object as before.
 *
 * @throws ProblemError `input-unknown`, `input-out-of-range`, `input-not-whole`, `input-twice`, `input-settled`
 */
export function withInputs(engine: EngineInput, changed: readonly ChangedInput[]): EngineInput {
  return withSlots(engine, changed, slotsOf);
}

/** The same of a vehicle: its own inputs alone, not those of its engines. */
export function withVehicleInputs(vehicle: VehicleInput, changed: readonly ChangedInput[]): VehicleInput {
  return withSlots(vehicle, changed, vehicleSlots);
}

function withSlots<Of extends Owner>(
  owner: Of,
  changed: readonly ChangedInput[],
  slots: (of: Of) => readonly InputSlot<Of>[],
): Of {
  const seen = new Set<string>();
  return changed.reduce((current, change) => {
    if (seen.has(change.input)) throw new ProblemError(setTwice(owner, change.input));
    seen.add(change.input);
    const slot = slots(current).find(({ name }) => name === change.input);
    if (slot === undefined) throw new ProblemError(inputUnknown(owner, change.input));
    const problem = valueProblem(owner, slot, change.value);
    if (problem !== null) throw new ProblemError(problem);
    return slot.now?.value === change.value ? current : slot.put(stated(owner, slot, change.value));
  }, owner);
}

/** Why this value cannot be set; null where it can. */
export function valueProblem(engine: Owner, slot: Omit<InputSlot, 'put'>, value: number): Problem | null {
  const where = `${belowStudy(engine)}.${slot.name}`;
  if (!isAllowed(value, slot.field.range)) {
    const shown = Number.isFinite(value) ? showStated(slot.quantity, value).text : String(value);
    return {
      code: 'input-out-of-range',
      what: `${slot.name} of ${engine.id} set to ${shown} is outside what is allowed: ${slot.field.range.words}.`,
      mend: 'Set it to a value in that range.',
      where,
      facts: { value },
    };
  }
  if (slot.whole === true && !Number.isInteger(value)) {
    return {
      code: 'input-not-whole',
      what: `${slot.name} of ${engine.id} set to ${value} is no whole number.`,
      mend: 'Set it to a whole number.',
      where,
      facts: { value },
    };
  }
  return settledProblem(engine, slot.name, where);
}

/** What published figures settle cannot be set beside them. */
function settledProblem(engine: Owner, name: string, where: string): Problem | null {
  const solveFor = isVehicle(engine) ? null : engine.published?.solveFor;
  if (!solveFor || solveFor.stated) return null;
  const left = settledAt[solveFor.input];
  if (left === null || `${left.section}.${left.key}` !== name) return null;
  return {
    code: 'input-settled',
    what: `${name} of ${engine.id} is what its published figures settle; it cannot be set as well.`,
    mend: `Delete solveFor from the published figures of ${engine.id} and state the value, or set another input.`,
    where,
  };
}

/** The name is not among the inputs of this engine. */
export function inputUnknown(engine: Owner, input: string): Problem {
  const names = (isVehicle(engine) ? vehicleSlots(engine) : slotsOf(engine)).map(({ name }) => name);
  const near = nearInput(input, names);
  return {
    code: 'input-unknown',
    what: `${engine.id} has no input “${input.slice(0, 60)}”.`,
    mend: `${near === null ? '' : `Did you mean ${near}? `}Inputs of ${engine.id}: ${listNames(names)}.`,
    where: belowStudy(engine),
  };
}

/** By the whole name, or by its last word alone, least nested first: `areaRatio` → `nozzle.areaRatio`. */
function nearInput(input: string, names: readonly string[]): string | null {
  const last = (name: string): string => name.split('.').at(-1)!;
  const depth = (name: string): number => name.split('.').length;
  const byDepth = [...names].sort((a, b) => depth(a) - depth(b));
  const named = (tail: string): string | null => byDepth.find((name) => last(name) === tail) ?? null;
  const tail = nearestName(last(input), byDepth.map(last));
  if (!input.includes('.')) return tail === null ? null : named(tail);
  return nearestName(input, names) ?? (tail === null ? null : named(tail));
}

function setTwice(engine: Owner, input: string): Problem {
  return {
    code: 'input-twice',
    what: `${input} of ${engine.id} is set twice.`,
    mend: 'Set it once.',
    where: `${belowStudy(engine)}.${input}`,
  };
}

/** What is set has no ±. */
function stated(engine: Owner, { name, quantity, now }: Omit<InputSlot, 'put'>, value: number): Quantity {
  const path = now?.path ?? `${belowStudy(engine)}.${name}`;
  return { value, plusMinus: null, text: showStated(quantity, value).text, path, byDefault: false };
}

function belowStudy(owner: Owner): string {
  return `${isVehicle(owner) ? 'vehicles' : 'engines'}.${owner.id}`;
}
