/** A field as it is told and drawn. */

import {
  axisShocks,
  type FarAir,
  firstCell,
  mainShock,
  pictureOf,
  type Settled,
  WAKE_OF_PINTLE,
} from '../../physics/wholeFlow/index.ts';
import { rowAt } from '../conditions.ts';
import type { EngineSolution } from '../solution.ts';
import { againstModel } from './againstModel.ts';
import { cellToTell } from './cellToTell.ts';
import type { CaseAt } from './flowCase.ts';
import type { Fineness, FlowField, FlowKernelName, MeshSide } from './model.ts';
import type { FlowPlace } from './places.ts';
import type { Running } from './running.ts';

export function fieldOf(
  solution: EngineSolution,
  { altitude, ambientPressure }: FlowPlace,
  { round: { air, leavesAt }, thinnest, by }: CaseAt,
  fineness: Fineness,
  {
    running,
    settled,
    kernel,
    rescued = running.flow.rescued,
  }: {
    readonly running: Running;
    readonly settled: Settled;
    readonly kernel: FlowKernelName;
    readonly rescued?: number;
  },
): FlowField {
  const { contour, expansion, nozzle, input, throatArea } = solution;
  const { lip, seen, axisBlock, gases, walls } = running;
  const blocks = pictureOf(settled.averages.blocks(), gases.pair, gases.temperatureAt);
  const { machDisk, cellLength } = solution.plume.at(air.pressure);
  const model = nozzle.at(air.pressure, machOf(air));
  // The laws are of a jet that fills its lip.
  const filled = model.mode !== 'open wake';
  const metres = ({ value }: { readonly value: number | null }): number | null =>
    value === null || !filled ? null : value * contour.throatRadius;
  const [thrust] = settled.watched;
  const unit = expansion.chamber.pressure * throatArea;
  const shocks = axisShocks(blocks[axisBlock]!, lip.axial, seen);
  const jet = {
    mainShock: mainShock(shocks),
    byLaw: { machDisk: metres(machDisk), cellLength: metres(cellLength) },
  };
  const lines = walls.map(({ kind, ...side }) => ({ kind, line: lineOf(blocks[side.block]!, side), side }));
  const solid = lines.filter(({ kind }) => kind !== 'notional').flatMap(({ line }) => line);
  return {
    engine: input.id,
    name: input.name,
    form:
      nozzle.spec.kind === 'expansionDeflection' ? 'pintle' : contour.plug === undefined ? 'round' : 'plug',
    altitude,
    ambientPressure: thinnest ? air.pressure : ambientPressure,
    flightSpeed: air.speed,
    thinnest,
    mode: model.mode ?? null,
    insideBell: isInsideBell(nozzle.spec.kind) && lip.radius < 0.999 * contour.exitRadius,
    fineness,
    kernel,
    cells: blocks.reduce((sum, { ni, nj }) => sum + ni * nj, 0),
    steps: settled.steps,
    broke: settled.broke,
    rescued,
    steady: settled.steady,
    thrustCoefficient: {
      mean: thrust!.mean / unit,
      swing: thrust!.swing,
      byModel: model.thrustCoefficient ?? model.thrustCoefficientIfFull,
    },
    against: againstModel(
      solution,
      model,
      (lip.radius / contour.throatRadius) ** 2,
      settled.watched,
      nozzle.spec.kind === 'expansionDeflection' ? edgePressure(blocks[WAKE_OF_PINTLE]!) : null,
    ),
    leaves: leavesAt === null ? null : { axial: leavesAt, by },
    separation: rowAt(solution, ambientPressure, altitude).separation ?? null,
    lip,
    end: Math.max(...solid.map(([axial]) => axial)),
    shocks,
    ...jet,
    firstCell: cellToTell(firstCell(blocks[axisBlock]!, lip.axial, air.pressure, seen), jet),
    seen,
    walls: lines,
    axisBlock,
    blocks,
  };
}

/** Of the vehicle, by the speed of sound √(1.4 p/ρ) of the air. */
const machOf = ({ speed, pressure, density }: FarAir): number =>
  speed / Math.sqrt((1.4 * pressure) / density);

function isInsideBell(kind: EngineSolution['nozzle']['spec']['kind']): boolean {
  return kind === 'dualBell' || kind === 'insert';
}

/** Mean pressure along the edge of a wake, from base to lip [Pa]. */
function edgePressure({ ni, nj, axial, pressure }: FlowField['blocks'][number]): number {
  const top = (nj - 1) * (ni + 1);
  let sum = 0;
  for (let i = 0; i < ni; i++) sum += pressure[(nj - 1) * ni + i]! * (axial[top + i + 1]! - axial[top + i]!);
  return sum / (axial[top + ni]! - axial[top]!);
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
