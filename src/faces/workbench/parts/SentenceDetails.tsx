import type { ComponentChildren } from 'preact';
import { findQuantity } from '../../../answer/catalogue.ts';
import { flipWords } from '../../../answer/sentences/flipWords.ts';
import type { CheckedSentence, DecidingNumber } from '../../../answer/sentences/model.ts';
import { capital } from '../../../study/capital.ts';
import { formatSpoken } from '../../../telling/numbers/formatNumber.ts';
import { namedIn } from '../state/namedIn.ts';
import { engineInputs } from '../state/pair.ts';
import { ownerIds } from '../state/selected.ts';
import { CopyButton } from './CopyButton.tsx';
import { ShareBar } from './ShareBar.tsx';
import { shareWords } from './shareWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** All that stands behind a verdict. */
export function SentenceDetails({ sentence }: { readonly sentence: CheckedSentence }) {
  const { wording, instead, numbers, flips, matters, alternatives, absolutes, saidNumbers, saidReasons } =
    sentence;
  return (
    <div class="details">
      <Part title="Why">{sentence.why}</Part>
      {wording !== null && (
        <Part title="Safe to say in these words">
          {wording} <CopyButton text={wording} what="these words" />
        </Part>
      )}
      {instead !== null && (
        <Part title="True instead">
          {instead} <CopyButton text={instead} what="what is true instead" />
        </Part>
      )}
      <List title="Numbers that decide">
        {numbers.map((number) => (
          <Deciding key={number.expression} number={number} />
        ))}
      </List>
      <List title="Where the verdict turns">{flipWords(flips).map(capital)}</List>
      {matters.length > 0 && (
        <>
          <h3>What matters most</h3>
          <ul>
            {matters.map(({ source, share, words }) => (
              <li key={source}>
                {words}
                <ShareBar share={share} />
              </li>
            ))}
          </ul>
        </>
      )}
      <List title="By each published rule">
        {alternatives.map(
          ({ by, share }) => `${by}: ${share === null ? 'has no number here' : shareWords(share)}`,
        )}
      </List>
      <List title="Strong words">{absolutes.map(({ words }) => words)}</List>
      <List title="Numbers in the words">{saidNumbers.map(({ words }) => words)}</List>
      <List title="Reasons in the words">{saidReasons.map(({ words }) => words)}</List>
      <List title="Tested">{sentence.conditions}</List>
      <List title="Sources">{sentence.sources}</List>
      {sentence.holds !== null && (
        <Part title="The test">
          <code>{sentence.holds}</code>
        </Part>
      )}
    </div>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <>
      <h3>{title}</h3>
      <p>{children}</p>
    </>
  );
}

/** Nothing where there are none. */
function List({
  title,
  children,
}: {
  readonly title: string;
  readonly children: readonly ComponentChildren[];
}) {
  if (children.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {children.map((child, index) => (
          <li key={index}>{child}</li>
        ))}
      </ul>
    </>
  );
}

/** One number with its span; pressed, where it comes from. */
function Deciding({ number }: { readonly number: DecidingNumber }) {
  const { expression, quantity, value, low, high, words } = number;
  const entry = quantity === null ? undefined : findQuantity(quantity);
  if (quantity === null || entry === undefined) return <OfSeveral expression={expression} words={words} />;
  const engine = engineInputs.value.find(({ id }) => expression.startsWith(`${id}.`));
  const span = low === high ? '' : ` (${formatSpoken(quantity, low)} to ${formatSpoken(quantity, high)})`;
  return (
    <>
      {expression}:{' '}
      <TracedNumber
        quantity={quantity}
        engine={engine?.id ?? null}
        shown={formatSpoken(quantity, value)}
        condition={`in the test: ${expression}`}
        label={[engine?.name, entry.label].filter(Boolean).join(', ')}
        expression={expression}
      />
      {span}
    </>
  );
}

/** Its card tells of each of them. */
function OfSeveral({ expression, words }: Pick<DecidingNumber, 'expression' | 'words'>) {
  const [first] = namedIn(expression, ownerIds.value);
  if (first === undefined) return <>{`${expression}: ${words}`}</>;
  return (
    <>
      {expression}:{' '}
      <TracedNumber
        quantity={first.quantity}
        engine={first.owner}
        shown={words}
        condition={`in the test: ${expression}`}
        label={expression}
        expression={expression}
      />
    </>
  );
}
