/** Round values strictly between two ends, about so many, their distance 1, 2, 2.5 or 5 times a power of ten. */
export function roundSteps(low: number, high: number, count: number): readonly number[] {
  const rough = (high - low) / (count + 1);
  if (!(rough > 0) || !Number.isFinite(rough)) return [];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 2.5, 5].find((round) => round * power >= rough * (1 - 1e-9)) ?? 10);
  const first = Math.floor(low / step) + 1;
  const last = Math.ceil(high / step) - 1;
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
}
