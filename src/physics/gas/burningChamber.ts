/**
 * What burning in a chamber of finite width costs: heat added to a moving gas lowers its total pressure.
 *
 * Constant-area chamber, propellants entering at rest at the injector face, no friction:
 *
 *   mass      ρ u A_c = ṁ                            (= the throat's flow, A_c = contraction ratio · A_t)
 *   momentum  p_injector = p + ρ u²
 *   energy    h_reactants = h + u²/2
 *
 * then isentropic from the chamber's end through the throat. Source: S. Gordon & B. J. McBride, NASA RP-1311 (1994),
 * sec. 6.4 (finite-area combustor; from memory) and any text on flow with heat addition.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { equilibrate } from './equilibrium.ts';
import { equilibriumState } from './equilibriumState.ts';
import { burn, expandFrom, type NozzleChemistry, requireChamberPressure, workFor } from './expand.ts';
import type { Expansion, FlowState } from './flow.ts';
import type { SpeciesChoice } from './mixture.ts';
import type { Reactants } from './reactants.ts';
import type { SpeciesRecord } from './records.ts';

export interface BurningChamberOptions {
  /** Static (and total) pressure at the injector face [Pa] */ readonly injectorPressure: number;
  /** Chamber area over throat area [–], > 1 */ readonly contractionRatio: number;
  readonly chemistry: NozzleChemistry;
  readonly species?: SpeciesChoice;
}

export interface BurningChamber {
  /** Expansion from the total pressure at the chamber's end. */ readonly expansion: Expansion;
  /** Total pressure at the chamber's end over the injector pressure [–], ≤ 1 */ readonly stagnationPressureRatio: number;
  readonly chamberEnd: FlowState;
}

/** The total pressure at the nozzle inlet is between these shares of the injector pressure for contraction ratios above 1. */
const LOWEST_SHARE = 0.6;

/**
 * Burn in a chamber of finite contraction ratio.
 *
 * Unknown is the total pressure p0 at the chamber's end; it fixes the isentrope (equilibrium at h_reactants, p0), and so
 * the state at the contraction ratio on the subsonic side; the momentum balance there must give the injector pressure.
 * @throws ProblemError for a contraction ratio of 1.05 or less (the chamber would choke), or outside the data
 */
export function expandBurntFromInjector(
  reactants: Reactants,
  records: readonly SpeciesRecord[],
  { injectorPressure, contractionRatio, chemistry, species = 'all' }: BurningChamberOptions,
): BurningChamber {
  requireChamberPressure(injectorPressure);
  if (!(contractionRatio > 1.05 && Number.isFinite(contractionRatio))) {
    throw new ProblemError({
      code: 'contraction-ratio-too-small',
      what: `The contraction ratio is ${contractionRatio}.`,
      why: 'a chamber hardly wider than its throat would choke by its own burning',
      mend: 'Give a contraction ratio above 1.05; 1.5 to 5 is usual.',
      facts: { contractionRatio },
    });
  }
  const work = workFor(reactants, records, species);
  const solveAt = (share: number): { expansion: Expansion; end: FlowState } => {
    burn(work, reactants, share * injectorPressure);
    // The composition follows in the chamber whatever the nozzle does.
    const expansion = expandFrom(work, equilibriumState(work), { kind: 'shifting' });
    return { expansion, end: expansion.atAreaRatio(contractionRatio, 'subsonic') };
  };
  const { root } = findBracketedRoot(
    (share) => {
      const { end } = solveAt(share);
      return (end.pressure + end.density * end.velocity ** 2) / injectorPressure - 1;
    },
    LOWEST_SHARE,
    1,
    { valueTolerance: 1e-12, widthTolerance: 1e-14 },
  );
  const { end } = solveAt(root);
  equilibrate(work, root * injectorPressure, { kind: 'enthalpy', enthalpy: reactants.enthalpy });
  return {
    expansion: expandFrom(work, equilibriumState(work), chemistry),
    stagnationPressureRatio: root,
    chamberEnd: end,
  };
}
