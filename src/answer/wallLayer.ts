/** The layer of slowed gas along the walls of an engine, from injector to lip. */

import {
  type BoundaryLayer,
  boundaryLayer,
  type LayerGas,
  type LayerStation,
} from '../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel, PlugContour } from '../physics/nozzle/model.ts';
import type { WallPoint } from './model.ts';
import { wallOf } from './wallOf.ts';

export interface EngineLayer {
  /** [N] thrust that the layer takes at an unchanged mass flow: momentum missing where it ends, along the axis */
  readonly thrustLost: number;
  /** [m] of the plug at its cut, else at the lip */ readonly momentumThickness: number;
  /** Mass flow over that without the layer [–]. */ readonly discharge: number;
  /** [m]; of a plug's throat, the mean of its two sides */ readonly throatDisplacement: number;
  /** [W] */ readonly heatFlow: number;
}

/** One wall, and which of its stations lies in the throat. */
interface Side {
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
  const sides = sidesOf(contour, nozzle, gas);
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

function sidesOf(contour: Contour, nozzle: NozzleModel, gas: LayerGas): readonly Side[] {
  if (contour.plug !== undefined) return plugSides(contour, contour.plug, nozzle);
  // Its throat is a ring round the centre body, so that the wall's radius does not tell the area.
  if (nozzle.spec.kind === 'expansionDeflection') return [deflectionSide(contour, nozzle)];
  return [roundSide(contour, nozzle, gas)];
}

/** The outer wall alone: of the centre body no pressure is told. */
function deflectionSide(contour: Contour, nozzle: NozzleModel): Side {
  const wall = wallOf(contour, nozzle);
  const supersonic = wall.findIndex(({ pressure }) => pressure <= nozzle.expansion.throat.pressure);
  return {
    stations: wall.map(({ axial, radius, pressure }) => ({ axial, radius, pressure })),
    throat: Math.max(supersonic, 0),
  };
}

/** Pressure on the wall: one-dimensional to the throat, behind it the field's where there is one. */
function roundSide(contour: Contour, nozzle: NozzleModel, gas: LayerGas): Side {
  const { throatRadius } = contour;
  const { throat, lowestPressure } = nozzle.expansion;
  const ahead = contour.wall
    .filter(({ axial }) => axial < 0)
    .map(
      ({ axial, radius }): LayerStation => ({
        axial,
        radius,
        pressure: gas.subsonicPressure((radius / throatRadius) ** 2),
      }),
    );
  const sonic = { axial: 0, radius: throatRadius, pressure: throat.pressure };
  const field = nozzle.wallStations();
  const behind: readonly LayerStation[] =
    field === null
      ? wallOf(contour, nozzle)
      : field.map(({ axial, radius, pressure }) => ({
          axial: axial * throatRadius,
          radius: radius * throatRadius,
          pressure: Math.max(pressure, lowestPressure),
        }));
  return {
    stations: [
      ...ahead,
      sonic,
      ...behind
        .filter(({ axial }) => axial > 0)
        .map(({ axial, radius, pressure }) => ({ axial, radius, pressure })),
    ],
    throat: ahead.length,
  };
}

/** A whole plug ends in a point, where no layer is thin: it is left at this share of the lip's radius, 0.04 % of the area. */
const TIP = 0.02;

/** The plug first, then the outer side: chamber and cowl. */
function plugSides(contour: Contour, plug: PlugContour, nozzle: NozzleModel): readonly Side[] {
  const onPlug = wallOf(contour, nozzle);
  const ducts = plug.wall.length - (nozzle.wallStations() ?? []).length;
  const girth = plug.width === undefined ? undefined : 2 * plug.width;
  const place = ({ axial, radius }: { axial: number; radius: number }, pressure: number): LayerStation => ({
    axial,
    radius,
    pressure,
    ...(girth !== undefined && { girth }),
  });
  const duct = onPlug.slice(0, ducts);
  const cowl = nozzle.cowlStations?.() ?? [];
  const outer = contour.wall.map((point, i) =>
    place(point, pressureOutside(i, duct, cowl, nozzle.expansion.throat.pressure)),
  );
  return [
    { stations: outer, throat: ducts - 1 },
    {
      stations: onPlug
        .filter(({ radius }) => girth !== undefined || radius > TIP * plug.lipRadius)
        .map((point) => place(point, point.pressure)),
      throat: ducts - 1,
    },
  ];
}

function pressureOutside(
  i: number,
  duct: readonly WallPoint[],
  cowl: readonly { readonly pressure: number }[],
  throatPressure: number,
): number {
  return i < duct.length ? duct[i]!.pressure : (cowl[i - duct.length]?.pressure ?? throatPressure);
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
