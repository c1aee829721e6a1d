import { useEffect, useRef } from 'preact/hooks';
import { type CatalogueEntry, findQuantity } from '../../../answer/catalogue.ts';
import { namedIn } from '../state/namedIn.ts';
import { ownerName, shownEngines } from '../state/pair.ts';
import { ownerIds } from '../state/selected.ts';
import { closeCard, type OpenCard } from '../state/view.ts';
import { CardActions, InsteadActions } from './CardActions.tsx';
import { CardParts } from './CardParts.tsx';
import { CardSpan } from './CardSpan.tsx';
import { EngineMark } from './EngineMark.tsx';
import { Equation } from './Equation.tsx';

/** Where one number comes from: meaning, span, equation, inputs, source, model and its limits. */
export function Card({ card }: { readonly card: OpenCard }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [card.quantity, card.engine, card.expression]);
  const entry = findQuantity(card.quantity);
  const engine = shownEngines.value.find(({ id }) => id === card.engine);
  const parts = card.expression === null ? [] : namedIn(card.expression, ownerIds.value);
  const answer = engine?.result.ok ? engine.result.answer : null;
  return (
    <section
      class="card"
      aria-labelledby="card-heading"
      onKeyDown={(event) => {
        if (event.key === 'Escape') closeCard();
      }}
    >
      <div class="card-head">
        <h2 id="card-heading" ref={heading} tabIndex={-1}>
          Where this number comes from
        </h2>
        <button type="button" onClick={closeCard}>
          Close
        </button>
      </div>
      <p class={engine && parts.length < 2 ? `whose text-${engine.style.order}` : 'whose'}>
        {engine && parts.length < 2 && <EngineMark style={engine.style} />}
        {parts.length > 1
          ? 'Worked out from several numbers'
          : [ownerName(card.engine), entry?.label ?? card.quantity].filter(Boolean).join(', ')}
      </p>
      <p class="big">{card.shown}</p>
      {card.condition !== '' && <p class="condition">{card.condition}</p>}
      {parts.length > 1 ? (
        <CardParts expression={card.expression ?? ''} parts={parts} card={card} />
      ) : entry === undefined ? (
        <p>The catalogue has no entry for this number.</p>
      ) : (
        <>
          <h3>What it means</h3>
          <p>{entry.meaning}</p>
          <h3>Equation</h3>
          <p class="equation">
            <Equation text={entry.equation} />
          </p>
          {card.expression !== null && <CardSpan expression={card.expression} entry={entry} />}
          <Origin entry={entry} />
          {answer !== null && answer.omitted.length > 0 && (
            <>
              <h3>Left out for this engine</h3>
              <ul>
                {answer.omitted.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </>
          )}
          {card.expression === null && entry.notAsked !== undefined && (
            <p class="hint">
              No test names it: {entry.notAsked.why} {entry.notAsked.instead}
            </p>
          )}
          {card.instead !== undefined && <InsteadActions instead={card.instead} />}
          {card.expression !== null && <CardActions card={card} entry={entry} expression={card.expression} />}
        </>
      )}
    </section>
  );
}

function Origin({ entry }: { readonly entry: CatalogueEntry }) {
  return (
    <>
      <h3>Source</h3>
      <p>{entry.source}</p>
      <h3>Model</h3>
      <p>
        <a href={`/methods/${entry.model}.md`} target="_blank" rel="noreferrer">
          {entry.model}
        </a>
        , how it is computed, in a new tab
      </p>
      <h3>Limits</h3>
      <p>{entry.limits}</p>
      <h3>How far from measurement</h3>
      <p>{entry.typicalError}</p>
    </>
  );
}
