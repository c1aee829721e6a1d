/** A change of a text as a value: applied, taken back, and held against another change of the same text. */

export interface TextChange {
  /** Place of its first sign. */ readonly at: number;
  readonly removed: string;
  readonly inserted: string;
}

/** The one change that makes `after` of `before`: what stands between their common beginning and their common end. */
export function changeBetween(before: string, after: string): TextChange {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before[at] === after[at]) at += 1;
  let end = 0;
  while (end < shorter - at && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
  return {
    at,
    removed: before.slice(at, before.length - end),
    inserted: after.slice(at, after.length - end),
  };
}

/** The text after the change; null where the text is not the one that the change was made on. */
export function applied(text: string, { at, removed, inserted }: TextChange): string | null {
  if (text.slice(at, at + removed.length) !== removed) return null;
  return text.slice(0, at) + inserted + text.slice(at + removed.length);
}

/** The change that takes this one back. */
export function inverted({ at, removed, inserted }: TextChange): TextChange {
  return { at, removed: inserted, inserted: removed };
}

/**
 * Whether two changes made on the same text cannot both be had: they touch the same signs, or change neighbouring ones,
 * and do not say the same.
 */
export function conflicts(one: TextChange, other: TextChange): boolean {
  if (one.at === other.at && one.removed === other.removed && one.inserted === other.inserted) return false;
  if (isNothing(one) || isNothing(other)) return false;
  return one.at <= other.at + other.removed.length && other.at <= one.at + one.removed.length;
}

const isNothing = ({ removed, inserted }: TextChange): boolean => removed === '' && inserted === '';
