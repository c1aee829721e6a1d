/** On the altitude strip: where each engine's exit matches the air, marked and said beside it. */

import { marker, type Words, wordsAt } from '../../../telling/figures/marks.ts';
import type { OverAltitudePanel } from '../../../telling/figures/overAltitude.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { formatAltitude } from '../../../telling/numbers/formatNumber.ts';
import { segment } from '../../../telling/scene/pathData.ts';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import type { ShownEngine } from '../state/pair.ts';

/** Where the words of the first engine end and those of the second begin, from the column's edges [px]. */
export const wordsOff = 52;

/** Geometric [m]; null where there is none on the scale. */
export function matchedAltitude(result: ShownEngine['result']): number | null {
  const altitude = result.ok ? result.answer.matched.altitude : null;
  return altitude === null || altitude > 40_000 || altitude < 0 ? null : altitude;
}

export function matchWords({ nozzle }: ShownEngine['input']): string {
  switch (nozzle.kind) {
    case 'adapting':
      return 'fully open';
    // The lip of a plug has the air's pressure nearly everywhere: the altitude is that of its design.
    case 'plug':
      return 'made for';
    default:
      return 'exit matches the air';
  }
}

export function matchMarks(
  panel: OverAltitudePanel,
  engines: readonly ShownEngine[],
  onlyMarks: boolean,
): readonly SceneNode[] {
  return engines.flatMap(({ result, side, style, input }): readonly SceneNode[] => {
    const altitude = matchedAltitude(result);
    if (altitude === null) return [];
    const y = panel.axis.y(altitude);
    const x = panel.strip.x + panel.strip.width / 2;
    const sign = marker(style, x, y, 0.85 * SCREEN_LINES.marker);
    if (onlyMarks) return [sign];
    const line = (text: string, weight: 400 | 600): Words => ({
      text,
      size: SCREEN_TYPE.small,
      weight,
      fill: 'ink',
    });
    const what = matchWords(input);
    const words = [line(what, 600), line(formatAltitude(altitude), 400)];
    const right = panel.plot.x + panel.plot.width;
    const first = side === 'first';
    const edge = first ? panel.strip.x - wordsOff : right + wordsOff;
    const leader: SceneNode = {
      kind: 'path',
      d: first ? segment(edge + 6, y, x, y) : segment(x, y, edge - 6, y),
      stroke: style.colour,
      strokeWidth: SCREEN_LINES.leader,
      strokeOpacity: 0.8,
      ...(style.dash.length > 0 ? { dash: style.dash.map((length) => length * 1.6) } : {}),
    };
    return [
      leader,
      sign,
      ...wordsAt(words, edge, y - 0.7 * SCREEN_TYPE.small, first ? 'end' : 'start', true),
    ];
  });
}
