/** The printed answer of one engine, derived from its solution; every null in it has its reason. */

import { attempt } from '../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../physics/air/index.ts';
import { STANDARD_ATMOSPHERE } from '../physics/constants.ts';
import type { FieldBalance } from '../physics/nozzle/model.ts';
import type { SourceInput } from '../study/model.ts';
import { inTwo, NO_BULK_DENSITY, NO_MACH_ON_WALL, noField, noSoundSpeed, noWallLayer } from './absences.ts';
import { altitudesAtChange, changeAnswer, changeReasons } from './change.ts';
import {
  type Condition,
  conditionAt,
  conditionAtAltitude,
  conditionInVacuum,
  STANDARD_ALTITUDES,
} from './conditions.ts';
import { cycleAnswer } from './cycle/cycleAnswer.ts';
import { coolingAnswer, heatAnswer } from './heat/heatAnswer.ts';
import type { ConditionRow, EngineAnswer, FieldAnswer, Reason } from './model.ts';
import { plugAnswer } from './plugRow.ts';
import { plumeAnswer } from './plume.ts';
import { publishedChecks } from './published/checks.ts';
import { publishedFigures } from './published/figures.ts';
import { answerBands } from './scatter/answerBands.ts';
import { engineSeparation } from './separation/engineSeparation.ts';
import { diameterOf, type EngineSolution } from './solution.ts';
import { thrustFiguresOf } from './thrustFigures.ts';
import { thrustPartsAt } from './thrustParts.ts';

/** Conditions asked for besides the standard altitudes. */
export interface Wanted {
  /** [m] geometric */ readonly altitudes: readonly number[];
  /** [Pa] */ readonly ambients: readonly number[];
}

/** Jets of an answer: at all its conditions, or at the two ends, pad and vacuum, alone. */
export type Jets = 'all' | 'ends';

export function engineAnswer(
  solution: EngineSolution,
  wanted: Wanted,
  sources: readonly SourceInput[] = [],
  jets: Jets = 'all',
): EngineAnswer {
  const { expansion, nozzle, input } = solution;
  const { chamber, throat } = expansion;
  const { exit } = nozzle;
  const reasons: Reason[] = [];
  const vacuum = conditionInVacuum(solution);
  const seaLevel = conditionAt(solution, STANDARD_ATMOSPHERE, 0);
  reasons.push(...reasonsOf(vacuum, 'vacuum'), ...reasonsOf(seaLevel, 'seaLevel'));
  const thrustParts = {
    vacuum: thrustPartsAt(solution, 0),
    seaLevel: thrustPartsAt(solution, STANDARD_ATMOSPHERE),
  };
  reasons.push(...partsReasons(thrustParts, nozzle.balance() !== null));
  const separation = engineSeparation(solution);
  const change = nozzle.change && changeAnswer(nozzle.change);
  reasons.push(...changeReasons(change));
  const altitudes = rowsOf(
    sortedOnce([...STANDARD_ALTITUDES, ...wanted.altitudes, ...altitudesAtChange(change)]),
    (altitude) => conditionAtAltitude(solution, altitude),
    'altitudes',
    reasons,
  );
  const ambients = rowsOf(
    wanted.ambients,
    (pressure) => conditionAt(solution, pressure, null),
    'ambients',
    reasons,
  );
  const matchedAltitude = attempt(() => geometricAltitudeAtPressure(nozzle.matchedAmbient));
  reasons.push(...stateReasons(solution));
  if (!matchedAltitude.ok) {
    reasons.push(
      reason(
        'matched.altitude',
        matchedAltitude.problem.what,
        'Use the pressure itself: matched.ambientPressure.',
      ),
    );
  }
  if (solution.losses.budget.layer === null) {
    const { why, mend } = noWallLayer(solution);
    reasons.push(reason('losses.layer', why, mend));
  }
  if (solution.bulkDensity === null) {
    reasons.push(reason('chamber.bulkDensity', NO_BULK_DENSITY.why, NO_BULK_DENSITY.mend));
  }
  const { plume, reasons: plumeReasons } =
    jets === 'all' ? plumeAnswer(solution, altitudes, ambients) : plumeAnswer(solution, [], []);
  reasons.push(...plumeReasons);
  const published = publishedFigures(solution, sources, reasons);
  const { publishedSolveProblem: unsolved } = solution;
  if (unsolved !== null) reasons.push(reason('publishedSolve.value', unsolved.what, unsolved.mend));
  return {
    id: input.id,
    name: input.name,
    description: solution.description,
    propellants: solution.propellants,
    chemistry: solution.chemistry,
    chamber: {
      pressure: chamber.pressure,
      temperature: chamber.temperature,
      molarMass: chamber.molarMass,
      isentropicExponent: chamber.isentropicExponent,
      composition: mostFirst(chamber.composition()),
      bulkDensity: solution.bulkDensity,
    },
    characteristicVelocity: solution.characteristicVelocity,
    throat: {
      pressure: throat.pressure,
      temperature: throat.temperature,
      diameter: diameterOf(solution.throatArea),
    },
    exit: {
      pressure: exit.pressure,
      temperature: exit.temperature,
      mach: exit.mach,
      diameter: diameterOf(solution.exitArea),
      velocity: exit.velocity,
    },
    areaRatio: nozzle.spec.areaRatio,
    massFlow: solution.massFlow,
    divergenceFactor: nozzle.divergenceFactor,
    dischargeCoefficient: nozzle.dischargeCoefficient,
    field: fieldAnswer(nozzle.balance()),
    vacuum: thrustFiguresOf(vacuum.row),
    seaLevel: thrustFiguresOf(seaLevel.row),
    thrustParts,
    matched: {
      ambientPressure: nozzle.matchedAmbient,
      altitude: matchedAltitude.ok ? matchedAltitude.value : null,
    },
    altitudes,
    ambients,
    contour: solution.contour,
    contourIs: solution.contourIs,
    wall: solution.wall,
    ...plugAnswer(solution),
    ...(change && { change }),
    positions: solution.positions,
    plume,
    ...(separation && { separation }),
    losses: solution.losses.budget,
    heat: heatOf(solution, reasons),
    ...coolingOf(solution, reasons),
    ...cycleOf(solution, reasons),
    models: solution.models,
    omitted: solution.omitted,
    notes: solution.notes,
    bands: answerBands(solution),
    published,
    publishedChecks: publishedChecks(input),
    ...(solution.publishedSolve && { publishedSolve: solution.publishedSolve }),
    reasons,
  };
}

function heatOf(solution: EngineSolution, reasons: Reason[]): EngineAnswer['heat'] {
  const heat = attempt(() => heatAnswer(solution.heat()));
  if (heat.ok) return heat.value;
  reasons.push(reason('heat', heat.problem.what, heat.problem.mend));
  return null;
}

function coolingOf(solution: EngineSolution, reasons: Reason[]): Pick<EngineAnswer, 'cooling'> {
  if (solution.input.cooling === null) return {};
  const cooling = attempt(() => coolingAnswer(solution.cooling()));
  if (!cooling.ok) {
    reasons.push(reason('cooling', cooling.problem.what, cooling.problem.mend));
    return { cooling: null };
  }
  cooling.value.walls.forEach(({ points }, i) => {
    points.forEach(({ localMargin }, j) => {
      if (localMargin === null) {
        const path = `cooling.walls[${i}].points[${j}].localMargin`;
        reasons.push(reason(path, 'The wall cannot get so hot there.', 'Look nearer to the throat.'));
      }
    });
  });
  for (const [key, value] of Object.entries(cooling.value.scaling)) {
    if (value === null) {
      const path = `cooling.scaling.${key}`;
      reasons.push(
        reason(
          path,
          'The scaled engine cannot be computed, or there is no margin to grow.',
          'Sweep the size or the pressure.',
        ),
      );
    }
  }
  return { cooling: cooling.value };
}

function cycleOf(solution: EngineSolution, reasons: Reason[]): Pick<EngineAnswer, 'cycle' | 'mass'> {
  if (solution.input.cycle === null) return {};
  const { cycle, mass, absences } = cycleAnswer(solution);
  for (const { path, why, mend } of absences) reasons.push(reason(path, why, mend));
  return { cycle, mass };
}

/** The largest share first, as a reader looks for it. */
function mostFirst(composition: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(composition).sort(([, a], [, b]) => b - a));
}

function sortedOnce(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** One row a condition; a condition that cannot be computed at all leaves no row, but a reason under the list. */
function rowsOf(
  conditions: readonly number[],
  compute: (condition: number) => Condition,
  path: 'altitudes' | 'ambients',
  reasons: Reason[],
): readonly ConditionRow[] {
  const rows: ConditionRow[] = [];
  for (const condition of conditions) {
    const outcome = attempt(() => compute(condition));
    if (outcome.ok) {
      reasons.push(...reasonsOf(outcome.value, `${path}[${rows.length}]`));
      // The gas for drawing is no number to read.
      const { field: _, ...row } = outcome.value.row;
      rows.push(row);
    } else {
      reasons.push(reason(path, outcome.problem.what, outcome.problem.mend));
    }
  }
  return rows;
}

const nullable = ['thrustCoefficient', 'specificImpulse', 'thrust'] as const;

function reasonsOf({ row, absent }: Condition, path: string): readonly Reason[] {
  if (absent === null) return [];
  const { why, mend } = inTwo(absent);
  return nullable.filter((key) => row[key] === null).map((key) => reason(`${path}.${key}`, why, mend));
}

/** Where two phases of one substance stand together, the gas has no sound speed, hence no Mach number. */
function stateReasons({ expansion, nozzle, wall }: EngineSolution): readonly Reason[] {
  const found: Reason[] = [];
  const { chamber } = expansion;
  const push = (path: string, absent: string | null): void => {
    const { why, mend } = noSoundSpeed(absent);
    found.push(reason(path, why, mend));
  };
  if (chamber.isentropicExponent === null) push('chamber.isentropicExponent', chamber.absent);
  if (nozzle.exit.mach === null) push('exit.mach', nozzle.exit.absent);
  wall.forEach((point, i) => {
    if (point.mach === null) push(`wall[${i}].mach`, NO_MACH_ON_WALL);
  });
  return found;
}

function fieldAnswer(balance: FieldBalance | null): FieldAnswer | null {
  if (balance === null) return null;
  const { note, ...closure } = balance;
  return { ...closure, ...(note !== null && { note }) };
}

/** Why the thrust has no parts, and why there is no field. */
function partsReasons(thrustParts: EngineAnswer['thrustParts'], hasField: boolean): readonly Reason[] {
  const found = (['vacuum', 'seaLevel'] as const).flatMap((place) => {
    const at = thrustParts[place];
    const { why, mend } = inTwo(at.note ?? '');
    return (['sum', 'boundary', 'difference'] as const)
      .filter((key) => at[key] === null)
      .map((key) => reason(`thrustParts.${place}.${key}`, why, mend));
  });
  if (hasField) return found;
  const { sum, note } = thrustParts.vacuum;
  const { why, mend } = noField(sum !== null, note);
  return [...found, reason('field', why, mend)];
}

function reason(path: string, text: string, mend: string): Reason {
  return { path, reason: text, mend };
}

/** A row that could not be computed at all, as told by its reason. */
export function isMissingRow({ path }: Reason): boolean {
  return path === 'altitudes' || path === 'ambients';
}

/** Stops an answer with a number that is none: a bug, never the user's fault. */
export function refuseNonFinite(value: unknown, path: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`The answer holds ${value} at ${path}`);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) refuseNonFinite(inner, `${path}.${key}`);
}
