/** Where the jet round a plug is to be expected. What the flow does is not read from it. */

import type { PlugRoom, PlugShape } from './plugLayout.ts';
import type { PlugEngine } from './plugShape.ts';
import { type Place, polyLine, radiusAt } from './polyLine.ts';

/** Steepest that the expected edge gets, as its slope. */
const STEEPEST = 0.6;
/** Between the edge at the lip and the mesh’s line across the ring there, at least [rad]: cells between closer ones are slivers. */
const APART = 1.1;
/** Within this part of the length in which the edge bends it turns to that from how it leaves the lip. */
const TURNS = 3;

/** As a slope. */
function steepestAtLip({ ring }: PlugShape): number {
  const { inner, outer } = ring.at(-1)!;
  return Math.tan(Math.atan2(outer[1] - inner[1], outer[0] - inner[0]) - APART);
}

export function plugRoom(
  { expansion, throatRadius, width }: PlugEngine,
  shape: PlugShape,
  ambient: number,
): PlugRoom {
  const lip = shape.ring.at(-1)!.outer;
  const plug = polyLine(shape.plug);
  const [cutX, cutR] = plug.at(plug.length);
  const { areaRatio } = expansion.atPressure(Math.max(ambient, expansion.lowestPressure));
  const throat = Math.PI * throatRadius * throatRadius;
  const areaAt = (height: number): number =>
    width === null ? Math.PI * height * height : 2 * width * height;
  const heightOf = (ratio: number): number =>
    width === null ? throatRadius * Math.sqrt(ratio) : (ratio * throat) / (2 * width);
  const full = Math.min(2.5 * lip[1], Math.max(0.3 * lip[1], 1.05 * heightOf(areaRatio)));
  const change = full - lip[1];
  const decay = Math.max(0.3 * lip[1], Math.abs(change) / STEEPEST);
  const begins = Math.min(change / decay, steepestAtLip(shape));
  const turn = decay / TURNS;
  const both = 1 / (1 / decay + 1 / turn);
  const rise = (length: number, x: number): number => length * (1 - Math.exp(-(x - lip[0]) / length));
  const plain = (x: number): number =>
    lip[1] + (change / decay) * (rise(decay, x) - rise(both, x)) + begins * rise(both, x);
  // A jet as thick as continuity asks lies on the plug at least.
  const atLeast = (x: number): number => {
    const r = x < cutX ? radiusAt(plug, Math.max(x, plug.at(0)[0])) : cutR;
    const most = 0.6 * areaAt(lip[1]);
    const inside = Math.min(areaRatio * throat, most) / (width === null ? 2 * Math.PI * r : 2 * width);
    return r + Math.min(0.5 * lip[1], 0.7 * inside);
  };
  const overX = cutX + 0.25 * (lip[1] - cutR);
  const count = 40;
  const step = (overX - lip[0]) / count;
  const edge: Place[] = [lip];
  for (let k = 1; k <= count; k++) {
    const x = lip[0] + step * k;
    const wanted = Math.max(plain(x), Math.min(1, (2 * k) / count) * atLeast(x));
    // Where it rises faster the lines across, which lean back, would cross it.
    edge.push([x, Math.min(wanted, edge[k - 1]![1] + STEEPEST * step)]);
  }
  const last = edge[count]![1];
  const settled = Math.max(full, 0.45 * cutR);
  return {
    edge,
    edgeBehind: (behind) => settled + (last - settled) * Math.exp(-behind / Math.max(decay, cutR)),
    fine: 5 * lip[1],
    long: 11 * lip[1],
    wide: Math.max(4 * lip[1], 2.2 * full),
  };
}
