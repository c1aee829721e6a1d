/** What of a cooling lies outside the ranges of its correlation and of its wall’s data, in words. */

import { beyondRows, CORRELATION_NAMES } from '../../physics/heat/index.ts';
import { show } from '../display.ts';
import type { EngineCooling } from './engineCooling.ts';

export function rangeNotes(cooling: EngineCooling): readonly string[] {
  const { setup, sides } = cooling;
  return [
    ...sides.flatMap(({ march }) =>
      march.outside === null
        ? []
        : [`${CORRELATION_NAMES[setup.correlation]} is used outside its range: ${march.outside}.`],
    ),
    ...conductivityNotes(cooling),
  ];
}

/** Where the wall is colder or hotter than the rows of its conductivity go. */
function conductivityNotes({ setup, sides, hottest }: EngineCooling): readonly string[] {
  const { material } = setup;
  const points = sides.flatMap(({ march }) => march.points);
  const coldestWall = Math.min(...points.map(({ wallCold }) => wallCold));
  const hottestWall = hottest.point.wallHot;
  const beyond = beyondRows(material, coldestWall, hottestWall);
  if (beyond === null) return [];
  const temperature = (value: number): string => show('cooling.hottestWall', value).text;
  return [
    `The conductivity of ${material.name} is known from ${temperature(beyond.from)} to ${temperature(beyond.to)}; the wall goes from ${temperature(coldestWall)} to ${temperature(hottestWall)}, and is taken there as at the nearest of them.`,
  ];
}
