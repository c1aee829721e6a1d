import type { Expansion } from '../../physics/gas/flow.ts';
import type { EngineBasis, MeanExit, MeanFlow } from './model.ts';

/** Steps from rest to the lowest pressure: linear between them, speed and temperature are good to a few parts in ten thousand. */
const STEPS = 36;

/**
 * The mean flow down to a share of the chamber pressure.
 *
 *   s = √(−ln(p/p₀))        Δu/u ≈ (Δs)² u″/(8u) between steps
 *
 * @param lowest p/p₀ at the last step, below that of the throat
 */
export function meanFlow(expansion: Expansion, lowest: number): MeanFlow {
  const { chamber, throat } = expansion;
  const sThroat = distance(throat.pressure / chamber.pressure);
  const sEnd = distance(lowest);
  const ahead = Math.max(4, Math.round((STEPS * sThroat) / sEnd));
  const s = Array.from({ length: STEPS + 1 }, (_, i) =>
    i <= ahead
      ? (sThroat * i) / ahead
      : sThroat + ((sEnd - sThroat) * (i - ahead)) / Math.max(1, STEPS - ahead),
  );
  const states = s.map((each, i) => {
    if (i === 0) return chamber;
    return i === ahead ? throat : expansion.atPressure(chamber.pressure * Math.exp(-each * each));
  });
  return {
    s,
    temperature: states.map(({ temperature }) => temperature),
    velocity: states.map(({ velocity }, i) => (i === 0 ? 0 : velocity)),
    mach: states.map(({ mach }, i) => (i === 0 ? 0 : mach)),
    areaRatio: states.map(({ massFlux }, i) =>
      i === 0 ? Number.POSITIVE_INFINITY : throat.massFlux / massFlux,
    ),
    throat: ahead,
  };
}

/** s of a share p/p₀. */
const distance = (share: number): number => Math.sqrt(-Math.log(Math.min(1, share)));

/** Temperature, speed and Mach number at a share p/p₀; the ends beyond the ends. */
export function stateAt(
  flow: MeanFlow,
  share: number,
): { readonly temperature: number; readonly velocity: number; readonly mach: number | null } {
  const { index, part } = stepAt(flow.s, distance(share));
  const [low, high] = [flow.mach[index] ?? null, flow.mach[index + 1] ?? null];
  return {
    temperature: between(flow.temperature, index, part),
    velocity: between(flow.velocity, index, part),
    mach: low === null || high === null ? null : low + part * (high - low),
  };
}

/**
 * Share p/p₀ where the stream is so wide: s over ±√(ln A/A*), which runs through the throat without a corner.
 *
 * @param side −1 ahead of the throat, 1 behind
 */
export function shareAtArea({ s, areaRatio, throat }: MeanFlow, area: number, side: -1 | 1): number {
  const wanted = Math.sqrt(Math.log(Math.max(1, area)));
  let i = throat;
  const width = (at: number): number => Math.sqrt(Math.log(Math.max(1, areaRatio[at] ?? 1)));
  while (i + side > 0 && i + side < s.length - 1 && width(i + side) < wanted) i += side;
  const [near, far] = [width(i), width(i + side)];
  const part = Number.isFinite(far) && far > near ? Math.min(1, (wanted - near) / (far - near)) : 0;
  const at = (s[i] ?? 0) + part * ((s[i + side] ?? 0) - (s[i] ?? 0));
  return Math.exp(-at * at);
}

function stepAt(s: readonly number[], wanted: number): { readonly index: number; readonly part: number } {
  let low = 0;
  let high = s.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((s[middle] ?? 0) <= wanted) low = middle;
    else high = middle;
  }
  const [from, to] = [s[low] ?? 0, s[high] ?? 0];
  return { index: low, part: to > from ? Math.min(1, Math.max(0, (wanted - from) / (to - from))) : 0 };
}

const between = (values: readonly number[], index: number, part: number): number => {
  const low = values[index] ?? 0;
  return low + part * ((values[index + 1] ?? low) - low);
};

/** Where the nozzle ends in this mode. */
export const exitOf = ({ exits }: EngineBasis, isThick: boolean): MeanExit =>
  isThick && exits.thick !== null ? exits.thick : exits.thin;

/** A plug, the bound, and an open wake let the gas go on to the pressure of the air. */
export function adaptsIn({ input: { nozzle } }: EngineBasis, isThick: boolean): boolean {
  return (
    nozzle.kind === 'plug' || nozzle.kind === 'adapting' || (nozzle.kind === 'expansionDeflection' && isThick)
  );
}

/**
 * Thrust coefficient of the one-dimensional mean flow [–].
 *
 *   C_F = λ u_e/c* + (p_e − p_a) ε/p₀        for a nozzle that ends at ε
 *   C_F = u(p_a)/c*                          where the gas goes on to the air's pressure and p_a > p_e
 *
 * @param share p_a/p₀
 * Source: as thrustCoefficientOf; (ρu)_t/p₀ = 1/c*.
 */
export function meanCoefficient(basis: EngineBasis, share: number, isThick: boolean): number {
  const exit = exitOf(basis, isThick);
  const { characteristicVelocity, divergence, flow } = basis;
  if (adaptsIn(basis, isThick) && share > exit.share)
    return stateAt(flow, share).velocity / characteristicVelocity;
  return (divergence * exit.velocity) / characteristicVelocity + (exit.share - share) * exit.areaRatio;
}

/** p/p₀ at which the mean flow leaves: its own, or the air's. */
export function meanExitShare(basis: EngineBasis, share: number, isThick: boolean): number {
  const { share: own } = exitOf(basis, isThick);
  return adaptsIn(basis, isThick) ? Math.max(own, share) : own;
}
