/** An equation of the catalogue in pieces, lowered and raised parts told apart: `C_F`, `(…)^−0.64`. */

import { escapeMarkup } from '../scene/safeText.ts';

export interface EquationPiece {
  readonly text: string;
  readonly stands: 'plain' | 'low' | 'high';
}

/** A part begins with _ or ^ and is a bracket in braces, or letters and digits (with a sign when raised). */
const PART = /(_\{[^}]*\}|_[\p{L}\p{N}°]+(?:,[\p{L}\p{N}]+)*|\^\{[^}]*\}|\^[−-]?[\p{L}\p{N}.]+)/u;

export function equationPieces(equation: string): readonly EquationPiece[] {
  return equation
    .split(PART)
    .filter((piece) => piece !== '')
    .map((piece) => {
      const inner = piece.slice(1).replace(/^\{|\}$/g, '');
      if (piece.startsWith('_') && piece.length > 1) return { text: inner, stands: 'low' };
      if (piece.startsWith('^') && piece.length > 1) return { text: inner, stands: 'high' };
      return { text: piece, stands: 'plain' };
    });
}

const ELEMENT = { low: 'sub', high: 'sup' } as const;

export function equationHtml(equation: string): string {
  return equationPieces(equation)
    .map(({ text, stands }) => {
      const safe = escapeMarkup(text);
      return stands === 'plain' ? safe : `<${ELEMENT[stands]}>${safe}</${ELEMENT[stands]}>`;
    })
    .join('');
}
