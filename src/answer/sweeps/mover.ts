/** What it means that an input moves: which asks and which point stand for one of its values. */

import { attempt, type Problem, ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { nearestName } from '../../study/nearest.ts';
import { isVehicle, type Owner, ownersOf } from '../../study/owners.ts';
import { listNames, quote } from '../../study/report.ts';
import { needsOf } from '../asked/askProblem.ts';
import type { Point } from '../asked/crew.ts';
import type { Ask } from '../asked/model.ts';
import { ownersNamed } from '../asked/ownersAsked.ts';
import { quantity } from '../catalogue.ts';
import { show } from '../display.ts';
import { belowEngine } from '../inputs/belowEngine.ts';
import { settableConditions } from '../inputs/conditions.ts';
import type { ConditionEntry, EngineInputEntry } from '../inputs/model.ts';
import { settableInputs } from '../inputs/settableInputs.ts';
import { inputUnknown, withInputs, withVehicleInputs } from '../inputs/withInputs.ts';
import type { SweptRange, ToldRange } from './model.ts';

export interface Mover {
  readonly told: ToldRange;
  /** Engines on which it moves; empty for surroundings and throttle. */ readonly engines: readonly string[];
  /** Only whole numbers make sense. */ readonly whole: boolean;
  /** Whether an ask that leaves this open may be compiled. */ readonly fillsAmbient: boolean;
  /** The ask at a value; the same object where the value changes nothing. */ ask(
    ask: Ask,
    value: number,
  ): Ask;
  /** Values at paths of the study. */ point(value: number): Point;
}

/**
 * @param named engines on which alone the input moves; null: as the study states it
 * @param inCurves engines that the curves are of
 * @throws ProblemError where the range or its input is none
 */
export function moverOf(
  study: Study,
  range: SweptRange,
  named: readonly string[] | null,
  inCurves: readonly string[],
): Mover {
  requireRange(range);
  const condition = settableConditions.find(({ name }) => name === range.over);
  if (condition !== undefined) return conditionMover(condition, range);
  const path = /^(?:engines|vehicles)\.([^.]+)\.(.+)$/.exec(range.over);
  if (path === null) return inputMover(study, range, range.over, named, inCurves);
  const [, engine, input] = path as unknown as [string, string, string];
  engineOf(study, engine);
  return inputMover(study, range, input, null, [engine]);
}

function requireRange({ over, from, to, spacing }: SweptRange): void {
  const refuse = (code: string, what: string, mend: string): never => {
    throw new ProblemError({ code, what, mend, where: over, facts: { from, to } });
  };
  if (!Number.isFinite(from) || !Number.isFinite(to)) {
    refuse(
      'sweep-not-finite',
      'An end of the sweep is no number.',
      'Give both ends as values with their unit.',
    );
  }
  if (from >= to) {
    refuse(
      'sweep-backwards',
      'The sweep does not end above its beginning.',
      'Give the smaller value as from, the larger as to.',
    );
  }
  if (spacing === 'in equal ratios' && from <= 0) {
    refuse(
      'sweep-ratio-from-nothing',
      'Equal ratios cannot begin at nothing or below.',
      'Begin above 0, or take even steps.',
    );
  }
}

function conditionMover(condition: ConditionEntry, range: SweptRange): Mover {
  const { name, label, quantity: of, lowest, highest, openBelow } = condition;
  const below = range.from < lowest || (openBelow && range.from <= lowest);
  if (below || (highest !== null && range.to > highest)) throw outside(label, of, range, condition.range);
  return {
    told: { ...range, label, quantity: of, now: [] },
    engines: [],
    whole: false,
    fillsAmbient: name !== 'throttle',
    ask: (ask, value) => (isOpen(ask, name) ? atCondition(ask, name, value) : ask),
    point: () => ({}),
  };
}

/** Whether the ask leaves it to the sweep. */
function isOpen(ask: Ask, condition: ConditionEntry['name']): boolean {
  if (condition === 'throttle') return ask.engine !== null && ask.throttle === null;
  if (condition === 'time') return ask.time === undefined && needsOf(quantity(ask.quantity)).time;
  return ask.ambient === null && needsOf(quantity(ask.quantity)).ambient;
}

function atCondition(ask: Ask, condition: ConditionEntry['name'], value: number): Ask {
  switch (condition) {
    case 'altitude':
      return { ...ask, ambient: { kind: 'altitude', altitude: value } };
    case 'ambientPressure':
      return { ...ask, ambient: value === 0 ? { kind: 'vacuum' } : { kind: 'pressure', pressure: value } };
    case 'throttle':
      return { ...ask, throttle: value };
    case 'time':
      return { ...ask, time: value };
  }
}

function inputMover(
  study: Study,
  range: SweptRange,
  input: string,
  named: readonly string[] | null,
  inCurves: readonly string[],
): Mover {
  const engines = (named ?? inCurves).map((id) => engineOf(study, id));
  const having = engines.flatMap((engine) => {
    const entry = settableInputs(engine).find(({ name }) => name === input);
    if (entry === undefined && (named !== null || engines.length === 1)) throw unknownInput(engine, input);
    return entry === undefined ? [] : [{ engine, entry }];
  });
  const first = having[0];
  if (first === undefined) throw unknownInput(engines[0] ?? study.engines[0]!, input);
  for (const { engine, entry } of having) {
    if (entry.lowest !== null && !allowed(entry, range))
      throw outside(entry.label, entry.quantity, range, entry.range);
    requireSettable(engine, entry);
  }
  const moving = named === null ? withSharers(study, having, input) : [];
  const byId = new Map(ownersOf(study).map((owner) => [owner.id, owner]));
  const paths = new Set(moving.map(({ entry }) => entry.path));
  const alone = new Set(having.filter(({ entry }) => !paths.has(entry.path)).map(({ engine }) => engine.id));
  return {
    told: {
      ...range,
      label: first.entry.label,
      quantity: first.entry.quantity,
      now: having.map(({ engine, entry }) => ({ engine: engine.id, value: entry.current })),
    },
    engines: [...new Set([...having, ...moving].map(({ engine }) => engine.id))],
    whole: first.entry.whole,
    fillsAmbient: false,
    ask: (ask, value) => {
      const fresh = ownersNamed(ask, byId).flatMap((id) => {
        if (!alone.has(id)) return [];
        // Of an engine below a vehicle: `bell.nozzle.areaRatio`.
        const name = id === ask.engine ? input : `${id}.${input}`;
        return ask.inputs.some((set) => set.input === name) ? [] : [{ input: name, value }];
      });
      return fresh.length === 0 ? ask : { ...ask, inputs: [...ask.inputs, ...fresh] };
    },
    point: (value) => Object.fromEntries([...paths].map((path) => [path, value])),
  };
}

interface Having {
  readonly engine: Owner;
  readonly entry: EngineInputEntry;
}

/** Inputs that move where the study states them, with every engine that has them from there or by the same default. */
function withSharers(study: Study, having: readonly Having[], input: string): readonly Having[] {
  const movable = having.filter(({ entry }) => isAtPath(entry, input));
  const paths = new Set(movable.map(({ entry }) => entry.path));
  const ids = new Set(movable.map(({ engine }) => engine.id));
  return ownersOf(study).flatMap((engine) => {
    const entry = settableInputs(engine).find(({ name }) => name === input);
    if (entry === undefined || !isAtPath(entry, input)) return [];
    const shares = paths.has(entry.path) || (!entry.stated && ids.has(engine.like ?? ''));
    return shares ? [{ engine, entry }] : [];
  });
}

/** Shares of a blend hang on each other, and a place to change over may be stated as a pressure: those are set, not moved. */
function isAtPath({ current, path, quantity: of }: EngineInputEntry, input: string): boolean {
  return (
    current !== null && of !== 'propellants.share' && of !== 'change.altitude' && belowEngine(path) === input
  );
}

function allowed(
  { lowest, highest, openBelow, openAbove }: EngineInputEntry,
  { from, to }: SweptRange,
): boolean {
  const low = lowest ?? Number.NEGATIVE_INFINITY;
  const high = highest ?? Number.POSITIVE_INFINITY;
  return (openBelow ? from > low : from >= low) && (openAbove ? to < high : to <= high);
}

function requireSettable(engine: Owner, { name, current, sweep, whole }: EngineInputEntry): void {
  const value = current ?? (whole ? Math.round(sweep.from) : sweep.from);
  const set = attempt(() =>
    isVehicle(engine)
      ? withVehicleInputs(engine, [{ input: name, value }])
      : withInputs(engine, [{ input: name, value }]),
  );
  if (!set.ok) throw new ProblemError(set.problem);
}

function engineOf(study: Study, id: string): Owner {
  const found = ownersOf(study).find((owner) => owner.id === id);
  if (found !== undefined) return found;
  const ids = ownersOf(study).map((owner) => owner.id);
  const near = nearestName(id, ids);
  throw new ProblemError({
    code: 'engine-unknown',
    what: `The study has no engine ${quote(id)}.`,
    mend: `${near === null ? '' : `Did you mean ${near}? `}Engines of this study: ${listNames(ids)}.`,
  });
}

/** Surroundings and throttle may be meant as well. */
function unknownInput(engine: Owner, input: string): ProblemError {
  const problem = inputUnknown(engine, input);
  const near = nearestName(
    input,
    settableConditions.map(({ name }) => name),
  );
  const also = `${near === null ? '' : `Did you mean ${near}? `}${problem.mend} Surroundings: altitude, ambientPressure; also throttle, and time in a flight.`;
  return new ProblemError({ ...problem, mend: also });
}

function outside(label: string, of: string, { over, from, to }: SweptRange, range: string): ProblemError {
  const problem: Problem = {
    code: 'sweep-out-of-range',
    what: `A sweep of ${label} from ${show(of, from).text} to ${show(of, to).text} leaves what is allowed: ${range}.`,
    mend: 'Give both ends in that range.',
    where: over,
    facts: { from, to },
  };
  return new ProblemError(problem);
}
