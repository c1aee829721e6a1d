/** Scenes and live numbers of a script as comma-separated values, in the order in which they are told. */

import { csvOf } from '../csvCell.ts';
import { plainText } from '../scene/safeText.ts';
import type { ResolvedScript } from '../script/model.ts';
import { resolvedNumbersIn } from '../script/resolveScript.ts';
import type { MediaOf } from './mediaSlots.ts';
import type { TimedCut } from './timedCuts.ts';

const NUMBERS = [
  'scene',
  'line',
  'expression',
  'shown',
  'spoken',
  'value (SI)',
  'low (SI)',
  'high (SI)',
  'unit shown',
];

/** RFC 4180; the line below the head carries the caution. */
export function numbersByScene({ scenes }: ResolvedScript, caution: string): string {
  const rows = scenes.flatMap(({ scene, lines }) =>
    lines.flatMap((line) =>
      resolvedNumbersIn(line).map(({ piece, text, spoken, value, low, high, unit }) => [
        scene.id,
        line.line.id,
        piece.expression,
        text,
        spoken,
        ...[value, low, high].map((number) => (number === null ? '' : String(number))),
        unit,
      ]),
    ),
  );
  return csvOf([NUMBERS, ['', '', '', caution, '', '', '', '', ''], ...rows]);
}

const SCENES = ['cut', 'scene', 'name', 'start (s)', 'length (s)', 'words', 'shown', 'file'];

export function scenesTable(cuts: readonly TimedCut[], mediaOf: MediaOf, caution: string): string {
  const rows = cuts.flatMap(({ name, resolved, timed }) =>
    timed.scenes.map((scene) => {
      const shown = resolved.scenes.find((one) => one.scene.id === scene.id)?.scene.shown ?? [];
      const files = shown.flatMap((one) => mediaOf(name, scene.id, one)?.file ?? []);
      return [
        name || 'whole',
        scene.id,
        plainText(scene.name),
        String(scene.start),
        String(scene.seconds),
        String(scene.lines.reduce((sum, { words }) => sum + words, 0)),
        shown.map(({ words }) => plainText(words)).join('; '),
        files.join(' '),
      ];
    }),
  );
  return csvOf([SCENES, ['', '', caution, '', '', '', '', ''], ...rows]);
}
