import { requireAmbientPressure } from '../air/ambient.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';
import { requireAreaRatio } from './areaRatio.ts';
import type { FlowVerdict, NozzleModel, NozzleSpec, ThrustAt } from './model.ts';
import { unchokedReason } from './separation/thrustOffDesign.ts';
import { thrustCoefficientOf } from './thrustCoefficient.ts';

/**
 * The bound that no altitude-compensating nozzle of this area ratio can beat.
 *
 *   p_a ≥ p_e(ε):  the gas expands exactly to ambient, C_F = (ρu)_t u(p_a) / p0
 *   p_a < p_e(ε):  the fixed ideal nozzle of the full area ratio
 *
 * For a given p_a the thrust of one-dimensional loss-free nozzles is greatest where exit pressure meets ambient; so at
 * each p_a this is the best of all of them with an area ratio up to ε.
 *
 * @throws ProblemError when the area ratio is outside its range or beyond what the gas model reaches
 * Source: optimum expansion, G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 3.
 * Limits: a bound, not a machine; real plugs and dual bells stay below it.
 */
export function adaptingNozzle(spec: NozzleSpec & { kind: 'adapting' }, expansion: Expansion): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  return {
    spec,
    expansion,
    exit,
    divergenceFactor: 1,
    matchedAmbient: exit.pressure,
    dischargeCoefficient: 1,
    wallStations: () => null,
    balance: () => null,
    leaving(ambientPressure) {
      requireAmbientPressure(ambientPressure);
      const state = ambientPressure > exit.pressure ? expansion.atPressure(ambientPressure) : exit;
      return { kind: 'parallel', state, radius: Math.sqrt(state.areaRatio) };
    },
    omitted: [
      'How a nozzle could adapt: this is the bound for all that do.',
      'Friction and divergence: it stands for no wall.',
      'Flow that leaves the wall: by definition it never does.',
    ],
    models: ['nozzle-adapting', 'nozzle-thrust'],
    at(ambientPressure: number): ThrustAt {
      requireAmbientPressure(ambientPressure);
      return thrustAt(expansion, exit, spec.areaRatio, ambientPressure);
    },
  };
}

const NO_WALL = 'The bound has no wall for the gas to push on.';

function thrustAt(
  expansion: Expansion,
  full: FlowState,
  areaRatio: number,
  ambientPressure: number,
): ThrustAt {
  const { throat } = expansion;
  if (ambientPressure > throat.pressure) {
    const ifFull = thrustCoefficientOf(expansion, throat, 1, 1, ambientPressure);
    return {
      ambientPressure,
      thrustCoefficientIfFull: ifFull,
      thrustCoefficient: null,
      absent: unchokedReason(ambientPressure),
      parts: [],
      partsAbsent: NO_WALL,
      boundary: null,
      flow: verdict('unchoked', throat),
      exit: throat,
    };
  }
  const matched = ambientPressure > full.pressure;
  const exit = matched ? expansion.atPressure(ambientPressure) : full;
  // Where matched, the pressure term is zero and the exit area does not matter.
  const coefficient = matched
    ? (throat.massFlux * exit.velocity) / expansion.chamber.pressure
    : thrustCoefficientOf(expansion, full, areaRatio, 1, ambientPressure);
  return {
    ambientPressure,
    thrustCoefficientIfFull: coefficient,
    thrustCoefficient: coefficient,
    absent: null,
    parts: [],
    partsAbsent: NO_WALL,
    boundary: coefficient,
    flow: verdict('full', exit),
    exit,
  };
}

function verdict(state: FlowVerdict['state'], exit: FlowState): FlowVerdict {
  return {
    state,
    criterion: 'none: the bound never leaves the wall',
    lipPressure: exit.pressure,
    separationPressure: 0,
  };
}
