import type { Expansion } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { bellNozzle } from '../bellNozzle.ts';
import { chamberAndNozzleContour } from '../contour.ts';
import type {
  ChamberShape,
  Contour,
  ContourBody,
  ExtendableSkirtSpec,
  NozzleLosses,
  NozzleModel,
} from '../model.ts';
import { switchBetween } from './bestSwitch.ts';
import { changingNozzle, modeOf } from './changingNozzle.ts';
import { wholeBell } from './plainBells.ts';
import { shortBell } from './skirtShape.ts';

/**
 * Extendable skirt: two fixed bells on one wall and one throat, the short one below, the whole one above a switch altitude.
 *
 *   drawn up:  the bell cut at the short area ratio        C_F = C_F,short(p_a)
 *   out:       the whole bell                              C_F = C_F,whole(p_a)
 *
 * The throat is the same, so the flow of propellant is. Without a stated altitude the skirt slides out where both push
 * alike, or where the whole bell begins to flow full.
 *
 * @throws ProblemError where a bell has no shape, `skirt-cut-outside-bell`, `larger-nozzle-gains-nothing`
 * Source: two bells, each by the model of a bell (docs/methods/nozzle-bell.md); no model of its own.
 */
export function skirtNozzle(
  spec: ExtendableSkirtSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  const short = bellNozzle(shortBell(spec), expansion, losses);
  const whole = bellNozzle(wholeBell(spec), expansion, losses);
  return changingNozzle(
    {
      spec,
      whole,
      change: () =>
        switchBetween(spec.switchAmbient, short, whole, {
          thick: modeOf('skirt drawn up', short, (radius, chamber) => drawnUp(spec, radius, chamber)),
          thin: modeOf('skirt out', whole),
        }),
      omitted: [
        ...new Set([...short.omitted, ...whole.omitted]),
        'Mass and drive of the skirt, the gap where it joins, and the moments while it moves.',
      ],
      models: ['nozzle-skirt', ...new Set([...short.models, ...whole.models])],
    },
    expansion,
  );
}

/** The short bell with the skirt round it, moved forward along the axis by its own length. */
function drawnUp(spec: ExtendableSkirtSpec, throatRadius: number, chamber: ChamberShape): Contour {
  const front = chamberAndNozzleContour(shortBell(spec), throatRadius, chamber);
  const whole = chamberAndNozzleContour(wholeBell(spec), throatRadius, chamber);
  const cut = front.wall.at(-1)!;
  const moved = whole.nozzleLength - cut.axial;
  const rear = whole.wall.filter(({ axial }) => axial > cut.axial);
  const skirt: ContourBody = {
    name: 'skirt',
    solid: false,
    outline: [cut, ...rear].map(({ axial, radius }) => ({ axial: axial - moved, radius })),
  };
  return { ...front, bodies: [skirt] };
}
