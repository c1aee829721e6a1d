import { SOURCE } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

/** What all lengths of an engine's inner contour have in common. */
export const INNER_CONTOUR = {
  source: SOURCE.geometry,
  typicalError: TYPICAL_ERROR.geometry,
  limits: 'Inner contour; wall thickness and cooling passages are not in the model.',
  place: 'engine',
} as const;
