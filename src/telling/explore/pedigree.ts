/** What stands behind a number: everything that the catalogue knows of it. */

import { quantity } from '../../answer/catalogue.ts';

export interface Pedigree {
  readonly label: string;
  readonly meaning: string;
  readonly equation: string;
  readonly model: string;
  readonly source: string;
  readonly limits: string;
  readonly error: string;
  /** Said where no span of this number is worked out. */ readonly span: string;
}

export function pedigreeOf(name: string): Pedigree {
  const { label, meaning, equation, model, source, limits, typicalError } = quantity(name);
  return {
    label,
    meaning,
    equation,
    model: `docs/methods/${model}.md of the program`,
    source,
    limits,
    error: typicalError,
    span: 'not worked out for this number; the typical error below is that of the model',
  };
}
