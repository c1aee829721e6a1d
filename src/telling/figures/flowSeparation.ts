/** Where gas with friction would let go of the wall, by all criteria, over a computed field that knows no friction. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { At } from './flowWalls.ts';

/** Width of the band beside the wall, over the radius of the lip. */
const WIDE = 0.09;

/** From the earliest to the latest criterion, a hatched band outside of the wall. */
export function separationNodes(
  field: FlowField,
  at: At,
  { line }: Pick<Layout, 'line'>,
): readonly SceneNode[] {
  const { separation } = field;
  if (!isLettingGo(field) || separation === null) return [];
  const course = wallCourse(field);
  const { earliest, latest } = separation;
  const between = [
    ...placesAt(course, earliest.axial),
    ...course.filter(([x]) => x > earliest.axial && x < latest.axial),
    ...placesAt(course, latest.axial),
  ];
  if (between.length < 2) return [];
  const wide = WIDE * field.lip.radius;
  return [1, -1].map((side): SceneNode => {
    const outline: Point[] = [
      ...between.map(([x, r]) => at(x, side * r)),
      ...between.map(([x, r]) => at(x, side * (r + wide))).reverse(),
    ];
    return {
      kind: 'path',
      d: polyline(outline, true),
      fill: {
        pattern: 'hatch',
        colour: 'ink',
        angle: 45,
        gap: 3.5 * line.leader,
        width: 0.9 * line.leader,
        opacity: 1,
      },
      stroke: 'ink',
      strokeWidth: 0.8 * line.leader,
    };
  });
}

export function isLettingGo({ separation }: FlowField): boolean {
  return separation !== null && separation.lettingGo > 0;
}

/** For the foot; empty where no criterion lets the gas go. */
export function separationWords(field: FlowField): string {
  const { separation } = field;
  if (separation === null || separation.lettingGo === 0) return '';
  return `Hatched: where gas with friction leaves the wall, by ${separation.lettingGo} of ${separation.counted} criteria.`;
}

type Course = readonly (readonly [number, number])[];

/** The outer wall from where the gas comes in to the lip, left or not. */
function wallCourse({ walls }: FlowField): Course {
  return walls
    .filter(({ kind }) => kind !== 'notional')
    .flatMap(({ line }) => line)
    .sort(([a], [b]) => a - b);
}

function placesAt(course: Course, axial: number): Course {
  const next = course.findIndex(([x]) => x >= axial);
  if (next < 0) return course.slice(-1);
  if (next === 0) return course.slice(0, 1);
  const [a, b] = [course[next - 1]!, course[next]!];
  const share = b[0] === a[0] ? 0 : (axial - a[0]) / (b[0] - a[0]);
  return [[axial, a[1] + share * (b[1] - a[1])]];
}
