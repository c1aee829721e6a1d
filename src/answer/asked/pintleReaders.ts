/** The throat round the pintle of an expansion–deflection nozzle. */

import { sizeScatter } from '../scatter/figureScatter.ts';
import { shapeOf } from './modes.ts';
import { absent, type Read, type Readers } from './reader.ts';

const NO_PINTLE = {
  why: 'This engine has no pintle.',
  mend: 'Ask an engine with nozzle: { kind: expansionDeflection }.',
};

export const pintleReaders: Readers = Object.fromEntries(
  (['throatGap', 'throatArc'] as const).map((key) => [
    `contour.pintle.${key}`,
    (asked): Read => {
      const { solution } = asked;
      const { [key]: value } = shapeOf(asked).contour.pintle ?? absent(asked, NO_PINTLE);
      return { value, scatter: sizeScatter(solution, value, { area: 0.5, efficiency: 0 }) };
    },
  ]),
);
