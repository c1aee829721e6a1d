/** The gas at the wall, and the wall itself, at one place along it. */

import { NO_MACH_ON_WALL, noSoundSpeed } from '../absences.ts';
import type { WallPoint } from '../model.ts';
import { between, betweenLogs, type PlaceAlong, placeAlong } from './alongWall.ts';
import { shapeOf } from './modes.ts';
import { type Asked, absent, orAbsent, type Readers } from './reader.ts';

interface Side<T> {
  readonly points: readonly T[];
  readonly place: PlaceAlong;
}

/** The radius of a plug, or of a wall round a pintle, tells nothing of the area of the flow. */
function throatRadiusOf({ solution }: Asked): number | null {
  const { kind } = solution.nozzle.spec;
  return kind === 'plug' || kind === 'expansionDeflection' ? null : solution.contour.throatRadius;
}

function gasSide(asked: Asked): Side<WallPoint> {
  const { wall } = shapeOf(asked);
  return { points: wall, place: placeAlong(wall, asked.station, throatRadiusOf(asked)) };
}

function shapeReader(key: 'axial' | 'radius' | 'angle', of: 'outer' | 'plug') {
  return (asked: Asked): number => {
    const { contour } = shapeOf(asked);
    const points = of === 'outer' ? contour.wall : contour.plug?.wall;
    if (points === undefined) return noPlug(asked);
    const { from, share } = placeAlong(points, asked.station, throatRadiusOf(asked));
    return between(points[from]![key], points[from + 1]![key], share);
  };
}

function noPlug(asked: Asked): never {
  return absent(asked, { why: 'This engine has no plug.', mend: 'Ask a plug, or contour.wall of this one.' });
}

function straight(key: 'axial' | 'radius' | 'temperature' | 'velocity') {
  return (asked: Asked): number => {
    const { points, place } = gasSide(asked);
    return between(points[place.from]![key], points[place.from + 1]![key], place.share);
  };
}

function pressure(key: 'pressure' | 'meanPressure') {
  return (asked: Asked): number => {
    const { points, place } = gasSide(asked);
    return betweenLogs(points[place.from]![key], points[place.from + 1]![key], place.share);
  };
}

export const wallReaders: Readers = {
  'wall.axial': straight('axial'),
  'wall.radius': straight('radius'),
  'wall.temperature': straight('temperature'),
  'wall.velocity': straight('velocity'),
  'wall.pressure': pressure('pressure'),
  'wall.meanPressure': pressure('meanPressure'),
  'wall.mach': (asked) => {
    const { points, place } = gasSide(asked);
    const [a, b] = [points[place.from]!.mach, points[place.from + 1]!.mach];
    // At a point itself the other one does not enter.
    const known = place.share === 0 ? a : place.share === 1 ? b : a === null || b === null ? null : a;
    const value = orAbsent(asked, known, () => noSoundSpeed(NO_MACH_ON_WALL));
    return a === null || b === null ? value : between(a, b, place.share);
  },
  'contour.wall.axial': shapeReader('axial', 'outer'),
  'contour.wall.radius': shapeReader('radius', 'outer'),
  'contour.wall.angle': shapeReader('angle', 'outer'),
  'contour.plug.wall.axial': shapeReader('axial', 'plug'),
  'contour.plug.wall.radius': shapeReader('radius', 'plug'),
  'contour.plug.wall.angle': shapeReader('angle', 'plug'),
};
