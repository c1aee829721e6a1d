/** Sizes of type, line and margin for each format a figure is made in. */

import { ProblemError } from '../../numerics/problem.ts';

export type FigureFormat = '16:9' | '9:16' | '1:1' | 'print';
export type FigureSize = FigureFormat | { readonly width: number; readonly height: number };

export interface TypeSizes {
  /** The finding. */ readonly title: number;
  /** What is shown. */ readonly subtitle: number;
  /** Axis and direct labels. */ readonly label: number;
  /** The second axis, legends of the ramp. */ readonly small: number;
  /** The foot. */ readonly foot: number;
}

export interface LineSizes {
  readonly metal: number;
  readonly curve: number;
  readonly plumb: number;
  readonly leader: number;
  readonly axisOfSymmetry: number;
  readonly leftAway: number;
  readonly isobar: number;
  readonly isobarDecade: number;
  readonly grid: number;
  /** Radius of a marker. */ readonly marker: number;
}

export interface Layout {
  readonly width: number;
  readonly height: number;
  /** Nothing that matters lies outside. `bottom` and `right` are what upright formats keep free. */
  readonly safe: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  /** Upright formats keep the right edge free of all but axis labels; this is how far those may go. */
  readonly axisRight: number;
  readonly type: TypeSizes;
  readonly line: LineSizes;
  readonly upright: boolean;
}

/** Lines of an export with a short side of 1080. */
const EXPORT_LINES: LineSizes = {
  metal: 6,
  curve: 7,
  plumb: 3,
  leader: 2.4,
  axisOfSymmetry: 1.6,
  leftAway: 2,
  isobar: 1,
  isobarDecade: 1.8,
  grid: 2,
  marker: 13,
};

/** Lines of the workbench at 1×. */
export const SCREEN_LINES: LineSizes = {
  metal: 3,
  curve: 2.4,
  plumb: 1.4,
  leader: 1,
  axisOfSymmetry: 0.7,
  leftAway: 0.8,
  isobar: 0.45,
  isobarDecade: 0.8,
  grid: 1,
  marker: 5,
};

/** Type of the workbench at 1×. */
export const SCREEN_TYPE: TypeSizes = { title: 27, subtitle: 17, label: 13, small: 13, foot: 13 };

/** Smallest width and height of a figure [px]; below, its labels could not be read. */
export const SMALLEST_FIGURE = 480;
/** Largest width and height of a figure [px]. */
export const LARGEST_FIGURE = 8192;

const scaledLines = (factor: number): LineSizes =>
  Object.fromEntries(
    Object.entries(EXPORT_LINES).map(([name, px]) => [name, px * factor]),
  ) as unknown as LineSizes;

const scaledType = (type: TypeSizes, factor: number): TypeSizes =>
  Object.fromEntries(Object.entries(type).map(([name, px]) => [name, px * factor])) as unknown as TypeSizes;

const WIDE_TYPE: TypeSizes = { title: 60, subtitle: 38, label: 40, small: 34, foot: 29 };
const UPRIGHT_TYPE: TypeSizes = { title: 64, subtitle: 38, label: 42, small: 34, foot: 31 };
const SQUARE_TYPE: TypeSizes = { title: 54, subtitle: 34, label: 40, small: 32, foot: 28.5 };

/** The layout of a format, or of a size of one's own. */
export function layoutOf(size: FigureSize): Layout {
  switch (size) {
    case '16:9':
      return layout(1920, 1080);
    case '9:16':
      return layout(1080, 1920);
    case '1:1':
      return layout(1080, 1080);
    case 'print':
      // An A5 page laid wide, less margins, at 300 dots an inch would be 2244 wide; drawn as vectors at 1600 × 1130.
      return layout(1600, 1130);
    default:
      return layout(size.width, size.height);
  }
}

function layout(width: number, height: number): Layout {
  for (const [side, px] of [
    ['width', width],
    ['height', height],
  ] as const)
    if (!(px >= SMALLEST_FIGURE && px <= LARGEST_FIGURE))
      throw new ProblemError({
        code: 'figure-size',
        what: `A figure cannot have a ${side} of ${px} px.`,
        why: 'Its words would be unreadable, or the picture too large to make.',
        mend: `Choose a ${side} from ${SMALLEST_FIGURE} to ${LARGEST_FIGURE} px.`,
        facts: { [side]: px },
      });
  const upright = height > 1.25 * width;
  const square = !upright && width < 1.25 * height;
  const factor = Math.min(width, height) / 1080;
  const type = scaledType(upright ? UPRIGHT_TYPE : square ? SQUARE_TYPE : WIDE_TYPE, factor);
  const safe = {
    left: 0.05 * width,
    top: 0.05 * height,
    right: width * (1 - (upright ? 0.12 : 0.05)),
    bottom: height * (1 - (upright ? 0.15 : 0.05)),
  };
  return { width, height, safe, axisRight: 0.95 * width, type, line: scaledLines(factor), upright };
}
