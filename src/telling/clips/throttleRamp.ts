/** Engines cut open while they throttle, at one altitude: each step is an engine solved at that chamber pressure. */

import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { type CutPlace, cutPanel } from '../figures/cutPanel.ts';
import { cutDescription } from '../figures/describe.ts';
import { drawnEngines } from '../figures/drawnEngines.ts';
import { colourWords, notionalWords } from '../figures/figureCutView.ts';
import { footOf, whereWords } from '../figures/findings.ts';
import { frame } from '../figures/frame.ts';
import type { Altitude } from '../figures/options.ts';
import { layoutOf } from '../look/formats.ts';
import { formatSpoken } from '../numbers/formatNumber.ts';
import { plainText } from '../scene/safeText.ts';
import type { Scene } from '../scene/scene.ts';
import type { Movement } from './clip.ts';
import type { ClipOptions } from './options.ts';
import { READOUT_LEADING, type ReadoutPart, readoutLine, readoutLines } from './readout.ts';
import { type Anew, throttledEngines } from './throttledEngines.ts';

export interface ThrottleOptions extends ClipOptions {
  readonly altitude: Altitude;
  /** Chamber pressure over the stated one at the start and at the end [–]. */ readonly fromShare: number;
  readonly toShare: number;
}

/** Throttles are shown in whole steps of this, so that what is drawn is what is said [–]. */
const STEP = 0.02;

export function throttleRamp(solved: SolvedStudy, anew: Anew, options: ThrottleOptions): Movement {
  const { altitude, fromShare, toShare } = options;
  if (fromShare === toShare) throw standsStill(fromShare);
  const layout = layoutOf(options.size);
  const { engines, leftOut } = drawnEngines(solved.answer, 2, options.styles);
  const ids = engines.map(({ engine }) => engine.id);
  const at = throttledEngines(solved, anew, ids, altitude);
  const steps = Math.max(1, Math.round(Math.abs(toShare - fromShare) / STEP));
  const throttleAt = (share: number): number =>
    Number((fromShare + (Math.round(share * steps) / steps) * (toShare - fromShare)).toFixed(6));
  const places = [0, 0.25, 0.5, 0.75, 1].map(
    (share): CutPlace => ({ altitude, rows: at(throttleAt(share)).rows }),
  );
  const separates = places.some(({ rows }) => ids.some((id) => rows[id]?.flow.state === 'separated'));
  const where = whereWords(altitude);
  const title = options.title ?? `${where}, throttle from ${percent(fromShare)} to ${percent(toShare)}.`;
  const around = frame(
    layout,
    {
      title,
      subtitle: `${colourWords(engines)}; ${separates ? 'behind the place where gas leaves a wall nothing is computed; ' : ''}dashed plume a sketch`,
      foot: footOf(
        solved.answer,
        engines,
        leftOut,
        [
          'Throttle: chamber pressure over the stated one, in steps of 2 %; throat, mixture ratio and efficiency stay. Steady flow.',
          ...notionalWords(engines),
        ],
        ['nozzle-thrust'],
      ),
    },
    options,
  );
  const size = 1.1 * layout.type.label;
  const groupsAt = (throttle: number): readonly (readonly ReadoutPart[])[] => [
    [
      { text: 'throttle', weight: 400, fill: 'ink-2' },
      {
        text: percent(throttle),
        widest: percent(Math.max(1, fromShare, toShare)),
        weight: 700,
        fill: 'ink',
        gap: 0.3,
      },
    ],
    ...engines.map(({ engine, style }): readonly ReadoutPart[] => {
      const thrust = at(throttle).rows[engine.id]?.thrust ?? null;
      return [
        { text: plainText(engine.name), weight: 700, fill: style.colour },
        {
          text: thrust === null ? 'no value' : formatSpoken('thrust', thrust),
          widest: 'no value',
          weight: 400,
          fill: 'ink',
          gap: 0.3,
        },
      ];
    }),
  ];
  const { content } = around;
  const leading = READOUT_LEADING * size;
  const top = readoutLines(groupsAt(fromShare), content.width, size).length * leading + 0.3 * size;
  const box = { ...content, y: content.y + top, height: content.height - top };
  return {
    name: 'cut-throttle',
    title,
    description: `${title} ${cutDescription(solved.answer, altitude, options)}`,
    notes: [
      'Each step is solved anew at its chamber pressure; the throat, the mixture ratio and the efficiency of combustion stay as stated.',
      'Not modelled: what injector, pumps and combustion do at part throttle, and the course from one throttle to the next.',
    ],
    at(share): Scene {
      const throttle = throttleAt(share);
      const { answer, rows } = at(throttle);
      const panel = cutPanel(answer, altitude, box, layout, { ...options, rows, alsoAt: places });
      const lines = readoutLines(groupsAt(throttle), content.width, size);
      return {
        width: layout.width,
        height: layout.height,
        title,
        description: cutDescription(answer, altitude, options),
        theme: options.theme,
        transparent: options.transparent ?? false,
        children: [
          ...around.nodes,
          ...panel.nodes,
          ...lines.flatMap((line, i) =>
            readoutLine(line, content.x, content.y + 0.85 * size + i * leading, size),
          ),
        ],
      };
    },
  };
}

const percent = (share: number): string => `${Math.round(100 * share)}\u00a0%`;

function standsStill(share: number): ProblemError {
  return new ProblemError({
    code: 'clip-stands-still',
    what: `A throttle that goes from ${percent(share)} to ${percent(share)} does not move.`,
    mend: 'Give two different throttles.',
  });
}
