/** Closed forms of a perfect gas, as printed in NACA Report 1135 (Ames Research Staff, 1953), written for these checks alone. */

export function areaRatio(mach: number, gamma: number): number {
  const power = (gamma + 1) / (2 * (gamma - 1));
  return ((2 / (gamma + 1)) * (1 + ((gamma - 1) / 2) * mach ** 2)) ** power / mach;
}

/** p/p₀ */
export function pressureShare(mach: number, gamma: number): number {
  return (1 + ((gamma - 1) / 2) * mach ** 2) ** (-gamma / (gamma - 1));
}

/** Mach number of a gas expanded to this share of its pressure at rest. */
export function machAtPressure(share: number, gamma: number): number {
  return Math.sqrt((2 / (gamma - 1)) * (share ** (-(gamma - 1) / gamma) - 1));
}

/** Faster than sound, by halving. */
export function machAtArea(ratio: number, gamma: number): number {
  let [low, high] = [1, 50];
  for (let i = 0; i < 80; i++) {
    const middle = 0.5 * (low + high);
    if (areaRatio(middle, gamma) < ratio) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/** Prandtl–Meyer angle [rad] */
export function prandtlMeyer(mach: number, gamma: number): number {
  const b = Math.sqrt((gamma + 1) / (gamma - 1));
  const beta = Math.sqrt(mach ** 2 - 1);
  return b * Math.atan(beta / b) - Math.atan(beta);
}

/** Speed at this Mach number [m/s]. @param gasConstant [J/(kg K)] @param temperature at rest [K] */
export function speedAt(mach: number, gamma: number, gasConstant: number, temperature: number): number {
  const there = temperature / (1 + ((gamma - 1) / 2) * mach ** 2);
  return mach * Math.sqrt(gamma * gasConstant * there);
}
