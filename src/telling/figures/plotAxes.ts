/** A plot of one quantity over another: two scales with round ticks, their grid and their words. */

import type { DisplayUnit } from '../../answer/catalogue.ts';
import { roundSteps } from '../../numerics/roundSteps.ts';
import { textWidth, wrapAtMost } from '../look/measureText.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { segment } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type PanelStyle, tickCount } from './overAltitudeAxes.ts';

/** What is told along one side. */
export interface Side {
  /** [SI] */ readonly from: number;
  readonly to: number;
  /** Equal ratios take equal room. */ readonly inRatios: boolean;
  readonly unit: DisplayUnit;
  readonly label: string;
}

export interface Plot {
  readonly box: Box;
  /** x of a value [SI]. */ readonly x: (value: number) => number;
  /** y of a value [SI]. */ readonly y: (value: number) => number;
  readonly grid: readonly SceneNode[];
  readonly words: readonly SceneNode[];
}

/** Lays the plot into a box: the words of the upright side stand above it, those of the other below. */
export function plotIn(box: Box, across: Side, up: Side, { type, line }: PanelStyle): Plot {
  const heads = wrapAtMost(titleOf(up), box.width, type.label, 400, 2);
  const head = 1.15 * type.label * heads.length;
  const foot = 2.75 * type.label;
  const plotTop = box.y + head + 0.5 * type.label;
  const height = box.height - (plotTop - box.y) - foot;
  const rows = ticksOf(up, Math.max(2, Math.min(6, Math.floor(height / (2 * type.label)))));
  const room = Math.max(0, ...rows.map(({ text }) => textWidth(text, type.label, 400)));
  const left = box.x + room + 0.4 * type.label;
  const plot = { x: left, y: plotTop, width: box.x + box.width - left, height };
  const columns = ticksOf(across, tickCount(plot.width, type.label));
  const x = (value: number): number => plot.x + shareOf(across, value) * plot.width;
  const y = (value: number): number => plot.y + plot.height - shareOf(up, value) * plot.height;
  const [right, bottom] = [plot.x + plot.width, plot.y + plot.height];
  const d =
    rows.map((tick) => segment(plot.x, y(tick.value), right, y(tick.value))).join('') +
    columns.map((tick) => segment(x(tick.value), plot.y, x(tick.value), bottom)).join('');
  const word = (
    text: string,
    at: { x: number; y: number },
    anchor: 'start' | 'middle' | 'end',
    quiet = false,
  ) =>
    ({
      kind: 'text',
      ...at,
      text,
      size: type.label,
      weight: 400,
      anchor,
      fill: quiet ? 'ink-2' : 'ink',
    }) as const;
  const below = bottom + 1.15 * type.label;
  const [foundation] = wrapAtMost(titleOf(across), box.width, type.label, 400, 1);
  return {
    box: plot,
    x,
    y,
    grid: [
      { kind: 'path', d, stroke: 'rule', strokeWidth: line.grid },
      {
        kind: 'path',
        d: segment(plot.x, plot.y, plot.x, bottom) + segment(plot.x, bottom, right, bottom),
        stroke: 'rule-2',
        strokeWidth: line.grid,
      },
    ],
    words: [
      ...heads.map((text, i) =>
        word(text, { x: box.x, y: box.y + (0.88 + 1.15 * i) * type.label }, 'start', true),
      ),
      ...rows.map((tick) =>
        word(tick.text, { x: plot.x - 0.4 * type.label, y: y(tick.value) + 0.33 * type.label }, 'end'),
      ),
      ...columns.map((tick) => {
        // The words of the first and the last tick stay inside the box.
        const half = textWidth(tick.text, type.label, 400) / 2;
        const middle = Math.min(x(tick.value), box.x + box.width - half);
        return word(tick.text, { x: middle, y: below }, 'middle');
      }),
      word(foundation ?? '', { x: plot.x + plot.width / 2, y: below + 1.15 * type.label }, 'middle', true),
    ],
  };
}

const titleOf = ({ label, unit }: Side): string => (unit.symbol === '' ? label : `${label}, ${unit.symbol}`);

function shareOf({ from, to, inRatios }: Side, value: number): number {
  return inRatios ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
}

interface Tick {
  /** [SI] */ readonly value: number;
  readonly text: string;
}

function ticksOf({ from, to, inRatios, unit }: Side, most: number): readonly Tick[] {
  const [low, high] = [from * unit.perSI, to * unit.perSI];
  const ratios = inRatios ? ratioSteps(low, high, most) : [];
  const steps = ratios.length > 1 ? ratios : roundSteps(low, high, most);
  return steps.map((step) => ({ value: step / unit.perSI, text: formatNumber(step, 4, true) }));
}

const ROUND_IN_RATIOS = [[1, 2, 5], [1, 3], [1]] as const;

/** 1, 2 and 5 times powers of ten, or fewer where there is no room for all: at last every second power, every third … */
function ratioSteps(low: number, high: number, most: number): readonly number[] {
  for (const digits of ROUND_IN_RATIOS) {
    const steps: number[] = [];
    for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++) {
      steps.push(...digits.map((digit) => Number(`${digit}e${power}`)));
    }
    const seen = steps.filter((step) => step >= low * (1 - 1e-9) && step <= high * (1 + 1e-9));
    if (seen.length <= most) return seen;
    if (digits.length === 1) {
      const every = Math.ceil(seen.length / most);
      return seen.filter((_, k) => (seen.length - 1 - k) % every === 0);
    }
  }
  return [];
}
