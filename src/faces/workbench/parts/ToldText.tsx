import type { ToldPart } from '../state/toldParts.ts';
import { TracedNumber } from './TracedNumber.tsx';

interface ToldTextProps {
  readonly parts: readonly ToldPart[];
  /** Whose words they are, for assistive technology. */ readonly of: string;
}

/** A text each number of which tells, when pressed, where it comes from. */
export function ToldText({ parts, of }: ToldTextProps) {
  return (
    <>
      {parts.map(({ text: words, card, mark }, i) =>
        card === null ? (
          unbroken(words)
        ) : (
          // A full stop does not go to the next line without its number.
          <span key={`${i} ${words}`} class="kept-together">
            <TracedNumber {...card} shown={unbroken(words)} label={`${of} ${card.condition}`.trim()} />
            {mark}
          </span>
        ),
      )}
    </>
  );
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=(?:%|s|km|m|mm|bar|kN|N|K)(?![a-z]))/g, '$1\u00a0');
}
