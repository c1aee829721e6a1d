import { ProblemError } from '../../numerics/problem.ts';
import { type Arc, arcArea, arcVolume, arcWallRadius, frustumArea, frustumVolume } from './arc.ts';
import { THROAT_ARC_UPSTREAM } from './bellShape.ts';
import type { ChamberShape, ContourPoint } from './model.ts';

/** Largest turn between two points of an arc [rad]: 4°; the chord then leaves the arc by 0.1 % of the throat radius. */
const ARC_STEP = Math.PI / 45;
const CONE_POINTS = 8;
/** Radius of the corner between cylinder and cone, in throat radii, where there is room; common practice, no source. */
const CORNER_RADIUS = 1.5;

export interface ChamberWall {
  /** From the injector face up to, not including, the throat. */ readonly points: readonly ContourPoint[];
  /** [m] */ readonly chamberRadius: number;
  /** [m] injector face to throat */ readonly length: number;
  /** [m²] */ readonly area: number;
}

/**
 * Wall from injector face to throat: cylinder, corner arc, straight cone, throat arc.
 *
 * Volume from the face to the throat plane is L* A_t; what the converging part leaves is the cylinder's. The corner arc
 * has 1.5 throat radii, or as much as fits between cylinder and throat arc.
 *
 * @param throatRadius [m]
 * @param throatArc radius of the throat's arc over the throat's [–]
 * @throws ProblemError `contraction-too-small`, `chamber-too-short`, `chamber-shape-invalid`
 * Source: D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed., 1971, ch. 4 (definition of L*, throat arc; from memory).
 */
export function chamberWall(
  shape: ChamberShape,
  throatRadius: number,
  throatArc = THROAT_ARC_UPSTREAM,
): ChamberWall {
  requireChamberShape(shape);
  const beta = shape.convergingAngle;
  const chamberRadius = throatRadius * Math.sqrt(shape.contractionRatio);
  const throat: Arc = {
    centre: throatRadius * (1 + throatArc),
    radius: throatRadius * throatArc,
    side: -1,
  };
  const corner = cornerArc(shape, throat, chamberRadius, throatRadius);

  const r1 = arcWallRadius(corner, beta);
  const r2 = arcWallRadius(throat, beta);
  const coneLength = (r1 - r2) / Math.tan(beta);
  const cornerLength = corner.radius * Math.sin(beta);
  const throatLength = throat.radius * Math.sin(beta);

  const converging = arcVolume(corner, beta) + frustumVolume(r1, r2, coneLength) + arcVolume(throat, beta);
  const crossSection = Math.PI * chamberRadius ** 2;
  const volume = shape.characteristicLength * Math.PI * throatRadius ** 2;
  const cylinder = (volume - converging) / crossSection;
  if (cylinder < 0) throw tooShort(shape, converging / (Math.PI * throatRadius ** 2));

  const coneStart = -(throatLength + coneLength);
  const cornerStart = coneStart - cornerLength;
  const face = cornerStart - cylinder;
  const points: ContourPoint[] = [{ axial: face, radius: chamberRadius, angle: 0, part: 'chamber' }];
  if (cylinder > 0) points.push({ axial: cornerStart, radius: chamberRadius, angle: 0, part: 'chamber' });
  const steps = Math.ceil(beta / ARC_STEP);
  for (let i = 1; i <= steps; i++) {
    const phi = (beta * i) / steps;
    points.push({
      axial: cornerStart + corner.radius * Math.sin(phi),
      radius: arcWallRadius(corner, phi),
      angle: -phi,
      part: 'converging',
    });
  }
  if (coneLength > 1e-6 * throatRadius) {
    for (let i = 1; i <= CONE_POINTS; i++) {
      const share = i / CONE_POINTS;
      points.push({
        axial: coneStart + coneLength * share,
        radius: r1 + (r2 - r1) * share,
        angle: -beta,
        part: i < CONE_POINTS ? 'converging' : 'throat',
      });
    }
  }
  for (let i = steps - 1; i >= 1; i--) {
    const phi = (beta * i) / steps;
    points.push({
      axial: -throat.radius * Math.sin(phi),
      radius: arcWallRadius(throat, phi),
      angle: -phi,
      part: 'throat',
    });
  }
  return {
    points,
    chamberRadius,
    length: -face,
    area:
      2 * Math.PI * chamberRadius * cylinder +
      arcArea(corner, beta) +
      frustumArea(r1, r2, coneLength) +
      arcArea(throat, beta),
  };
}

function cornerArc(shape: ChamberShape, throat: Arc, chamberRadius: number, throatRadius: number): Arc {
  const drop = 1 - Math.cos(shape.convergingAngle);
  const room = chamberRadius - arcWallRadius(throat, shape.convergingAngle);
  if (!(room > 0)) throw contractionTooSmall(shape, (1 + (throat.radius / throatRadius) * drop) ** 2);
  const radius = Math.min(CORNER_RADIUS * throatRadius, room / drop);
  return { centre: chamberRadius - radius, radius, side: 1 };
}

function requireChamberShape(shape: ChamberShape): void {
  const { contractionRatio, characteristicLength, convergingAngle } = shape;
  const sound =
    contractionRatio > 1 &&
    Number.isFinite(contractionRatio) &&
    characteristicLength > 0 &&
    Number.isFinite(characteristicLength) &&
    convergingAngle >= Math.PI / 36 &&
    convergingAngle <= (75 * Math.PI) / 180;
  if (sound) return;
  throw new ProblemError({
    code: 'chamber-shape-invalid',
    what: `No chamber has a contraction ratio of ${contractionRatio}, a characteristic length of ${characteristicLength} m and a converging half-angle of ${degrees(convergingAngle)}°.`,
    mend: 'Give a contraction ratio above 1, a characteristic length above 0 and a converging half-angle of 5° to 75°.',
    where: 'chamber',
    facts: { contractionRatio, characteristicLength, convergingAngle },
  });
}

function contractionTooSmall(shape: ChamberShape, least: number): ProblemError {
  return new ProblemError({
    code: 'contraction-too-small',
    what: `A contraction ratio of ${shape.contractionRatio} leaves no room for the throat arc at a converging half-angle of ${degrees(shape.convergingAngle)}°.`,
    mend: `Give a contraction ratio above ${least.toFixed(2)}, or a flatter converging half-angle.`,
    where: 'chamber.contractionRatio',
    facts: { contractionRatio: shape.contractionRatio, least },
  });
}

function tooShort(shape: ChamberShape, least: number): ProblemError {
  return new ProblemError({
    code: 'chamber-too-short',
    what: `A characteristic length of ${shape.characteristicLength} m is less than the converging part alone holds, ${least.toFixed(3)} m.`,
    mend: `Give a characteristic length of at least ${(Math.ceil(least * 100) / 100).toFixed(2)} m, a smaller contraction ratio or a steeper converging half-angle.`,
    where: 'chamber.characteristicLength',
    facts: { characteristicLength: shape.characteristicLength, least },
  });
}

function degrees(radians: number): string {
  return ((radians * 180) / Math.PI).toFixed(1);
}
