/**
 * Channels in a wall, and the fins between them.
 *
 *   pitch  s = b/N between s₀ and 2 s₀: channels split in two, or join, as the wall widens or narrows
 *   width  w = s (1 − λ),  land λ s,   λ = land/(land + width) at the throat
 *   depth  d = d₀ max(b/b_t, b_t/b): behind a wider wall the coolant slows as the gas does, G ∝ 1/b²; behind one that is narrower than
 *          its throat the area does not shrink below that of the throat
 *   A = b (1 − λ) d,   D = 4 w d/(2w + 2d)
 *
 *   h_eff = h_c (w + 2 η d)/s,   η = tanh(m d)/(m d),   m = √(2 h_c/(k λ s))
 *
 * h_eff is heat per area of the hot wall: floor and both flanks count, the flanks as fins of the land's metal that lose nothing
 * at their tips. Source: fins of constant section, any textbook of heat transfer (e.g. F. P. Incropera, D. P. DeWitt), from memory.
 */

export interface ChannelShape {
  /** [m] at the throat */ readonly width: number;
  /** [m] metal between two channels, at the throat */ readonly land: number;
  /** [m] at the throat */ readonly depth: number;
}

export interface ChannelHere {
  readonly width: number;
  readonly depth: number;
  readonly land: number;
  /** [m²] of all together */ readonly area: number;
  /** [m] */ readonly diameter: number;
}

/** @param girth b of the coolant's side of the wall [m] @param throatGirth b_t [m] */
export function channelAt(shape: ChannelShape, girth: number, throatGirth: number): ChannelHere {
  const first = shape.width + shape.land;
  const share = shape.land / first;
  const doublings = Math.floor(Math.log2(girth / throatGirth) + 1e-9);
  const pitch = first * (girth / throatGirth / 2 ** doublings);
  const width = pitch * (1 - share);
  const depth = shape.depth * Math.max(girth / throatGirth, throatGirth / girth);
  return {
    width,
    depth,
    land: pitch * share,
    area: girth * (1 - share) * depth,
    diameter: (2 * width * depth) / (width + depth),
  };
}

/** h_eff/h_c [–]: what floor and fins take, over the area of the hot wall. */
export function finFactor(
  { width, depth, land }: ChannelHere,
  coefficient: number,
  conductivity: number,
): number {
  const along = Math.sqrt((2 * coefficient) / (conductivity * land)) * depth;
  const efficiency = along < 1e-6 ? 1 : Math.tanh(along) / along;
  return (width + 2 * efficiency * depth) / (width + land);
}
