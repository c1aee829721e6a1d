/** The layer of slowed gas along the walls of an engine, from injector to lip. */

import { ductAreaRatios } from '../physics/nozzle/index.ts';
import {
  type BoundaryLayer,
  boundaryLayer,
  type LayerGas,
  type LayerStation,
} from '../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel, PlugContour } from '../physics/nozzle/model.ts';

export interface EngineLayer {
  /** [N] thrust that the layer takes at an unchanged mass flow: momentum missing where it ends, along the axis */
  readonly thrustLost: number;
  /** [m] of the plug at its cut, else at the lip */ readonly momentumThickness: number;
  /** Mass flow over that without the layer [–]. */ readonly discharge: number;
  /** [m]; of a plug's throat, the mean of its two sides */ readonly throatDisplacement: number;
  /** [W] */ readonly heatFlow: number;
}

/** One wall, and which of its stations lies in the throat. */
export interface WallSide {
  readonly stations: readonly LayerStation[];
  readonly throat: number;
}

/**
 * The layers along all walls, and what they cost.
 *
 *   F_lost = Σ ρ u² θ b cos α at the end of each wall,      ṁ/ṁ₀ = 1 − Σ δ*_t b_t/A_t
 *
 * For walls that stay as they are while the layer narrows the flow: at unchanged mass flow the displacement changes the
 * stream thrust of the core by p dA, which the pressure in the layer gives back, so that the momentum thickness alone remains.
 * The pressure along the wall stays that of the flow without a layer.
 */
export function engineLayer(contour: Contour, nozzle: NozzleModel, gas: LayerGas): EngineLayer {
  const sides = wallSides(contour, nozzle, gas);
  const throatArea = Math.PI * contour.throatRadius ** 2;
  let thrustLost = 0;
  let blocked = 0;
  let girth = 0;
  let heatFlow = 0;
  let momentumThickness = 0;
  for (const { stations, throat } of sides) {
    const layer = boundaryLayer(stations, gas);
    const width = girthOf(stations[throat]!);
    thrustLost += layer.momentumLost * Math.cos(lastAngle(stations));
    blocked += layer.points[throat]!.displacementThickness * width;
    girth += width;
    heatFlow += layer.heatFlow;
    momentumThickness = endOf(layer).momentumThickness;
  }
  return {
    thrustLost,
    momentumThickness,
    throatDisplacement: blocked / girth,
    discharge: 1 - blocked / throatArea,
    heatFlow,
  };
}

/** The walls along which the gas runs; of a plug engine the plug last. */
export function wallSides(contour: Contour, nozzle: NozzleModel, gas: LayerGas): readonly WallSide[] {
  const { plug } = contour;
  if (plug !== undefined) return plugSides({ ...contour, plug }, nozzle, gas);
  return [roundSide(contour, nozzle, gas)];
}

/**
 * Pressure on the wall: one-dimensional to the throat, behind it the field's where there is one. The throat of an
 * expansion–deflection nozzle is a ring round the stem of its centre body, whose own layer is left out.
 */
function roundSide(contour: Contour, nozzle: NozzleModel, gas: LayerGas): WallSide {
  const { throatRadius } = contour;
  const { throat, lowestPressure } = nozzle.expansion;
  const stem = contour.bodies?.find(({ name }) => name === 'pintle')?.outline[0]?.radius ?? 0;
  const field = nozzle.wallStations();
  const from = field?.[0];
  const start = { axial: (from?.axial ?? 0) * throatRadius, radius: (from?.radius ?? 1) * throatRadius };
  const ratio = (radius: number): number => Math.max((radius ** 2 - stem ** 2) / throatRadius ** 2, 1);
  const ahead = contour.wall
    .filter(({ axial, part }) => axial < start.axial && part !== 'nozzle')
    .map(({ axial, radius }) => ({ axial, radius, pressure: gas.subsonicPressure(ratio(radius)) }));
  const behind: readonly LayerStation[] =
    field === null
      ? contour.wall
          .filter(({ axial }) => axial > 0)
          .map(({ axial, radius }) => ({ axial, radius, pressure: gas.supersonicPressure(ratio(radius)) }))
      : field.slice(1).map(({ axial, radius, pressure }) => ({
          axial: axial * throatRadius,
          radius: radius * throatRadius,
          pressure: Math.max(pressure, lowestPressure),
        }));
  return {
    stations: [...ahead, { ...start, pressure: throat.pressure }, ...behind],
    throat: ahead.length,
  };
}

/** A whole plug ends in a point, where no layer is thin: it is left at this share of the lip's radius, 0.04 % of the area. */
const TIP = 0.02;

/** The outer side first, chamber and cowl, then the plug. */
function plugSides(
  contour: Contour & { readonly plug: PlugContour },
  nozzle: NozzleModel,
  gas: LayerGas,
): readonly WallSide[] {
  const { plug } = contour;
  const onPlug = nozzle.wallStations() ?? [];
  const onCowl = nozzle.cowlStations?.() ?? [];
  const ducts = plug.wall.length - onPlug.length;
  const inDuct = ductAreaRatios(contour, ducts).map((ratio) => gas.subsonicPressure(Math.max(ratio, 1)));
  const girth = plug.width === undefined ? undefined : 2 * plug.width;
  const side = (
    wall: Contour['wall'],
    behind: readonly { readonly pressure: number }[],
    least: number,
  ): WallSide => ({
    stations: wall
      .slice(0, ducts + behind.length)
      .map(({ axial, radius }, i) => ({
        axial,
        radius,
        pressure: inDuct[i] ?? behind[i - ducts]!.pressure,
        ...(girth !== undefined && { girth }),
      }))
      .filter(({ radius }) => radius > least),
    throat: ducts - 1,
  });
  return [
    side(contour.wall, onCowl, 0),
    side(plug.wall, onPlug, girth === undefined ? TIP * plug.lipRadius : -Infinity),
  ];
}

function endOf({ points }: BoundaryLayer) {
  return points[points.length - 1]!;
}

function girthOf({ girth, radius }: LayerStation): number {
  return girth ?? 2 * Math.PI * radius;
}

function lastAngle(stations: readonly LayerStation[]): number {
  const lip = stations[stations.length - 1]!;
  const before = stations[stations.length - 2]!;
  return Math.atan2(lip.radius - before.radius, lip.axial - before.axial);
}
