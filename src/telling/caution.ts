/** The caution in the length that a picture has room for. The full one is the answer's own `caution`. */

export const CAUTION_SHORT =
  'For explanation and comparison, not for building or firing hardware; local law and codes apply.';
