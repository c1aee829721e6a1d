/** `--theme` and `--png` of whatever draws a figure to a file. */

import { quote } from '../../study/report.ts';
import type { Theme } from '../../telling/look/tokens.ts';
import { BadInput } from './badInput.ts';
import { choiceFrom } from './choiceFlag.ts';

const THEMES: readonly Theme[] = ['light', 'dark', 'print'];
/** [px] */
const WIDTHS = { least: 64, most: 16_384 };

/** Without a word a print is black on white, all else light. @throws BadInput with what to mend */
export const themeFrom = (given: string | undefined, size: string | undefined): Theme =>
  choiceFrom(given ?? (size === 'print' ? 'print' : 'light'), THEMES, '--theme');

/** [px] of a PNG; null: as it is laid out. @throws BadInput where it is no width, or the file is no PNG */
export function widthFrom(given: string | undefined, ending: string): number | null {
  if (given === undefined) return null;
  if (ending !== '.png')
    throw bad(
      'png-elsewhere',
      '--png stands beside a file that is no PNG.',
      'End the file of --out in .png.',
    );
  const width = Number(given);
  if (Number.isInteger(width) && width >= WIDTHS.least && width <= WIDTHS.most) return width;
  throw bad(
    'png-width',
    `--png: ${quote(given)} is no width.`,
    `Give pixels from ${WIDTHS.least} to ${WIDTHS.most}.`,
  );
}

const bad = (code: string, what: string, mend: string): BadInput => new BadInput([{ code, what, mend }]);
