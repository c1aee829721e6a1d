/** An equation of the catalogue with its lowered and raised parts: `C_F`, `(…)^−0.64`. */
export function Equation({ text }: { readonly text: string }) {
  // A part begins with _ or ^ and is a bracket in braces, or letters and digits (with a sign when raised).
  const pieces = text.split(
    /(_\{[^}]*\}|_[\p{L}\p{N}°]+(?:,[\p{L}\p{N}]+)*|\^\{[^}]*\}|\^[−-]?[\p{L}\p{N}.]+)/u,
  );
  return (
    <>
      {pieces.map((piece, index) => {
        const inner = piece.slice(1).replace(/^\{|\}$/g, '');
        if (piece.startsWith('_') && piece.length > 1) return <sub key={index}>{inner}</sub>;
        if (piece.startsWith('^') && piece.length > 1) return <sup key={index}>{inner}</sup>;
        return piece;
      })}
    </>
  );
}
