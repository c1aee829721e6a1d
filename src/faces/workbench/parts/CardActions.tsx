import type { CatalogueEntry } from '../../../answer/catalogue.ts';
import { sweepable, sweepableInFlight } from '../state/followed.ts';
import { ownerName } from '../state/pair.ts';
import { beginSentence } from '../state/sentenceView.ts';
import { beginSweep, beginSweepAgainst } from '../state/sweepTrial.ts';
import type { OpenCard, SaidInstead } from '../state/view.ts';
import { writeInScript } from '../state/writing/writing.ts';
import { CopyButton } from './CopyButton.tsx';

interface CardActionsProps {
  readonly card: OpenCard;
  readonly entry: CatalogueEntry;
  readonly expression: string;
}

/** What can be done with a number. */
export function CardActions({ card, entry, expression }: CardActionsProps) {
  const name = ownerName(card.engine);
  const whose = name === undefined ? '' : ` of ${name}`;
  const where = card.condition.startsWith('in the test') ? '' : ` ${card.condition}`;
  const words = `The ${entry.label}${whose}${where} is about ${card.shown}.`.replace(/\s+/g, ' ');
  const plain = card.shown.replaceAll('\u00a0', ' ').replaceAll('\u202f', '');
  const isNumber = /^[−-]?\d/.test(plain);
  return (
    <p class="actions">
      {isNumber && (
        <button
          type="button"
          class="plain-button"
          onClick={() => beginSentence(words, `${expression} is about ${plain}`)}
        >
          Make a sentence
        </button>
      )}
      {[...sweepable, ...sweepableInFlight].some(({ name }) => name === entry.name) && (
        <button
          type="button"
          class="plain-button"
          onClick={() => beginSweep(entry.name, placeIn(expression))}
        >
          Sweep against …
        </button>
      )}
      <button type="button" class="plain-button" onClick={() => writeInScript(expression)}>
        Use in script
      </button>
      <CopyButton text={`${words} Source: ${entry.source}`} what="the number with its source" />
    </p>
  );
}

/** What can be done with a number that no test names. */
export function InsteadActions({ instead: { say, holds, sweep } }: { readonly instead: SaidInstead }) {
  return (
    <p class="actions">
      <button type="button" class="plain-button" onClick={() => beginSentence(say, holds)}>
        Make a sentence
      </button>
      <button
        type="button"
        class="plain-button"
        onClick={() => beginSweepAgainst(sweep.quantity, sweep.input, sweep.vehicle)}
      >
        Sweep against …
      </button>
    </p>
  );
}

/** `12 km` of `bell.thrust(12 km)`; null where no place stands in the brackets. */
function placeIn(expression: string): string | null {
  const place = /\((vacuum|pad|[-\d.]+ (?:km|bar))\)$/.exec(expression)?.[1] ?? null;
  return place === '0 km' ? 'pad' : place;
}
