/** A computed field along its axis and along the walls of the engine. */

import { middleIn, type PictureBlock, WAKE_OF_PINTLE } from '../../physics/wholeFlow/index.ts';
import type { FlowField, MeshSide } from './model.ts';

/** The gas at one place of a line. */
export interface AlongPoint {
  /** [m] from the throat plane */ readonly axial: number;
  /** [Pa] */ readonly pressure: number;
  /** [–] */ readonly mach: number;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly speed: number;
}

export interface AlongLine {
  readonly line: 'axis' | 'wall' | 'cowl' | 'plug' | 'pintle';
  /** In the middles of the cells beside it, in the direction of the flow. */ readonly points: readonly AlongPoint[];
}

export function fieldAlong(field: FlowField): readonly AlongLine[] {
  const { blocks, axisBlock, form, walls } = field;
  const axis = { plug: [axisBlock], pintle: [WAKE_OF_PINTLE, axisBlock], round: [0, axisBlock] }[form];
  const lines: AlongLine[] = [
    { line: 'axis', points: axis.flatMap((b) => rowOf(blocks[b]!, 0, 0, blocks[b]!.ni)) },
  ];
  for (const { kind, side } of walls) {
    if (kind === 'notional' || side.row === undefined || side.to <= side.from) continue;
    const line = form === 'round' ? 'wall' : side.row === 0 ? form : form === 'plug' ? 'cowl' : 'wall';
    const points = alongSide(blocks[side.block]!, side.row, side);
    const before = lines.find((each) => each.line === line);
    if (before === undefined) lines.push({ line, points });
    else lines[lines.indexOf(before)] = { line, points: inOrder([...before.points, ...points]) };
  }
  return lines;
}

const alongSide = (block: PictureBlock, row: number, { from, to }: MeshSide): readonly AlongPoint[] =>
  rowOf(block, Math.min(row, block.nj - 1), from, to);

function rowOf(block: PictureBlock, j: number, from: number, to: number): readonly AlongPoint[] {
  const { ni, pressure, mach, temperature, along, away } = block;
  return Array.from({ length: to - from }, (_, k): AlongPoint => {
    const cell = j * ni + from + k;
    return {
      axial: middleIn(block, from + k, j)[0],
      pressure: pressure[cell]!,
      mach: mach[cell]!,
      temperature: temperature[cell]!,
      speed: Math.hypot(along[cell]!, away[cell]!),
    };
  });
}

const inOrder = (points: readonly AlongPoint[]): readonly AlongPoint[] =>
  [...points].sort((a, b) => a.axial - b.axial);
