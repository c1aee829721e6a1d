/** Colour difference CIEDE2000 and what it needs, to hold the look to its own promises. */

export type Lab = readonly [lightness: number, a: number, b: number];

export function rgbOf(hex: string): readonly [number, number, number] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255) as unknown as [
    number,
    number,
    number,
  ];
}

const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

/** WCAG 2 relative luminance and contrast. */
export function luminance(hex: string): number {
  const [r, g, b] = rgbOf(hex).map(linear) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)].sort((p, q) => q - p) as [number, number];
  return (a + 0.05) / (b + 0.05);
}

/** CIE Lab of an sRGB colour, D65 (IEC 61966-2-1; from memory). */
export function labOf(hex: string): Lab {
  const [r, g, b] = rgbOf(hex).map(linear) as [number, number, number];
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27) * (t / 116) + 16 / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** G. Sharma, W. Wu, E. Dalal, Color Research & Application 30 (2005), 21 (from memory, closed by its test pairs). */
export function ciede2000([L1, a1, b1]: Lab, [L2, a2, b2]: Lab): number {
  const rad = Math.PI / 180;
  const seventh = (c: number): number => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));
  const meanC = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const G = 0.5 * (1 - seventh(meanC));
  const [p1, p2] = [a1 * (1 + G), a2 * (1 + G)];
  const [C1, C2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)];
  const hue = (a: number, b: number): number =>
    a === 0 && b === 0 ? 0 : (Math.atan2(b, a) / rad + 360) % 360;
  const [h1, h2] = [hue(p1, b1), hue(p2, b2)];
  let dh = C1 * C2 === 0 ? 0 : h2 - h1;
  if (dh > 180) dh -= 360;
  if (dh < -180) dh += 360;
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin((dh / 2) * rad);
  const L = (L1 + L2) / 2;
  const C = (C1 + C2) / 2;
  let h = h1 + h2;
  if (C1 * C2 !== 0) h = Math.abs(h1 - h2) <= 180 ? h / 2 : (h + (h < 360 ? 360 : -360)) / 2;
  const T =
    1 -
    0.17 * Math.cos((h - 30) * rad) +
    0.24 * Math.cos(2 * h * rad) +
    0.32 * Math.cos((3 * h + 6) * rad) -
    0.2 * Math.cos((4 * h - 63) * rad);
  const SL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * T;
  const RT = -2 * seventh(C) * Math.sin(60 * Math.exp(-(((h - 275) / 25) ** 2)) * rad);
  const [l, c, k] = [(L2 - L1) / SL, (C2 - C1) / SC, dH / SH];
  return Math.sqrt(l * l + c * c + k * k + RT * c * k);
}
