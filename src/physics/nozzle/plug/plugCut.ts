import type { PlugWallPoint } from './geometry.ts';

/** Points put between the wall's last ray and the tip. */
const TOWARDS_TIP = 8;

/**
 * The wall with points between its last ray and the tip: where the rings close on the axis rays are far apart. A cubic with
 * the flow's direction at both ends, ν even along it.
 */
export function towardsTip(wall: readonly PlugWallPoint[]): readonly PlugWallPoint[] {
  const tip = wall[wall.length - 1]!;
  const last = wall[wall.length - 2]!;
  const chord = Math.hypot(tip.axial - last.axial, tip.radius - last.radius);
  const between = Array.from({ length: TOWARDS_TIP }, (_, i): PlugWallPoint => {
    const t = (i + 1) / (TOWARDS_TIP + 1);
    const [axial, dx] = hermite(last.axial, Math.cos(last.angle), tip.axial, Math.cos(tip.angle), t, chord);
    const [radius, dr] = hermite(
      last.radius,
      Math.sin(last.angle),
      tip.radius,
      Math.sin(tip.angle),
      t,
      chord,
    );
    return { axial, radius, angle: Math.atan2(dr, dx), nu: last.nu + t * (tip.nu - last.nu) };
  });
  return [...wall.slice(0, -1), ...between, tip];
}

/** Value and slope of the cubic from a to b with slopes times the chord's length. */
function hermite(a: number, da: number, b: number, db: number, t: number, chord: number): [number, number] {
  const d = b - a;
  // At most three times the chord's own slope: then the cubic has no turning point between its ends.
  const most = 3 * Math.abs(d);
  const ga = Math.min(Math.max(da * chord, -most), most);
  const gb = Math.min(Math.max(db * chord, -most), most);
  const c2 = 3 * d - 2 * ga - gb;
  const c3 = ga + gb - 2 * d;
  return [a + t * (ga + t * (c2 + t * c3)), ga + t * (2 * c2 + 3 * t * c3)];
}

/** The wall up to the cut, by the share of the length from the foot of the lip's first ray to the tip. */
export function cutWall(
  whole: readonly PlugWallPoint[],
  foot: number,
  kept: number,
): { readonly wall: readonly PlugWallPoint[]; readonly cut: { axial: number; radius: number } } {
  const tip = whole[whole.length - 1]!;
  if (kept >= 1) return { wall: whole, cut: { axial: tip.axial, radius: 0 } };
  const start = whole[foot]!;
  const axial = start.axial + kept * (tip.axial - start.axial);
  let i = foot + 1;
  while (whole[i]!.axial < axial) i++;
  const a = whole[i - 1]!;
  const b = whole[i]!;
  const t = (axial - a.axial) / (b.axial - a.axial);
  const mix = (p: number, q: number): number => p + t * (q - p);
  const end: PlugWallPoint = {
    axial,
    radius: mix(a.radius, b.radius),
    angle: mix(a.angle, b.angle),
    nu: mix(a.nu, b.nu),
  };
  const before = whole.slice(0, i);
  if (t < 1e-9 && before.length > 1) return { wall: before, cut: { axial: a.axial, radius: a.radius } };
  return { wall: [...before, end], cut: { axial, radius: end.radius } };
}
