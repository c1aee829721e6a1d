import { equationPieces } from '../../../telling/page/equationPieces.ts';

/** An equation of the catalogue with its lowered and raised parts. */
export function Equation({ text }: { readonly text: string }) {
  return (
    <>
      {equationPieces(text).map((piece, index) => {
        if (piece.stands === 'low') return <sub key={index}>{piece.text}</sub>;
        if (piece.stands === 'high') return <sup key={index}>{piece.text}</sup>;
        return piece.text;
      })}
    </>
  );
}
