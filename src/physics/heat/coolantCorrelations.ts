/**
 * Nusselt number of turbulent flow in a channel, by published correlations, each with the range it was fitted to.
 *
 *   Dittus–Boelter   Nu = 0.023 Re^0.8 Pr^0.4                                  Re > 10⁴, 0.7 < Pr < 160
 *   Sieder–Tate      Nu = 0.027 Re^0.8 Pr^(1/3) (μ_b/μ_w)^0.14                 Re > 10⁴, 0.7 < Pr < 16 700
 *   Gnielinski       Nu = (f/8)(Re − 1000)Pr/[1 + 12.7 √(f/8)(Pr^(2/3) − 1)]   3·10³ < Re < 5·10⁶, 0.5 < Pr < 2000
 *                    f  = (0.79 ln Re − 1.64)^−2
 *   Taylor           Nu = 0.023 Re^0.8 Pr^0.4 (T_w/T_b)^−(0.57 − 1.59 D/x)      hydrogen and other gases, Re > 10⁴, T_w/T_b to 23
 *   Bishop           Nu = 0.0069 Re^0.9 Pr^0.66 (ρ_w/ρ_b)^0.43 (1 + 2.4 D/x)    above the critical pressure, Re > 10⁴
 *
 * Sources (forms from memory): F. W. Dittus, L. M. K. Boelter, Univ. Calif. Publ. Eng. 2, 1930, 443; E. N. Sieder, G. E. Tate, Ind.
 * Eng. Chem. 28, 1936, 1429; V. Gnielinski, Int. Chem. Eng. 16, 1976, 359; M. F. Taylor, NASA TN D-4332, 1968; A. A. Bishop, R. O.
 * Sandberg, L. S. Tong, WCAP-2056, 1965 (as the documentation of a heat-transfer library gives it).
 * Check: Re 10⁵, Pr 5: Dittus–Boelter 437.8, Gnielinski 515.7.
 */

import type { CoolantState } from './coolantFluid.ts';

export const CORRELATIONS = ['dittusBoelter', 'siederTate', 'gnielinski', 'taylor', 'bishop'] as const;
export type Correlation = (typeof CORRELATIONS)[number];

export const CORRELATION_NAMES: Readonly<Record<Correlation, string>> = {
  dittusBoelter: 'Dittus and Boelter 1930',
  siederTate: 'Sieder and Tate 1936',
  gnielinski: 'Gnielinski 1976',
  taylor: 'Taylor 1968',
  bishop: 'Bishop 1965',
};

export interface ChannelFlow {
  /** Re_D of the bulk [–] */ readonly reynolds: number;
  /** Pr of the bulk [–] */ readonly prandtl: number;
  /** From the inlet over the hydraulic diameter, x/D [–] */ readonly along: number;
  readonly bulk: CoolantState;
  /** [K] */ readonly wallTemperature: number;
  /** The coolant at the wall's temperature; asked for by two correlations alone. */ wall(): CoolantState;
}

/** Nearer to the inlet than this [diameters] the terms of the entry are held. */
const NEAREST = 3;

export function nusseltOf(by: Correlation, flow: ChannelFlow): number {
  const { reynolds, prandtl, bulk } = flow;
  const entry = 1 / Math.max(flow.along, NEAREST);
  switch (by) {
    case 'dittusBoelter':
      return 0.023 * reynolds ** 0.8 * prandtl ** 0.4;
    case 'siederTate':
      return 0.027 * reynolds ** 0.8 * Math.cbrt(prandtl) * (bulk.viscosity / flow.wall().viscosity) ** 0.14;
    case 'gnielinski':
      return nusseltGnielinski(reynolds, prandtl);
    case 'taylor': {
      const exponent = Math.max(0.57 - 1.59 * entry, 0);
      const ratio = Math.max(flow.wallTemperature / bulk.temperature, 1);
      return 0.023 * reynolds ** 0.8 * prandtl ** 0.4 * ratio ** -exponent;
    }
    case 'bishop':
      return (
        0.0069 *
        reynolds ** 0.9 *
        prandtl ** 0.66 *
        (flow.wall().density / bulk.density) ** 0.43 *
        (1 + 2.4 * entry)
      );
  }
}

/** Below this the flow is not turbulent, and none of these holds. */
const LOWEST_REYNOLDS = 3000;

function nusseltGnielinski(reynolds: number, prandtl: number): number {
  const eighth = (0.79 * Math.log(reynolds) - 1.64) ** -2 / 8;
  return (eighth * (reynolds - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(eighth) * (prandtl ** (2 / 3) - 1));
}

/** What the range of a correlation hangs on. */
export interface CorrelationPlace {
  /** Re_D of the bulk [–] */ readonly reynolds: number;
  /** Pr of the bulk [–] */ readonly prandtl: number;
  /** T_w/T_b [–] */ readonly wallOverBulk: number;
  /** Of the coolant over its critical pressure [–] */ readonly reducedPressure: number;
  /** [K] on the coolant's side */ readonly wall: number;
  /** [K] where the coolant's table ends at its pressure, or where it boils */ readonly hottestKnown: number;
}

/** T_w/T_b of the measurements behind Taylor's. */
const HOTTEST_OVER_BULK = 23;

/** In words, why a correlation is outside its range; null where it is inside. */
export function outsideRange(by: Correlation, place: CorrelationPlace): string | null {
  const { reynolds, prandtl, wallOverBulk, reducedPressure } = place;
  const least = by === 'gnielinski' ? LOWEST_REYNOLDS : 1e4;
  if (reynolds < least) return `Reynolds number ${reynolds.toPrecision(3)} below ${least}`;
  if (by === 'taylor') return outsideTaylor(wallOverBulk, reducedPressure);
  if (by === 'bishop') {
    return reducedPressure < 1 ? 'the coolant is below its critical pressure' : beyondTable(place);
  }
  if (by === 'gnielinski' && reynolds > 5e6)
    return `Reynolds number ${reynolds.toPrecision(3)} above 5 million`;
  const [low, high] = by === 'gnielinski' ? [0.5, 2000] : [0.7, by === 'siederTate' ? 16_700 : 160];
  if (!(prandtl >= low && prandtl <= high)) {
    return `Prandtl number ${prandtl.toPrecision(3)} outside ${low} to ${high}`;
  }
  return by === 'siederTate' ? beyondTable(place) : null;
}

/** For those that read the coolant at the wall's temperature. */
function beyondTable({ wall, hottestKnown }: CorrelationPlace): string | null {
  if (wall <= hottestKnown) return null;
  return `the wall is at ${wall.toPrecision(3)} K, the coolant known as a liquid or dense gas up to ${hottestKnown.toPrecision(3)} K, and taken at the wall as there`;
}

function outsideTaylor(wallOverBulk: number, reducedPressure: number): string | null {
  if (reducedPressure < 1) return 'the coolant is a liquid below its critical pressure, no gas';
  if (wallOverBulk > HOTTEST_OVER_BULK) {
    return `the wall is ${wallOverBulk.toPrecision(3)} times as hot as the coolant, above ${HOTTEST_OVER_BULK}`;
  }
  return wallOverBulk < 1 ? 'the wall is colder than the coolant, and taken as of its temperature' : null;
}

/**
 * Darcy friction factor [–].
 *
 *   1/√f = −1.8 log₁₀[ 6.9/Re + (ε/3.7D)^1.11 ],   laminar 64/Re below 2300
 *
 * Source: S. E. Haaland, J. Fluids Eng. 105, 1983, 89 (from memory). Check: Re 10⁵, smooth → 0.0179 (Blasius 0.0178).
 */
export function frictionFactor(reynolds: number, roughness: number): number {
  if (reynolds < 2300) return 64 / Math.max(reynolds, 1);
  return (-1.8 * Math.log10(6.9 / reynolds + (roughness / 3.7) ** 1.11)) ** -2;
}
