/** Separation on any wall given by its stations: cone, bell, either part of a dual bell, a skirt. */

import { ProblemError } from '../../../numerics/problem.ts';
import type { Expansion } from '../../gas/flow.ts';
import type { WallStation } from '../wallStation.ts';
import { PLATEAU, pushOfDeadAir } from './behindSeparation.ts';
import { CRITERIA, type JudgedWall } from './criteria.ts';
import { criteriaAt } from './criteriaAt.ts';
import { flowCase } from './flowCase.ts';
import { isDeciding, type Judgement, judge, judgedCriteria } from './judgement.ts';
import type { OffDesign, SeparationAt, Span, WallSeparation } from './model.ts';
import { sideLoadCaution, type WallForm } from './sideLoads.ts';
import { throttleOf } from './throttle.ts';
import { flowHeldByWall, jetOfBareThroat } from './unchokedFlow.ts';
import { placeAt, pushBehind, throatOf, wallTable } from './wallTable.ts';
import { decidingWords, noOutflow, UNCHOKED_NOTE } from './words.ts';

/** Stations from throat to lip, flowing full, and what is known of the nozzle. */
export interface SeparatingWall {
  readonly expansion: Expansion;
  readonly stations: readonly WallStation[];
  readonly form: WallForm;
  /** [Pa] mean over the exit */ readonly meanExitPressure: number;
  /** `mean`: the stations hold the mean over each section, there being no flow field. */
  readonly from: 'field' | 'mean';
}

/** Everything that the judgements at one ambient pressure share. */
export interface Judged {
  readonly deciding: Judgement;
  /** Those that count, the deciding one always among them. */ readonly counting: readonly Judgement[];
}

/**
 * The separation on a wall. The state of the gas over chamber pressure at each station does not depend on ambient pressure,
 * so that everything is tabulated here once.
 *
 * @throws ProblemError `wall-without-stations`
 */
export function wallSeparation(wall: SeparatingWall): WallSeparation {
  const { expansion, stations } = wall;
  requireStations(stations);
  const { chamber, throat } = expansion;
  const table = wallTable(stations);
  const judged: JudgedWall = {
    chamberPressure: chamber.pressure,
    gamma: throat.isentropicExponent ?? throat.gammaFrozen,
    form: wall.form === 'cone' ? 'cone' : 'contoured',
  };
  const criteria = judgedCriteria(stations, table, judged);
  const lip = stations[stations.length - 1]!;
  const lipAreaRatio = lip.radius ** 2;
  const decidingOne = criteria.find(({ criterion }) => isDeciding(criterion, table))!;
  const subsonicExitPressure = expansion.atAreaRatio(lipAreaRatio, 'subsonic').pressure;

  // Verdict, thrust and words of one ambient pressure ask one after the other.
  let latest: { readonly ambientPressure: number; readonly judged: Judged } | null = null;

  function judgedAt(ambientPressure: number): Judged {
    if (latest === null || latest.ambientPressure !== ambientPressure) {
      latest = { ambientPressure, judged: judgeAll(ambientPressure) };
    }
    return latest.judged;
  }

  function judgeAll(ambientPressure: number): Judged {
    const all = criteria.flatMap((one) => judge(table, one, ambientPressure, chamber.pressure) ?? []);
    const deciding = all.find(({ criterion }) => criterion === decidingOne.criterion)!;
    return { deciding, counting: all.filter((one) => one === deciding || one.why === null) };
  }

  /** C_F of separated flow less that of full flow [–]. */
  function gain({ along, place }: Judgement, ambientPressure: number, plateau: number): number {
    if (along.share >= 1) return 0;
    const dead = pushOfDeadAir(place, lipAreaRatio, ambientPressure, plateau);
    return (dead - pushBehind(table, along, place)) / chamber.pressure;
  }

  function spanOfGain(one: Judgement, ambientPressure: number): Span & { readonly best: number } {
    const [low, best, high] = [PLATEAU.low, PLATEAU.best, PLATEAU.high].map((plateau) =>
      gain(one, ambientPressure, plateau),
    );
    return { low: low!, best: best!, high: high! };
  }

  function caseAt(ambientPressure: number, { deciding, counting }: Judged) {
    return flowCase(ambientPressure, expansion, wall.meanExitPressure, subsonicExitPressure, {
      inThroat:
        deciding.along.share < 1 &&
        ((deciding.along.cell === 0 && deciding.along.share === 0) ||
          (deciding.place.mach !== null && deciding.place.mach < LEAST_FITTED_MACH)),
      beforeLip: deciding.along.share < 1,
      someLetGo: counting.some(({ along }) => along.share < 1),
    });
  }

  function choked(ambientPressure: number, ifFull: number): OffDesign {
    const found = judgedAt(ambientPressure);
    const { deciding, counting } = found;
    const best = gain(deciding, ambientPressure, PLATEAU.best);
    const gains = counting.map((one) => spanOfGain(one, ambientPressure));
    const [lows, highs] = [gains.map(({ low }) => low), gains.map(({ high }) => high)];
    const lettingGo = counting.filter(({ along }) => along.share < 1).length;
    const byPlace = [...counting].sort((a, b) => a.place.axial - b.place.axial);
    const separation: SeparationAt = {
      case: caseAt(ambientPressure, found),
      place: deciding.place,
      earliest: byPlace[0]!.place,
      latest: byPlace[byPlace.length - 1]!.place,
      counted: counting.length,
      lettingGo,
      thrustCoefficient: { low: ifFull + Math.min(...lows), high: ifFull + Math.max(...highs) },
      massFlowShare: 1,
      massFlowShares: { low: 1, high: 1 },
      note: null,
      sideLoads: lettingGo > 0 ? sideLoadCaution(wall.form, deciding.along.share < 1) : null,
    };
    return { coefficient: ifFull + best, gain: best, absent: null, separation };
  }

  /** A jet from the bare throat, joined to the choked flow at p_a = p_t, where both are sonic. */
  function unchoked(ambientPressure: number, ifFull: number): OffDesign {
    const atEdge = choked(
      throat.pressure,
      ifFull + ((ambientPressure - throat.pressure) * lipAreaRatio) / chamber.pressure,
    );
    const place = placeAt(table, throatOf());
    const flows = ambientPressure < chamber.pressure;
    const jet = flows ? jetOfBareThroat(expansion, ambientPressure) : null;
    const held = flows ? flowHeldByWall(expansion, lipAreaRatio, ambientPressure) : null;
    const join = atEdge.coefficient! / jetOfBareThroat(expansion, throat.pressure).coefficient;
    const coefficient = jet === null ? null : jet.coefficient * join;
    const ends = [coefficient ?? 0, held?.coefficient ?? 0];
    const shares = [jet?.massFlowShare ?? 0, held?.massFlowShare ?? 0];
    return {
      coefficient,
      gain: coefficient === null ? 0 : coefficient - ifFull,
      absent: jet === null ? noOutflow(ambientPressure, chamber.pressure) : null,
      separation: {
        case: caseAt(ambientPressure, judgedAt(ambientPressure)),
        place,
        earliest: place,
        latest: place,
        counted: atEdge.separation.counted,
        lettingGo: atEdge.separation.counted,
        thrustCoefficient: jet === null ? null : { low: Math.min(...ends), high: Math.max(...ends) },
        massFlowShare: shares[0]!,
        massFlowShares: { low: Math.min(...shares), high: Math.max(...shares) },
        note: jet === null ? null : UNCHOKED_NOTE,
        sideLoads: sideLoadCaution(wall.form, true),
      },
    };
  }

  const { alongThrottle, lowestFullThrottle } = throttleOf({
    table,
    criteria,
    chamberPressure: chamber.pressure,
    isDeciding: (criterion) => criterion === decidingOne.criterion,
    caseAt: (ambientPressure) => caseAt(ambientPressure, judgedAt(ambientPressure)),
  });
  return {
    lipPressure: lip.pressure,
    separationPressure: (ambientPressure) =>
      ambientPressure *
      (ambientPressure === 0
        ? 0
        : decidingOne.criterion.ratio(lip.mach, chamber.pressure / ambientPressure, judged)!),
    deciding: (ambientPressure) =>
      decidingWords(judgedAt(ambientPressure).deciding, wall.from, table.mach === null),
    at: (ambientPressure, ifFull) =>
      ambientPressure > throat.pressure ? unchoked(ambientPressure, ifFull) : choked(ambientPressure, ifFull),
    criteria: (ambientPressure) => criteriaAt(table, criteria, judged, ambientPressure),
    byCriterion: (ambientPressure) => {
      const { deciding, counting } = judgedAt(ambientPressure);
      return counting.map((one) => ({
        id: one.criterion.id,
        name: one.criterion.name,
        isDeciding: one === deciding,
        place: one.place,
        gain: spanOfGain(one, ambientPressure),
      }));
    },
    separationPressures: (ambientPressure) =>
      ambientPressure === 0
        ? []
        : judgedAt(ambientPressure).counting.flatMap(({ criterion }) => {
            const ratio = criterion.ratio(lip.mach, chamber.pressure / ambientPressure, judged);
            return ratio === null ? [] : [{ name: criterion.name, pressure: ratio * ambientPressure }];
          }),
    alongThrottle,
    lowestFullThrottle,
  };
}

/** Below this Mach number no criterion was fitted [–]. */
const LEAST_FITTED_MACH = Math.min(...CRITERIA.flatMap(({ mach }) => mach?.low ?? []));

function requireStations(stations: readonly WallStation[]): void {
  const rising = stations.every((station, i) => i === 0 || station.axial >= stations[i - 1]!.axial);
  if (stations.length >= 2 && rising) return;
  throw new ProblemError({
    code: 'wall-without-stations',
    what: `The wall has ${stations.length} stations; separation needs at least two, from the throat to the lip.`,
    mend: 'Give the state of the gas at places along the wall, in order.',
    facts: { stations: stations.length },
  });
}
