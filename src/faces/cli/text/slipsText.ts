/** What a film says otherwise than its script, as a list to correct by. */

import type { FilmRead, Slip } from '../../../telling/film/model.ts';
import { placeInFilm } from '../../../telling/script/index.ts';
import { counted } from './counted.ts';
import { padEnd, wrapped } from './wrap.ts';

export function slipsText(
  { slips, scenes, said }: FilmRead,
  chapters: string,
  caution: string,
  width: number,
): string {
  const head = `${slips.length === 0 ? 'No slips' : counted(slips.length, 'slip')}; ${Math.round(100 * said)}\u00a0% of the script’s words are said.`;
  const times = scenes.map(
    ({ name, start, end }) =>
      `  ${padEnd(start === null || end === null ? 'not said' : `${placeInFilm(start)}–${placeInFilm(end)}`, 16)} ${name}`,
  );
  return [
    wrapped(head, width),
    ...(slips.length === 0 ? [] : [slips.map((slip) => slipText(slip, width)).join('\n')]),
    ['Scenes in the film', ...times].join('\n'),
    ...(chapters === '' ? [] : [`Chapters\n${chapters.trimEnd()}`]),
    wrapped(caution, width),
  ].join('\n\n');
}

function slipText({ time, line, sentence, words }: Slip, width: number): string {
  const where = [
    line === null ? 'outside the script' : `line ${line}`,
    ...(sentence === null ? [] : [`sentence ${sentence}`]),
  ];
  return wrapped(
    `${padEnd(placeInFilm(time), 8)} ${words} (${where.join(', ')})`,
    width,
    '           ',
    '  ',
  );
}
