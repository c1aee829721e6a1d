/** The arrows of one engine: upright, true to force, the running sum as the steps between them. */

import { roundedText } from '../../answer/display.ts';
import type { ThrustPartAnswer } from '../../answer/model.ts';
import { textWidth, wrapAtMost } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import { wordsAt } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

export type PushedEngine = DrawnEngine & { readonly parts: readonly ThrustPartAnswer[] };

/** [N] least and greatest running sum over all engines, nothing among them. */
export function spanOfSums(engines: readonly PushedEngine[]): readonly [number, number] {
  const sums = engines.flatMap(({ parts }) => {
    let sum = 0;
    return parts.map(({ force }) => {
      sum += force;
      return sum;
    });
  });
  return [Math.min(0, ...sums), Math.max(0, ...sums)];
}

/** Name of the last arrow. */
const SUM = 'sum';

/** [px] in which the longest word of each surface and each force has its room. */
export function columnFor({ parts }: PushedEngine, size: number): number {
  const words = [...parts.flatMap(({ surface }) => surface.split(' ')), SUM];
  const widest = Math.max(...words.map((word) => textWidth(word, size, 400)));
  return Math.max(widest, textWidth('−0000', size, 600)) + 0.35 * size;
}

/** Shorter arrows have their words only [px at a short side of 1080]. */
const LEAST_ARROW = 4;

interface Foot {
  /** A label a surface, then that of the sum. */ readonly labels: readonly (readonly string[])[];
  /** Names of numbered surfaces. */ readonly list: readonly string[];
  readonly rows: number;
}

/** The words below the arrows; where surfaces go by number their names stand in lines below. */
function footOf({ parts }: PushedEngine, width: number, size: number, numbered: boolean): Foot {
  const column = width / (parts.length + 1);
  const labels = [...parts.map(({ surface }, i) => (numbered ? String(i + 1) : surface)), SUM].map((text) =>
    wrapAtMost(plainText(text), column - 0.1 * size, size, 400, 2),
  );
  const names = parts.map(({ surface }, i) => `${i + 1}\u00a0${surface.replaceAll(' ', '\u00a0')}`);
  const list = numbered ? wrapAtMost(names.join(', '), width, size, 400, 4) : [];
  return { labels, list, rows: Math.max(...labels.map((lines) => lines.length)) + list.length };
}

/** How many rows of words stand below the arrows; all panels of a figure keep the most, so that they have one scale. */
export const rowsBelow = (one: PushedEngine, width: number, size: number, numbered: boolean): number =>
  footOf(one, width, size, numbered).rows;

export interface PushStyle extends PanelStyle {
  readonly numbered: boolean;
  /** Of words below the arrows. */ readonly rows: number;
}

export function pushPanel(
  one: PushedEngine,
  box: Box,
  [least, most]: readonly [number, number],
  { type, line, numbered, rows }: PushStyle,
): readonly SceneNode[] {
  const { engine, style, parts } = one;
  const size = type.foot;
  const name = 1.3 * type.label;
  const value = 1.2 * size;
  const column = box.width / (parts.length + 1);
  const { labels, list: listed, rows: ownRows } = footOf(one, box.width, size, numbered);
  const foot = 1.18 * size * rows + 0.4 * size;
  const top = box.y + name + value;
  const bottom = box.y + box.height - foot - value;
  const scale = (bottom - top) / (most - least || 1);
  const y = (force: number): number => bottom - (force - least) * scale;
  const decimals = decimalsFor(parts);
  const nodes: SceneNode[] = [];
  const words = (text: string, x: number, at: number, weight: 400 | 600): SceneNode => ({
    kind: 'text',
    x,
    y: at,
    text,
    size,
    weight,
    anchor: 'middle',
    fill: 'ink',
    halo: true,
  });
  let sum = 0;
  parts.forEach(({ force }, i) => {
    const x = box.x + (i + 0.5) * column;
    const [from, to] = [y(sum), y(sum + force)];
    sum += force;
    nodes.push(
      {
        kind: 'path',
        d: segment(x - 0.3 * column, to, x + 1.3 * column, to),
        stroke: 'rule-2',
        strokeWidth: line.leader,
      },
      ...(Math.abs(to - from) < (LEAST_ARROW * line.grid) / 2
        ? []
        : [arrow(x, from, to, 0.24 * column, force > 0, line.leader)]),
      words(forceText(force, decimals), x, force > 0 ? to - 0.35 * size : to + size, 600),
    );
  });
  const last = box.x + (parts.length + 0.5) * column;
  nodes.push(
    arrow(last, y(0), y(sum), 0.24 * column, sum > 0, line.leader, style.colour),
    words(forceText(sum, decimals), last, sum > 0 ? y(sum) - 0.35 * size : y(sum) + size, 600),
  );
  return [
    group(`${style.colour} push`, [
      ...wordsAt(
        [{ text: `${plainText(engine.name)}, kN`, size: type.label, weight: 700, fill: style.colour }],
        box.x,
        box.y,
      ),
      ...wordsAt(
        listed.map((text) => ({ text, size, weight: 400 as const, fill: 'ink' as const })),
        box.x,
        box.y + box.height - 1.18 * size * (listed.length + rows - ownRows),
      ),
      {
        kind: 'path',
        d: segment(box.x, y(0), box.x + box.width, y(0)),
        stroke: 'ink',
        strokeWidth: line.leader,
      },
      ...nodes,
      ...labels.flatMap((lines, i) =>
        wordsAt(
          lines.map((text) => ({ text, size, weight: 400 as const, fill: 'ink' as const })),
          box.x + (i + 0.5) * column,
          box.y + box.height - foot + 0.4 * size,
          'middle',
        ),
      ),
    ]),
  ];
}

/** As many decimals of a kilonewton for all as the largest needs for four digits, so that the words add up. */
export function decimalsFor(parts: readonly ThrustPartAnswer[]): number {
  const largest = Math.max(...parts.map(({ force }) => Math.abs(force))) / 1e3;
  return Math.max(0, 3 - Math.floor(Math.log10(largest || 1)));
}

/** In kilonewtons. */
export function forceText(force: number, decimals: number): string {
  const kilonewtons = Number((force / 1e3).toFixed(decimals));
  const digits =
    kilonewtons === 0 ? 1 : Math.max(1, Math.floor(Math.log10(Math.abs(kilonewtons))) + 1 + decimals);
  return roundedText(kilonewtons, digits).replaceAll('\u202f', '\u00a0');
}

/** A broad arrow from one height to another: filled where it pushes, hollow where it pulls back. */
function arrow(
  x: number,
  from: number,
  to: number,
  half: number,
  pushes: boolean,
  strokeWidth: number,
  colour: 'ink' | DrawnEngine['style']['colour'] = 'ink',
): SceneNode {
  const sign = to < from ? -1 : 1;
  const head = Math.min(1.4 * half, Math.abs(to - from));
  const neck = to - sign * head;
  const d = polyline(
    [
      { x: x - 0.5 * half, y: from },
      { x: x - 0.5 * half, y: neck },
      { x: x - half, y: neck },
      { x, y: to },
      { x: x + half, y: neck },
      { x: x + 0.5 * half, y: neck },
      { x: x + 0.5 * half, y: from },
    ],
    true,
  );
  return { kind: 'path', d, fill: pushes ? colour : 'paper', stroke: colour, strokeWidth, join: 'miter' };
}
