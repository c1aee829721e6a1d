import { ProblemError } from '../../../numerics/problem.ts';
import type { Expansion } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { bellNozzle } from '../bellNozzle.ts';
import { chamberAndNozzleContour } from '../contour.ts';
import type { ChamberShape, Contour, InsertSpec, NozzleLosses, NozzleModel } from '../model.ts';
import { withAspiration } from './aspiration.ts';
import { switchBetween } from './bestSwitch.ts';
import { changingNozzle, modeOf } from './changingNozzle.ts';
import { insertStep } from './insertShape.ts';
import { insertBell, outerBell } from './plainBells.ts';

/**
 * Insert that drops away: a small bell inside a large one, on the same throat; below a switch altitude the small one
 * works, above it the large one.
 *
 *   in place:  the insert alone, less what the bell round its jet costs   C_F = C_F,insert(p_a) − ΔC_F
 *   gone:      the bell                                                   C_F = C_F,bell(p_a)
 *
 * @throws ProblemError where a bell has no shape, `insert-not-smaller`, `insert-does-not-fit`
 * Source: two bells, each by the model of a bell; ΔC_F see `aspirationLoss`.
 */
export function insertNozzle(
  spec: InsertSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  requireSmaller(spec);
  insertStep(spec);
  const small = bellNozzle(insertBell(spec), expansion, losses);
  const whole = bellNozzle(outerBell(spec), expansion, losses);
  const inside: Pick<NozzleModel, 'at' | 'wallStations' | 'leaving' | 'separation'> = {
    separation: () => small.separation?.() ?? null,
    wallStations: () => small.wallStations(),
    leaving: (ambientPressure) => small.leaving?.(ambientPressure) ?? null,
    at: (ambientPressure) =>
      withAspiration(
        small.at(ambientPressure),
        'bell round the jet',
        spec.areaRatio - spec.insertAreaRatio,
        expansion.chamber.pressure,
        losses,
      ),
  };
  return changingNozzle(
    {
      spec,
      whole,
      change: () =>
        switchBetween(spec.switchAmbient, inside, whole, {
          thick: modeOf('insert in place', inside, (radius, chamber) => inPlace(spec, radius, chamber)),
          thin: modeOf('insert gone', whole),
        }),
      omitted: [
        ...new Set([...small.omitted, ...whole.omitted]),
        'Mass of the insert, what holds it and lets it go, and the moments while it leaves.',
        'The jet of the insert reaching the wall of the bell round it, as it would in thin air.',
      ],
      models: ['nozzle-insert', ...new Set([...small.models, ...whole.models])],
    },
    expansion,
  );
}

/** The insert as the wall of the gas, the bell round it as a body. */
function inPlace(spec: InsertSpec, throatRadius: number, chamber: ChamberShape): Contour {
  const inner = chamberAndNozzleContour(insertBell(spec), throatRadius, chamber);
  const outer = chamberAndNozzleContour(outerBell(spec), throatRadius, chamber);
  return {
    ...inner,
    bodies: [
      {
        name: 'bell',
        solid: false,
        outline: outer.wall.filter(({ axial }) => axial >= 0).map(({ axial, radius }) => ({ axial, radius })),
      },
    ],
  };
}

function requireSmaller({ areaRatio, insertAreaRatio }: InsertSpec): void {
  requireAreaRatio(insertAreaRatio);
  if (insertAreaRatio < areaRatio) return;
  throw new ProblemError({
    code: 'insert-not-smaller',
    what: `The insert’s area ratio, ${insertAreaRatio}, is not below the bell’s, ${areaRatio}.`,
    mend: 'Give the insert a smaller area ratio; a quarter to a half of the bell’s is a usual choice.',
    where: 'nozzle.insertAreaRatio',
    facts: { areaRatio, insertAreaRatio },
  });
}
