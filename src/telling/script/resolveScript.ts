/** A script with its numbers as they stand now: quick, for every keystroke and every change of an input. */

import type { ToldNumbers } from '../../answer/numbers/index.ts';
import type { NumberPiece, Script, ScriptLine } from '../../study/script/model.ts';
import type { ResolvedLine, ResolvedNumber, ResolvedScript } from './model.ts';
import { tellNumber } from './tellNumber.ts';

/** What is asked in a script, each expression once, in its order. */
export function expressionsOf({ scenes }: Script): readonly string[] {
  return [
    ...new Set(
      scenes.flatMap(({ lines }) =>
        lines.flatMap((line) => numbersIn(line).map(({ expression }) => expression)),
      ),
    ),
  ];
}

export const numbersIn = ({ pieces }: ScriptLine): readonly NumberPiece[] =>
  pieces.flatMap((piece) => (piece.kind === 'number' ? [piece] : []));

export function resolveScript(script: Script, told: ToldNumbers): ResolvedScript {
  const tell = tellingOnce(script, told);
  return {
    script,
    scenes: script.scenes.map((scene) => ({
      scene,
      lines: scene.lines.map((line) => resolveLine(line, tell)),
    })),
  };
}

/** What is asked for twice in the same way is worked out once. */
function tellingOnce({ units }: Script, told: ToldNumbers): (piece: NumberPiece) => ResolvedNumber {
  const known = new Map<string, ResolvedNumber>();
  return (piece) => {
    const { expression, unit, about, spoken, span, bare, digits } = piece;
    const key = [expression, unit, about, spoken, span, bare, digits].join('\n');
    const found = known.get(key) ?? tellNumber(piece, told.get(expression), units);
    known.set(key, found);
    return found.piece === piece ? found : { ...found, piece };
  };
}

function resolveLine(line: ScriptLine, tell: (piece: NumberPiece) => ResolvedNumber): ResolvedLine {
  const pieces = line.pieces.map((piece) => (piece.kind === 'words' ? piece : tell(piece)));
  return {
    line,
    pieces,
    text: pieces.map(({ text }) => text).join(''),
    spoken: pieces.map((piece) => (piece.kind === 'words' ? piece.text : piece.spoken)).join(''),
  };
}

export const linesOf = ({ scenes }: ResolvedScript): readonly ResolvedLine[] =>
  scenes.flatMap(({ lines }) => lines);

export const resolvedNumbersIn = ({ pieces }: ResolvedLine): readonly ResolvedNumber[] =>
  pieces.flatMap((piece) => (piece.kind === 'number' ? [piece] : []));
