/** The words of a script as spoken tokens, each with its line, and with the live number that it is. */

import type { NumberPiece, Script, ScriptLine } from '../../study/script/model.ts';
import type { NumbersTold, NumberTold } from '../time/model.ts';
import { writtenText } from '../time/timeScript.ts';
import { type SpokenToken, spokenTokens } from './spokenTokens.ts';

export interface ScriptToken extends SpokenToken {
  /** Place of the line in the script. */ readonly line: number;
  /** Null for what is typed by hand. */ readonly live: NumberTold | null;
}

export interface PlacedLine {
  readonly line: ScriptLine;
  readonly scene: string;
  readonly text: string;
}

export function placedLines({ scenes }: Script, numbers: NumbersTold): readonly PlacedLine[] {
  return scenes.flatMap((scene) =>
    scene.lines.map((line) => ({ line, scene: scene.id, text: writtenText(line, numbers) })),
  );
}

export function scriptTokens(lines: readonly PlacedLine[], numbers: NumbersTold): readonly ScriptToken[] {
  return lines.flatMap(({ line, text }, place) => {
    const live = livesIn(line, numbers);
    return spokenTokens(text).map((token): ScriptToken => {
      const own =
        token.number === null ? undefined : live.find(({ from, to }) => token.from < to && from < token.to);
      return { ...token, line: place, live: own?.told ?? null };
    });
  });
}

function livesIn({ pieces }: ScriptLine, numbers: NumbersTold) {
  let at = 0;
  return pieces.flatMap((piece) => {
    const told = piece.kind === 'number' ? numbers(piece satisfies NumberPiece) : null;
    const from = at;
    at += piece.kind === 'words' ? piece.text.length : told!.written.length;
    return told === null ? [] : [{ from, to: at, told }];
  });
}
