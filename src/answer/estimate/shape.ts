/** Wall, gas at the wall and jet of a first estimate. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import type { Contour, ContourPoint, PlugContour } from '../../physics/nozzle/model.ts';
import { chamberContour } from '../chamberContour.ts';
import type { EngineAnswer, PositionAnswer, WallPoint } from '../model.ts';
import type { PlumeAnswer, PlumeFigures } from '../plumeModel.ts';
import { shareAtArea, stateAt } from './meanFlow.ts';
import type { EngineBasis, Likeness } from './model.ts';
import { areAlike } from './unseen.ts';

export interface EstimatedShape extends Pick<EngineAnswer, 'contour' | 'wall' | 'positions' | 'plume'> {
  readonly likeness: Likeness;
  /** False: only the full answer knows the new shape; this is the one before, at its own size. */ readonly isShaped: boolean;
}

/**
 * By formula where one gives the wall; else the shape before at the new size, where no input of the nozzle has moved.
 *
 * @throws ProblemError where the chamber cannot be drawn
 */
export function shapeOf(
  answer: EngineAnswer,
  before: EngineBasis,
  now: EngineBasis,
  throatRadius: number,
): EstimatedShape {
  const likeness = {
    length: throatRadius / answer.contour.throatRadius,
    pressure: now.chamber.pressure / before.chamber.pressure,
  };
  if (now.spec !== null && before.spec !== null) {
    const { contour } = chamberContour({ spec: now.spec }, throatRadius, now.input.chamber);
    return {
      likeness,
      isShaped: true,
      contour,
      wall: wallAlong(contour, answer, now),
      positions: [],
      plume: jetBehind(contour, answer, now.exits.thin.share / before.exits.thin.share, likeness),
    };
  }
  if (now.recut !== undefined && areAlike(shapeInputs(before, true), shapeInputs(now, true))) {
    const { recut } = now;
    const contour = scaled(recut.contour, throatRadius / recut.contour.throatRadius);
    const own = { ...likeness, length: throatRadius / recut.contour.throatRadius };
    const base = contour.plug?.wall.at(-1)?.axial;
    return {
      likeness: { ...likeness, ...(base !== undefined && { upTo: base }) },
      isShaped: true,
      contour,
      wall: recut.wall.map((point) => wallPointLike(point, before, now, own)),
      positions: [],
      plume: jetBehind(contour, answer, 1, likeness),
    };
  }
  const isShaped = areAlike(shapeInputs(before), shapeInputs(now));
  if (!isShaped) {
    const { contour, wall, positions, plume } = answer;
    return { likeness: { length: 1, pressure: 1 }, isShaped, contour, wall, positions, plume };
  }
  const alike = (contour: Contour): Contour => scaled(contour, likeness.length);
  const wall = (points: readonly WallPoint[]): readonly WallPoint[] =>
    points.map((point) => wallPointLike(point, before, now, likeness));
  const contour = alike(answer.contour);
  return {
    likeness,
    isShaped,
    contour,
    wall: wall(answer.wall),
    positions: answer.positions.map(
      (position): PositionAnswer => ({
        mode: position.mode,
        contour: alike(position.contour),
        wall: wall(position.wall),
      }),
    ),
    plume: jetBehind(contour, answer, 1, likeness),
  };
}

/** What shapes an engine besides its size. @param butCut all but where a plug is cut, and its Mach number at the lip */
function shapeInputs({ input: { nozzle, chamber } }: EngineBasis, butCut = false): readonly unknown[] {
  const shaping = butCut && nozzle.kind === 'plug' ? { ...nozzle, kept: null, innerMach: null } : nozzle;
  return [shaping, chamber.contractionRatio, chamber.characteristicLength, chamber.convergingAngle];
}

function scaled(contour: Contour, length: number): Contour {
  const point = (at: ContourPoint): ContourPoint => ({
    ...at,
    axial: at.axial * length,
    radius: at.radius * length,
  });
  const { plug, pintle, bodies } = contour;
  return {
    ...contour,
    wall: contour.wall.map(point),
    nozzleLength: contour.nozzleLength * length,
    totalLength: contour.totalLength * length,
    throatRadius: contour.throatRadius * length,
    exitRadius: contour.exitRadius * length,
    chamberRadius: contour.chamberRadius * length,
    chamberLength: contour.chamberLength * length,
    nozzleArea: contour.nozzleArea * length ** 2,
    chamberArea: contour.chamberArea * length ** 2,
    ...(plug && { plug: scaledPlug(plug, length, point) }),
    ...(pintle && {
      pintle: { throatGap: pintle.throatGap * length, throatArc: pintle.throatArc * length },
    }),
    ...(bodies && {
      bodies: bodies.map((body) => ({
        ...body,
        outline: body.outline.map(({ axial, radius }) => ({
          axial: axial * length,
          radius: radius * length,
        })),
      })),
    }),
  };
}

function scaledPlug(
  plug: PlugContour,
  length: number,
  point: (at: ContourPoint) => ContourPoint,
): PlugContour {
  return {
    ...plug,
    wall: plug.wall.map(point),
    throatGap: plug.throatGap * length,
    throatArc: plug.throatArc * length,
    lipRadius: plug.lipRadius * length,
    wholeLength: plug.wholeLength * length,
    keptLength: plug.keptLength * length,
    baseRadius: plug.baseRadius * length,
    baseArea: plug.baseArea * length ** 2,
    plugArea: plug.plugArea * length ** 2,
    cowlArea: plug.cowlArea * length ** 2,
    ...(plug.width !== undefined && { width: plug.width * length }),
  };
}

/** The same share of the chamber pressure, and what the gas is there now. */
function wallPointLike(
  point: WallPoint,
  before: EngineBasis,
  now: EngineBasis,
  { length, pressure }: Likeness,
): WallPoint {
  const share = point.pressure / before.chamber.pressure;
  const [was, is] = [stateAt(before.flow, share), stateAt(now.flow, share)];
  return {
    axial: point.axial * length,
    radius: point.radius * length,
    pressure: point.pressure * pressure,
    meanPressure: point.meanPressure * pressure,
    temperature: (point.temperature * is.temperature) / was.temperature,
    velocity: was.velocity > 0 ? (point.velocity * is.velocity) / was.velocity : point.velocity,
    mach:
      point.mach !== null && was.mach !== null && was.mach > 0 && is.mach !== null
        ? (point.mach * is.mach) / was.mach
        : point.mach,
  };
}

/** The mean pressure by the area, times what the wall's is over the mean at the same part of the way. */
function wallAlong(contour: Contour, answer: EngineAnswer, now: EngineBasis): readonly WallPoint[] {
  const overMean = overMeanAlong(answer);
  return contour.wall.map(({ axial, radius }) => {
    const area = (radius / contour.throatRadius) ** 2;
    const mean = shareAtArea(now.flow, area, axial < 0 ? -1 : 1);
    const way = axial < 0 ? axial / contour.chamberLength : axial / contour.nozzleLength;
    const share = Math.min(1, mean * overMean(way));
    return {
      axial,
      radius,
      pressure: share * now.chamber.pressure,
      meanPressure: mean * now.chamber.pressure,
      ...stateAt(now.flow, share),
    };
  });
}

/** Pressure at the wall over the mean, by the way along chamber (−1 to 0) and nozzle (0 to 1). */
function overMeanAlong({ wall, contour }: EngineAnswer): (way: number) => number {
  const ways = wall.map(({ axial }) =>
    axial < 0 ? axial / contour.chamberLength : axial / contour.nozzleLength,
  );
  const ratios = wall.map(({ pressure, meanPressure }) => pressure / meanPressure);
  return (way) => {
    let i = ways.findIndex((each) => each >= way);
    if (i < 0) i = ways.length - 1;
    const [from, to] = [ways[i - 1] ?? ways[i] ?? 0, ways[i] ?? 0];
    const [low, high] = [ratios[i - 1] ?? ratios[i] ?? 1, ratios[i] ?? 1];
    return to > from ? low + ((way - from) / (to - from)) * (high - low) : high;
  };
}

/**
 * The jet before, at the size of the new lip: where the air presses as hard against the gas that leaves, it looks alike.
 *
 * @param exit p_e/p₀ now over before
 */
function jetBehind(
  contour: Contour,
  answer: EngineAnswer,
  exit: number,
  { length, pressure }: Likeness,
): PlumeAnswer {
  const { plume, contour: was } = answer;
  const size = contour.exitRadius / was.exitRadius;
  const lipBefore = was.wall.at(-1)?.axial ?? 0;
  const lip = contour.wall.at(-1)?.axial ?? 0;
  // A jet that begins at a place of its own, such as a plug's lip, moves with the shape.
  const along = (axial: number): number => (exit === 1 ? axial * length : lip + (axial - lipBefore) * size);
  const behind = <Figures extends PlumeFigures>(figures: Figures): Figures => ({
    ...figures,
    ambientPressure: figures.ambientPressure * pressure * exit,
    boundary: figures.boundary.map((point) => ({
      ...point,
      axial: along(point.axial),
      radius: point.radius * size,
    })),
  });
  const seaLevel = behind(plume.seaLevel);
  return {
    // So far down there is a jet to draw, whatever the pressure that it is like.
    seaLevel: { ...seaLevel, ambientPressure: Math.max(STANDARD_ATMOSPHERE, seaLevel.ambientPressure) },
    vacuum: behind(plume.vacuum),
    altitudes: plume.altitudes.map(behind),
    ambients: plume.ambients.map(behind),
  };
}
