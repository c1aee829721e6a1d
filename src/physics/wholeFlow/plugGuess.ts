/** The flow to begin with round a plug. */

import type { FlowPoint } from '../euler/index.ts';
import type { PlugSize } from './plugLayout.ts';
import { type plugMesh, RING, ROUND_PLUG, WAKE } from './plugMesh.ts';
import type { PreparedPlug } from './plugShape.ts';

/** One-dimensional flow along ring and plug and on to the end, so that no head of a jet has to leave; gas at rest behind the base, air outside. */
export function plugGuess(
  { engine }: PreparedPlug,
  blocks: ReturnType<typeof plugMesh>,
  air: FlowPoint,
  size: PlugSize,
) {
  const { expansion, throatRadius, width } = engine;
  const { chamber } = expansion;
  const throat = narrowest(blocks[RING]!.mesh);
  return (_x: number, _y: number, block: number, i: number, j: number): FlowPoint => {
    if (block === WAKE)
      return {
        density: (0.6 * air.pressure * chamber.density) / chamber.pressure,
        u: 0,
        v: 0,
        pressure: 0.6 * air.pressure,
        share: 1,
      };
    if ((block !== RING && block !== ROUND_PLUG) || (block === ROUND_PLUG && j >= size.across)) return air;
    const { x, y, ni } = blocks[block]!.mesh;
    const low = i;
    const high = size.across * (ni + 1) + i;
    const across = Math.hypot(x[high]! - x[low]!, y[high]! - y[low]!);
    const area = across * (width === null ? Math.PI * (y[high]! + y[low]!) : 2 * width);
    const ratio = Math.max(1.0001, area / (Math.PI * throatRadius * throatRadius));
    const state = expansion.atAreaRatio(ratio, block === RING && i < throat ? 'subsonic' : 'supersonic');
    const [dx, dy] = [
      x[low + 1]! + x[high + 1]! - x[low]! - x[high]!,
      y[low + 1]! + y[high + 1]! - y[low]! - y[high]!,
    ];
    const length = Math.hypot(dx, dy);
    const pressure = block === RING ? state.pressure : Math.max(air.pressure, state.pressure);
    return {
      density: state.density * (pressure / state.pressure) ** 0.8,
      u: (state.velocity * dx) / length,
      v: (state.velocity * dy) / length,
      pressure,
      share: 1,
    };
  };
}

function narrowest({ symmetry, x, y, ni, nj }: ReturnType<typeof plugMesh>[number]['mesh']): number {
  let [place, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i <= ni; i++) {
    const high = nj * (ni + 1) + i;
    const reach = symmetry === 'round' ? y[high]! + y[i]! : 1;
    const area = Math.hypot(x[high]! - x[i]!, y[high]! - y[i]!) * reach;
    if (area < least) [place, least] = [i, area];
  }
  return place;
}
