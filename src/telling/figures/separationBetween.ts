/** Separation between two known outside pressures. */

import type { PlaceOnWall, RowSeparation } from '../../answer/model.ts';

interface Span {
  readonly low: number;
  readonly high: number;
}

type Between = (low: number, high: number) => number;

/**
 * Places, spans and flows evenly between the neighbours; name, counts and words of `above`, the denser air, which is the more
 * careful. Where only one side has any, that one.
 */
export function separationBetween(
  below: RowSeparation | undefined,
  above: RowSeparation | undefined,
  between: Between,
): RowSeparation | undefined {
  if (below === undefined || above === undefined) return above ?? below;
  const thrust = spanBetween(below.thrust, above.thrust, between);
  const specificImpulse = spanBetween(below.specificImpulse, above.specificImpulse, between);
  return {
    case: above.case,
    place: placeBetween(below.place, above.place, between),
    earliest: placeBetween(below.earliest, above.earliest, between),
    latest: placeBetween(below.latest, above.latest, between),
    counted: above.counted,
    lettingGo: above.lettingGo,
    ...(thrust && { thrust }),
    ...(specificImpulse && { specificImpulse }),
    massFlow: between(below.massFlow, above.massFlow),
    ...(above.massFlows && { massFlows: above.massFlows }),
    ...(above.note !== undefined && { note: above.note }),
    ...(above.sideLoads !== undefined && { sideLoads: above.sideLoads }),
  };
}

function placeBetween(a: PlaceOnWall, b: PlaceOnWall, between: Between): PlaceOnWall {
  return {
    axial: between(a.axial, b.axial),
    areaRatio: between(a.areaRatio, b.areaRatio),
    ...(a.mach !== undefined && b.mach !== undefined && { mach: between(a.mach, b.mach) }),
    pressure: between(a.pressure, b.pressure),
  };
}

function spanBetween(a: Span | undefined, b: Span | undefined, between: Between): Span | undefined {
  return a && b ? { low: between(a.low, b.low), high: between(a.high, b.high) } : undefined;
}
