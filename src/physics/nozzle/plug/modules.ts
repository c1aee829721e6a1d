import { ProblemError } from '../../../numerics/problem.ts';
import { tableStateAt } from '../../flow/gasTable.ts';
import type { PlugGeometry } from './geometry.ts';

export type ModuleShape = 'round' | 'rectangular';

/** A ring, or two rows, of small nozzles in place of one throat. */
export interface PlugModules {
  readonly number: number;
  readonly shape: ModuleShape;
}

export interface ModuleLoss {
  /** Share of the vacuum thrust that is lost [–]: value taken, and the band. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly from: string;
}

/**
 * Thrust lost by flow that leaves modules instead of one slot.
 *
 * The gaps between modules and the change from round to two-dimensional flow make waves on the plug. Published figures for
 * clusters: G. Hagemann, H. Immich, T. V. Nguyen, G. E. Dumnov, "Advanced Rocket Nozzles", JPP 14(5), 1998 – a plug with
 * round modules loses 1 to 1.5 % more than one with a slot, rectangular ones below 1 % (from memory, low confidence).
 */
export function moduleLoss({ shape }: PlugModules): ModuleLoss {
  const from = 'Hagemann et al. 1998, from memory';
  return shape === 'round'
    ? { value: 0.0125, low: 0.01, high: 0.015, from }
    : { value: 0.005, low: 0, high: 0.01, from };
}

/**
 * Share of the ring (or of the two rows) that round modules' exits leave open [–].
 *
 *   d = √(4 ε_i A_t / (π n)),   1 − n d / circumference
 *
 * @param innerAreaRatio ε_i at the inner Mach number
 * @param circumference of the ring at the lip, or twice the width [throat radii]; A_t = π
 * @throws ProblemError `modules-do-not-fit`
 */
export function moduleGap(modules: PlugModules, innerAreaRatio: number, circumference: number): number {
  const diameter = 2 * Math.sqrt(innerAreaRatio / modules.number);
  const gap = 1 - (modules.number * diameter) / circumference;
  if (modules.shape === 'rectangular') return 0;
  if (gap >= 0) return gap;
  const most = Math.floor((circumference / 2) ** 2 / innerAreaRatio);
  throw new ProblemError({
    code: 'modules-do-not-fit',
    what: `${modules.number} round modules do not fit side by side at the lip.`,
    why: 'many small circles are wider together than few large ones of the same area',
    mend:
      most >= 1
        ? `Take at most ${most} of them, rectangular ones, a smaller innerMach or a larger area ratio.`
        : 'Take rectangular ones, a smaller innerMach or a larger area ratio.',
    where: 'nozzle.modules',
    facts: { number: modules.number, most },
  });
}

/** Loss and gaps of modules round the lip of a design. */
export function modulesOf(
  modules: PlugModules,
  geometry: PlugGeometry,
): ModuleLoss & { readonly gap: number } {
  const { table, nuLip, lip, width } = geometry;
  const state = tableStateAt(table, nuLip);
  const innerAreaRatio = table.sonicMassFlux / (state.density * state.speed);
  const ring = width === null ? 2 * Math.PI * lip.radius : 2 * width;
  return { ...moduleLoss(modules), gap: moduleGap(modules, innerAreaRatio, ring) };
}
