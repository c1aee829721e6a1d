/** What every nozzle, plume, heat and flight model knows of the gas. Implementations: equilibrium, frozen, perfect. */

export type ChemistryKind = 'shifting' | 'frozen' | 'frozenFrom' | 'perfect';

/** Thermodynamic state of the (possibly reacting, possibly two-phase) gas. SI units. */
export interface GasState {
  /** [K] */ readonly temperature: number;
  /** [Pa] */ readonly pressure: number;
  /** [kg/m³], condensed species counted in the mass, their volume neglected */ readonly density: number;
  /** [kg/mol] mass of the mixture per mole of gas and condensed species together */ readonly molarMass: number;
  /** [kg/mol] mass of the mixture (condensed included) per mole of gas: p = ρ R T / molarMassGas */
  readonly molarMassGas: number;
  /** [J/kg] heat of formation included */ readonly enthalpy: number;
  /** [J/(kg K)] */ readonly entropy: number;
  /** [J/(kg K)] composition held */ readonly cpFrozen: number;
  /** [J/(kg K)] composition follows; null where two phases of one substance pin the temperature, or frozen */
  readonly cpEquilibrium: number | null;
  /** (∂ ln p / ∂ ln ρ)_s of the flow's own chemistry [–]; null where it has no value */
  readonly isentropicExponent: number | null;
  /** cp/cv at held composition [–] */ readonly gammaFrozen: number;
  /** [m/s] of the flow's own chemistry; null where it has no value */ readonly soundSpeed: number | null;
  /** (∂ ln V / ∂ ln T)_p [–]; null where it has no value */ readonly dlnVdlnT: number | null;
  /** (∂ ln V / ∂ ln p)_T [–] */ readonly dlnVdlnp: number | null;
  /** Why a null above is null. */ readonly absent: string | null;
  /** What to know before trusting the state: continued below the data, past saturation. null: nothing. */
  readonly notice: string | null;
  /** Mole fractions by species name, gas and condensed together, those above 1e-12. Computed on demand. */
  readonly composition: () => Record<string, number>;
}

/** A state of the steady, adiabatic, isentropic flow from the chamber. */
export interface FlowState extends GasState {
  /** [m/s] √(2 (h0 − h)) */ readonly velocity: number;
  /** [–]; null where the sound speed has no value */ readonly mach: number | null;
  /** ρ u [kg/(m² s)] */ readonly massFlux: number;
  /** A/A* by mass conservation [–], ≥ 1; Infinity at rest */ readonly areaRatio: number;
}

/**
 * Isentropic expansion of a given gas from a given chamber.
 * All `at…` functions throw ProblemError outside their range, never return NaN, never clamp.
 */
export interface Expansion {
  readonly chemistry: ChemistryKind;
  /** Stagnation state from which the flow expands. */
  readonly chamber: FlowState;
  /** State of greatest mass flux. */
  readonly throat: FlowState;
  /** c* = p0 / (ρu)* [m/s], ideal */
  readonly characteristicVelocity: number;
  /** [Pa] lowest static pressure that the model reaches */ readonly lowestPressure: number;
  atPressure(pressure: number): FlowState;
  /** `side`: on which side of the throat. */
  atAreaRatio(areaRatio: number, side: 'subsonic' | 'supersonic'): FlowState;
  atMach(mach: number): FlowState;
  /**
   * The flow that has lost stagnation pressure in a shock: same total enthalpy, stagnation pressure [Pa] as given, in
   * equilibrium anew. Absent where the composition is held: then the state at a speed is the same, at a lower pressure.
   */
  readonly afterLoss?: (stagnationPressure: number) => Expansion;
}
