import { ProblemError } from '../../../numerics/problem.ts';
import { requireAmbientPressure } from '../../air/ambient.ts';
import { tableStateAt } from '../../flow/gasTable.ts';
import { NODE } from '../../flow/points.ts';
import { lossyTable } from '../../flow/streamtubes/index.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import type { FieldBalance, NozzleLosses, NozzleModel, ThrustAt } from '../model.ts';
import { judgeFlow } from '../separation/lipVerdict.ts';
import { unchokedReason } from '../separation/thrustOffDesign.ts';
import { thrustCoefficientOf } from '../thrustCoefficient.ts';
import { type BasePressure, basePressure } from './basePressure.ts';
import { plugDesign } from './design.ts';
import { baseArea, cutRay, designForces, type PlugSurface } from './designForces.ts';
import type { PlugGeometry, PlugWallPressure, PlugWallPressureModel } from './geometry.ts';
import { type ModuleLoss, modulesOf } from './modules.ts';
import { plugOffDesign } from './offDesign.ts';
import { plugContour } from './plugContour.ts';
import { cowlStatesOf, offDesignForces, restCoefficient, stationsOf, wallStatesOf } from './plugStates.ts';
import { type PlugThrustRun, plugThrust, type Surroundings } from './plugThrust.ts';
import { wakeOf } from './plugWake.ts';
import { feltAmbient } from './slipstream.ts';
import type { PlugSpec } from './spec.ts';

/** A plug nozzle with all that its drawing and its answer need. */
export interface PlugNozzle extends NozzleModel {
  readonly spec: PlugSpec;
  readonly geometry: PlugGeometry;
  /** [Pa] ambient up to which the flow on the plug is the design's. */ readonly frozenBelow: number;
  /** Base over throat area [–]. */ readonly baseArea: number;
  /** Mach number at the lip before its fan [–]. */ readonly innerMach: number;
  /** Published loss of modules, and the gap between them; null where the throat goes all round. */
  readonly modules: (ModuleLoss & { readonly gap: number }) | null;
  /** Base pressure at an ambient pressure; null where nothing is cut off. */
  base(ambientPressure: number): BasePressure | null;
  /** [Pa] ambient at which the wake closes; null where nothing is cut off. */ readonly wakeClosesAt:
    | number
    | null;
  /** Flow on the plug and its free boundary at an ambient pressure. */
  flowAt(ambientPressure: number): PlugWallPressure;
}

/** The model as that of a plug; null where it is of another kind. */
export function plugOf(nozzle: NozzleModel): PlugNozzle | null {
  return 'flowAt' in nozzle ? (nozzle as PlugNozzle) : null;
}

/** Cells of the second isentrope's table. */
const LOSSY_CELLS = 96;
/** Ambient pressures whose off-design flow is kept: as many as a curve over altitude asks for, twice. */
const KEPT_FLOWS = 160;

/**
 * Plug, annular or linear, on a given gas.
 *
 * @throws ProblemError where no such plug can be designed
 */
export function plugNozzle(spec: PlugSpec, expansion: Expansion, losses: NozzleLosses): PlugNozzle {
  requireAreaRatio(spec.areaRatio);
  requireKept(spec.kept);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  const geometry = plugDesign(spec, expansion, exit);
  const p0 = expansion.chamber.pressure;
  const surfaces = designForces(geometry, p0);
  const ray = cutRay(geometry);
  // The table gives the exit's own pressure back to 1e-9 or so; that must still count as untouched.
  const frozenBelow = tableStateAt(geometry.table, ray.nuAtLip).pressure * (1 + 1e-6);
  const base = baseArea(geometry);
  const wake = base > 0 ? wakeOf(geometry, expansion, mostBasePressure()) : null;
  const modules = spec.modules === undefined ? null : modulesOf(spec.modules, geometry);
  const moduleShare = modules === null || losses === 'none' ? 0 : modules.value;
  const lip = tableStateAt(geometry.table, geometry.nuLip);
  const designWall = wallStatesOf(geometry);
  const flows = new Map<number, PlugWallPressure>();
  // Prepared when ambient pressure first reaches the flow on the plug, then kept.
  let offDesign: PlugWallPressureModel | null = null;

  const flowAt = (asked: number): PlugWallPressure => {
    // Above the design pressure ratio one flow serves for all.
    const ambientPressure = asked <= exit.pressure * (1 + 1e-6) ? 0 : asked;
    const kept = flows.get(ambientPressure);
    if (kept !== undefined) return kept;
    offDesign ??= plugOffDesign(geometry, lossyTable(expansion, lowestOf(geometry), LOSSY_CELLS));
    const found = offDesign(geometry, ambientPressure);
    if (flows.size >= KEPT_FLOWS) flows.delete(flows.keys().next().value!);
    flows.set(ambientPressure, found);
    return found;
  };
  const baseAt = (ambientPressure: number): BasePressure | null =>
    wake === null ? null : basePressure(wake, ambientPressure);
  const vacuum = sumOf(surfaces) + (wake === null ? 0 : (base * wake.pressure) / p0);
  const run: PlugThrustRun = {
    stagnationPressure: p0,
    areaRatio: spec.areaRatio,
    baseArea: base,
    moduleLoss: moduleShare * vacuum,
  };
  const frozenStream = (felt: number): number =>
    (geometry.areaScale * ray.axialForce - (spec.areaRatio - base) * felt) / p0;
  const frozenThrust = (at: Surroundings) =>
    plugThrust(run, at, surfaces, baseAt(at.felt), frozenStream(at.felt));
  const inVacuum = frozenThrust({ ambient: 0, felt: 0 });
  const closure = inVacuum.thrustCoefficient! / inVacuum.boundary! - 1;

  return {
    spec,
    expansion,
    exit,
    geometry,
    frozenBelow,
    baseArea: base,
    innerMach: lip.mach,
    modules,
    base: baseAt,
    wakeClosesAt: wake?.pressure ?? null,
    flowAt,
    divergenceFactor: 1,
    dischargeCoefficient: 1,
    matchedAmbient: exit.pressure,
    wallStations: () => stationsOf(geometry, designWall),
    cowlStations: () => stationsOf(geometry, cowlStatesOf(geometry)),
    balance: (): FieldBalance => ({
      mass: massClosure(geometry, expansion),
      momentum: closure,
      energy: 0,
      nodes: nodesOf(geometry),
      note: null,
    }),
    leaving(ambientPressure) {
      requireAmbientPressure(ambientPressure);
      return {
        kind: 'line',
        nodes: geometry.lipRay,
        isCharacteristic: true,
        endsAtWall: true,
        symmetry: geometry.symmetry,
        edge: ambientPressure > exit.pressure ? flowAt(ambientPressure).boundary : [],
      };
    },
    omitted: omittedBy(spec),
    contour: (throatRadius, chamberShape) => plugContour(geometry, throatRadius, chamberShape),
    models: ['nozzle-plug', 'flow-characteristics', 'nozzle-thrust', 'nozzle-separation'],
    at(ambientPressure: number, flightMach = 0): ThrustAt {
      requireAmbientPressure(ambientPressure);
      const at = { ambient: ambientPressure, felt: feltAmbient(ambientPressure, flightMach).pressure };
      const flow = judgeFlow(expansion, { pressure: lip.pressure, mach: lip.mach, from: 'field' }, at.felt);
      const common = {
        ambientPressure,
        thrustCoefficientIfFull: frozenThrust(at).thrustCoefficient!,
        flow,
        exit: exitAt(at.felt),
      };
      const none = (absent: string): ThrustAt => ({
        ...common,
        thrustCoefficient: null,
        absent,
        parts: [],
        partsAbsent: absent,
        boundary: null,
      });
      if (at.felt > expansion.throat.pressure) return none(unchokedReason(at.felt));
      const computed = { ...common, absent: null, partsAbsent: null };
      if (at.felt <= frozenBelow) return { ...computed, ...frozenThrust(at) };
      const found = flowAt(at.felt);
      if (found.notComputed !== null) return none(notComputedReason(at.felt));
      const onSurfaces = offDesignForces(surfaces, geometry, found, p0);
      // Without a stream of its own the flow up to the cut is still the design's.
      const stream =
        found.streamCoefficient === null
          ? frozenStream(at.felt)
          : found.streamCoefficient + restCoefficient(geometry, found, at.felt);
      return { ...computed, ...plugThrust(run, at, onSurfaces, baseAt(at.felt), stream) };
    },
  };

  /** [Pa] with which the engine would push like the ideal nozzle in vacuum. */
  function mostBasePressure(): number {
    const ideal = thrustCoefficientOf(expansion, exit, spec.areaRatio, 1, 0);
    return ((ideal - sumOf(surfaces)) * p0) / base;
  }

  /** The jet's own state at its boundary: ambient pressure down to the design's. */
  function exitAt(ambientPressure: number): FlowState {
    if (ambientPressure <= exit.pressure || ambientPressure >= expansion.throat.pressure) return exit;
    return expansion.atPressure(ambientPressure);
  }
}

function notComputedReason(ambientPressure: number): string {
  return (
    `At ${Number((ambientPressure / 1000).toPrecision(3))} kPa around it the flow on the plug turns subsonic behind a strong shock, ` +
    'and the field of streamtubes ends there. Ask at a lower ambient pressure, or raise the chamber pressure.'
  );
}

/** [Pa] end of the geometry's gas table. */
function lowestOf({ table }: PlugGeometry): number {
  return tableStateAt(table, table.nuMax).pressure;
}

function sumOf(surfaces: readonly PlugSurface[]): number {
  return surfaces.reduce((sum, { vacuum }) => sum + vacuum, 0);
}

/** Nodes of the net that shaped the walls: its rays'. */
function nodesOf({ rays, lipRay }: PlugGeometry): number {
  const nodes = rays.reduce((sum, ray) => sum + ray.length, 0) + (lipRay.length * lipRay.length) / (2 * NODE);
  return Math.round(nodes / NODE);
}

/** Mass through the geometry over that of one-dimensional flow through its throat area, less 1. */
function massClosure(geometry: PlugGeometry, expansion: Expansion): number {
  return (geometry.massFlow * geometry.areaScale) / expansion.throat.massFlux - 1;
}

function omittedBy(spec: PlugSpec): readonly string[] {
  return [
    'The transonic flow in the throat: the start line is a ray just past sonic, one-dimensional flow ahead of it.',
    ...(spec.form === 'linear'
      ? ['What is lost at the two open ends of a linear plug: the flow is taken as if it had side walls.']
      : []),
    ...(spec.kept < 1 ? ['Hysteresis and unsteadiness of the wake behind the base.'] : []),
  ];
}

function requireKept(kept: number): void {
  if (kept >= 0 && kept <= 1) return;
  throw new ProblemError({
    code: 'kept-outside-range',
    what: `${Number((100 * kept).toPrecision(4))} % of the plug cannot be kept.`,
    mend: 'Give the share of the whole plug’s length that is kept, 0 % to 100 %.',
    where: 'nozzle.kept',
    facts: { kept },
  });
}
