/**
 * The place of a Mach number along an isentrope.
 *
 * M = √(2 (h0 − h)) / a rises along the flow, but not smoothly: where a phase change begins or ends the sound speed jumps,
 * and while two phases of one substance pin the temperature it has no value. A number that the flow skips that way has no
 * place, and the error says so.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { requireStationMach } from './askedStation.ts';
import type { FlowState, GasState } from './flow.ts';
import { enthalpyDrop, type Isentrope } from './isentrope.ts';

const MOST_STEPS = 120;
/** A root farther than this from the Mach number asked for is the edge of a gap. */
const NEAR = 1e-8;

/** A stretch of ln p, against the flow: slower than asked for at `upstream`, faster at `downstream`. */
interface Stretch {
  readonly upstream: number;
  readonly downstream: number;
}

/**
 * Mach 1 is the throat; below, a place before it; above, a place behind.
 * @throws ProblemError for a negative number, one that the flow skips, or one beyond the data
 */
export function stateAtMach(isentrope: Isentrope, throat: FlowState, mach: number): GasState {
  requireStationMach(mach);
  if (mach === 0) return isentrope.chamber;
  if (mach === 1) return throat;
  const stretch = stretchOf(isentrope, throat, mach);
  // Where the sound speed has no value count the gas first as faster, then as slower than asked for.
  const place =
    placeIn(isentrope, throat, stretch, mach, 'faster') ??
    placeIn(isentrope, throat, stretch, mach, 'slower');
  if (place) return place;
  throw new ProblemError({
    code: 'no-sound-speed',
    what: `The flow has no place of Mach ${mach}: it passes that number where its sound speed jumps or has no value.`,
    why: 'a substance condenses, melts or freezes there',
    mend: 'Name the place by pressure or area ratio.',
    facts: { mach },
  });
}

function machOf(isentrope: Isentrope, state: GasState): number | null {
  return state.soundSpeed === null
    ? null
    : Math.sqrt(2 * enthalpyDrop(isentrope.chamber, state)) / state.soundSpeed;
}

function stretchOf(isentrope: Isentrope, throat: FlowState, mach: number): Stretch {
  const lnThroat = Math.log(throat.pressure);
  return mach < 1
    ? { upstream: Math.log(isentrope.chamber.pressure), downstream: lnThroat }
    : behindThroat(isentrope, lnThroat, mach);
}

/** The first step of ln p behind the throat at whose end the flow is fast enough. */
function behindThroat(isentrope: Isentrope, lnThroat: number, mach: number): Stretch {
  const lnLowest = Math.log(isentrope.lowestPressure());
  let upstream = lnThroat;
  let fastest = 0;
  for (let lnP = lnThroat; lnP > lnLowest; ) {
    lnP = Math.max(lnLowest, lnP - 1);
    const here = machOf(isentrope, isentrope.at(Math.exp(lnP)));
    if (here === null) continue;
    if (here >= mach) return { upstream, downstream: lnP };
    upstream = lnP;
    fastest = here;
  }
  throw new ProblemError({
    code: 'mach-beyond-data',
    what: `The gas reaches Mach ${fastest.toPrecision(4)} at the lowest pressure that its data allow, not ${mach}.`,
    mend: 'Ask for a smaller Mach number.',
    facts: { mach, lowestPressure: Math.exp(lnLowest) },
  });
}

/** The state in the stretch, or null where the search ends at the edge of a gap. */
function placeIn(
  isentrope: Isentrope,
  throat: FlowState,
  { upstream, downstream }: Stretch,
  mach: number,
  withoutSoundSpeed: 'faster' | 'slower',
): GasState | null {
  const lnThroat = Math.log(throat.pressure);
  const instead = withoutSoundSpeed === 'faster' ? 1 : -1;
  const miss = (lnP: number): number => {
    const state = lnP === lnThroat ? throat : isentrope.at(Math.exp(lnP));
    const here = machOf(isentrope, state);
    return here === null ? instead : here - mach;
  };
  if (!(miss(upstream) < 0 && miss(downstream) >= 0)) return null;
  const { root } = findBracketedRoot(miss, upstream, downstream, {
    valueTolerance: 1e-13 * mach,
    widthTolerance: 1e-14,
    maxSteps: MOST_STEPS,
  });
  const state = isentrope.at(Math.exp(root));
  const here = machOf(isentrope, state);
  return here !== null && Math.abs(here - mach) < NEAR ? state : null;
}
