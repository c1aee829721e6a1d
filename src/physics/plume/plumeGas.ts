/** What the jets of one engine share at every ambient pressure: tables of its gas, and where the jet begins. */

import { attempt } from '../../numerics/problem.ts';
import { type SupersonicTable, tabulateSupersonic } from '../flow/gasTable.ts';
import type { LipCharacteristic } from '../flow/jet/jet.ts';
import { type ShockGas, shockGasOf } from '../flow/shocks/shockGas.ts';
import { type TubeGas, tubeGas } from '../flow/streamtubes/index.ts';
import type { Expansion } from '../gas/flow.ts';
import type { LeavingFlow } from '../nozzle/model.ts';
import { lipStart } from './jetOutline.ts';

/** The jet is followed down to this share of the chamber pressure, or to where the gas data end, if that is sooner. */
const DEEPEST = 1e-10;
/** The Prandtl–Meyer angle is then within 1e-6 of a perfect gas's closed form. */
const TABLE_CELLS = 200;
const TABLE_PANELS = 48;
/** Cells of the second isentrope, which only gives a small change. */
const LOSSY_CELLS = 80;
const LOSSY_PANELS = 20;

export interface PlumeGas {
  /** The isentrope from the chamber. */ readonly table: SupersonicTable;
  /** For shocks inside the jet; prepared when first asked for. */ readonly tubes: () => TubeGas;
  /** Where the jet begins; kept for a flow that leaves the same at every ambient pressure. */
  readonly lip: (leaving: LeavingFlow) => LipCharacteristic;
  /** For shocks at the lip. */ readonly gas: ShockGas;
  /** [Pa] to which the jet is followed in vacuum */ readonly lowestPressure: number;
}

/** @throws ProblemError where the gas has no sound speed on the way */
export function plumeGas(expansion: Expansion): PlumeGas {
  const lowestPressure = Math.max(
    expansion.lowestPressure * (1 + 1e-6),
    DEEPEST * expansion.chamber.pressure,
  );
  const table = tabulateSupersonic(expansion, lowestPressure, TABLE_CELLS, TABLE_PANELS);
  let found: TubeGas | null = null;
  const starts = new WeakMap<object, LipCharacteristic>();
  return {
    lip: (leaving) => {
      const key = leaving.kind === 'line' ? leaving.nodes : leaving.state;
      const kept = starts.get(key) ?? lipStart(table, leaving);
      starts.set(key, kept);
      return kept;
    },
    table,
    tubes: () => {
      found ??= tubeGas(table, lossyOf(expansion, lowestPressure));
      return found;
    },
    gas: shockGasOf(expansion, lowestPressure),
    lowestPressure,
  };
}

/** A second isentrope for a gas whose composition follows; null where it is held, or leaves the data. */
function lossyOf({ chamber, afterLoss }: Expansion, lowestPressure: number): SupersonicTable | null {
  if (afterLoss === undefined) return null;
  const lossy = attempt(() =>
    tabulateSupersonic(afterLoss(0.5 * chamber.pressure), 0.5 * lowestPressure, LOSSY_CELLS, LOSSY_PANELS),
  );
  return lossy.ok ? lossy.value : null;
}
