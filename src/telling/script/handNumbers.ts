/** Numbers typed by hand into the words of a script, each with the quantity that it probably means. Hangs on the text alone. */

import { needsOf } from '../../answer/asked/askProblem.ts';
import { type CatalogueEntry, quantity } from '../../answer/catalogue.ts';
import { isNamed, quantitiesMeant } from '../../answer/claims/quantitiesMeant.ts';
import { sentencesIn } from '../../answer/claims/sentencesIn.ts';
import { enginesSaid, placesSaid, signsOf, valuesSaid } from '../../answer/claims/signs.ts';
import { compileExpression, scopeOf } from '../../answer/expression/index.ts';
import type { NumberInProse } from '../../answer/sentences/numbersInWords.ts';
import type { Study } from '../../study/model.ts';
import type { Script, ScriptLine } from '../../study/script/model.ts';

export interface HandNumber {
  /** Id of the line. */ readonly line: string;
  /** As written. */ readonly text: string;
  readonly said: NumberInProse;
  /** Label of the quantity it probably means; null where nothing suggests itself. */ readonly means:
    | string
    | null;
  /** The live number to write instead; null where none suggests itself. */ readonly instead: string | null;
  /** Characters of the file: of the words that hold it. */ readonly from: number;
  readonly to: number;
}

/** Stands for a live number among the words: no digit, no unit. */
const LIVE = '…';

/** The words of a line, a sign in place of each live number. */
export const wordsAlone = ({ pieces }: ScriptLine): string =>
  pieces.map((piece) => (piece.kind === 'words' ? piece.text : LIVE)).join('');

export function handNumbers(script: Script, study: Study): readonly HandNumber[] {
  return script.scenes.flatMap(({ lines }) => lines.flatMap((line) => handNumbersIn(line, study)));
}

function handNumbersIn(line: ScriptLine, study: Study): readonly HandNumber[] {
  const words = wordsAlone(line);
  if (!MAY_HOLD.test(words)) return [];
  return sentencesIn([{ text: words, line: 1, time: null, until: null }]).flatMap(({ text }) =>
    valuesSaid(text)
      .filter(({ share, dimension }) => share || dimension.some((e) => e !== 0))
      .map(
        (said): HandNumber => ({
          line: line.id,
          text: said.text,
          said,
          ...meant(text, said, study),
          ...placeOf(said.text, line),
        }),
      ),
  );
}

/** Digits, number words, parts and multiples: without one of them there is no number. */
const MAY_HOLD =
  /\d|\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|half|third|quarter|fifth|tenth|twice|double|triple|times)/i;

function placeOf(text: string, { pieces, from, to }: ScriptLine): Pick<HandNumber, 'from' | 'to'> {
  for (const piece of pieces) {
    if (piece.kind !== 'words') continue;
    const at = piece.text.indexOf(text);
    if (at >= 0) return { from: piece.from + at, to: Math.min(piece.to, piece.from + at + text.length) };
  }
  return { from, to };
}

function meant(sentence: string, said: NumberInProse, study: Study): Pick<HandNumber, 'means' | 'instead'> {
  const { direction, superlative } = signsOf(sentence);
  const isCompared = said.share || direction !== null || superlative !== null;
  const units = isCompared ? [] : [said.dimension];
  // What is named beside the number, before what is named anywhere; last, what its unit alone suggests.
  const beside = quantitiesMeant(clauseOf(sentence, said.text), units);
  const [likeliest] = beside.some(isNamed) ? beside : quantitiesMeant(sentence, units);
  if (likeliest === undefined) return { means: null, instead: null };
  const entry = quantity(likeliest.quantity);
  return { means: likeliest.label, instead: insteadOf(entry, sentence, said, study) };
}

/** The stretch between commas and conjunctions in which the number stands. */
const clauseOf = (sentence: string, number: string): string =>
  sentence.split(/[,;:—–]\s|\b(?:and|but|while|whereas)\b/).find((part) => part.includes(number)) ?? sentence;

function insteadOf(
  entry: CatalogueEntry,
  sentence: string,
  said: NumberInProse,
  study: Study,
): string | null {
  const [one, other] = enginesSaid(sentence, study.engines);
  const only = study.engines.length === 1 ? study.engines[0]!.id : undefined;
  const [place] = placesSaid(sentence);
  const unsaid = entry.place === 'air' ? 'pad' : 'vacuum';
  const where = needsOf(entry).ambient ? `(${place?.written ?? unsaid})` : '';
  const told = (engine: string): string =>
    `${entry.place === 'air' ? '' : `${engine}.`}${entry.name}${where}`;
  const first = one ?? only;
  if (first === undefined && entry.place !== 'air') return null;
  const written = expressionFor(told(first ?? ''), other === undefined ? null : told(other), said);
  return written !== null && compileExpression(written.expression, scopeOf(study)).ok
    ? `{{${written.expression}${written.unit}}}`
    : null;
}

function expressionFor(
  one: string,
  other: string | null,
  { share, times }: NumberInProse,
): { readonly expression: string; readonly unit: string } | null {
  if (!share) return { expression: other === null ? one : `${one} - ${other}`, unit: '' };
  if (other === null) return null;
  return times
    ? { expression: `${one} / ${other}`, unit: '' }
    : { expression: `${one} / ${other} - 1`, unit: ' in %' };
}
