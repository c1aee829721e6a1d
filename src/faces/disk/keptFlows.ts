/** The whole flows of an engine: from the disk where they are kept, else computed and kept. */

import {
  FINENESSES,
  type Fineness,
  type FlowBits,
  type FlowField,
  type FlowPlace,
  type FlowSolver,
  flowSolver,
} from '../../answer/flow/index.ts';
import type { EngineSolution } from '../../answer/solution.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { StepTeam } from '../../physics/euler/index.ts';
import { FLOW_FORMAT } from '../flows/flowText.ts';
import { flowFolder, flowKey, keepFlow, readFlow } from './flowShelf.ts';

export interface KeptFlowOptions {
  /** Nothing is taken from the disk. */ readonly fresh?: boolean;
  readonly folder?: string;
  /** By what it is computed. */ readonly bits?: FlowBits;
  /** Threads that help; the numbers are the same. */ readonly team?: StepTeam | null;
}

export interface KeptFlows {
  /** Name under which a field is kept. */ keyOf(place: number, fineness: Fineness): string;
  /** The field at one of the places, and all that it begins from; computed where it is not kept. @throws ProblemError */
  at(place: number, fineness: Fineness): Promise<FlowField>;
}

/** All that the flows of an engine follow from, their places aside. */
export function engineKey({ input, contour, expansion }: EngineSolution, bits: FlowBits): string {
  return flowKey([FLOW_FORMAT, bits, input, contour.wall, expansion.chamber]);
}

/**
 * The coarse field of each place begins from that of the place before, a finer one from its own coarser one: what a field
 * is does not depend on which were asked for before it.
 */
export function keptFlows(
  solution: EngineSolution,
  places: readonly FlowPlace[],
  { fresh = false, folder = flowFolder(), bits = 32, team = null }: KeptFlowOptions = {},
): KeptFlows {
  const engine = engineKey(solution, bits);
  const found = new Map<string, Promise<FlowField>>();
  let solver: FlowSolver | null = null;

  const keyOf = (place: number, fineness: Fineness): string =>
    flowKey([engine, fineness, places.slice(0, place + 1)]);

  function at(place: number, fineness: Fineness): Promise<FlowField> {
    const key = keyOf(place, fineness);
    const known = found.get(key);
    if (known !== undefined) return known;
    const field = make(place, fineness, key);
    found.set(key, field);
    return field;
  }

  async function make(place: number, fineness: Fineness, key: string): Promise<FlowField> {
    const kept = fresh ? null : await readFlow(folder, key);
    if (kept !== null) return kept;
    const from = await beginning(place, fineness);
    solver ??= flowSolver(solution, bits, team);
    const field = solver(places[place]!, fineness, from);
    await keepFlow(folder, key, field);
    return field;
  }

  async function beginning(place: number, fineness: Fineness): Promise<FlowField | null> {
    const coarser = FINENESSES[FINENESSES.indexOf(fineness) - 1];
    if (coarser !== undefined) return at(place, coarser);
    // A place that has no field is passed over.
    for (let before = place - 1; before >= 0; before--) {
      const field = await at(before, fineness).catch((error: unknown) => {
        if (error instanceof ProblemError) return null;
        throw error;
      });
      if (field !== null) return field;
    }
    return null;
  }

  return { keyOf, at };
}
