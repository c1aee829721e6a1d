import type { WallMaterialRecord } from './coolantRecords.ts';

/** Conductivity [W/(m K)] at a temperature [K]: straight between the rows, the end rows' value beyond them. */
export function wallConductivity({ conductivity }: WallMaterialRecord, temperature: number): number {
  const next = conductivity.findIndex(([at]) => at >= temperature);
  if (next === 0) return conductivity[0]![1];
  if (next < 0) return conductivity.at(-1)![1];
  const [from, a] = conductivity[next - 1]!;
  const [to, b] = conductivity[next]!;
  return a + ((b - a) * (temperature - from)) / (to - from);
}

/** The span of the rows that a wall between two temperatures [K] leaves; null: it leaves none. */
export function beyondRows(
  { conductivity }: WallMaterialRecord,
  coldest: number,
  hottest: number,
): { readonly from: number; readonly to: number } | null {
  const [from, to] = [conductivity[0]![0], conductivity.at(-1)![0]];
  return coldest < from || hottest > to ? { from, to } : null;
}
