import type { Expansion } from '../../gas/flow.ts';
import type { FlowCase } from './model.ts';

/** Mean exit pressure within this share of ambient counts as matched [–]. */
const MATCHED_WITHIN = 0.01;

/** What the deciding and the other criteria say of the wall. */
export interface WallSays {
  /** The place lies at the throat or where the wall's Mach number is below all that criteria were fitted to. */
  readonly inThroat: boolean;
  readonly beforeLip: boolean;
  readonly someLetGo: boolean;
}

/**
 * The name of what the flow does.
 *
 *   p_a ≥ p0                   no outflow
 *   p_a > p_sub(ε)             subsonic jet: it cannot choke, whatever the gas does behind the throat
 *   p_a > p_t                  unchoked: a jet from the bare throat doesn't choke; gas held by the wall still would
 *   place below Mach 1.4, or at the throat plane: shock in the throat (no criterion was fitted so low)
 *   place ahead of the lip     separated; some criterion only: near the limit
 *   else by the mean exit pressure: underexpanded, matched (within 1 %), overexpanded (an oblique shock at the lip)
 *
 * @param meanExitPressure p_e [Pa]
 * @param subsonicExitPressure p_sub(ε) [Pa]: exit pressure of choked flow that stays subsonic behind the throat
 */
export function flowCase(
  ambientPressure: number,
  { chamber, throat }: Expansion,
  meanExitPressure: number,
  subsonicExitPressure: number,
  wall: WallSays,
): FlowCase {
  if (ambientPressure >= chamber.pressure) return 'no outflow';
  if (ambientPressure > subsonicExitPressure) return 'subsonic jet';
  if (ambientPressure > throat.pressure) return 'unchoked';
  if (wall.inThroat) return 'shock in the throat';
  if (wall.beforeLip) return 'separated';
  if (wall.someLetGo) return 'near the limit';
  const excess = meanExitPressure / ambientPressure - 1;
  if (Math.abs(excess) <= MATCHED_WITHIN) return 'matched';
  return excess > 0 ? 'underexpanded' : 'overexpanded';
}
