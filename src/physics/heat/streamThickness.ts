/**
 * Hydraulic diameter of the stream along a wall [m]: four times its area over the edges it touches.
 *
 *   round and full     D = 2r
 *   ring, free edge    D = 2g,   g the thickness of a stream of area A = ṁ/(ρu) on that wall
 *     wall outside     A = π g (2r − g)
 *     wall inside      A = π g (2r + g)
 *     plane            A = b g
 *
 * A ring has two edges, 2π(2r ± g) long together, so that 4A/P = 2g. A free edge counts as an edge: behind the lip the
 * stream on a plug is taken as a ring whose outer edge is the air.
 */
export type StreamForm = 'full' | 'outside' | 'inside' | 'plane';

/** @param area A [m²] @param girth b of the wall across the flow [m], plane form only */
export function hydraulicDiameter(form: StreamForm, radius: number, area: number, girth: number): number {
  switch (form) {
    case 'full':
      return 2 * radius;
    case 'plane':
      return (2 * area) / girth;
    case 'outside': {
      const inner = radius * radius - area / Math.PI;
      return inner <= 0 ? 2 * radius : 2 * (radius - Math.sqrt(inner));
    }
    case 'inside':
      return 2 * (Math.sqrt(radius * radius + area / Math.PI) - radius);
  }
}
