/** The whole flow of one engine at one place after the other, each the beginning of the next. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  airAtGeometricAltitude,
  geometricAltitudeAtPressure,
  HIGHEST_ALTITUDE,
} from '../../physics/air/index.ts';
import {
  axisPressure,
  axisShocks,
  BEHIND,
  type BlockFlow,
  type FarAir,
  firstCell,
  mainShock,
  type PreparedEngine,
  pictureOf,
  prepareRound,
  type RoundCase,
  type RoundFlow,
  roundFlow,
  roundSize,
  type Settled,
  settle,
  thrustOf,
} from '../../physics/wholeFlow/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { Fineness, FlowField } from './model.ts';

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
const STEPS = { cold: [600, 2000], warm: [400, 1200], finer: [300, 1000] } as const;
/** Thrust stands within 0.1 %, the mean pressure on the jet’s axis within 2 %. */
const STILL = [1e-3, 2e-2] as const;
/** Thinner air than this share of the pressure at the lip changes nothing that is seen, and costs steps. */
const THINNEST = 1e-3;

/** @throws ProblemError where the engine has no wall that the mesh can follow, or the field breaks */
export function* flowFields(
  solution: EngineSolution,
  places: readonly FlowPlace[],
  fineness: Fineness,
): Generator<FlowField> {
  requireRound(solution);
  const { contour, expansion } = solution;
  const prepared = prepareRound({ expansion, wall: contour.wall, throatRadius: contour.throatRadius });
  let before: readonly BlockFlow[] | null = null;
  for (const place of places) {
    const which = caseAt(solution, place);
    let found: { readonly round: RoundFlow; readonly settled: Settled } | null = null;
    for (const across of ACROSS[fineness]) {
      const size = roundSize(prepared, ACROSS[fineness][0]!, across);
      const from: readonly BlockFlow[] | null = found?.settled.averages.blocks() ?? before;
      const [least, most] = found !== null ? STEPS.finer : from === null ? STEPS.cold : STEPS.warm;
      const round: RoundFlow = roundFlow(prepared, which.round, size, from);
      const settled: Settled = settle(round.flow, {
        least,
        most,
        watch: () => [thrustOf(round), axisPressure(round)],
        still: STILL,
      });
      if (found === null) before = settled.averages.blocks();
      found = { round, settled };
    }
    yield fieldOf(solution, prepared, place, which, fineness, found!);
  }
}

function requireRound({ contour, contourIs, nozzle, input }: EngineSolution): void {
  const plain = contour.plug === undefined && contour.bodies === undefined && nozzle.change === undefined;
  if (plain && contourIs === 'shape') return;
  throw new ProblemError({
    code: 'flow-no-plain-wall',
    what: `The whole flow of ${input.name} is not computed: its nozzle is no plain round wall from throat to lip.`,
    why: 'The mesh follows the wall of a cone, a bell or an ideal contour; plugs, nozzles of two modes and bounds without a wall are not covered.',
    mend: 'Ask for an engine with a bell or a cone.',
  });
}

interface CaseAt {
  readonly round: RoundCase;
  readonly thinnest: boolean;
  readonly by: string;
}

function caseAt(solution: EngineSolution, { ambientPressure, altitude }: FlowPlace): CaseAt {
  const { nozzle, contour } = solution;
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
  prepared: PreparedEngine,
  { altitude, ambientPressure }: FlowPlace,
  { round: { air, leavesAt }, thinnest, by }: CaseAt,
  fineness: Fineness,
  { round, settled }: { readonly round: RoundFlow; readonly settled: Settled },
): FlowField {
  const { contour, expansion, nozzle, input, throatArea } = solution;
  const blocks = pictureOf(settled.averages.blocks(), prepared.gases);
  const { machDisk, cellLength } = solution.plume.at(air.pressure);
  const metres = ({ value }: { readonly value: number | null }): number | null =>
    value === null ? null : value * contour.throatRadius;
  const [thrust] = settled.watched;
  const shocks = axisShocks(blocks[BEHIND]!, prepared.shape.lip, round.room.fine);
  const unit = expansion.chamber.pressure * throatArea;
  return {
    engine: input.id,
    name: input.name,
    altitude,
    ambientPressure: thinnest ? air.pressure : ambientPressure,
    thinnest,
    fineness,
    cells: blocks.reduce((sum, { ni, nj }) => sum + ni * nj, 0),
    steps: settled.steps,
    steady: settled.steady,
    thrustCoefficient: {
      mean: thrust!.mean / unit,
      swing: thrust!.swing,
      byModel: nozzle.at(air.pressure).thrustCoefficientIfFull,
    },
    leaves: leavesAt === null ? null : { axial: leavesAt, by },
    lip: { axial: prepared.shape.lip, radius: prepared.lip.radius },
    shocks,
    mainShock: mainShock(shocks),
    firstCell: firstCell(blocks[BEHIND]!, prepared.shape.lip, air.pressure, round.room.fine),
    byLaw: { machDisk: metres(machDisk), cellLength: metres(cellLength) },
    seen: round.room.fine,
    blocks,
  };
}
