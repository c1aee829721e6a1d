import { CAUTION } from '../../../answer/caution.ts';
import { show } from '../../../answer/display.ts';
import type { MeasuredPoint, MeasuredSeries } from '../../../answer/measured/model.ts';
import { measuredCsv } from '../../../telling/measuredTable.ts';
import { openDataShelf } from '../../disk/data.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { measuredOf } from '../measuredOf.ts';
import { openStudy } from '../openStudy.ts';
import type { Terminal } from '../terminal.ts';
import { tableText } from '../text/table.ts';
import { wrapped } from '../text/wrap.ts';

export interface MeasuredFlags {
  readonly json?: true;
  readonly csv?: true;
}

export async function measuredCommand(
  given: string,
  flags: MeasuredFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const shelf = openDataShelf();
  const { study, folder } = await openStudy(given, shelf, terminal);
  const series = await measuredOf(study, folder, shelf);
  if (flags.json)
    terminal.out(JSON.stringify({ format: 'plumeline measured 1', caution: CAUTION, series }, null, 2));
  else if (flags.csv) terminal.out(measuredCsv(series).trimEnd());
  else
    terminal.out(
      [...series.map(seriesText), ...notes(series.length), CAUTION]
        .map((text) => fitted(text, terminal.width))
        .join('\n\n'),
    );
  return EXIT.answered;
}

const notes = (count: number): readonly string[] =>
  count > 0 ? [] : ['The study has no measured points: see `measured` in docs/study-file.md.'];

/** Tables keep their lines. */
const fitted = (text: string, width: number): string => (text.includes('\n') ? text : wrapped(text, width));

function seriesText(series: MeasuredSeries): string {
  const { quantity, engineName, source, rms, bias } = series;
  const rows = series.points.map((point) => ({
    label: placeText(series, point),
    cells: cellsOf(series, point),
  }));
  const summary =
    rms === null || bias === null
      ? 'No point could be computed.'
      : `Root mean square of the residuals ${show(quantity, rms, 3).text}, mean ${show(quantity, bias, 3).text}.`;
  return [
    tableText({
      names: ['measured', 'computed', 'residual', 'agrees'],
      groups: [{ heading: `${engineName}: ${quantity}, from ${source}`, rows }],
    }),
    summary,
  ].join('\n');
}

function placeText({ place }: MeasuredSeries, { at }: MeasuredPoint): string {
  return place === 'altitude' || place === 'ambientPressure' || place === 'wall.axial'
    ? show(place, at, 3).text
    : `${place} ${Number(at.toPrecision(4))}`;
}

function cellsOf({ quantity }: MeasuredSeries, point: MeasuredPoint): readonly string[] {
  const { value, plusMinus, computed, residual, share, agrees, problem } = point;
  if (computed === null || residual === null)
    return [show(quantity, value).text, problem?.what ?? '', '', ''];
  const percent = share === null ? '' : ` (${show('comparison.share', share, 2).text})`;
  return [
    `${show(quantity, value).text}${plusMinus === null ? '' : ` ± ${show(quantity, plusMinus, 2).text}`}`,
    show(quantity, computed).text,
    `${show(quantity, residual, 2).text}${percent}`,
    agrees === null ? '' : agrees ? 'yes' : 'no',
  ];
}
