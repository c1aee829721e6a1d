/**
 * Whether the coolant can take what the gas gives, and where that is tightest.
 *
 *   heat margin   heat that the coolant can take within its limits / heat that arrives, the whole engine
 *   wall margin   at the tightest place: heat that can pass with neither face hotter than it may be / heat that then arrives
 *   margin        the lesser of the two
 *
 * Where there are two walls the coolant is shared out in proportion to the heat that each would take at its limit.
 */

import { ProblemError } from '../../numerics/problem.ts';
import {
  type CoolantMarch,
  type Correlation,
  coolantMarch,
  depthForDrop,
  type GasModel,
  type HotPoint,
  type HotSide,
  heatOf,
  type Jacket,
  type MarchPoint,
  radiatingTemperature,
  underFilm,
  type WallMaterialRecord,
} from '../../physics/heat/index.ts';
import type { CoolantSupply } from './coolantSupply.ts';

/** All that a march needs, so that it can be run again with some of it changed. */
export interface CoolingSetup {
  readonly sides: readonly HotSide[];
  readonly supply: CoolantSupply;
  /** Film: null where there is none. */ readonly film: CoolantSupply | null;
  readonly material: WallMaterialRecord;
  readonly thickness: number;
  readonly width: number;
  readonly land: number;
  readonly correlation: Correlation;
  /** [Pa] */ readonly inletPressure: number;
  readonly by: { readonly drop: number } | { readonly depth: number };
  /** [Pa] */ readonly chamberPressure: number;
  /** [m] radius beyond which the wall only radiates; null: nowhere */ readonly skirtRadius: number | null;
  readonly skirtMaterial: WallMaterialRecord;
}

export interface SkirtPoint {
  readonly axial: number;
  readonly radius: number;
  /** [K] */ readonly temperature: number;
}

export interface CooledSide {
  readonly name: string;
  readonly points: readonly HotPoint[];
  readonly march: CoolantMarch;
  /** [m] at the throat */ readonly depth: number;
  readonly massFlow: number;
  readonly skirt: readonly SkirtPoint[];
}

export interface EngineCooling {
  readonly setup: CoolingSetup;
  readonly sides: readonly CooledSide[];
  readonly heat: number;
  readonly capacity: number;
  readonly heatMargin: number;
  readonly wallMargin: number;
  readonly margin: number;
  readonly tightest: { readonly side: CooledSide; readonly point: MarchPoint };
  readonly hottest: { readonly side: CooledSide; readonly point: MarchPoint };
  /** [K] of the hottest place of a skirt; null where there is none */ readonly skirtTemperature:
    | number
    | null;
}

/** [m] of channels and lands as milled (common practice, no source). */
const ROUGHNESS = 5e-6;

/** @throws ProblemError where the coolant leaves its table or its channels cannot carry it */
export function engineCooling(setup: CoolingSetup, model: GasModel = 'bartz'): EngineCooling {
  const { supply, material } = setup;
  const parts = setup.sides.map((side) => partOf(setup, side));
  const wanted = parts.map(({ cooled, side }) =>
    Math.max(heatOf({ ...side, points: cooled }, material.limit.temperature, model).total, 1),
  );
  const all = wanted.reduce((sum, heat) => sum + heat, 0);
  const sides = parts.map((part, i) => cooledSide(setup, part, (supply.massFlow * wanted[i]!) / all, model));
  const heat = sides.reduce((sum, { march }) => sum + march.heat, 0);
  const capacity = sides.reduce((sum, { march }) => sum + march.capacity, 0);
  const places = sides.flatMap((side) => side.march.points.map((point) => ({ side, point })));
  const marginAt = ({ point }: (typeof places)[number]): number => point.margin ?? Infinity;
  const tightest = places.reduce((a, b) => (marginAt(b) < marginAt(a) ? b : a));
  const hottest = places.reduce((a, b) => (b.point.wallHot > a.point.wallHot ? b : a));
  if (!(heat > 0) || tightest.point.margin === null) throw nothingToCool();
  const heatMargin = capacity / heat;
  const wallMargin = tightest.point.margin;
  const skirts = sides.flatMap(({ skirt }) => skirt.map(({ temperature }) => temperature));
  return {
    setup,
    sides,
    heat,
    capacity,
    heatMargin,
    wallMargin,
    margin: Math.min(heatMargin, wallMargin),
    tightest,
    hottest,
    skirtTemperature: skirts.length === 0 ? null : Math.max(...skirts),
  };
}

interface Part {
  readonly side: HotSide;
  /** Points with channels, and those without. */ readonly cooled: readonly HotPoint[];
  readonly bare: readonly HotPoint[];
}

function partOf({ film, chamberPressure, material, skirtRadius, sides }: CoolingSetup, side: HotSide): Part {
  const girth = (each: HotSide): number => each.points[0]!.girth;
  const points =
    film === null
      ? side.points
      : underFilm(
          side.points,
          {
            fluid: film.fluid,
            massFlow: (film.massFlow * girth(side)) / sides.reduce((sum, each) => sum + girth(each), 0),
            temperature: film.temperature,
            pressure: chamberPressure,
          },
          material.limit.temperature,
        );
  const end =
    skirtRadius === null ? -1 : points.findIndex(({ radius }, i) => i > side.throat && radius >= skirtRadius);
  return end < 0
    ? { side, cooled: points, bare: [] }
    : { side, cooled: points.slice(0, end + 1), bare: points.slice(end) };
}

function cooledSide(setup: CoolingSetup, part: Part, massFlow: number, model: GasModel): CooledSide {
  const { supply, material, thickness, width, land, correlation, inletPressure, by } = setup;
  const { side, cooled, bare } = part;
  const jacket: Omit<Jacket, 'channels'> = {
    metal: { material, thickness },
    throatGirth: side.points[side.throat]!.girth,
    correlation,
    limits: supply.row,
    roughness: ROUGHNESS,
  };
  const flow = {
    fluid: supply.fluid,
    massFlow,
    pressure: inletPressure,
    temperature: supply.temperature,
  };
  const depth = 'depth' in by ? by.depth : depthForDrop(cooled, jacket, { width, land }, flow, by.drop);
  const march = coolantMarch(cooled, { ...jacket, channels: { width, land, depth } }, flow, model);
  return {
    name: side.name,
    points: cooled,
    march,
    depth,
    massFlow,
    skirt: bare.map((point) => ({
      axial: point.axial,
      radius: point.radius,
      temperature: radiatingTemperature(point, setup.skirtMaterial.emissivity),
    })),
  };
}

function nothingToCool(): ProblemError {
  return new ProblemError({
    code: 'nothing-to-cool',
    what: 'The gas is colder than the wall may be: there is nothing to cool.',
    mend: 'Ask an engine with hotter gas, or delete its cooling.',
    where: 'cooling',
  });
}
