/** The jet behind the nozzle at one outside pressure. */

import { plumeAbsences } from '../absences.ts';
import { plumeFigures } from '../plume.ts';
import type { PlumeFigures } from '../plumeModel.ts';
import { between, placeAlong } from './alongWall.ts';
import { type Asked, absent, type Reader, type Readers } from './reader.ts';

const keys = [
  'boundaryTurn',
  'boundaryAngle',
  'boundaryMach',
  'boundaryPressure',
  'fullyExpandedMach',
  'fullyExpandedDiameter',
  'cellLength',
  'machDisk',
] as const satisfies readonly (keyof PlumeFigures)[];

const NONE = { why: 'The model has no value here.', mend: 'Ask at another ambient pressure.' };

function plumeOf({ solution, around }: Asked) {
  const plume = solution.plume.at(around.pressure);
  return { plume, figures: plumeFigures(solution, plume) };
}

function figureReader(key: (typeof keys)[number]): Reader {
  return (asked) => {
    const { plume, figures } = plumeOf(asked);
    return figures[key] ?? absent(asked, plumeAbsences(plume).find((one) => one.key === key) ?? NONE);
  };
}

function crossingReader(key: 'axial' | 'radius'): Reader {
  return (asked) => {
    const { plume, figures } = plumeOf(asked);
    const absence = plumeAbsences(plume).find((one) => one.key === 'firstCrossing') ?? NONE;
    return figures.firstCrossing?.[key] ?? absent(asked, absence);
  };
}

/** Along the edge of the jet, lip first; where it turns back, the first place met. */
function boundaryReader(key: 'axial' | 'radius'): Reader {
  return (asked) => {
    const { plume, figures } = plumeOf(asked);
    const { boundary } = figures;
    if (boundary.length < 2) {
      return absent(asked, { why: plume.outline.absent ?? NONE.why, mend: NONE.mend });
    }
    const { from, share } = placeAlong(boundary, asked.station, null);
    return between(boundary[from]![key], boundary[from + 1]![key], share);
  };
}

export const plumeReaders: Readers = {
  ...Object.fromEntries(keys.map((key) => [`plume.${key}`, figureReader(key)])),
  'plume.firstCrossing.axial': crossingReader('axial'),
  'plume.firstCrossing.radius': crossingReader('radius'),
  'plume.boundary.axial': boundaryReader('axial'),
  'plume.boundary.radius': boundaryReader('radius'),
};
