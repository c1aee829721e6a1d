/**
 * The gas at the wall ahead of the throat, where no field is computed, and its push on injector face and converging wall.
 *
 *   p_w = p_cap − ρu² κ r / 4
 *
 * p_cap: one-dimensional flow of the throat's mass flow through the spherical cap that stands at right angles to the
 * wall, A_cap = 2 π r²/(1 + cos β); κ dβ/ds along the wall, positive where it bends away from the axis (throat), negative
 * where it bends towards it: the radial balance ∂p/∂r = −ρu²κ(r), κ linear in r, its mean over the area taken off. Near the
 * throat the transonic series takes over, wholly below 6° and not at all above 18° of wall angle.
 *
 * Source: conical flow and radial balance as in any text on gas dynamics (derived here); the series after I. M. Hall and
 * J. R. Kliegel & J. N. Levine, see flow/transonicThroat.ts.
 * Check: with it the push on face and wall is within 0.15 % of p0 A_t of the momentum that the series carries through the
 * throat, for converging angles of 20 to 45° and γ of 1.15 to 1.4.
 */

import { throatVelocity } from '../flow/transonicThroat.ts';
import type { Expansion } from '../gas/flow.ts';
import { THROAT_ARC_UPSTREAM } from './bellShape.ts';
import type { Contour, ContourPoint } from './model.ts';

/** A place of the wall ahead of the throat; sizes over the throat radius. */
interface Place {
  readonly axial: number;
  readonly radius: number;
  /** [rad], 0 … negative */ readonly angle: number;
  /** [–] */ readonly curvature: number;
  readonly nearThroat: boolean;
}

const SERIES_ALONE = Math.PI / 30;
const SERIES_NO_MORE = Math.PI / 10;

/** Pressure [Pa] at one place of the wall, at most that of gas at rest. */
function pressureAt(expansion: Expansion, discharge: number, place: Place): number {
  const { chamber, throat } = expansion;
  const share = place.nearThroat ? (SERIES_NO_MORE + place.angle) / (SERIES_NO_MORE - SERIES_ALONE) : 0;
  const series = Math.min(Math.max(share, 0), 1);
  const near = series > 0 ? seriesPressure(expansion, place) : 0;
  if (series === 1) return near;
  const area = (2 * place.radius ** 2) / (1 + Math.cos(place.angle)) / discharge;
  const mean = area > 1 ? expansion.atAreaRatio(area, 'subsonic') : throat;
  const far = mean.pressure - 0.25 * mean.massFlux * mean.velocity * place.curvature * place.radius;
  return Math.min(series * near + (1 - series) * far, chamber.pressure);
}

/** From the speed in the series, the gas taken with its isentropic exponent in the throat. */
function seriesPressure({ throat }: Expansion, { axial, radius }: Place): number {
  const gamma = throat.isentropicExponent ?? throat.gammaFrozen;
  const { u, v } = throatVelocity(axial, radius, THROAT_ARC_UPSTREAM, gamma);
  const ratio = 0.5 * (gamma + 1) - 0.5 * (gamma - 1) * (u * u + v * v);
  return throat.pressure * ratio ** (gamma / (gamma - 1));
}

/** Pressure [Pa] at each point of the contour ahead of the throat plane. */
export function chamberWallPressures(
  contour: Contour,
  expansion: Expansion,
  discharge: number,
): readonly number[] {
  const ahead = contour.wall.filter(({ axial }) => axial < 0);
  const throatArc = startOfThroatArc(contour);
  return ahead.map((point, i) => {
    const before = ahead[i - 1] ?? point;
    const after = contour.wall[i + 1] ?? point;
    const along = Math.hypot(after.axial - before.axial, after.radius - before.radius);
    return pressureAt(expansion, discharge, {
      axial: point.axial / contour.throatRadius,
      radius: point.radius / contour.throatRadius,
      angle: point.angle,
      curvature: along > 0 ? ((after.angle - before.angle) * contour.throatRadius) / along : 0,
      nearThroat: point.axial >= throatArc,
    });
  });
}

function startOfThroatArc({ wall }: Contour): number {
  return wall.find(({ part }) => part === 'throat')?.axial ?? 0;
}

/** Push in vacuum over p0 A_t, forwards positive. */
export interface ChamberPush {
  /** [–] */ readonly injectorFace: number;
  /** [–] */ readonly convergingWall: number;
  /** Chamber area over throat area [–]. */ readonly contraction: number;
}

/**
 * Push on injector face and converging wall.
 *
 *   face:  (p + ρu²)_c A_c      what enters brings no momentum along; the flow behind the flame is one-dimensional
 *   wall:  −∫ p_w dA from A_t to A_c
 */
export function chamberPush(contour: Contour, expansion: Expansion, discharge: number): ChamberPush {
  const contraction = (contour.chamberRadius / contour.throatRadius) ** 2;
  const { pressure, massFlux, velocity } = expansion.atAreaRatio(contraction / discharge, 'subsonic');
  const throatArc = startOfThroatArc(contour);
  let wall = 0;
  for (let i = 1; i < contour.wall.length && contour.wall[i]!.axial <= 0; i++) {
    const from = contour.wall[i - 1]!;
    const to = contour.wall[i]!;
    if (from.radius === to.radius) continue;
    const places = placesBetween(from, to, contour.throatRadius, from.axial >= throatArc);
    const [p0, p1, p2] = places.map((place) => pressureAt(expansion, discharge, place));
    const [a0, a1, a2] = places.map(({ radius }) => radius * radius);
    wall += 0.5 * ((p0! + p1!) * (a1! - a0!) + (p1! + p2!) * (a2! - a1!));
  }
  return {
    injectorFace: ((pressure + massFlux * velocity) * contraction) / expansion.chamber.pressure,
    convergingWall: wall / expansion.chamber.pressure,
    contraction,
  };
}

/** Both ends and the middle of a piece of wall, taken as the circular arc that its angles make it. */
function placesBetween(
  from: ContourPoint,
  to: ContourPoint,
  unit: number,
  nearThroat: boolean,
): readonly Place[] {
  const turn = to.angle - from.angle;
  const chord = Math.hypot(to.axial - from.axial, to.radius - from.radius);
  const curvature = (2 * Math.sin(turn / 2) * unit) / chord;
  const middle = 0.5 * (from.angle + to.angle);
  const sag = 0.5 * chord * Math.tan(turn / 4);
  return [
    from,
    {
      axial: 0.5 * (from.axial + to.axial) + sag * Math.sin(middle),
      radius: 0.5 * (from.radius + to.radius) - sag * Math.cos(middle),
      angle: middle,
    },
    to,
  ].map(({ axial, radius, angle }) => ({
    axial: axial / unit,
    radius: radius / unit,
    angle,
    curvature,
    nearThroat,
  }));
}
