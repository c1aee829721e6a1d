import { useEffect, useRef } from 'preact/hooks';
import { findQuantity } from '../../../answer/catalogue.ts';
import { shownEngines } from '../state/pair.ts';
import { type OpenCard, openCard } from '../state/view.ts';
import { EngineMark } from './EngineMark.tsx';
import { Equation } from './Equation.tsx';

/** Where one number comes from: meaning, equation, source, model and its limits. */
export function Card({ card }: { readonly card: OpenCard }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [card.quantity, card.engine]);
  const entry = findQuantity(card.quantity);
  const engine = shownEngines.value.find(({ id }) => id === card.engine);
  const answer = engine?.result.ok ? engine.result.answer : null;
  return (
    <section class="card" aria-labelledby="card-heading">
      <div class="card-head">
        <h2 id="card-heading" ref={heading} tabIndex={-1}>
          Where this number comes from
        </h2>
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
      <p class={engine ? `whose text-${engine.style.order}` : 'whose'}>
        {engine && <EngineMark style={engine.style} />}
        {[engine?.input.name, entry?.label ?? card.quantity].filter(Boolean).join(', ')}
      </p>
      <p class="big">{card.shown}</p>
      {card.condition !== '' && <p class="condition">{card.condition}</p>}
      {entry === undefined ? (
        <p>The catalogue has no entry for this number.</p>
      ) : (
        <>
          <h3>What it means</h3>
          <p>{entry.meaning}</p>
          <h3>Equation</h3>
          <p class="equation">
            <Equation text={entry.equation} />
          </p>
          <h3>Source</h3>
          <p>{entry.source}</p>
          <h3>Model</h3>
          <p>{entry.model}, a page of docs/methods</p>
          <h3>Limits</h3>
          <p>{entry.limits}</p>
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
        </>
      )}
    </section>
  );
}

function close(): void {
  openCard.value = null;
  document.getElementById('tab-inputs')?.focus();
}
