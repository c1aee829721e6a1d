/** The inputs that published rows may settle: where each stands, how far it is sought. */

import type { EngineInput, Quantity, SettledInput, Size } from '../../study/model.ts';
import { SETTLED_TEXT } from '../../study/publishedForm.ts';

interface Sought {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly words: string;
  /** Range of the search [SI], and how many points it begins with; evenly spaced in the logarithm. */
  readonly from: number;
  readonly to: number;
  readonly points: number;
  /** What a row says of the input itself, hence not of the others. */ readonly itself: readonly string[];
}

const throat = { from: 1e-4, to: 20, points: 9 } as const;

export const sought: Readonly<Record<SettledInput, Sought>> = {
  areaRatio: {
    quantity: 'areaRatio',
    words: 'area ratio',
    from: 1.1,
    to: 600,
    points: 13,
    itself: ['areaRatio'],
  },
  chamberPressure: {
    quantity: 'chamber.pressure',
    words: 'chamber pressure',
    from: 5e4,
    to: 6e7,
    points: 9,
    itself: ['chamber.pressure'],
  },
  throatDiameter: {
    ...throat,
    quantity: 'throat.diameter',
    words: 'throat diameter',
    itself: ['throat.diameter', 'throat.area'],
  },
  massFlow: { ...throat, quantity: 'massFlow', words: 'propellant flow', itself: ['massFlow'] },
  efficiency: {
    quantity: 'chamber.efficiency',
    words: 'chamber efficiency',
    from: 0.3,
    to: 1,
    points: 6,
    itself: ['chamber.efficiency'],
  },
};

/** The engine with another value of that input. Flow is set by the throat that passes it. */
export function withInput(input: EngineInput, settled: SettledInput, value: number): EngineInput {
  const { chamber, nozzle } = input;
  const as = (before: Quantity): Quantity => ({ ...before, value, plusMinus: null, byDefault: false });
  switch (settled) {
    case 'areaRatio':
      return { ...input, nozzle: { ...nozzle, areaRatio: as(nozzle.areaRatio) } };
    case 'chamberPressure':
      return { ...input, chamber: { ...chamber, pressure: as(chamber.pressure) } };
    case 'efficiency':
      return { ...input, chamber: { ...chamber, efficiency: as(chamber.efficiency) } };
    case 'throatDiameter':
    case 'massFlow':
      return { ...input, size: throatSize(input, value) };
  }
}

function throatSize({ id, size }: EngineInput, value: number): Size {
  const before = size.by === 'throat' ? size.diameter : null;
  const path = before?.path ?? `engines.${id}.size.throat`;
  const text = before?.text ?? SETTLED_TEXT;
  return { by: 'throat', diameter: { value, plusMinus: null, text, path, byDefault: false } };
}
