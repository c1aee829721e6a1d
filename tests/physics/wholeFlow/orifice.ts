/** The jet of a sonic orifice into air at rest: its first Mach disk, against the published law. */

import { flowKernel } from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import type { ContourPoint } from '../../../src/physics/nozzle/index.ts';
import {
  axisPressure,
  axisShocks,
  BEHIND,
  type BlockFlow,
  mainShock,
  pictureOf,
  prepareRound,
  roundFlow,
  roundSize,
  settle,
  thrustOf,
} from '../../../src/physics/wholeFlow/index.ts';

/** Radius of the orifice [m]. */
const R = 0.01;

/** A quarter of a sine from 1.75 radii down to the throat. */
const WALL: readonly ContourPoint[] = Array.from({ length: 21 }, (_, k) => {
  const s = 1 - k / 20;
  const phi = (Math.PI / 2) * s;
  return {
    axial: -1.5 * R * s,
    radius: R * (1 + 0.75 * Math.sin(phi) ** 2),
    angle: -Math.atan((0.75 * R * Math.PI * Math.sin(phi) * Math.cos(phi)) / (1.5 * R)),
    part: 'converging',
  };
});

export interface DiskFound {
  /** p₀/p_a */ readonly ratio: number;
  /** over the diameter, in the mean field */ readonly found: number;
  /** 0.67 √(p₀/p_a): H. Ashkenas & F. S. Sherman, Rarefied Gas Dynamics IV, 1966 */ readonly law: number;
  readonly steady: boolean;
}

/** @param across cells from axis to lip, one mesh after the other @param steps at most on each */
export function diskOfOrifice(
  ratio: number,
  gamma: number,
  across: readonly number[],
  steps: readonly number[],
): DiskFound {
  const pressure = 1e6;
  const expansion = expandPerfect({ gamma, molarMass: 0.029, temperature: 300, pressure });
  const prepared = prepareRound({ expansion, wall: WALL, throatRadius: R, kernel: flowKernel(64) });
  const ambient = pressure / ratio;
  const air = { pressure: ambient, density: ambient / (287 * 288), speed: 0 };
  let from: readonly BlockFlow[] | null = null;
  let result: DiskFound | null = null;
  for (const [k, fine] of across.entries()) {
    const size = roundSize(prepared, across[0]!, fine);
    const round = roundFlow(prepared, { air, leavesAt: null }, size, from);
    const settled = settle(round.flow, {
      least: Math.min(600, steps[k]!),
      most: steps[k]!,
      watch: () => [thrustOf(round), axisPressure(round)],
      still: [1e-3, 1e-2],
    });
    from = settled.averages.blocks();
    const block = pictureOf(from, prepared.gases.pair, prepared.gases.temperatureAt)[BEHIND]!;
    const shock = mainShock(axisShocks(block, 0, round.room.fine));
    if (shock === null || !shock.disk) throw new Error(`no Mach disk at p0/pa = ${ratio}`);
    result = {
      ratio,
      found: shock.behind / (2 * R),
      law: 0.67 * Math.sqrt(ratio),
      steady: settled.steady,
    };
  }
  return result!;
}
