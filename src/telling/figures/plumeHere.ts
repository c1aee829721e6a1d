/** The edge of an engine's jet at any ambient pressure, from the plumes of its answer. */

import type { EngineAnswer } from '../../answer/model.ts';
import type { BoundaryPoint, PlumeFigures } from '../../answer/plumeModel.ts';

/** Points of a stretch between two plumes: enough for a smooth line. */
const POINTS = 24;

/** The edge from the lip on; empty where the answer has none there. */
export function jetEdge(engine: EngineAnswer, ambient: number): readonly BoundaryPoint[] {
  const { plume } = engine;
  const rows = [...plume.altitudes, ...plume.ambients, plume.seaLevel, plume.vacuum].sort(
    (a, b) => b.ambientPressure - a.ambientPressure,
  );
  const exact = rows.find((row) => Math.abs(row.ambientPressure - ambient) <= 1e-9 * ambient);
  if (exact) return exact.boundary;
  const next = rows.findIndex((row) => row.ambientPressure < ambient);
  const above = rows[next - 1];
  const below = rows[next];
  return above && below ? between(above, below, ambient) : [];
}

/** Linear in the logarithm of ambient pressure, computed part to computed part, sketch to sketch. */
function between(above: PlumeFigures, below: PlumeFigures, ambient: number): readonly BoundaryPoint[] {
  if (above.boundary.length === 0 || below.boundary.length === 0) return [];
  // Next to vacuum there is no logarithm: the nearer row in the air stands.
  if (below.ambientPressure === 0) return above.boundary;
  const t =
    Math.log(ambient / above.ambientPressure) / Math.log(below.ambientPressure / above.ambientPressure);
  return [false, true].flatMap((sketch) => {
    const from = evenly(stretch(above.boundary, sketch));
    const to = evenly(stretch(below.boundary, sketch));
    return from.map((a, i): BoundaryPoint => {
      const b = to[i] ?? a;
      return {
        axial: a.axial + t * (b.axial - a.axial),
        radius: a.radius + t * (b.radius - a.radius),
        sketch,
      };
    });
  });
}

/** The computed part, or the sketch with the point from which it goes on. */
function stretch(edge: readonly BoundaryPoint[], sketch: boolean): readonly BoundaryPoint[] {
  const first = edge.findIndex((point) => point.sketch);
  const end = first < 0 ? edge.length : first;
  return sketch ? edge.slice(Math.max(end - 1, 0)) : edge.slice(0, end);
}

/** POINTS points at equal shares of the length of a line. */
function evenly(line: readonly BoundaryPoint[]): readonly BoundaryPoint[] {
  const [first] = line;
  if (first === undefined) return [];
  const lengths = [0];
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1] as BoundaryPoint;
    const b = line[i] as BoundaryPoint;
    lengths.push((lengths[i - 1] as number) + Math.hypot(b.axial - a.axial, b.radius - a.radius));
  }
  const whole = lengths[lengths.length - 1] as number;
  if (whole === 0) return Array.from({ length: POINTS }, () => first);
  let i = 1;
  return Array.from({ length: POINTS }, (_, k) => {
    const at = (whole * k) / (POINTS - 1);
    while (i < line.length - 1 && (lengths[i] as number) < at) i++;
    const a = line[i - 1] as BoundaryPoint;
    const b = line[i] as BoundaryPoint;
    const span = (lengths[i] as number) - (lengths[i - 1] as number);
    const share = span === 0 ? 0 : Math.min(1, (at - (lengths[i - 1] as number)) / span);
    return {
      axial: a.axial + share * (b.axial - a.axial),
      radius: a.radius + share * (b.radius - a.radius),
      sketch: b.sketch,
    };
  });
}
