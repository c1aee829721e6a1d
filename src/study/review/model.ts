/** `review.yaml` beside a study: who looked at which sentence, when, and what stood there then. */

/** What a reviewer saw: an edit of any of it voids the sign-off. */
export interface ReviewedState {
  readonly say: string;
  /** The test as written; null where there is none. */ readonly test: string | null;
  readonly verdict: string;
  /** Deciding numbers as spoken, sources of a fact, parts of an analogy; one line each. */
  readonly rests: readonly string[];
}

export interface SignOff {
  /** Of the sentence, fact or analogy. */ readonly id: string;
  readonly by: string;
  /** `2026-11-26` */ readonly date: string;
  /** SHA-256 of {@link stateText}, hexadecimal. */ readonly hash: string;
  readonly reviewed: ReviewedState;
}

/** The same text for the same state: what is hashed. */
export function stateText({ say, test, verdict, rests }: ReviewedState): string {
  return JSON.stringify([say, test, verdict, rests]);
}

/** A day of the calendar, written year first. */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysOf(year, month);
}

function daysOf(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
