/** The jet behind a nozzle, at any ambient pressure. What every ambient shares is found once, when first asked for. */

import { attempt } from '../../numerics/problem.ts';
import { nuAtMach, type SupersonicTable } from '../flow/gasTable.ts';
import type { LeavingFlow, NozzleModel } from '../nozzle/model.ts';
import { cellLengthOverDiameter, fullyExpandedJet, NEARLY_MATCHED } from './cellLength.ts';
import { computeOutline } from './jetOutline.ts';
import { sketchCell, sketchStraight, sketchToRadius } from './jetSketch.ts';
import { type LipWave, lipTurn } from './lipTurn.ts';
import { DISK_ONSET, machDiskOfNozzle, ORIFICE_RANGE } from './machDisk.ts';
import type { FullyExpanded, Given, JetOutline, LipTurn, Plume, ShockMeeting } from './model.ts';
import { type PlumeGas, plumeGas } from './plumeGas.ts';
import { shockMeeting } from './shockMeeting.ts';

export interface PlumeSource {
  /** @param ambientPressure [Pa] ≥ 0 */ at(ambientPressure: number): Plume;
  /** [Pa] to which the data of the gas let the jet expand in vacuum */ readonly lowestPressure: number;
}

export function plumeSource(model: NozzleModel): PlumeSource {
  let found: PlumeGas | null = null;
  const shared = (): PlumeGas => {
    found ??= plumeGas(model.expansion);
    return found;
  };
  return {
    at: (ambientPressure) => plumeAt(model, shared, ambientPressure),
    get lowestPressure() {
      return shared().lowestPressure;
    },
  };
}

function plumeAt(model: NozzleModel, shared: () => PlumeGas, ambientPressure: number): Plume {
  const { expansion } = model;
  const none = <T>(absent: string): Given<T> => ({ value: null, absent });
  const at = model.at(ambientPressure);
  const unchoked = at.flow.state === 'unchoked';
  const subsonic = 'The surroundings press too hard for a supersonic jet.';
  const fullyExpanded: Given<FullyExpanded> = unchoked
    ? none(subsonic)
    : ambientPressure === 0
      ? none('In vacuum the jet never ends to expand.')
      : given(() => fullyExpandedJet(expansion, ambientPressure));
  const wave: Given<number> =
    fullyExpanded.value === null
      ? none(fullyExpanded.absent)
      : given(() => 2 * fullyExpanded.value.diameter * cellLengthOverDiameter(fullyExpanded.value.mach));
  const mismatch = Math.abs(Math.log(at.exit.pressure / ambientPressure));
  const cellLength: Given<number> =
    wave.value !== null && mismatch > Math.log(NEARLY_MATCHED)
      ? none('The law for the shock cell is for jets within a factor of three of their matched pressure.')
      : wave;
  const whyNoJet = unchoked
    ? subsonic
    : at.flow.state === 'separated'
      ? 'The gas leaves the wall inside the nozzle, so that the jet does not begin at the lip.'
      : null;
  const leaving = whyNoJet === null ? (model.leaving?.(ambientPressure) ?? null) : null;
  const basis = leaving === null ? null : attempt(shared);
  const absent =
    whyNoJet ??
    (basis?.ok === false ? basis.problem.what : null) ??
    (leaving === null ? 'No jet is computed from this nozzle model: it has no flow field at the lip.' : null);
  if (absent !== null || leaving === null || !basis?.ok) {
    const why = absent ?? '';
    return {
      lipAxial: null,
      ambientPressure,
      fullyExpanded,
      cellLength,
      lip: none(why),
      machDisk: none(why),
      meeting: none(why),
      outline: none(why),
    };
  }
  const sizes = { cellLength: wave.value, radius: fullyExpanded.value?.diameter ?? null };
  const lipAxial = leaving.kind === 'line' && !isRing(leaving) ? leaving.nodes[0]! : null;
  const jet = jetFrom(basis.value, leaving, ambientPressure, sizes, {
    ...at.exit,
    stagnationPressure: expansion.chamber.pressure,
  });
  return isRing(leaving)
    ? {
        ...jet,
        lipAxial,
        ambientPressure,
        fullyExpanded,
        cellLength: none(RING),
        machDisk: none(RING),
        meeting: none(RING),
      }
    : { ...jet, lipAxial, ambientPressure, fullyExpanded, cellLength };
}

const RING = 'The published laws are for round jets, not for one that leaves round a plug.';

/** The mean state at the exit. */
interface ExitMean {
  readonly mach: number | null;
  readonly isentropicExponent: number | null;
  /** [Pa] */ readonly pressure: number;
  /** [Pa] */ readonly stagnationPressure: number;
}

const NO_SHOCK = ['shock-rise-out-of-range', 'no-shock-at-angle'];

type JetParts = Pick<Plume, 'lip' | 'machDisk' | 'meeting' | 'outline'>;

function jetFrom(
  shared: PlumeGas,
  leaving: LeavingFlow,
  ambientPressure: number,
  sizes: Pick<OutlineOf, 'cellLength' | 'radius'>,
  exit: ExitMean,
): JetParts {
  const { table, gas, lowestPressure } = shared;
  const lip = lipOf(table, leaving);
  const turned = attempt(() => lipTurn(table, gas, lip, ambientPressure, lowestPressure));
  if (!turned.ok) {
    const absent = NO_SHOCK.includes(turned.problem.code)
      ? 'The surroundings press harder than any shock at the lip could raise the pressure of the gas to.'
      : turned.problem.what;
    const none = { value: null, absent } as const;
    return { lip: none, machDisk: none, meeting: none, outline: none };
  }
  const { turn, shock, ahead } = turned.value;
  return {
    lip: { value: turn, absent: null },
    machDisk: machDiskOf(turn, exit, ambientPressure, lip.radius),
    meeting:
      shock === null
        ? { value: null, absent: 'No shock stands at the lip.' }
        : given<ShockMeeting>(() => shockMeeting(gas, ahead, shock).meeting),
    outline: given(() => outlineOf(shared, { leaving, wave: turned.value, lipRadius: lip.radius, ...sizes })),
  };
}

/** The disk behind an under-expanded nozzle by the mean state at its exit, which is what the law was fitted to. */
function machDiskOf(
  turn: LipTurn,
  exit: ExitMean,
  ambientPressure: number,
  lipRadius: number,
): Given<number> {
  const { mach, isentropicExponent } = exit;
  if (ambientPressure === 0) return { value: null, absent: 'In vacuum no shock closes the jet.' };
  if (turn.regime === 'over-expanded' || exit.pressure <= ambientPressure) {
    return { value: null, absent: 'The published laws for its place are for under-expanded jets only.' };
  }
  if (exit.pressure < DISK_ONSET * ambientPressure) {
    return { value: null, absent: 'So near its matched pressure the disk has shrunk to nothing.' };
  }
  if (exit.stagnationPressure > ORIFICE_RANGE.high * ambientPressure) {
    return {
      value: null,
      absent: 'In air this thin no Mach disk has been measured behind a jet of this pressure.',
    };
  }
  if (mach === null || isentropicExponent === null) {
    return { value: null, absent: 'The gas has no single sound speed at the exit.' };
  }
  return given(
    () => 2 * lipRadius * machDiskOfNozzle(mach, isentropicExponent, exit.pressure / ambientPressure),
  );
}

interface OutlineOf {
  readonly leaving: LeavingFlow;
  readonly wave: LipWave;
  readonly lipRadius: number;
  /** Of the linear wave, whatever its range: for the sketch only. */ readonly cellLength: number | null;
  /** Fully expanded [–] */ readonly radius: number | null;
}

function outlineOf({ table, tubes, lip }: PlumeGas, of: OutlineOf): JetOutline {
  const { leaving, wave, lipRadius, cellLength, radius } = of;
  const { points, lastAngle, firstCrossing } = computeOutline({
    table,
    leaving,
    boundaryNu: wave.boundaryNu,
    boundaryPressure: wave.turn.boundaryPressure,
    tubes,
    lip,
  });
  const from = {
    last: points[points.length - 1]!,
    // A shock too strong to be carried along: nothing behind the lip is computed but the direction there.
    angle: points.length === 1 ? wave.turn.lipAngle + wave.turn.turn : lastAngle,
    lipRadius,
  };
  const sketched = isRing(leaving)
    ? radius === null
      ? sketchStraight(from)
      : sketchToRadius(from, radius)
    : cellLength === null
      ? sketchStraight(from)
      : sketchCell(from, cellLength);
  return { computed: points, sketched, firstCrossing };
}

/** Whether the jet leaves round a plug. */
function isRing(leaving: LeavingFlow): boolean {
  return leaving.kind === 'line' && leaving.endsAtWall === true;
}

function lipOf(table: SupersonicTable, leaving: LeavingFlow): { nu: number; angle: number; radius: number } {
  if (leaving.kind === 'line')
    return { nu: leaving.nodes[3]!, angle: leaving.nodes[2]!, radius: leaving.nodes[1]! };
  const { mach } = leaving.state;
  return { nu: mach === null ? 0 : nuAtMach(table, mach), angle: 0, radius: leaving.radius };
}

function given<T>(compute: () => T): Given<T> {
  const outcome = attempt(compute);
  return outcome.ok ? { value: outcome.value, absent: null } : { value: null, absent: outcome.problem.what };
}
