import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CatalogueEntry } from '../../../answer/catalogue.ts';
import { showStated } from '../../../answer/display.ts';
import { spoken } from '../../../answer/spoken.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import { formatShare, formatSpoken } from '../../../telling/numbers/formatNumber.ts';
import { solved } from '../state/studyStore.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { Pedigree } from '../workshop/deskMessages.ts';
import { ShareBar } from './ShareBar.tsx';

/** Inputs shown before the rest is folded away. */
const mostInputs = 8;

interface CardSpanProps {
  readonly expression: string;
  readonly entry: CatalogueEntry;
}

/** The span of a number, what it is made of, and the inputs it hangs on: worked out when asked for. */
export function CardSpan({ expression, entry }: CardSpanProps) {
  const told = useSignal<Outcome<Pedigree> | null>(null);
  const study = solved.value;
  useEffect(() => {
    told.value = null;
    const gone = new AbortController();
    askDesk('pedigree', { expression }, gone.signal).then(
      (answer) => {
        told.value = answer;
      },
      (error: unknown) => {
        if (!(error instanceof QuestionEnded)) reportError(error);
      },
    );
    return () => gone.abort();
  }, [expression, study]);
  const answer = told.value;
  if (answer === null) return <p class="hint working">Working out its span …</p>;
  if (!answer.ok) return <p class="hint">{answer.problem.what}</p>;
  return <Found pedigree={answer.value} entry={entry} />;
}

function Found({ pedigree, entry }: { readonly pedigree: Pedigree; readonly entry: CatalogueEntry }) {
  const { value, low, high, shares, alternatives, hangsOn } = pedigree;
  const number = (one: number) => formatSpoken(entry.name, one);
  return (
    <>
      <h3>How sure it is</h3>
      <p class="span">
        {low === high
          ? `${number(value)}; no error of it is known.`
          : `${number(value)}; 95 % of what is not known lies between ${number(low)} and ${number(high)}.`}
      </p>
      <p class="spoken">Spoken: “{spoken(entry.name, value)}”.</p>
      {shares.length > 0 && (
        <>
          <h3>What makes it unsure</h3>
          <ul class="shares">
            {shares.map(({ label, share }) => (
              <li key={label}>
                {label}, {formatShare(share)} of the spread
                <ShareBar share={share} />
              </li>
            ))}
          </ul>
        </>
      )}
      {alternatives.length > 0 && (
        <>
          <h3>By each published rule</h3>
          <ul>
            {alternatives.map(({ by, value: other }) => (
              <li key={by}>
                {by}: {other === null ? 'has no number here' : number(other)}
              </li>
            ))}
          </ul>
        </>
      )}
      {hangsOn.length > 0 && (
        <>
          <h3>Inputs it hangs on</h3>
          <table class="hangs-on">
            <thead>
              <tr>
                <th scope="col">Input</th>
                <th scope="col">Value</th>
                <th scope="col">1 % more of it</th>
              </tr>
            </thead>
            <tbody>
              {hangsOn.slice(0, mostInputs).map((input) => (
                <tr key={input.label}>
                  <th scope="row">{input.label}</th>
                  <td>{showStated(input.quantity, input.value).text}</td>
                  <td>{effectText(input.effect)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </>
  );
}

/** `+0.3 %` */
function effectText(effect: number): string {
  const text = formatShare(effect);
  return effect > 0 ? `+${text}` : text;
}
