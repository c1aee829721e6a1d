/** How far the difference of the two engines shown may go, at the altitude on the scale: what they share cancels in it. */

import { effect, signal } from '@preact/signals';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { DifferencePlace, DifferenceSpan } from '../workshop/deskMessages.ts';
import { shownEngines } from './pair.ts';
import { checkStage } from './verdicts.ts';

/** Between these altitudes [km] the ends of a span are taken to go straight; they stand closer where the air is thick. */
const altitudes = [0, 1, 2, 3.5, 5, 7, 9, 11, 13.5, 16, 20, 25, 30, 40] as const;
const moving = ['specificImpulse', 'thrust'] as const;
const still = ['exit.diameter'] as const;

const places: readonly DifferencePlace[] = [
  ...moving.flatMap((quantity) => [
    ...altitudes.map((kilometres): DifferencePlace => ({ quantity, altitude: kilometres * 1000 })),
    { quantity, altitude: 'vacuum' } as const,
  ]),
  ...still.map((quantity): DifferencePlace => ({ quantity, altitude: null })),
];

/** Null until they are worked out. */
const spans = signal<readonly (DifferenceSpan | null)[] | null>(null);

interface Span {
  readonly low: number;
  readonly high: number;
}

/** Second less first; null where it is not known. @param kilometres `Infinity` for vacuum; null where it does not matter */
export function differenceAt(quantity: string, kilometres: number | null): Span | null {
  const ofIt = (spans.value ?? []).filter((span) => span !== null && span.quantity === quantity);
  const at = (altitude: DifferencePlace['altitude']): Span | null =>
    ofIt.find((span) => span?.altitude === altitude) ?? null;
  if (kilometres === null) return at(null);
  if (!Number.isFinite(kilometres)) return at('vacuum');
  const next = altitudes.findIndex((altitude) => altitude >= kilometres);
  const above = altitudes[next];
  if (above === undefined) return null;
  const below = altitudes[Math.max(0, next - 1)] ?? above;
  const [low, high] = [at(below * 1000), at(above * 1000)];
  if (low === null || high === null) return null;
  const share = above === below ? 0 : (kilometres - below) / (above - below);
  return {
    low: low.low + share * (high.low - low.low),
    high: low.high + share * (high.high - low.high),
  };
}

/** Works them out once the sentences are checked, anew for each study and each pair. */
export function followDifferences(): void {
  effect(() => {
    const [base, other] = shownEngines.value.map(({ id, result }) => (result.ok ? id : null));
    const isFree = checkStage.value === 'final';
    spans.value = null;
    if (!isFree || !base || !other) return;
    const gone = new AbortController();
    askDesk('differences', { pair: { base, other }, places }, gone.signal).then(
      (told) => {
        spans.value = told;
      },
      (error: unknown) => {
        if (!(error instanceof QuestionEnded)) reportError(error);
      },
    );
    return () => gone.abort();
  });
}
