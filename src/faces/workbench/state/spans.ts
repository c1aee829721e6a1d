/** How far the numbers of the ledger and their differences may go, at the altitude on the scale. */

import { effect, signal } from '@preact/signals';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { PairSpans, Span, SpanPlace } from '../workshop/deskMessages.ts';
import { warmUp } from '../workshop/workshop.ts';
import { catchingUp } from './estimates.ts';
import { shownEngines } from './pair.ts';
import { checkStage } from './verdicts.ts';

/** Between these altitudes [km] the ends of a span are taken to go straight; they stand closer where the air is thick. */
const altitudes = [0, 1, 2, 3.5, 5, 7, 9, 11, 13.5, 16, 20, 25, 30, 40] as const;
const moving = ['specificImpulse', 'thrust', 'exitPressure'] as const;
const still = ['exit.diameter'] as const;

const places: readonly SpanPlace[] = [
  ...moving.flatMap((quantity) => [
    ...altitudes.map((kilometres): SpanPlace => ({ quantity, altitude: kilometres * 1000 })),
    { quantity, altitude: 'vacuum' } as const,
  ]),
  ...still.map((quantity): SpanPlace => ({ quantity, altitude: null })),
];

/** Null until they are worked out. */
const spans = signal<readonly PairSpans[] | null>(null);

type Part = (spans: PairSpans) => Span | null | undefined;

/** Of one of the engines shown, or of their difference; null where it is not known. */
function spanAt(part: Part, quantity: string, kilometres: number | null): Span | null {
  const at = (altitude: SpanPlace['altitude']): Span | null => {
    const there = spans.value?.find((one) => one.quantity === quantity && one.altitude === altitude);
    return (there && part(there)) ?? null;
  };
  if (kilometres === null) return at(null);
  if (!Number.isFinite(kilometres)) return at('vacuum');
  const next = altitudes.findIndex((altitude) => altitude >= kilometres);
  const above = altitudes[next];
  if (above === undefined) return null;
  const below = altitudes[Math.max(0, next - 1)] ?? above;
  const [from, to] = [at(below * 1000), at(above * 1000)];
  if (from === null || to === null) return null;
  const share = above === below ? 0 : (kilometres - below) / (above - below);
  return { low: from.low + share * (to.low - from.low), high: from.high + share * (to.high - from.high) };
}

/** @param place of the engine on screen @param kilometres `Infinity` for vacuum; null where it does not matter */
export function ownSpanAt(place: number, quantity: string, kilometres: number | null): Span | null {
  return spanAt(({ own }) => own[place], quantity, kilometres);
}

/** Second less first; what the two share cancels. */
export function differenceAt(quantity: string, kilometres: number | null): Span | null {
  return spanAt(({ difference }) => difference, quantity, kilometres);
}

/** Works them out once the sentences are checked, anew for each study and each pair. */
export function followSpans(): void {
  effect(() => {
    const engines = shownEngines.value;
    const isFree = checkStage.value === 'final' && !catchingUp.value;
    spans.value = null;
    if (!isFree || engines.length === 0 || engines.some(({ result }) => !result.ok)) return;
    const gone = new AbortController();
    askDesk('spans', { engines: engines.map(({ id }) => id), places }, gone.signal).then(
      (told) => {
        spans.value = told;
        // The machine is free now, and an input may be changed next.
        warmUp();
      },
      (error: unknown) => {
        if (!(error instanceof QuestionEnded)) reportError(error);
      },
    );
    return () => gone.abort();
  });
}
