/** Pressure along a wall by its model, at any axial distance [throat radii]: straight in its logarithm between stations. */
export function wallPressureOf(
  stations: readonly { readonly axial: number; readonly pressure: number }[],
): (axial: number) => number {
  return (x) => {
    let k = 1;
    while (k < stations.length - 1 && stations[k]!.axial < x) k++;
    const [a, b] = [stations[k - 1]!, stations[k]!];
    return a.pressure * (b.pressure / a.pressure) ** ((x - a.axial) / (b.axial - a.axial));
  };
}
