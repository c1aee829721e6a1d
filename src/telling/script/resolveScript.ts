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
  return {
    script,
    scenes: script.scenes.map((scene) => ({
      scene,
      lines: scene.lines.map((line) => resolveLine(line, script, told)),
    })),
  };
}

function resolveLine(line: ScriptLine, { units }: Script, told: ToldNumbers): ResolvedLine {
  const pieces = line.pieces.map((piece) =>
    piece.kind === 'words' ? piece : tellNumber(piece, told.get(piece.expression), units),
  );
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
