/** The wall of an engine, where the study leaves the shape of the chamber open as much as where it states it. */

import { attempt, ProblemError } from '../numerics/problem.ts';
import {
  type ChamberShape,
  type Contour,
  chamberAndNozzleContour,
  type NozzleModel,
  usualContractionRatio,
} from '../physics/nozzle/index.ts';
import type { Chamber } from '../study/model.ts';
import { showStated } from './display.ts';

export interface DrawnContour {
  readonly contour: Contour;
  /** Of the chamber as drawn. */ readonly shape: ChamberShape;
  /** Where a default gave way. */ readonly notes: readonly string[];
}

/** Room for a cylinder in front of the converging part, as a share of what that part needs. */
const ROOM_FOR_CYLINDER = 1.25;
/** A chamber longer than this many of its diameters is one that nobody builds; common practice, no source. */
const MOST_SLENDER = 6;

/**
 * The contour of a stated chamber; where a default does not suit so wide or so narrow a throat, one that does.
 *
 * First the contraction ratio usual for the throat, then a longer characteristic length. Neither changes the
 * thrust: the chamber's shape decides the drawing, and the burning loss where the pressure is stated at the injector.
 *
 * @throws ProblemError where what the study states cannot be drawn
 */
export function chamberContour(
  { spec, contour }: Pick<NozzleModel, 'spec' | 'contour'>,
  throatRadius: number,
  chamber: Chamber,
): DrawnContour {
  const drawn = (asked: ChamberShape): Contour =>
    contour?.(throatRadius, asked) ?? chamberAndNozzleContour(spec, throatRadius, asked);
  const stated = statedShape(chamber);
  const notes: string[] = [];
  let outcome = attempt(() => drawn(stated));
  let shape = stated;
  const ill = isTooShort(outcome) || (outcome.ok && isTooSlender(outcome.value));
  const usual = attempt(() => usualContractionRatio(2 * throatRadius));
  if (ill && usual.ok && chamber.contractionRatio.byDefault && chamber.pressureAt === 'nozzle') {
    shape = { ...shape, contractionRatio: usual.value };
    outcome = attempt(() => drawn(shape));
    notes.push(
      `No contraction ratio is stated; the one usual for such a throat, ${showStated('chamber.contractionRatio', usual.value).text}, is drawn.`,
    );
  }
  if (isTooShort(outcome) && chamber.characteristicLength.byDefault) {
    const needed = Number(outcome.problem.facts?.least);
    shape = { ...shape, characteristicLength: ROOM_FOR_CYLINDER * needed };
    outcome = attempt(() => drawn(shape));
    notes.push(
      `No characteristic length is stated; for so wide a throat ${showStated('chamber.characteristicLength', shape.characteristicLength).text} is drawn.`,
    );
  }
  if (!outcome.ok) throw new ProblemError(outcome.problem);
  return { contour: outcome.value, shape, notes };
}

function isTooSlender({ chamberLength, chamberRadius }: Contour): boolean {
  return chamberLength > MOST_SLENDER * 2 * chamberRadius;
}

function statedShape(chamber: Chamber): ChamberShape {
  return {
    contractionRatio: chamber.contractionRatio.value,
    characteristicLength: chamber.characteristicLength.value,
    convergingAngle: chamber.convergingAngle.value,
  };
}

type Failed = Extract<ReturnType<typeof attempt<Contour>>, { ok: false }>;

function isTooShort(outcome: ReturnType<typeof attempt<Contour>>): outcome is Failed {
  return !outcome.ok && outcome.problem.code === 'chamber-too-short';
}
