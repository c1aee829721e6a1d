import type { Expansion, FlowState } from '../../gas/flow.ts';
import type { ExpansionDeflectionSpec, FlowVerdict, NozzleLosses, ThrustAt, ThrustPart } from '../model.ts';
import { CRITERIA_SPREAD } from '../separation/lipVerdict.ts';
import { unchokedReason } from '../separation/thrustOffDesign.ts';
import { thrustCoefficientOf } from '../thrustCoefficient.ts';
import type { ClosedWakeFlow } from './closedWake.ts';
import type { DeflectedGas } from './deflectedFlow.ts';
import { type DeflectedAt, type DeflectedForces, deflectedAt } from './openWake.ts';
import type { DeflectionShape } from './shape.ts';

/** One expansion–deflection nozzle on its gas. */
export interface Deflection {
  readonly spec: ExpansionDeflectionSpec;
  readonly expansion: Expansion;
  readonly exit: FlowState;
  readonly shape: DeflectionShape;
  readonly gas: DeflectedGas;
  readonly p0: number;
  readonly losses: NozzleLosses;
  /** Found when first asked for, then kept. */ readonly wake: () => ClosedWakeFlow;
}

function sumOf({ throat, wall, edge, base }: DeflectedForces): number {
  return throat + wall + edge + base;
}

function thrustIfFull(
  { spec, expansion, exit, shape, p0, losses, wake }: Deflection,
  ambientPressure: number,
): number {
  if (losses === 'none') return thrustCoefficientOf(expansion, exit, spec.areaRatio, 1, ambientPressure);
  const inVacuum = sumOf(deflectedAt(wake().flow, shape, 0, p0).forces);
  return inVacuum - (spec.areaRatio * ambientPressure) / p0;
}

/** Thrust and verdict at an ambient pressure [Pa]. */
export function thrustOf(model: Deflection, at: DeflectedAt, ambientPressure: number): ThrustAt {
  const { expansion, exit } = model;
  if (ambientPressure > expansion.throat.pressure) {
    return withoutThrust(model, ambientPressure, unchokedReason(ambientPressure), 'unchoked');
  }
  if (at.problem !== null) {
    return withoutThrust(
      model,
      ambientPressure,
      `${at.problem.what} Ask at a lower ambient pressure.`,
      'near the limit',
    );
  }
  const { pressure, separationPressure } = at.weakest;
  const near = pressure < Math.min(ambientPressure, (1 + CRITERIA_SPREAD) * separationPressure);
  const thrust = sumOf(at.forces);
  return {
    ambientPressure,
    thrustCoefficientIfFull: thrustIfFull(model, ambientPressure),
    thrustCoefficient: thrust,
    absent: null,
    parts: partsOf(at.forces),
    partsAbsent: null,
    boundary: at.boundary,
    flow: verdict(at, at.isSeparated ? 'separated' : near ? 'near the limit' : 'full'),
    ...(at.isSeparated && { leavesAt: at.weakest.station.axial }),
    exit: ambientPressure > exit.pressure ? expansion.atPressure(ambientPressure) : exit,
  };
}

/** The chamber of a round throat is shared out between face and converging wall; with a pintle in it this is not known. */
const AHEAD_OF_THROAT = 'chamber and pintle ahead of the throat';

function partsOf({ throat, wall, edge, base }: DeflectedForces): readonly ThrustPart[] {
  return [
    { surface: AHEAD_OF_THROAT, coefficient: throat },
    { surface: 'nozzle wall', coefficient: wall },
    { surface: 'pintle', coefficient: edge },
    { surface: 'base', coefficient: base },
  ];
}

function verdict({ weakest }: DeflectedAt, state: FlowVerdict['state']): FlowVerdict {
  return {
    state,
    criterion: 'Schmucker 1973, at the weakest place of the wall',
    lipPressure: weakest.pressure,
    separationPressure: weakest.separationPressure,
  };
}

export function withoutThrust(
  model: Deflection,
  ambientPressure: number,
  reason: string,
  state: FlowVerdict['state'],
): ThrustAt {
  const { wake, shape, p0, exit } = model;
  return {
    ambientPressure,
    thrustCoefficientIfFull: thrustIfFull(model, ambientPressure),
    thrustCoefficient: null,
    absent: reason,
    parts: [],
    partsAbsent: reason,
    boundary: null,
    flow: verdict(deflectedAt(wake().flow, shape, ambientPressure, p0), state),
    exit,
  };
}

/** λ with which one-dimensional flow gives the same thrust in vacuum. */
export function divergenceOf(model: Deflection): number {
  const { chamber, throat } = model.expansion;
  const momentum = (throat.massFlux * model.exit.velocity) / chamber.pressure;
  const pressure = (model.exit.pressure * model.spec.areaRatio) / chamber.pressure;
  return (thrustIfFull({ ...model, losses: 'default' }, 0) - pressure) / momentum;
}
