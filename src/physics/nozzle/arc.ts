/**
 * Circular arcs of a wall of revolution about the x axis. φ is the wall angle's size, 0 where the wall is level.
 *
 *   trough (throat):   r = a − R cos φ,  a = centre's distance from the axis, R = arc radius
 *   crest (corner):    r = b + R cos φ
 *
 * One form serves both: r = centre + side · R cos φ, side −1 for a trough, +1 for a crest.
 */
export interface Arc {
  /** [m] distance of the centre from the axis */ readonly centre: number;
  /** [m] */ readonly radius: number;
  readonly side: -1 | 1;
}

/** r(φ) [m]. */
export function arcWallRadius(arc: Arc, angle: number): number {
  return arc.centre + arc.side * arc.radius * Math.cos(angle);
}

/**
 * Volume [m³] inside the arc from φ = 0 to φ, between the two cross-sections.
 *
 *   V = π ∫ r² R cos φ dφ = π [ c² R sin φ + s c R² (φ + sin φ cos φ) + R³ (sin φ − sin³φ/3) ]
 */
export function arcVolume({ centre, radius, side }: Arc, angle: number): number {
  const sine = Math.sin(angle);
  const level = centre * centre * radius * sine;
  const cross = side * centre * radius * radius * (angle + sine * Math.cos(angle));
  return Math.PI * (level + cross + radius ** 3 * (sine - sine ** 3 / 3));
}

/** Wetted area [m²] of the arc from φ = 0 to φ:  S = 2π ∫ r R dφ = 2π R [ c φ + s R sin φ ]. */
export function arcArea({ centre, radius, side }: Arc, angle: number): number {
  return 2 * Math.PI * radius * (centre * angle + side * radius * Math.sin(angle));
}

/** Volume [m³] of a frustum: π h (r1² + r1 r2 + r2²)/3. */
export function frustumVolume(r1: number, r2: number, height: number): number {
  return (Math.PI * height * (r1 * r1 + r1 * r2 + r2 * r2)) / 3;
}

/** Wetted area [m²] of a frustum: π (r1 + r2) s, s its slant height. */
export function frustumArea(r1: number, r2: number, height: number): number {
  return Math.PI * (r1 + r2) * Math.hypot(height, r2 - r1);
}
