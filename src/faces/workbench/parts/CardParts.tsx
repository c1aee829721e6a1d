import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { needsOf } from '../../../answer/asked/askProblem.ts';
import { type Ask, askKey } from '../../../answer/asked/model.ts';
import { plainAsk } from '../../../answer/asked/plainAsk.ts';
import { findQuantity } from '../../../answer/catalogue.ts';
import { show } from '../../../answer/display.ts';
import { kilometresOf, type NamedQuantity } from '../state/namedIn.ts';
import { ownerName } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import type { OpenCard } from '../state/view.ts';
import { writeInScript } from '../state/writing/writing.ts';
import { tellNumbers } from '../workshop/workshop.ts';
import { CopyButton } from './CopyButton.tsx';
import { TracedNumber } from './TracedNumber.tsx';

interface CardPartsProps {
  readonly expression: string;
  readonly parts: readonly NamedQuantity[];
  readonly card: OpenCard;
}

/** A number made of several: how, and each of them with its own card. */
export function CardParts({ expression, parts, card }: CardPartsProps) {
  const told = useSignal<ReadonlyMap<string, string>>(new Map());
  const study = solved.value;
  useEffect(() => {
    let isGone = false;
    const asks = parts.flatMap((part) => askOf(part) ?? []);
    tellNumbers(asks.map(({ ask }) => ask)).then((answers) => {
      if (isGone) return;
      told.value = new Map(
        answers.flatMap((answer, i) => {
          const ask = asks[i]?.ask;
          return answer.ok && ask !== undefined ? [[askKey(ask), show(ask.quantity, answer.value).text]] : [];
        }),
      );
    }, reportError);
    return () => {
      isGone = true;
    };
  }, [expression, study]);
  return (
    <>
      <h3>How it is worked out</h3>
      <p>
        <code>{expression}</code>
      </p>
      <h3>The numbers in it</h3>
      <ul>
        {parts.map((part) => {
          const asked = askOf(part);
          const label = [ownerName(part.owner), findQuantity(part.quantity)?.label]
            .filter(Boolean)
            .join(', ');
          return (
            <li key={part.expression}>
              {label}
              {part.place === null ? '' : ` (${part.place})`}:{' '}
              <TracedNumber
                quantity={part.quantity}
                engine={part.owner}
                shown={(asked && told.value.get(askKey(asked.ask))) ?? part.expression}
                condition={`in ${expression}`}
                label={label}
                expression={part.expression}
              />
            </li>
          );
        })}
      </ul>
      <p class="actions">
        <button type="button" class="plain-button" onClick={() => writeInScript(expression)}>
          Use in script
        </button>
        <CopyButton text={`${expression}: ${card.shown}`} what="the number with how it is worked out" />
      </p>
    </>
  );
}

/** Null where the brackets hold more than a place in the air. */
function askOf({ owner, quantity, place }: NamedQuantity): { readonly ask: Ask } | null {
  const entry = findQuantity(quantity);
  if (entry === undefined || entry.place === 'vehicle') return null;
  if (!needsOf(entry).ambient) return place === null ? { ask: plainAsk(owner, quantity, null) } : null;
  const here = kilometresOf(place);
  if (here === null) return null;
  const at = Number.isFinite(here)
    ? ({ kind: 'altitude', altitude: here * 1000 } as const)
    : ({ kind: 'vacuum' } as const);
  return { ask: plainAsk(owner, quantity, at) };
}
