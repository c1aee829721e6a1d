/** What the options of a figure ask for. */

import { extname } from 'node:path';
import { quote } from '../../study/report.ts';
import type { FramePart } from '../../telling/figures/frame.ts';
import type { FigureOptions } from '../../telling/figures/options.ts';
import { BadInput } from './badInput.ts';
import { altitudeList } from './conditionLists.ts';
import { themeFrom, widthFrom } from './pictureFlags.ts';
import { figureSizeFrom } from './sizeFlag.ts';

export interface DrawFlags {
  readonly figure?: string;
  readonly list?: true;
  readonly altitude?: string;
  readonly size?: string;
  readonly theme?: string;
  readonly png?: string;
  readonly transparent?: true;
  readonly fonts?: true;
  readonly without?: string;
  readonly title?: string;
  readonly out?: string;
}

export interface DrawChoices {
  readonly figure: string;
  readonly out: string;
  readonly options: FigureOptions;
  /** [px] of a PNG; null: as it is laid out. */ readonly width: number | null;
  /** Fonts inside an SVG. */ readonly fonts: boolean;
}

const ENDINGS = ['.svg', '.png', '.csv', '.txt'];
const PARTS: readonly FramePart[] = ['title', 'subtitle', 'notes'];

const bad = (code: string, what: string, mend: string): BadInput => new BadInput([{ code, what, mend }]);

/** Null where only the list is wanted. @throws BadInput with what to mend */
export function drawChoices(flags: DrawFlags): DrawChoices | null {
  if (flags.list === true) return null;
  if (flags.figure === undefined)
    throw bad('figure-missing', 'No figure is named.', 'Give --figure <name>, or --list to see the names.');
  if (flags.out === undefined)
    throw bad('out-missing', 'No file is named.', 'Give --out <file>, ending in .svg, .png, .csv or .txt.');
  const ending = extname(flags.out).toLowerCase();
  if (!ENDINGS.includes(ending))
    throw bad(
      'out-ending',
      `--out: ${quote(flags.out)} does not end in .svg, .png, .csv or .txt.`,
      'The ending says what is written: picture, table or words.',
    );
  return {
    figure: flags.figure,
    out: flags.out,
    width: widthFrom(flags.png, ending),
    fonts: flags.fonts === true,
    options: {
      size: figureSizeFrom(flags.size ?? '16:9'),
      theme: themeFrom(flags.theme, flags.size),
      transparent: flags.transparent === true,
      without: partsOf(flags.without),
      ...(flags.altitude === undefined ? {} : { altitude: altitudeOf(flags.altitude) }),
      ...(flags.title === undefined ? {} : { title: flags.title }),
    },
  };
}

function altitudeOf(text: string): number | 'vacuum' {
  if (text.trim() === 'vacuum') return 'vacuum';
  const [first, ...more] = altitudeList(text);
  if (first === undefined || more.length > 0)
    throw bad(
      'altitude-one',
      '--altitude: a figure stands at one altitude.',
      'Give one, such as 12 km or vacuum.',
    );
  return first;
}

function partsOf(text: string | undefined): readonly FramePart[] {
  if (text === undefined) return [];
  return text.split(',').map((part) => {
    const found = PARTS.find((each) => each === part.trim());
    if (found !== undefined) return found;
    throw bad(
      'without-unknown',
      `--without: ${quote(part.trim())} is no part of a figure that can be left out.`,
      'Give title, subtitle or notes, with commas between them; the caution stays.',
    );
  });
}
