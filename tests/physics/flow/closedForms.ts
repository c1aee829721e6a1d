/** Area ratio A/A* at a Mach number, perfect gas (NACA Report 1135, eq. 80). */
export function areaRatioAtMach(mach: number, gamma: number): number {
  const base = (2 / (gamma + 1)) * (1 + ((gamma - 1) / 2) * mach * mach);
  return base ** ((gamma + 1) / (2 * (gamma - 1))) / mach;
}
