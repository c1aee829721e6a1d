/**
 * What an error of the throat's gap makes of area, flow and pressure.
 *
 *   round         A'/A = (1 + δ/D)²           the diameter off by δ
 *   ring, plane   A'/A = 1 + δ/g
 *   ṁ'/ṁ = A'/A at the same chamber pressure,    p'/p = A/A' at the same flow
 *
 * Geometry and the choked throat; no source needed.
 */
export interface GapError {
  /** Each as a share [–]: 0.01 is one per cent more. */ readonly area: number;
  readonly flow: number;
  readonly pressure: number;
}

/** The tenth of a millimetre that is spoken of [m]. */
export const TENTH = 1e-4;

export function gapError(
  throat:
    | { readonly form: 'round'; readonly diameter: number }
    | { readonly form: 'gap'; readonly gap: number },
  error: number,
): GapError {
  const area = throat.form === 'round' ? (1 + error / throat.diameter) ** 2 - 1 : error / throat.gap;
  return { area, flow: area, pressure: 1 / (1 + area) - 1 };
}
