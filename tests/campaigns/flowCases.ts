/** Random engines on perfect and burnt gases in random air as fields, from a seed; the coarsest mesh, some hundred steps. */

import { attempt } from '../../src/numerics/problem.ts';
import { flowKernel } from '../../src/physics/euler/index.ts';
import { type Expansion, expandBurnt, expandPerfect } from '../../src/physics/gas/index.ts';
import { chamberAndNozzleContour, type NozzleSpec, nozzleModel } from '../../src/physics/nozzle/index.ts';
import {
  type BlockFlow,
  deflectedFlow,
  type FarAir,
  plugFlow,
  prepareDeflected,
  preparePlug,
  prepareRound,
  roundFlow,
  roundSize,
  settle,
  sizeOfDeflected,
  sizeOfPlug,
  thrustOf,
  thrustOfDeflected,
  thrustOfPlug,
} from '../../src/physics/wholeFlow/index.ts';
import { burnt, species } from '../physics/gas/rows.ts';
import { type Random, randomFrom } from './random.ts';

export interface FlowCase {
  readonly seed: number;
  readonly what: string;
  /** Steps over, all numbers finite, pressure and density above nothing; null: no such engine. */ readonly ended:
    | boolean
    | null;
  readonly broke: number;
  readonly problem: string | null;
}

const STEPS = 300;
const R = 0.1;
const SHAPE = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };

/** By mass; each up to a fifth leaner or richer. */
const PROPELLANTS = [
  ['LOX', 'LCH4', 3.4],
  ['LOX', 'LH2', 5.8],
  ['LOX', 'RP-1', 2.4],
] as const;

export function runFlowCase(seed: number): FlowCase {
  const random = randomFrom(seed);
  const ratio = (low: number, high: number): number =>
    Math.exp(random.between(Math.log(low), Math.log(high)));
  const pressure = ratio(5e5, 3e7);
  const gas = gasOf(random, pressure);
  const spec = specOf(random, ratio);
  const ambient = ratio(1, 1e5);
  const air = {
    pressure: ambient,
    density: ambient / (287 * 250),
    speed: Math.max(0, random.between(-2000, 900)),
  };
  const form = spec.kind === 'plug' ? `${spec.form} ` : '';
  const what = `${form}${spec.kind} ${spec.areaRatio.toFixed(1)}, ${(pressure / 1e5).toFixed(0)} bar, ${gas.name}, air ${ambient.toPrecision(3)} Pa at ${air.speed.toFixed(0)} m/s`;
  const made = attempt(() => {
    const expansion = gas.expand();
    return { expansion, ...caseOf(spec, expansion, air) };
  });
  if (!made.ok || made.value.flow.state === 'unchoked')
    return { seed, what, ended: null, broke: 0, problem: null };
  const ran = attempt(() => run(spec, made.value.expansion, made.value));
  if (!ran.ok) return { seed, what, ended: false, broke: 0, problem: ran.problem.what };
  return { seed, what, ended: ran.value.finite, broke: ran.value.broke, problem: null };
}

/** Half of them perfect, the others burnt: the composition follows the flow, or is held. */
function gasOf(
  random: Random,
  pressure: number,
): { readonly name: string; readonly expand: () => Expansion } {
  if (random.chance(0.5)) {
    const gamma = random.between(1.12, 1.4);
    const temperature = random.between(1000, 3600);
    return {
      name: `γ ${gamma.toFixed(2)}`,
      expand: () => expandPerfect({ gamma, molarMass: 0.022, temperature, pressure }),
    };
  }
  const [oxidiser, fuel, usual] = random.pick(PROPELLANTS);
  const mixture = usual * random.between(0.8, 1.2);
  const kind = random.chance(0.6) ? ('shifting' as const) : ('frozen' as const);
  return {
    name: `${oxidiser}/${fuel} ${mixture.toFixed(2)} ${kind}`,
    expand: () => expandBurnt(burnt(oxidiser, fuel, mixture), species, { pressure, chemistry: { kind } }),
  };
}

function specOf(random: Random, ratio: (low: number, high: number) => number) {
  const kind = random.between(0, 1);
  if (kind < 0.4) return { kind: 'bell', areaRatio: ratio(4, 120), length: random.between(0.65, 1) } as const;
  if (kind < 0.65)
    return {
      kind: 'cone',
      areaRatio: ratio(2, 60),
      halfAngle: (random.between(8, 25) * Math.PI) / 180,
    } as const;
  if (kind < 0.78)
    return {
      kind: 'expansionDeflection',
      areaRatio: ratio(8, 100),
      // Smaller ones are refused at the steeper of these angles: their throats have no room (`pintle-too-small`, below 0.92 throat areas at 70°).
      pintleAreaRatio: random.between(1, 3),
      length: random.between(0.4, 0.8),
      throatAngle: (random.between(40, 70) * Math.PI) / 180,
      lipAngle: (random.between(4, 14) * Math.PI) / 180,
    } as const;
  return {
    kind: 'plug',
    form: random.chance(0.5) ? 'annular' : 'linear',
    areaRatio: ratio(8, 60),
    kept: random.between(0.15, 0.6),
  } as const;
}

function caseOf(spec: NozzleSpec, expansion: Expansion, air: FarAir) {
  const model = nozzleModel(spec, expansion);
  const { flow, separation, leavesAt, mode } = model.at(air.pressure);
  const pressure = Math.max(air.pressure, 1e-3 * model.exit.pressure);
  const leaves = flow.state === 'separated' ? (separation?.place.axial ?? leavesAt ?? null) : null;
  return {
    model,
    flow,
    leavesAt: leaves === null ? null : leaves * R,
    mode,
    air: { ...air, pressure, density: pressure / (287 * 250) },
  };
}

function run(
  spec: NozzleSpec,
  expansion: Expansion,
  { model, leavesAt, mode, air }: ReturnType<typeof caseOf>,
) {
  const steps = { least: STEPS, most: STEPS, still: [0] };
  if (spec.kind === 'plug') {
    const contour = model.contour!(R, SHAPE);
    const prepared = preparePlug({
      expansion,
      cowl: contour.wall,
      plug: contour.plug!.wall,
      width: contour.plug!.width ?? null,
      throatRadius: R,
      kernel: flowKernel(32),
    });
    const field = plugFlow(prepared, { air }, sizeOfPlug(prepared, 8, 8), null);
    return told(settle(field.flow, { ...steps, watch: () => [thrustOfPlug(field)] }));
  }
  if (spec.kind === 'expansionDeflection') {
    const { wall, bodies } = model.contour!(R, SHAPE);
    const pintle = bodies!.find(({ name }) => name === 'pintle')!;
    const prepared = prepareDeflected({ expansion, wall, pintle, throatRadius: R, kernel: flowKernel(32) });
    const which = { air, leavesAt, ...(mode === 'open wake' && { openWake: true }) };
    const field = deflectedFlow(prepared, which, sizeOfDeflected(prepared, 8, 8), null);
    return told(settle(field.flow, { ...steps, watch: () => [thrustOfDeflected(field)] }));
  }
  const { wall } = chamberAndNozzleContour(spec, R, SHAPE);
  const prepared = prepareRound({ expansion, wall, throatRadius: R, kernel: flowKernel(32) });
  const field = roundFlow(prepared, { air, leavesAt }, roundSize(prepared, 8, 8), null);
  return told(settle(field.flow, { ...steps, watch: () => [thrustOf(field)] }));
}

function told({
  averages,
  broke,
}: {
  readonly averages: { blocks(): readonly BlockFlow[] };
  readonly broke: number;
}) {
  const finite = averages
    .blocks()
    .every(
      ({ pressure, density, u, v }) =>
        [pressure, density].every((of) => of.every((value) => value > 0 && Number.isFinite(value))) &&
        [u, v].every((of) => of.every(Number.isFinite)),
    );
  return { finite, broke };
}
