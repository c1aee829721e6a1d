import { once } from '../../../numerics/once.ts';
import { type Problem, ProblemError } from '../../../numerics/problem.ts';
import { requireAmbientPressure } from '../../air/ambient.ts';
import { tabulateSupersonic } from '../../flow/gasTable.ts';
import { lossyTable, tubeGas } from '../../flow/streamtubes/index.ts';
import type { Expansion } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { changingNozzle, modeOf } from '../changing/changingNozzle.ts';
import type {
  ChamberShape,
  ExpansionDeflectionSpec,
  FieldBalance,
  ModeChange,
  NozzleLosses,
  NozzleModel,
  ThrustAt,
} from '../model.ts';
import { unchokedReason } from '../separation/thrustOffDesign.ts';
import { type ClosedWakeFlow, closedWakeFlow } from './closedWake.ts';
import { type DeflectedFlow, type DeflectedGas, deflectedFlow, deflectedGas } from './deflectedFlow.ts';
import { deflectionContour } from './deflectionContour.ts';
import { type Deflection, divergenceOf, thrustOf, withoutThrust } from './deflectionThrust.ts';
import { fittedThroat } from './fittedThroat.ts';
import { deflectedAt, openWakes, wakeAdds } from './openWake.ts';
import type { DeflectionShape } from './shape.ts';

/** Lowest pressure of the gas table over the mean exit pressure [–]. */
const TABLE_DEPTH = 0.002;
const TABLE_CELLS = 128;

/**
 * Expansion–deflection nozzle: an annular throat round a pintle, turned outwards; the gas expands round the pintle's edge
 * and is turned back along an outer wall.
 *
 *   open wake     the space behind the pintle is at ambient, and the inner boundary of the flow moves with it
 *   closed wake   the flow closes behind the pintle; the base pressure no longer feels the surroundings
 *
 * @throws ProblemError where the walls do not join, the pintle is too wide or the gas cannot be followed far enough
 * Source: G. V. R. Rao, ARS Journal 31(11), 1961; the two wakes: R. A. Wasko, NASA TN D-4462, 1968 (from memory).
 */
export function expansionDeflectionNozzle(
  spec: ExpansionDeflectionSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  requireAngles(spec);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  const p0 = expansion.chamber.pressure;
  const lowest = Math.max(TABLE_DEPTH * exit.pressure, LOWEST_OF_DATA * expansion.lowestPressure);
  const table = tabulateSupersonic(expansion, lowest, TABLE_CELLS);
  const { shape, lineNu } = fittedThroat(spec, table);
  const gas = deflectedGas(tubeGas(table, lossyTable(expansion, lowest, TABLE_CELLS)), lineNu);
  const model: Deflection = {
    spec,
    expansion,
    exit,
    shape,
    gas,
    p0,
    losses,
    wake: once(() => closed(shape, gas, expansion)),
  };
  const open = once(() => openWakes(shape, gas, p0, model.wake().closesAt));
  const openAt = (ambientPressure: number): ThrustAt => {
    requireAmbientPressure(ambientPressure);
    if (ambientPressure >= STILL_SUPERSONIC * gas.linePressure)
      return withoutThrust(model, ambientPressure, unchokedReason(ambientPressure), 'unchoked');
    if (ambientPressure < model.wake().closesAt) {
      return withoutThrust(
        model,
        ambientPressure,
        'In so thin air the wake behind the pintle is closed. Ask for the closed wake there.',
        'full',
      );
    }
    return thrustOf(model, open().at(ambientPressure), ambientPressure);
  };
  const closedAt = (ambientPressure: number): ThrustAt => {
    requireAmbientPressure(ambientPressure);
    return thrustOf(model, deflectedAt(model.wake().flow, shape, ambientPressure, p0), ambientPressure);
  };
  return changingNozzle(
    {
      spec,
      whole: {
        exit,
        get divergenceFactor() {
          return losses === 'none' ? 1 : divergenceOf(model);
        },
        matchedAmbient: exit.pressure,
        dischargeCoefficient: 1,
        wallStations: () => model.wake().flow.stations(),
        balance: () => balanceOf(model.wake().flow),
      },
      change: () => ({
        thick: modeOf(
          'open wake',
          { at: openAt, wallStations: () => openFlow(model).stations() },
          contourOf(() => openFlow(model), shape),
        ),
        thin: modeOf('closed wake', { at: closedAt, wallStations: () => model.wake().flow.stations() }),
        ...changeOf(model.wake()),
      }),
      contour: contourOf(() => model.wake().flow, shape),
      wakeAdds: (ambientPressure, wakePressure) => wakeAdds(shape, gas, p0, ambientPressure, wakePressure),
      omitted: OMITTED,
      models: [
        'nozzle-expansion-deflection',
        'nozzle-thrust',
        'nozzle-separation',
        'flow-streamtubes',
        'flow-characteristics',
      ],
    },
    expansion,
  );
}

/** The table stays this far above the lowest pressure that the gas reaches. */
const LOWEST_OF_DATA = 1.001;
/** Share of the throat line's pressure up to which the wake lets the flow leave supersonic. */
const STILL_SUPERSONIC = 0.97;

const OMITTED: readonly string[] = [
  'Friction on the pintle, and its cooling.',
  'The transonic flow in the annular throat: the start line is straight, the flow on it uniform, one-dimensional ahead of it.',
  'Suction of the open wake: its base is at ambient.',
  'The gas coming back to the wall behind a place where it has let go.',
  'That the wake opens later on the way down than it closes on the way up: measured, but no figure was found.',
];

function closed(shape: DeflectionShape, gas: DeflectedGas, expansion: Expansion): ClosedWakeFlow {
  const found = closedWakeFlow(shape, gas, (pressure) => {
    const { isentropicExponent, gammaFrozen } = expansion.atPressure(pressure);
    return isentropicExponent ?? gammaFrozen;
  });
  if (found === null) throw staysOpen();
  if (found.flow.stopped !== null) throw chokes(found.flow.stopped);
  return found;
}

/** The open wake as it is drawn: a little above the pressure at which it closes. */
function openFlow({ shape, gas, wake }: Deflection): DeflectedFlow {
  return deflectedFlow(shape, gas, DRAWN_OPEN * wake().closesAt);
}
const DRAWN_OPEN = 1.3;

function contourOf(flow: () => DeflectedFlow, shape: DeflectionShape) {
  return (throatRadius: number, chamber: ChamberShape) =>
    deflectionContour(shape, flow().wake, throatRadius, chamber);
}

function changeOf({ closesAt, estimates }: ClosedWakeFlow): Omit<ModeChange, 'thick' | 'thin'> {
  const pressures = estimates.map(({ pressure }) => pressure);
  return {
    ambientPressure: closesAt,
    band: { low: Math.min(...pressures), high: Math.max(...pressures) },
    back: null,
    estimates: estimates.map(({ model, pressure }) => ({ by: model, ambientPressure: pressure })),
    how: 'Where the inner boundary of the flow, at ambient pressure, just comes down to close behind the pintle; at the latest where the closed wake holds as much by itself.',
  };
}

function balanceOf(flow: DeflectedFlow): FieldBalance {
  const wall = flow.wallForce[flow.wallForce.length - 1]!;
  const surfaces = flow.throat + wall + flow.edge + flow.basePush;
  return {
    mass: flow.massMiss,
    momentum: surfaces / flow.boundary - 1,
    energy: 0,
    nodes: flow.stations().length,
    note: OPEN_WAKE_NOTE,
  };
}

/** The balance is that of the closed wake. */
const OPEN_WAKE_NOTE =
  'In the open wake, where waves run to and fro between wall and wake, the two ways to the thrust agree within about 2 % only.';

function requireAngles({ throatAngle, lipAngle, length, pintleAreaRatio }: ExpansionDeflectionSpec): void {
  const sound =
    throatAngle >= STEEP.low && throatAngle <= STEEP.high && lipAngle >= 0 && lipAngle < throatAngle;
  if (sound && length > 0 && pintleAreaRatio > 0) return;
  throw new ProblemError({
    code: 'deflection-shape-invalid',
    what: `No expansion–deflection nozzle has a throat angle of ${degrees(throatAngle)}°, a lip angle of ${degrees(lipAngle)}°, a length of ${(100 * length).toFixed(0)} % and a pintle of ${pintleAreaRatio} throat areas.`,
    mend: 'Give a throat angle of 30° to 75°, a smaller lip angle, and a positive length and pintle.',
    where: 'nozzle.throatAngle',
    facts: { throatAngle, lipAngle, length, pintleAreaRatio },
  });
}
/** [rad] 30° to 75° */
const STEEP = { low: Math.PI / 6, high: (5 * Math.PI) / 12 };

function chokes(stopped: Problem): ProblemError {
  return new ProblemError({
    code: 'deflected-flow-chokes',
    what: 'A strong shock inside leaves the flow subsonic before it reaches the lip.',
    why: `The outer wall turns the flow back too sharply for so wide a pintle and so small an area ratio. ${stopped.what}`,
    mend: 'Make the nozzle longer, the pintle smaller or the throat angle flatter.',
    where: 'nozzle.length',
  });
}

function staysOpen(): ProblemError {
  return new ProblemError({
    code: 'wake-never-closes',
    what: 'Behind so wide a pintle and so steep a throat the wake stays open down to a five-thousandth of the throat pressure.',
    why: 'The thrust in vacuum hangs on the closed wake.',
    mend: 'Make the throat angle or the pintle smaller, or the nozzle longer.',
    where: 'nozzle.throatAngle',
  });
}

function degrees(radians: number): string {
  return ((radians * 180) / Math.PI).toFixed(1);
}
