/** The error of taking a fuel-rich hydrocarbon gas in equilibrium. */

import type { Scatter } from '../asked/model.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import type { EngineSolution } from '../solution.ts';

/** Published fuel-rich kerosene gas gives so much of the equilibrium gas’s work at one temperature [–]. */
const LEAST_WORK = 0.77;
const SOURCE =
  'fuel-rich kerosene gas by D. K. Huzel, D. H. Huang, NASA SP-125, 1971 (from memory): 13 to 20 % less work between 900 and 1060 K than in equilibrium, and a little more allowed';

/** @param with the number where the turbine needs `flow` times as much gas; none where the fuel has no carbon or nothing is dumped */
export function gasScatter(
  solution: EngineSolution,
  value: number,
  withFlow: (flow: number) => number,
): readonly Scatter[] {
  const { stated, pumped } = solution.cycle();
  const burnt = stated.kind === 'gasGenerator' || stated.kind === 'tapOff';
  if (!burnt || (pumped.fed.fuel.elements.C ?? 0) === 0) return [];
  return [{ name: ERROR_NAMES.generatorGas, low: value, high: withFlow(1 / LEAST_WORK), source: SOURCE }];
}
