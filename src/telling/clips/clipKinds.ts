/** What can be made into a clip, by the names that a caller gives. */

import { altitudeCurve } from '../../answer/conditions.ts';
import type { FlowField } from '../../answer/flow/index.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { drawnStyles } from '../figures/drawnEngines.ts';
import { pressureAlongWall } from '../figures/figureAlongWall.ts';
import { figureAscent } from '../figures/figureAscent.ts';
import { impulseOverAltitude, thrustOverAltitude } from '../figures/figureOverAltitude.ts';
import { figureSweep } from '../figures/figureSweep.ts';
import { flowEngines } from '../figures/flowKinds.ts';
import { flowNear } from '../figures/flowNear.ts';
import type { Altitude, FigureOptions } from '../figures/options.ts';
import type { Swept } from '../figures/sweptFigures.ts';
import type { FigureSize } from '../look/formats.ts';
import type { Theme } from '../look/tokens.ts';
import { buildUp } from './buildUp.ts';
import { climbCurves } from './climbCurves.ts';
import { climbCut } from './climbCut.ts';
import { climbWall } from './climbWall.ts';
import type { Movement } from './clip.ts';
import { flowClimb } from './flowClimb.ts';
import { flowDriftClip } from './flowDriftClip.ts';
import { ringByRing } from './ringByRing.ts';
import type { Anew } from './throttledEngines.ts';
import { throttleRamp } from './throttleRamp.ts';

/** How a figure may move. */
export type ClipKind =
  /** The altitude moves. */
  | 'altitude'
  /** The curves are drawn in. */
  | 'build-up'
  /** A nozzle grows ring by ring. */
  | 'rings'
  /** The throttle moves. */
  | 'throttle'
  /** Specks drift with the gas of a whole flow. */
  | 'drift';

export interface ClipRequest {
  /** As in {@link clipFigures}. */ readonly figure: string;
  /** Absent: the first that the figure has. */ readonly kind?: ClipKind;
  readonly size: FigureSize;
  readonly theme: Theme;
  readonly transparent: boolean;
  readonly title?: string;
  /** Where an altitude sweep begins and ends. */ readonly from: Altitude;
  readonly to: Altitude;
  /** Where a nozzle grows, specks drift, and where the pressure along the wall is drawn. */ readonly at: Altitude;
  /** The engine that grows; absent: the first. */ readonly engine?: string;
  /** Throttle at the start and at the end, chamber pressure over the stated one [–]; absent: 1 and 0.5. */
  readonly throttles?: readonly [number, number];
  /** Whole flows that are there; needed where one moves. */ readonly flows?: readonly FlowField[];
  /** What engines are solved anew with; needed where the throttle moves. */ readonly anew?: Anew;
}

export interface ClipFigure {
  readonly name: string;
  /** The first is taken unless said otherwise. */ readonly kinds: readonly ClipKind[];
}

/** The figures of a study that can move. */
export function clipFigures({ answer }: SolvedStudy, sweepIds: readonly string[]): readonly ClipFigure[] {
  return [
    { name: 'cut', kinds: ['altitude', 'throttle'] },
    { name: 'specific-impulse', kinds: ['altitude', 'build-up'] },
    { name: 'thrust', kinds: ['altitude', 'build-up'] },
    { name: 'push', kinds: ['rings'] },
    { name: 'pressure-along-wall', kinds: ['build-up', 'altitude'] },
    ...flowEngines(answer).map(
      ({ id }): ClipFigure => ({ name: `flow-${id}`, kinds: ['altitude', 'drift'] }),
    ),
    ...answer.vehicles.map(({ id }): ClipFigure => ({ name: `ascent-${id}`, kinds: ['build-up'] })),
    ...sweepIds.map((id): ClipFigure => ({ name: `sweep-${id}`, kinds: ['build-up'] })),
  ];
}

/** The figure in motion. @param swept those of the study's sweeps that are wanted, worked out */
export function movementOf(
  solved: SolvedStudy,
  swept: Swept['sweeps'],
  sweepIds: readonly string[],
  request: ClipRequest,
): Movement {
  const { figure, from, to, at, engine, size, theme, transparent, title } = request;
  const known = clipFigures(solved, sweepIds);
  const found = known.find(({ name }) => name === figure);
  if (found === undefined) throw unknownFigure(figure, known);
  const kind = request.kind ?? found.kinds[0];
  if (kind === undefined || !found.kinds.includes(kind)) throw unknownKind(figure, String(kind), found.kinds);
  const { answer, solutions } = solved;
  const options: FigureOptions = {
    size,
    theme,
    transparent,
    ...(title !== undefined && { title }),
    curves: Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)])),
  };
  if (figure === 'push')
    return ringByRing(solved, { ...options, altitude: at, ...(engine !== undefined && { engine }) });
  if (kind === 'throttle') {
    if (request.anew === undefined)
      throw new Error('A throttle cannot move without what engines are solved with.');
    const [fromShare, toShare] = request.throttles ?? [1, 0.5];
    // Curves are those of full throttle.
    const { curves: _, ...own } = options;
    return throttleRamp(solved, request.anew, { ...own, altitude: at, fromShare, toShare });
  }
  const flowing = flowEngines(answer).find(({ id }) => figure === `flow-${id}`);
  if (flowing !== undefined) {
    const flows = (request.flows ?? []).filter((field) => field.engine === flowing.id);
    const near = flowNear(flows, flowing.id, at);
    if (near === null) throw nothingThere(figure);
    return kind === 'drift' ? flowDriftClip(near, options) : flowClimb(flows, { ...options, from, to });
  }
  if (kind === 'altitude') {
    const climb = { ...options, from, to };
    if (figure === 'cut') return climbCut(solved, climb);
    if (figure === 'pressure-along-wall') return climbWall(solved, climb);
    return climbCurves(solved, figure === 'thrust' ? 'thrust' : 'specificImpulse', climb);
  }
  if (figure === 'specific-impulse') return buildUp(figure, impulseOverAltitude(answer, options), 'up');
  if (figure === 'thrust') return buildUp(figure, thrustOverAltitude(answer, options), 'up');
  if (figure === 'pressure-along-wall')
    return buildUp(figure, pressureAlongWall(answer, { ...options, altitude: at }), 'across');
  const vehicle = answer.vehicles.find(({ id }) => figure === `ascent-${id}`);
  const ascent = vehicle === undefined ? null : figureAscent(vehicle, answer, options);
  if (ascent !== null) return buildUp(figure, ascent, 'across');
  const sweep = swept.find(({ request: { id } }) => figure === `sweep-${id}`);
  if (sweep === undefined) throw nothingThere(figure);
  const isUpright = sweep.range.quantity === 'altitude';
  return buildUp(
    figure,
    figureSweep(sweep, { ...options, styles: drawnStyles(answer) }),
    isUpright ? 'up' : 'across',
  );
}

function unknownFigure(figure: string, known: readonly ClipFigure[]): ProblemError {
  return new ProblemError({
    code: 'clip-figure-unknown',
    what: `There is no figure “${figure}” that can move.`,
    mend: `Choose one of ${known.map(({ name }) => name).join(', ')}.`,
  });
}

function unknownKind(figure: string, kind: string, kinds: readonly ClipKind[]): ProblemError {
  return new ProblemError({
    code: 'clip-kind-unknown',
    what: `The figure “${figure}” cannot move by ${kind}.`,
    mend: `It can by ${kinds.join(' or ')}.`,
  });
}

function nothingThere(figure: string): ProblemError {
  return new ProblemError({
    code: 'clip-figure-empty',
    what: `The figure “${figure}” has nothing to show: what it would draw could not be computed.`,
    mend: 'See what the study says of it.',
  });
}
