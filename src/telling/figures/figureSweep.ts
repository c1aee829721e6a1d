/** Curves over one input, as a figure with head and foot. */

import { CAUTION } from '../../answer/caution.ts';
import { nameOf, sweepFindings, sweepHeadline } from '../../answer/sweeps/index.ts';
import type { Sweep } from '../../answer/sweeps/model.ts';
import { ENGINE_STYLES } from '../look/engineStyles.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { frame } from './frame.ts';
import { measuredWords } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import { measuredOnCurves } from './sweepMeasured.ts';
import { isOnRange, sweepPanels } from './sweepPanel.ts';
import { joined, nowWords } from './sweepWords.ts';

export function figureSweep(sweep: Sweep, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const title = options.title ?? sweep.request.title ?? joined(findingOf(sweep), sweep.curves, [sweep.range]);
  const around = frame(
    layout,
    {
      title,
      subtitle: joined(subtitleOf(sweep, title), sweep.curves, [sweep.range]),
      foot: [...measuredWordsOf(sweep, options), ...footOf(sweep)],
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: sweepDescription(sweep),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...sweepPanels(sweep, around.content, layout, options)],
  };
}

function measuredWordsOf(sweep: Sweep, { measured = [] }: FigureOptions): readonly string[] {
  const style = ENGINE_STYLES[0];
  const all = measuredOnCurves(sweep, measured).map(({ series }) => ({ ...series, drawn: { style } }));
  return measuredWords(all, isOnRange(sweep.range));
}

/** That a place lies beside a hole is seen: the hole is hatched. */
function findingOf(sweep: Sweep): string {
  return sweepHeadline(sweep).replaceAll(', beside a stretch without values', '');
}

/** What is followed, where the title does not say it, and what is held. */
function subtitleOf(sweep: Sweep, title: string): string {
  const { curves, range, held } = sweep;
  const [first] = curves;
  const what =
    first === undefined || (curves.length === 1 && title.startsWith(nameOf(first)))
      ? ''
      : `${placedWords(sweep)} against ${range.label}. `;
  return `${what}${held.short}`;
}

/** `Specific impulse in vacuum`, where all curves are of one quantity at one place. */
function placedWords({ curves }: Sweep): string {
  const labels = [...new Set(curves.map(({ label }) => label))];
  const places = [...new Set(curves.map(({ parts }) => parts?.place ?? ''))];
  const where = labels.length === 1 && places.length === 1 && places[0] !== '' ? ` ${places[0]}` : '';
  return `${capital(labels.join(' and '))}${where}`;
}

function footOf(sweep: Sweep): readonly string[] {
  const { curves, range, held, origin } = sweep;
  const bands = [...new Set(curves.flatMap(({ bandOf }) => bandOf))];
  const holes = curves.flatMap((curve) => curve.holes.map(({ problem }) => problem.what));
  return [
    ...(sweep.provisional ? ['Still being worked out.'] : []),
    ...[...new Set(holes)].map((what) => `Hatched: ${what}`),
    ...nowWords([range]),
    ...held.lines,
    bands.length > 0
      ? `Bands hold 95 % of the published spread of ${bands.join(', ')}.`
      : 'Spread not drawn.',
    ...(origin.models.length > 0 ? [`Models: ${origin.models.join(', ')}.`] : []),
  ];
}

export function sweepDescription(sweep: Sweep): string {
  const { range, held } = sweep;
  return [
    `${placedWords(sweep)} against ${range.label}.`,
    ...sweepFindings(sweep),
    held.short,
    ...held.lines,
    CAUTION,
  ].join(' ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
