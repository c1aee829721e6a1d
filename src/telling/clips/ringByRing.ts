/** A nozzle growing ring by ring, and beside it the running sum of what each ring pushes or pulls. */

import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { drawnEngines } from '../figures/drawnEngines.ts';
import { footOf, whereWords } from '../figures/findings.ts';
import { frame } from '../figures/frame.ts';
import type { Altitude } from '../figures/options.ts';
import { layoutOf } from '../look/formats.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import { group, type Scene } from '../scene/scene.ts';
import type { Movement } from './clip.ts';
import { forceText, forceUnit } from './forceText.ts';
import { growingSection, sectionPlan } from './growingSection.ts';
import { liveEngines } from './liveEngines.ts';
import type { ClipOptions } from './options.ts';
import { type ReadoutPart, readoutLine } from './readout.ts';
import { runningSum } from './runningSum.ts';
import { LOSSES, thrustRings } from './thrustRings.ts';

/** Over the thrust: less is no digit of what is shown [–]. */
const TOLD_OFFSET = 5e-5;

export interface RingOptions extends ClipOptions {
  /** Id; absent: the first engine drawn. */ readonly engine?: string;
  readonly altitude: Altitude;
}

export function ringByRing(solved: SolvedStudy, options: RingOptions): Movement {
  const { answer } = solved;
  const layout = layoutOf(options.size);
  const { engines } = drawnEngines(answer, 4, options.styles);
  const drawn = engines.find(({ engine }) => engine.id === (options.engine ?? engines[0]?.engine.id));
  const row = drawn && liveEngines(solved).rowsAt(options.altitude)[drawn.engine.id];
  if (drawn === undefined || row === undefined) throw noEngine(options.engine, Object.keys(answer.engines));
  const { engine } = drawn;
  const { pieces, thrust, largestOffset } = thrustRings(engine, row);
  const where = whereWords(options.altitude);
  const unit = forceUnit(pieces);
  const title =
    options.title ??
    `${engine.name} ${where.charAt(0).toLowerCase()}${where.slice(1)}: pushes and pulls add up to ${forceText(thrust, unit)}.`;
  const around = frame(
    layout,
    {
      title,
      subtitle: 'Filled pushes forwards, hollow pulls back; the push of the air is taken off in each ring',
      foot: footOf(
        answer,
        [drawn],
        [],
        [
          'From the pressure of the gas on the wall, less that of the air. Losses: friction, slow chemistry and what else the budget lists.',
        ],
      ),
    },
    options,
  );
  const { content } = around;
  const size = 1.05 * layout.type.label;
  const head = 1.5 * size;
  const box = { ...content, y: content.y + head, height: content.height - head };
  const plan = sectionPlan(engine, box, layout);
  const sum = runningSum(pieces, plan, drawn.style, unit, layout);
  const section = growingSection(engine, pieces, plan, drawn.style, layout);
  const widest = widestTexts(pieces, unit);
  return {
    name: `rings-${engine.id}`,
    title,
    description: `${title} ${pieces.length} pieces from the injector face to the lip, then the losses. ${answer.caution}`,
    notes: [
      `Steady flow ${where.charAt(0).toLowerCase()}${where.slice(1)}; air outside ${formatPressure(row.ambientPressure)}.`,
      'The order from injector to lip is one of counting: all rings push at the same time.',
      ...(largestOffset < TOLD_OFFSET
        ? []
        : [
            `The rings of a surface are put right by one small uniform pressure, so that they add up to its push: by ${(100 * largestOffset).toFixed(2)}\u00a0% of the thrust at most.`,
          ]),
    ],
    at(share): Scene {
      const count = Math.min(pieces.length, Math.floor(share * pieces.length + 1e-9));
      const last = pieces[count - 1];
      const readout: readonly ReadoutPart[] =
        last === undefined
          ? []
          : [
              {
                text: last.surface === LOSSES ? 'losses' : last.surface,
                widest: widest.surface,
                isWords: true,
                weight: 700,
                fill: 'ink',
              },
              {
                text: forceText(last.force, unit, true),
                widest: widest.force,
                weight: 400,
                fill: 'ink',
                gap: 0.5,
              },
              { text: 'together', weight: 400, fill: 'ink-2', gap: 1 },
              { text: forceText(last.sum, unit), widest: widest.sum, weight: 700, fill: 'ink', gap: 0.4 },
            ];
      return {
        width: layout.width,
        height: layout.height,
        title,
        description: title,
        theme: options.theme,
        transparent: options.transparent ?? false,
        children: [
          ...around.nodes,
          ...sum.axis,
          group('section', section(count)),
          group('sum', sum.bars(count)),
          ...readoutLine(readout, content.x, content.y + 0.85 * size, size),
        ],
      };
    },
  };
}

function widestTexts(
  pieces: readonly { readonly surface: string; readonly force: number; readonly sum: number }[],
  unit: ReturnType<typeof forceUnit>,
): { readonly surface: string; readonly force: string; readonly sum: string } {
  const longest = (texts: readonly string[]): string =>
    texts.reduce((long, text) => (text.length > long.length ? text : long), '');
  return {
    surface: longest(pieces.map(({ surface }) => surface)),
    force: longest(pieces.map(({ force }) => forceText(force, unit, true))),
    sum: longest(pieces.map(({ sum }) => forceText(sum, unit))),
  };
}

function noEngine(wanted: string | undefined, known: readonly string[]): ProblemError {
  return new ProblemError({
    code: 'clip-engine-unknown',
    what:
      wanted === undefined
        ? 'There is no engine to draw.'
        : `The study has no engine “${wanted}” that could be drawn.`,
    mend: `Engines of this study: ${known.join(', ')}.`,
  });
}
