/** A computed field along its axis and along the walls of the engine. */

import { atWall, middleIn, type PictureBlock, WAKE_OF_PINTLE } from '../../physics/wholeFlow/index.ts';
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
  /** Cell by cell in the direction of the flow: on the axis in their middles, at walls on the wall. */ readonly points: readonly AlongPoint[];
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

/** At the wall below the first row of cells, or above the last. */
function alongSide(block: PictureBlock, row: number, { from, to }: MeshSide): readonly AlongPoint[] {
  const inward = row === 0 ? 1 : -1;
  const j = row === 0 ? 0 : block.nj - 1;
  const [first, second, third] = [0, 1, 2].map((k) => rowOf(block, j + inward * k, from, to));
  return first!.map((beside, k): AlongPoint => {
    const at = (value: Exclude<keyof AlongPoint, 'axial'>): number =>
      atWall(beside[value], second![k]![value], third![k]![value]);
    const node = row * (block.ni + 1) + from + k;
    return {
      axial: (block.axial[node]! + block.axial[node + 1]!) / 2,
      pressure: at('pressure'),
      mach: at('mach'),
      temperature: at('temperature'),
      speed: at('speed'),
    };
  });
}

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
