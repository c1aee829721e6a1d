import { attempt, type Outcome, ProblemError } from '../../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import type { Size } from '../../study/model.ts';
import type { ConditionRow, EngineAnswer, ThrustParts } from '../model.ts';
import { pressureOf } from '../statedPlace.ts';
import { thrustFiguresOf } from '../thrustFigures.ts';
import type { AnsweredEngine, EngineBasis, EstimatedEngine } from './model.ts';
import { coefficientAt, type Held, heldOf, rowAt, type Whole } from './rows.ts';
import { shapeOf } from './shape.ts';
import { isUnseen } from './unseen.ts';

/**
 * A first estimate of an engine at other inputs.
 *
 * The gas is that of the full model and the mean flow is worked out anew; what the full model knew beyond the mean flow –
 * losses, divergence, the flow on a plug, separation – is held as it was at the same share of the chamber pressure.
 *
 * @param known the full answer before
 * @param others engines from which this one may take its size, estimated or answered
 * @param every of how many of the rows before one is estimated; any can be asked for later
 * Model: docs/methods/first-estimate.md
 */
export function estimateEngine(
  known: AnsweredEngine,
  before: EngineBasis,
  now: EngineBasis,
  others: ReadonlyMap<string, AnsweredEngine>,
  every = 1,
): Outcome<EstimatedEngine> {
  return attempt(() => {
    if (isUnseen(before.input, now.input, now.recut !== undefined)) throw new ProblemError(ONLY_IN_FULL);
    return estimated(known, before, now, others, every);
  });
}

const ONLY_IN_FULL = {
  code: 'no-first-estimate',
  what: 'Only the full answer can tell what this change does.',
  mend: 'It follows.',
};

function estimated(
  known: AnsweredEngine,
  before: EngineBasis,
  now: EngineBasis,
  others: ReadonlyMap<string, AnsweredEngine>,
  every: number,
): EstimatedEngine {
  const { answer } = known;
  const held = heldOf(known, before, now);
  const throatArea = throatAreaOf(now.input.size, held, others);
  const throatRadius = Math.sqrt(throatArea / Math.PI);
  const shape = shapeOf(answer, before, now, throatRadius);
  const pressureTimesArea = now.chamber.pressure * throatArea;
  const characteristicVelocity = now.input.chamber.efficiency.value * now.characteristicVelocity;
  const choked =
    ((now.recut?.massFlow ?? 1) * answer.massFlow * answer.characteristicVelocity * 4) /
    (before.chamber.pressure * Math.PI * answer.throat.diameter ** 2);
  const massFlow = (choked * pressureTimesArea) / characteristicVelocity;
  const { contour, likeness } = shape;
  const whole: Whole = { pressureTimesArea, massFlow, contour, likeness };
  const at = (row: ConditionRow) => rowAt(held, whole, row.ambientPressure, row.altitude);
  const rows = known.rows.filter((_, i) => i % every === 0).map((row) => at(row).row);
  const vacuum = at(known.vacuum);
  const pad = at({ ...known.vacuum, ambientPressure: known.rows[0]?.ambientPressure ?? 0, altitude: 0 });
  const { thin } = now.exits;
  return {
    rows,
    vacuum: vacuum.row,
    rowAt: (index) => at(known.rows[index] ?? known.vacuum),
    likeness,
    isShaped: shape.isShaped,
    answer: {
      ...answer,
      description: now.description,
      propellants: now.propellants,
      chemistry: now.chemistry,
      chamber: { ...answer.chamber, ...now.chamber },
      characteristicVelocity,
      throat: { ...now.throat, diameter: 2 * throatRadius },
      exit: {
        pressure: thin.share * now.chamber.pressure,
        temperature: thin.temperature,
        mach: thin.mach,
        velocity: thin.velocity,
        diameter: 2 * throatRadius * Math.sqrt(thin.areaRatio),
      },
      areaRatio: thin.areaRatio,
      massFlow,
      divergenceFactor: (answer.divergenceFactor * now.divergence) / before.divergence,
      vacuum: thrustFiguresOf(vacuum.row),
      seaLevel: thrustFiguresOf(pad.row),
      thrustParts: {
        vacuum: partsOf(answer.thrustParts.vacuum, vacuum.row),
        seaLevel: partsOf(answer.thrustParts.seaLevel, pad.row),
      },
      matched: matchedAt(
        answer,
        (thin.share * now.chamber.pressure) / (before.exits.thin.share * before.chamber.pressure),
      ),
      altitudes: answer.altitudes.map((row) => at(row).row),
      ambients: answer.ambients.map((row) => at(row).row),
      contour,
      wall: shape.wall,
      positions: shape.positions,
      plume: shape.plume,
    },
  };
}

/** [m²] by what the study states of the size, with the thrust as estimated. */
function throatAreaOf(size: Size, held: Held, others: ReadonlyMap<string, AnsweredEngine>): number {
  const { thin } = held.now.exits;
  switch (size.by) {
    case 'throat':
      return circle(size.diameter.value);
    case 'exit':
      return circle(size.diameter.value) / thin.areaRatio;
    case 'thrust':
      return areaForThrust(size.thrust.value, pressureOf(size.at), held);
    case 'same': {
      const other = others.get(size.as);
      if (other === undefined) throw new ProblemError(ONLY_IN_FULL);
      if (size.what !== 'thrust') {
        const { throat, exit } = other.answer;
        return size.what === 'throat' ? circle(throat.diameter) : circle(exit.diameter) / thin.areaRatio;
      }
      const ambientPressure = pressureOf(size.at);
      return areaForThrust(thrustAt(other, ambientPressure), ambientPressure, held);
    }
  }
}

function areaForThrust(thrust: number | null, ambientPressure: number, held: Held): number {
  const coefficient = coefficientAt(held, ambientPressure);
  if (thrust === null || coefficient === null || coefficient <= 0) throw new ProblemError(ONLY_IN_FULL);
  return thrust / (coefficient * held.now.chamber.pressure);
}

/** Between the two rows next to it; null where there is no thrust. */
function thrustAt({ rows, vacuum }: AnsweredEngine, ambientPressure: number): number | null {
  const all = [...rows, vacuum];
  const next = Math.max(
    1,
    all.findIndex((row) => row.ambientPressure <= ambientPressure),
  );
  const [from, to] = [all[next - 1] ?? vacuum, all[next] ?? vacuum];
  if (from.thrust === null || to.thrust === null) return null;
  const span = from.ambientPressure - to.ambientPressure;
  const part = span > 0 ? (from.ambientPressure - ambientPressure) / span : 0;
  return from.thrust + part * (to.thrust - from.thrust);
}

const circle = (diameter: number): number => (Math.PI * diameter * diameter) / 4;

/** How far its two ways of finding the thrust lie apart is held as well. */
function partsOf(before: ThrustParts, { thrustParts, thrust }: ConditionRow): ThrustParts {
  if (before.sum === null || before.boundary === null || thrust === null)
    return { ...before, parts: thrustParts };
  const sum = thrustParts.reduce((all, { force }) => all + force, 0);
  return { ...before, parts: thrustParts, sum, boundary: (before.boundary * sum) / before.sum };
}

function matchedAt({ matched }: EngineAnswer, pressure: number): EngineAnswer['matched'] {
  const ambientPressure = matched.ambientPressure * pressure;
  const altitude = attempt(() => geometricAltitudeAtPressure(ambientPressure));
  return { ambientPressure, altitude: altitude.ok ? altitude.value : null };
}
