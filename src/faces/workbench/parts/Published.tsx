import type { PublishedFigure } from '../../../answer/model.ts';
import { checkWords, type FigureWords, figureWords, solveWords } from '../../../answer/published/words.ts';
import type { EngineInput } from '../../../study/model.ts';
import { type ShownEngine, shownEngines } from '../state/pair.ts';
import { openCard, panel, type SaidInstead } from '../state/view.ts';
import { EngineMark } from './EngineMark.tsx';
import { TracedNumber } from './TracedNumber.tsx';

/** Published figures beside the computed ones, what contradicts what, and what they settle. */
export function Published() {
  return (
    <div class="models published">
      {shownEngines.value.map((engine) => (
        <OfEngine key={engine.id} engine={engine} />
      ))}
    </div>
  );
}

function OfEngine({ engine: { style, input, result } }: { readonly engine: ShownEngine }) {
  if (input.published === null) return null;
  if (!result.ok) {
    return (
      <section>
        <h2 class={`text-${style.order}`}>
          <EngineMark style={style} /> {input.name}
        </h2>
        <p>
          {result.problem.what} {result.problem.mend}
        </p>
      </section>
    );
  }
  const { answer } = result;
  const settled = solveWords(answer);
  const checks = checkWords(answer.publishedChecks);
  return (
    <section>
      <h2 class={`text-${style.order}`}>
        <EngineMark style={style} /> {input.name}
      </h2>
      <ol class="figures">
        {answer.published.map((figure, i) => {
          const words = figureWords(figure);
          return (
            <li key={i}>
              <b>{words.what}</b>
              <span>
                {words.published} published,{' '}
                {figure.computed === null ? (
                  words.computed
                ) : (
                  <TracedNumber
                    quantity={figure.comparedWith}
                    engine={input.id}
                    shown={words.computed}
                    condition={words.what}
                    label={`${input.name}, ${words.what}`}
                    expression={`${input.id}.${figure.comparedWith}${placeOf(figure)}`}
                  />
                )}{' '}
                computed
              </span>
              {words.difference !== '' && (
                <span class={figure.within === true ? 'inside' : 'outside'}>
                  <TracedNumber
                    quantity="published.share"
                    engine={input.id}
                    shown={words.difference}
                    condition={`${words.what}: ${words.computed} computed, ${words.published} published (${words.source})`}
                    label={`${input.name}, ${words.what}, difference`}
                    expression={null}
                    instead={publishedSaid(input, figure, words)}
                  />
                  , {words.verdict}
                </span>
              )}
              <span class="from">{words.source}</span>
            </li>
          );
        })}
      </ol>
      {checks.length > 0 && <h3>Held against each other</h3>}
      <ul>
        {checks.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {settled !== null && (
        <>
          <h3>What they settle</h3>
          <p>{settled}</p>
        </>
      )}
    </section>
  );
}

/** What was published, said of what is computed. */
function publishedSaid(
  { id, name }: EngineInput,
  figure: PublishedFigure,
  { what }: FigureWords,
): SaidInstead | undefined {
  // A figure of several words, such as a span, is no number to hold a test against.
  if (!/^[\d.]+\s*[^\d\s]+$/.test(figure.text)) return undefined;
  return {
    say: `The ${what} of ${name} is about ${figure.text}, as published.`,
    holds: `${id}.${figure.comparedWith}${placeOf(figure)} is about ${figure.text}`,
    sweep: { quantity: figure.comparedWith, input: null, vehicle: null },
  };
}

/** As a test writes the place: `(vacuum)`. */
function placeOf({ at }: PublishedFigure): string {
  if (at === null) return '';
  if (at.ambientPressure === 0) return '(vacuum)';
  return at.altitude === null ? `(${at.ambientPressure / 1e5} bar)` : `(${at.altitude / 1000} km)`;
}

/** In the table of numbers: how many published figures the computed ones miss; pressed, it opens them. */
export function PublishedCell({ engine }: { readonly engine: ShownEngine }) {
  const { input, result, side } = engine;
  if (input.published === null) return <td class={`value words ${side}`}>none</td>;
  if (!result.ok) return <td class={`value ${side} absent`}>{result.isAwaited ? 'follows …' : 'failed'}</td>;
  const { published, publishedChecks } = result.answer;
  const inside = published.filter(({ within }) => within === true).length;
  const against = publishedChecks.filter(({ agrees }) => !agrees).length;
  const words = `${inside} of ${published.length} met`;
  return (
    <td class={`value words ${side}`}>
      <button
        type="button"
        class="number"
        aria-label={`${input.name}, published figures: ${words}${against > 0 ? `, ${against} contradictions` : ''}. Show them`}
        onClick={() => {
          openCard.value = null;
          panel.value = 'published';
        }}
      >
        {against === 0 ? words : `${words}, ${against} at odds`}
      </button>
    </td>
  );
}
