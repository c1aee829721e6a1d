import type { CatalogueEntry } from '../../../answer/catalogue.ts';
import { ownerName } from '../state/pair.ts';
import { beginSentence } from '../state/sentenceView.ts';
import { beginSweep, sweepable } from '../state/sweepTrial.ts';
import type { OpenCard } from '../state/view.ts';
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
      {sweepable.some(({ name }) => name === entry.name) && (
        <button type="button" class="plain-button" onClick={() => beginSweep(entry.name)}>
          Sweep against …
        </button>
      )}
      <CopyButton text={`${words} Source: ${entry.source}`} what="the number with its source" />
    </p>
  );
}
