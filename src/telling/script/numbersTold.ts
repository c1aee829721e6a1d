/** The live numbers of a resolved script by their pieces: what timing and captions read. */

import type { ToldNumbers } from '../../answer/numbers/index.ts';
import type { ScriptUnits } from '../../study/script/model.ts';
import type { NumbersTold } from '../time/model.ts';
import { tellNumber } from './tellNumber.ts';

export function numbersTold(told: ToldNumbers, audience: ScriptUnits): NumbersTold {
  return (piece) => {
    const found = told.get(piece.expression);
    const { text, spoken, value } = tellNumber(piece, found, audience);
    return { written: text, said: spoken, value, dimension: found?.dimension ?? null };
  };
}
