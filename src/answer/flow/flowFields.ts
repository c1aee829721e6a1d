/** The whole flow of one engine at one place after the other, each the beginning of the next. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  airAtGeometricAltitude,
  geometricAltitudeAtPressure,
  HIGHEST_ALTITUDE,
} from '../../physics/air/index.ts';
import type { Contour } from '../../physics/nozzle/index.ts';
import {
  axisShocks,
  type BlockFlow,
  type FarAir,
  firstCell,
  mainShock,
  pictureOf,
  type RoundCase,
  type Settled,
  settle,
} from '../../physics/wholeFlow/index.ts';
import { contourAt } from '../plume.ts';
import type { EngineSolution } from '../solution.ts';
import type { Fineness, FlowField } from './model.ts';
import { type MeshWall, type Run, type Running, runOf } from './running.ts';

export interface FlowPlace {
  /** [m] geometric; null: given by its pressure */ readonly altitude: number | null;
  /** [Pa] */ readonly ambientPressure: number;
}

/** Cells from the axis to the wall; each doubling begins from the mesh before. */
const ACROSS: Readonly<Record<Fineness, readonly number[]>> = {
  coarse: [8],
  normal: [8, 16],
  fine: [8, 16, 32],
};
/** Steps at least and at most: from nothing, from the neighbour, from the coarser mesh. */
const STEPS = { cold: [600, 1600], warm: [400, 1200], finer: [300, 1000] } as const;
/** Thrust stands within 0.1 %, the mean pressure on the jet’s axis within 2 %. */
const STILL = [1e-3, 2e-2] as const;
/** Thinner air than this share of the pressure at the lip changes nothing that is seen, and costs steps. */
const THINNEST = 1e-3;

/** @throws ProblemError where no mesh follows the engine’s walls, or the field breaks */
export function* flowFields(
  solution: EngineSolution,
  places: readonly FlowPlace[],
  fineness: Fineness,
): Generator<FlowField> {
  let mode = null as { readonly contour: Contour; readonly run: Run } | null;
  let before: readonly BlockFlow[] | null = null;
  for (const place of places) {
    const contour = contourAt(solution, place.ambientPressure);
    if (mode?.contour !== contour) {
      // Another wall: the gas begins anew.
      mode = { contour, run: runOf(solution, contour) };
      before = null;
    }
    const which = caseAt(solution, contour, place);
    let found: { readonly running: Running; readonly settled: Settled } | null = null;
    for (const across of ACROSS[fineness]) {
      const from: readonly BlockFlow[] | null = found?.settled.averages.blocks() ?? before;
      const [least, most] = found !== null ? STEPS.finer : from === null ? STEPS.cold : STEPS.warm;
      const running: Running = mode.run(which.round, ACROSS[fineness][0]!, across, from);
      const settled: Settled = settle(running.flow, { least, most, watch: running.watch, still: STILL });
      if (found === null) before = settled.averages.blocks();
      found = { running, settled };
    }
    yield fieldOf(solution, place, which, fineness, found!);
  }
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
  { running, settled }: { readonly running: Running; readonly settled: Settled },
): FlowField {
  const { contour, expansion, nozzle, input, throatArea } = solution;
  const { flow, lip, seen, axisBlock, gases, walls } = running;
  const blocks = pictureOf(settled.averages.blocks(), gases);
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
    lip,
    shocks,
    mainShock: mainShock(shocks),
    firstCell: firstCell(blocks[axisBlock]!, lip.axial, air.pressure, seen),
    byLaw: { machDisk: metres(machDisk), cellLength: metres(cellLength) },
    seen,
    walls: walls.map((wall) => ({ kind: wall.kind, line: lineOf(blocks[wall.block]!, wall) })),
    blocks,
  };
}

function lineOf(
  { ni, axial, radius }: FlowField['blocks'][number],
  { row, column, from, to }: MeshWall,
): readonly (readonly [number, number])[] {
  return Array.from({ length: to - from + 1 }, (_, k) => {
    const at = row !== undefined ? row * (ni + 1) + from + k : (from + k) * (ni + 1) + (column ?? 0);
    return [axial[at]!, radius[at]!] as const;
  });
}
