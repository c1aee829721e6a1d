/** A plug with another part of its length kept, or another Mach number at its lip: designed anew, its flow marched at a few pressures. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import {
  type Contour,
  type NozzleModel,
  nozzleModel,
  type PlugNozzle,
  plugOf,
} from '../../physics/nozzle/index.ts';
import type { EngineInput } from '../../study/model.ts';
import { chamberContour } from '../chamberContour.ts';
import { type EngineLosses, lossesOf } from '../losses.ts';
import { specOf } from '../solveEngine.ts';
import { wallOf } from '../wallOf.ts';
import type { WorkingGas } from '../workingGas.ts';
import type { Recut } from './model.ts';
import { areAlike } from './unseen.ts';

/** Places of the tables where the flow on the plug is the design's, which costs nothing; and above, where it is marched. */
const STILL = 8;
const MARCHED = 10;
/** Up to the pressure at sea level [Pa]. */
const THICKEST = STANDARD_ATMOSPHERE;

/** Whether the two are plugs that differ in what a recut knows. */
export function isRecut({ nozzle: was }: EngineInput, { nozzle: is }: EngineInput): boolean {
  if (was.kind !== 'plug' || is.kind !== 'plug') return false;
  return !areAlike([was.kept, was.innerMach], [is.kept, is.innerMach]);
}

/**
 * What the new cut changes, on the gas before.
 *
 * @param throatRadius √(A_t/π) of the engine before [m]
 * @throws ProblemError where there is no such plug
 */
export function recutOf(before: EngineInput, now: EngineInput, gas: WorkingGas, throatRadius: number): Recut {
  const [old, fresh] = [before, cutLike(before, now)].map((input) => sizedPlug(input, gas, throatRadius));
  if (old === undefined || fresh === undefined) throw new Error('Two plugs are held against each other.');
  const [was, is] = [old.plug, fresh.plug];
  const p0 = gas.expansion.chamber.pressure;
  // A chamber at less pressure meets the same air as a larger share of its own.
  const thickest = THICKEST * Math.max(1, before.chamber.pressure.value / now.chamber.pressure.value);
  const pressures = placesOf(Math.min(was.frozenBelow, is.frozenBelow), thickest);
  const lost = fresh.losses.coefficientLost - old.losses.coefficientLost;
  return {
    share: pressures.map((each) => each / p0),
    added: pressures.map((each) => {
      const [then, there] = [was.at(each).thrustCoefficient, is.at(each).thrustCoefficient];
      return then === null || there === null ? null : there - then - lost;
    }),
    base: pressures.map((each) => {
      const [then, there] = [was.base(each), is.base(each)];
      return then === null || there === null ? null : there.pressure / then.pressure;
    }),
    massFlow: fresh.losses.layerDischarge / old.losses.layerDischarge,
    contour: fresh.contour,
    wall: wallOf(fresh.contour, is),
  };
}

/** Ambient pressures [Pa], rising: even up to where the flow changes, evenly in √p from there on, as altitudes lie. */
function placesOf(frozenBelow: number, thickest: number): readonly number[] {
  const end = Math.min(frozenBelow, thickest);
  const still = Array.from({ length: STILL }, (_, i) => (end * i) / (STILL - 1));
  const [from, to] = [Math.sqrt(end), Math.sqrt(thickest)];
  const marched = Array.from({ length: MARCHED }, (_, i) => (from + ((to - from) * (i + 1)) / MARCHED) ** 2);
  return [...still, ...(end < thickest ? marched : [])];
}

/** The engine before with the cut of the one now. */
function cutLike(before: EngineInput, now: EngineInput): EngineInput {
  if (before.nozzle.kind !== 'plug' || now.nozzle.kind !== 'plug') return before;
  const { kept, innerMach } = now.nozzle;
  return { ...before, nozzle: { ...before.nozzle, kept, innerMach } };
}

interface SizedPlug {
  readonly plug: PlugNozzle;
  readonly contour: Contour;
  readonly losses: EngineLosses;
}

/** The one before a change is asked for again with each move. */
const plugs = new WeakMap<WorkingGas, Map<string, SizedPlug>>();
const MOST_PLUGS = 4;

function sizedPlug(input: EngineInput, gas: WorkingGas, throatRadius: number): SizedPlug {
  const spec = specOf(input.nozzle);
  const known = plugs.get(gas) ?? new Map<string, SizedPlug>();
  plugs.set(gas, known);
  const key = JSON.stringify([spec, input.losses, throatRadius]);
  const one =
    known.get(key) ?? sized(input, gas, nozzleModel(spec, gas.expansion, input.losses), throatRadius);
  known.delete(key);
  known.set(key, one);
  for (const [oldest] of known) if (known.size > MOST_PLUGS) known.delete(oldest);
  return one;
}

function sized(input: EngineInput, gas: WorkingGas, nozzle: NozzleModel, throatRadius: number): SizedPlug {
  const plug = plugOf(nozzle);
  if (plug === null) throw new Error('Only a plug can be cut.');
  const { contour } = chamberContour(plug, throatRadius, input.chamber);
  return { plug, contour, losses: lossesOf(input, gas, plug)(contour, true) };
}
