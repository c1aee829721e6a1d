/** One engine: gas, nozzle, size, wall. Synchronous once its data rows are there. */

import { once, onceOrProblem } from '../numerics/once.ts';
import { ProblemError } from '../numerics/problem.ts';
import {
  type ChamberShape,
  type Contour,
  chamberPush,
  type NozzleModel,
  type NozzleSize,
  type NozzleSpec,
  nozzleModel,
  type PlugChamberPush,
  plugChamberPush,
  throatAreaFor,
} from '../physics/nozzle/index.ts';
import { ENERGY_RELEASE_BAND } from '../physics/nozzle/losses/index.ts';
import { plumeSource } from '../physics/plume/index.ts';
import type { Ambient, Cooling, EngineInput, Nozzle, Size } from '../study/model.ts';
import { statedSpan } from '../study/plainQuantity.ts';
import { baseAtBoundNotes } from './baseAtBound.ts';
import { nozzleForm } from './compare/traits.ts';
import { figuresAt } from './conditions.ts';
import { engineCycle } from './cycle/engineCycle.ts';
import { chamberNeeds } from './cycle/otherCycle.ts';
import { show, showStated } from './display.ts';
import { hasWall } from './hasWall.ts';
import { engineHeat } from './heat/engineHeat.ts';
import { liveCooling } from './heat/liveCooling.ts';
import { settableInputs } from './inputs/index.ts';
import type { CoolingMaterials, Materials } from './materials.ts';
import type { PositionAnswer } from './model.ts';
import { sizeErrors } from './scatter/sizeErrors.ts';
import { sizedEngine } from './sizedEngine.ts';
import { diameterOf, type EngineSolution } from './solution.ts';
import { pressureOf } from './statedPlace.ts';
import { statedQuantities } from './statedQuantities.ts';
import { wallIn, wallOf } from './wallOf.ts';
import { advisedWhenCold, type WorkingGas, workingGas } from './workingGas.ts';

/**
 * @param others engines solved before, by id, from which this one may take its size
 * @param known its gas and its nozzle without a size, where they are known already
 * @throws ProblemError where the engine cannot be computed
 */
export function solveEngine(
  input: EngineInput,
  materials: Materials,
  others: ReadonlyMap<string, EngineSolution> = new Map(),
  known: { readonly gas?: WorkingGas | undefined; readonly nozzle?: NozzleModel | undefined } = {},
): EngineSolution {
  const gas = known.gas ?? workingGas(input, materials);
  const { expansion } = gas;
  const spec = specOf(input.nozzle);
  const nozzle = known.nozzle ?? advisedWhenCold(input, () => nozzleModel(spec, expansion, input.losses));
  const { throatArea, drawn, losses } = sizedEngine(input, gas, nozzle, (coefficientLost) =>
    throatAreaOf(input.size, nozzle, others, coefficientLost),
  );
  const { contour, shape, notes } = drawn;
  const characteristicVelocity = input.chamber.efficiency.value * expansion.characteristicVelocity;
  const massFlow =
    (nozzle.dischargeCoefficient * losses.layerDischarge * expansion.chamber.pressure * throatArea) /
    characteristicVelocity;
  const heat = onceOrProblem(() => engineHeat(contour, nozzle, gas, massFlow));
  const cooling = onceOrProblem(() =>
    liveCooling({
      ...coolingStated(input, materials),
      input,
      heat: heat(),
      propellants: materials.propellants,
      massFlow,
      mixtureRatio: gas.mixtureRatio,
      chamberPressure: expansion.chamber.pressure,
      throatDiameter: diameterOf(throatArea),
      isRound: contour.plug === undefined && spec.kind !== 'expansionDeflection',
    }),
  );
  const wall = once(() => advisedWhenCold(input, () => wallOf(contour, nozzle)));
  const positions = once(() => positionsOf(input, nozzle, contour, shape));
  const solution: EngineSolution = {
    input,
    description: descriptionOf(input.nozzle),
    propellants: gas.text,
    chemistry: gas.chemistry,
    mixtureRatio: gas.mixtureRatio,
    expansion,
    nozzle,
    characteristicVelocity,
    throatArea,
    exitArea: throatArea * spec.areaRatio,
    massFlow,
    bulkDensity: gas.bulkDensity,
    losses,
    heat,
    cooling,
    cycle: onceOrProblem(() => engineCycle(chamberNeeds(solution))),
    fed: gas.fed,
    contour,
    chamberPush: once(() => chamberPush(contour, expansion, nozzle.dischargeCoefficient)),
    ringPush: once(() => ringPushOf(contour, expansion)),
    contourIs: hasWall(spec) ? 'shape' : 'notional',
    get wall() {
      return wall();
    },
    get positions() {
      return positions();
    },
    plume: plumeSource(nozzle),
    records: gas.records,
    models: [
      ...new Set([
        ...gas.models,
        'delivered',
        ...(input.cycle === null ? [] : ['cycle']),
        ...lossModels(input, spec),
        ...heatModels(input, spec),
        ...nozzle.models,
        'nozzle-size',
        'nozzle-contour',
        'plume',
        'air',
      ]),
    ],
    omitted: [...new Set([...gas.omitted, ...nozzle.omitted, ...omittedOf(input)])],
    notes: [...notesOf(input, nozzle), ...baseAtBoundNotes(nozzle), ...linearNotes(contour), ...notes],
    publishedSolve: null,
    publishedSolveProblem: null,
    sizeErrors: once(() => sizeErrors(solution, input.size, sizedAt(input.size), others)),
  };
  return solution;
}

/** Ambient pressure [Pa] of the thrust that fixes the size; null where none does. */
function sizedAt(size: Size): number | null {
  return size.by === 'thrust' || (size.by === 'same' && size.what === 'thrust') ? pressureOf(size.at) : null;
}

function ringPushOf(contour: Contour, expansion: NozzleModel['expansion']): PlugChamberPush | null {
  const { plug } = contour;
  return plug === undefined ? null : plugChamberPush({ ...contour, plug }, expansion);
}

/** Walls of a nozzle of two modes, each with the gas as it is in that mode. */
function positionsOf(
  input: EngineInput,
  nozzle: NozzleModel,
  contour: Contour,
  chamber: ChamberShape,
): readonly PositionAnswer[] {
  const { change } = nozzle;
  if (change === undefined) return [];
  return [change.thick, change.thin].map((mode) => {
    const own = mode.contour?.(contour.throatRadius, chamber) ?? contour;
    const wall = advisedWhenCold(input, () => wallIn(own, nozzle, mode.wallStations()));
    return { mode: mode.name, contour: own, wall };
  });
}

function heatModels(input: EngineInput, spec: NozzleSpec): readonly string[] {
  if (!hasWall(spec)) return [];
  return ['gas-transport', 'heat-gas-side', ...(input.cooling === null ? [] : ['heat-cooling'])];
}

/** @throws ProblemError `cooling-not-stated` */
function coolingStated(
  { cooling }: EngineInput,
  materials: Materials,
): { readonly cooling: Cooling; readonly materials: CoolingMaterials } {
  if (cooling === null || materials.cooling === null) {
    throw new ProblemError({
      code: 'cooling-not-stated',
      what: 'The study does not say how this engine is cooled.',
      mend: 'Add cooling to the engine, e.g. cooling: { coolant: fuel }.',
      where: 'cooling',
    });
  }
  return { cooling, materials: materials.cooling };
}

function lossModels(input: EngineInput, spec: NozzleSpec): readonly string[] {
  if (input.losses === 'none') return [];
  return hasWall(spec) ? ['losses', 'boundary-layer', 'gas-transport'] : ['losses'];
}

/** `bell of 80 % length, area ratio 25` */
export function descriptionOf(nozzle: Nozzle): string {
  return `${nozzleForm(nozzle)}, area ratio ${showStated('areaRatio', nozzle.areaRatio.value).text}`;
}

/** The nozzle that the study states, for its model. */
export function specOf(nozzle: Nozzle): NozzleSpec {
  const areaRatio = nozzle.areaRatio.value;
  switch (nozzle.kind) {
    case 'ideal':
    case 'adapting':
      return { kind: nozzle.kind, areaRatio };
    case 'cone':
      return { kind: 'cone', areaRatio, halfAngle: nozzle.halfAngle.value };
    case 'bell':
      return {
        kind: 'bell',
        areaRatio,
        length: nozzle.length.value,
        ...(nozzle.throatAngle && { throatAngle: nozzle.throatAngle.value }),
        ...(nozzle.lipAngle && { lipAngle: nozzle.lipAngle.value }),
      };
    case 'idealBell':
      return {
        kind: 'idealBell',
        areaRatio,
        ...(nozzle.length && { length: nozzle.length.value }),
        ...(nozzle.designMach && { designMach: nozzle.designMach.value }),
      };
    case 'plug':
      return plugSpecOf(nozzle);
    case 'extendableSkirt':
      return {
        kind: 'extendableSkirt',
        areaRatio,
        shortAreaRatio: nozzle.shortAreaRatio.value,
        length: nozzle.length.value,
        ...(nozzle.throatAngle && { throatAngle: nozzle.throatAngle.value }),
        ...(nozzle.lipAngle && { lipAngle: nozzle.lipAngle.value }),
        ...switchOf(nozzle.switchAt),
      };
    case 'expansionDeflection':
      return {
        kind: 'expansionDeflection',
        areaRatio,
        pintleAreaRatio: nozzle.pintleAreaRatio.value,
        length: nozzle.length.value,
        throatAngle: nozzle.throatAngle.value,
        lipAngle: nozzle.lipAngle.value,
      };
    case 'dualBell':
      return {
        kind: 'dualBell',
        areaRatio,
        baseAreaRatio: nozzle.baseAreaRatio.value,
        baseLength: nozzle.baseLength.value,
        ...(nozzle.throatAngle && { throatAngle: nozzle.throatAngle.value }),
        ...(nozzle.baseLipAngle && { baseLipAngle: nozzle.baseLipAngle.value }),
        shape:
          nozzle.inflectionAngle === null
            ? { extensionLength: nozzle.extensionLength!.value }
            : { kink: nozzle.inflectionAngle.value },
        pressureRise: nozzle.pressureRise.value,
      };
    case 'insert':
      return {
        kind: 'insert',
        areaRatio,
        insertAreaRatio: nozzle.insertAreaRatio.value,
        length: nozzle.length.value,
        insertLength: nozzle.insertLength.value,
        ...switchOf(nozzle.switchAt),
      };
  }
}

function plugSpecOf(nozzle: Nozzle & { kind: 'plug' }): NozzleSpec {
  const { form, areaRatio, kept, innerMach, aspectRatio, modules, moduleShape } = nozzle;
  return {
    kind: 'plug',
    form,
    areaRatio: areaRatio.value,
    kept: kept.value,
    ...(innerMach && { innerMach: innerMach.value }),
    ...(aspectRatio && { aspectRatio: aspectRatio.value }),
    ...(modules && { modules: { number: modules.value, shape: moduleShape } }),
  };
}

function switchOf(at: Ambient | null): { readonly switchAmbient?: number } {
  return at === null ? {} : { switchAmbient: pressureOf(at) };
}

function throatAreaOf(
  size: Size,
  nozzle: NozzleModel,
  others: ReadonlyMap<string, EngineSolution>,
  coefficientLost: number,
): number {
  if (size.by !== 'same') return throatAreaFor(statedSize(size), nozzle, coefficientLost);
  const other = others.get(size.as);
  if (other === undefined) {
    throw new ProblemError({
      code: 'size-of-unsolved-engine',
      what: `The size is taken from the engine “${size.as}”, which could not be computed.`,
      mend: 'Mend that engine first, or give this one a size of its own.',
      where: 'size',
    });
  }
  if (size.what !== 'thrust') {
    return size.what === 'throat' ? other.throatArea : other.exitArea / nozzle.spec.areaRatio;
  }
  return throatAreaFor(thrustSize(size.as, size.at, other), nozzle, coefficientLost);
}

function thrustSize(as: string, at: Ambient, other: EngineSolution): NozzleSize {
  const ambientPressure = pressureOf(at);
  const { figures, absent } = figuresAt(other, ambientPressure, null);
  if (figures.thrust === null) {
    throw new ProblemError({
      code: 'size-of-engine-without-thrust',
      what: `The engine “${as}” has no thrust at ${show('ambientPressure', ambientPressure).text} to take over.`,
      ...(absent !== null && { why: absent }),
      mend: 'Compare at the same thrust in vacuum, or at the same throat.',
      where: 'size',
    });
  }
  return { by: 'thrust', thrust: figures.thrust, ambientPressure };
}

function statedSize(size: Exclude<Size, { by: 'same' }>): NozzleSize {
  return size.by === 'thrust'
    ? { by: 'thrust', thrust: size.thrust.value, ambientPressure: pressureOf(size.at) }
    : { by: size.by, diameter: size.diameter.value };
}

function omittedOf(input: EngineInput): readonly string[] {
  const labels = new Map(settableInputs(input).map(({ path, label }) => [path, label]));
  const spread = statedQuantities(input).filter((quantity) => statedSpan(quantity) !== null);
  return [
    input.losses === 'none'
      ? 'Friction on the wall, slow chemistry and drops that lag, as the study asks.'
      : 'The course of the chemistry in time: what it loses is a published band. Film cooling, and layers of unlike mixture across the chamber.',
    input.cycle === null
      ? 'Pumps and turbines: the propellant flow and the specific impulse are those of the thrust chamber alone.'
      : 'Starting and stopping, leaks, and what pumps and turbines do off their design: the cycle is a balance of powers. Thrust and specific impulse stay those of the thrust chamber; those of the engine stand under its cycle.',
    input.cooling === null
      ? 'Cooling, and the propellant some engines spend on it.'
      : 'Boiling at the walls of the channels, ablation, stress and fatigue of the wall; what a film costs in specific impulse.',
    ...(spread.length > 0
      ? [
          `The stated spread of ${spread.map(({ path, text }) => `${labels.get(path) ?? ''} ${text}`.trim()).join(', ')}: the numbers hold at the middle values; what the spread leaves open is in their bands and in the check of sentences.`,
        ]
      : []),
  ];
}

/** A linear plug's exit is no circle. */
function linearNotes({ plug }: Contour): readonly string[] {
  if (plug?.width === undefined) return [];
  const [height, width] = [2 * plug.lipRadius, plug.width].map(
    (size) => show('contour.plug.width', size).text,
  );
  return [
    `A linear plug has no exit diameter; that of a circle of the same area is given. Its lips stand ${height} apart and are ${width} wide.`,
  ];
}

function notesOf(input: EngineInput, nozzle: NozzleModel): readonly string[] {
  const { efficiency } = input.chamber;
  const notes: string[] = [];
  if (input.losses === 'none' && efficiency.value < 1) {
    notes.push(
      `losses: none takes the losses of the nozzle away; the stated chamber efficiency of ${showStated('chamber.efficiency', efficiency.value).text} still counts.`,
    );
  }
  const burns = input.propellants.kind === 'burnt' || input.propellants.kind === 'mixed';
  if (burns && input.losses !== 'none' && efficiency.byDefault) {
    notes.push(
      `No chamber efficiency is stated; the usual one is taken, ${showStated('chamber.efficiency', efficiency.value).text}: ${ENERGY_RELEASE_BAND.source}.`,
    );
  }
  for (const { notice } of [nozzle.expansion.chamber, nozzle.exit]) {
    if (notice === null) continue;
    const note = asSentence(notice);
    if (!notes.includes(note)) notes.push(note);
  }
  return notes;
}

function asSentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}
