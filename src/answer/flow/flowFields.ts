/** The whole flow of one engine at one place after the other, each the beginning of the next. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  airAtGeometricAltitude,
  geometricAltitudeAtPressure,
  HIGHEST_ALTITUDE,
} from '../../physics/air/index.ts';
import { flowKernel } from '../../physics/euler/index.ts';
import type { Contour } from '../../physics/nozzle/index.ts';
import {
  axisShocks,
  beginningOf,
  type FarAir,
  firstCell,
  mainShock,
  pictureOf,
  type RoundCase,
  type Settled,
  settle,
} from '../../physics/wholeFlow/index.ts';
import { rowAt } from '../conditions.ts';
import { contourAt } from '../plume.ts';
import type { EngineSolution } from '../solution.ts';
import { FINENESSES, type Fineness, type FlowBits, type FlowField, type MeshSide } from './model.ts';
import type { FlowPlace } from './places.ts';
import { type Run, type Running, runOf } from './running.ts';

/** Cells from the axis to the wall; each finer mesh begins from the one before. */
const ACROSS: Readonly<Record<Fineness, number>> = {
  coarse: 8,
  normal: 16,
  fine: 32,
  finest: 64,
};
/** Steps at least and at most: from nothing, from the neighbour, from the coarser mesh. */
const STEPS = { cold: [600, 1600], warm: [400, 1200], finer: [300, 1000] } as const;
/** Thrust stands within 0.1 %, the mean pressure on the jet’s axis within 2 %. */
const STILL = [1e-3, 2e-2] as const;
/** Thinner air than this share of the pressure at the lip changes nothing that is seen, and costs steps. */
const THINNEST = 1e-3;

/** One field of an engine. */
export type FlowSolver = (
  place: FlowPlace,
  fineness: Fineness,
  /** The neighbour’s field as coarse, or that of this place one step less fine; null: from nothing, as coarse. */
  from: FlowField | null,
) => FlowField;

/** What is the same in all fields of an engine is found once. */
export function flowSolver(solution: EngineSolution, bits: FlowBits = 32): FlowSolver {
  const kernel = bits === 'reference' ? null : flowKernel(bits);
  const runs = new Map<Contour, Run>();
  return (place, fineness, from) => {
    const contour = contourAt(solution, place.ambientPressure);
    const run = runs.get(contour) ?? runOf(solution, contour, kernel);
    runs.set(contour, run);
    const which = caseAt(solution, contour, place);
    const mode = solution.nozzle.at(place.ambientPressure).mode ?? null;
    // Behind another wall the gas begins anew.
    const begun = from !== null && from.mode === mode ? from : null;
    const [least, most] =
      begun === null ? STEPS.cold : begun.fineness === fineness ? STEPS.warm : STEPS.finer;
    const beginning = begun === null ? null : beginningOf(begun.blocks);
    const running = run(which.round, ACROSS.coarse, ACROSS[fineness], beginning);
    const longest = Math.round(most * running.slow);
    const settled = settle(running.flow, { least, most: longest, watch: running.watch, still: STILL });
    return fieldOf(solution, place, which, fineness, {
      running,
      settled,
      kernel: kernel?.bits ?? 'reference',
    });
  };
}

/**
 * Field after field; the coarse one of each place begins from that of the place before, each finer one from its own coarser one.
 * @throws ProblemError where no mesh follows the engine’s walls, or the field breaks
 */
export function* flowFields(
  solution: EngineSolution,
  places: readonly FlowPlace[],
  fineness: Fineness,
  bits: FlowBits = 32,
): Generator<FlowField> {
  const solve = flowSolver(solution, bits);
  let before: FlowField | null = null;
  for (const place of places) {
    let field: FlowField | null = null;
    for (const level of levelsTo(fineness)) {
      field = solve(place, level, field ?? before);
      if (level === 'coarse') before = field;
    }
    if (field !== null) yield field;
  }
}

/** From the coarsest on. */
export function levelsTo(fineness: Fineness): readonly Fineness[] {
  return FINENESSES.slice(0, FINENESSES.indexOf(fineness) + 1);
}

interface CaseAt {
  readonly round: RoundCase;
  readonly thinnest: boolean;
  readonly by: string;
}

function caseAt(
  solution: EngineSolution,
  contour: Contour,
  { ambientPressure, altitude }: FlowPlace,
): CaseAt {
  const { nozzle } = solution;
  const { flow, separation } = nozzle.at(ambientPressure);
  if (flow.state === 'unchoked')
    throw new ProblemError({
      code: 'flow-unchoked',
      what: 'The whole flow is not computed where the throat does not choke.',
      mend: 'Ask at a lower ambient pressure.',
    });
  const least = THINNEST * nozzle.exit.pressure;
  const thinnest = ambientPressure < least;
  const separated = flow.state === 'separated' && separation !== undefined;
  return {
    round: {
      air: thinnest ? thinAir(least) : airAt(ambientPressure, altitude),
      leavesAt: separated ? separation.place.axial * contour.throatRadius : null,
    },
    thinnest,
    by: flow.criterion,
  };
}

/** Air of 1976; thinner than that reaches, as warm as at its end. */
function airAt(pressure: number, altitude: number | null): FarAir {
  const { density } = airAtGeometricAltitude(altitude ?? geometricAltitudeAtPressure(pressure));
  return { pressure, density, speed: 0 };
}

function thinAir(pressure: number): FarAir {
  const top = airAtGeometricAltitude(Math.min(HIGHEST_ALTITUDE, 80_000));
  return { pressure, density: (top.density / top.pressure) * pressure, speed: 0 };
}

function fieldOf(
  solution: EngineSolution,
  { altitude, ambientPressure }: FlowPlace,
  { round: { air, leavesAt }, thinnest, by }: CaseAt,
  fineness: Fineness,
  {
    running,
    settled,
    kernel,
  }: { readonly running: Running; readonly settled: Settled; readonly kernel: FlowBits },
): FlowField {
  const { contour, expansion, nozzle, input, throatArea } = solution;
  const { flow, lip, seen, axisBlock, gases, walls } = running;
  const blocks = pictureOf(settled.averages.blocks(), gases.pair, gases.temperatureAt);
  const { machDisk, cellLength } = solution.plume.at(air.pressure);
  const metres = ({ value }: { readonly value: number | null }): number | null =>
    value === null ? null : value * contour.throatRadius;
  const [thrust] = settled.watched;
  const unit = expansion.chamber.pressure * throatArea;
  const shocks = axisShocks(blocks[axisBlock]!, lip.axial, seen);
  const model = nozzle.at(air.pressure);
  return {
    engine: input.id,
    name: input.name,
    form: contour.plug === undefined ? 'round' : 'plug',
    altitude,
    ambientPressure: thinnest ? air.pressure : ambientPressure,
    thinnest,
    mode: model.mode ?? null,
    fineness,
    kernel,
    cells: blocks.reduce((sum, { ni, nj }) => sum + ni * nj, 0),
    steps: settled.steps,
    broke: settled.broke,
    rescued: flow.rescued,
    steady: settled.steady,
    thrustCoefficient: {
      mean: thrust!.mean / unit,
      swing: thrust!.swing,
      byModel: model.thrustCoefficient ?? model.thrustCoefficientIfFull,
    },
    leaves: leavesAt === null ? null : { axial: leavesAt, by },
    separation: rowAt(solution, ambientPressure, altitude).separation ?? null,
    lip,
    shocks,
    mainShock: mainShock(shocks),
    firstCell: firstCell(blocks[axisBlock]!, lip.axial, air.pressure, seen),
    byLaw: { machDisk: metres(machDisk), cellLength: metres(cellLength) },
    seen,
    walls: walls.map(({ kind, ...side }) => ({ kind, line: lineOf(blocks[side.block]!, side), side })),
    axisBlock,
    blocks,
  };
}

function lineOf(
  { ni, axial, radius }: FlowField['blocks'][number],
  { row, column, from, to }: MeshSide,
): readonly (readonly [number, number])[] {
  return Array.from({ length: to - from + 1 }, (_, k) => {
    const at = row !== undefined ? row * (ni + 1) + from + k : (from + k) * (ni + 1) + (column ?? 0);
    return [axial[at]!, radius[at]!] as const;
  });
}
