/** The marks of the verdicts, told apart by silhouette and fill; drawn in a square of 20, as on the screen. */

import type { CheckedSentence, Verdict } from '../../answer/sentences/model.ts';
import { group, type SceneNode } from '../scene/scene.ts';

export type Marked = Verdict | 'unreadable';

export const markedAs = ({ verdict, problem }: Pick<CheckedSentence, 'verdict' | 'problem'>): Marked =>
  problem !== null && verdict === 'can’t tell' ? 'unreadable' : verdict;

/** @param size [px] of the square whose upper left corner is `x`, `y` */
export function verdictMark(marked: Marked, x: number, y: number, size: number): SceneNode {
  const unit = size / 20;
  /** A path of letters and numbers in turn, at its place. */
  const d = (...parts: readonly (string | number)[]): string => {
    let across = true;
    return parts
      .map((part) => {
        if (typeof part === 'string') {
          across = true;
          return part;
        }
        const text = `${Math.round(100 * ((across ? x : y) + part * unit)) / 100} `;
        across = !across;
        return text;
      })
      .join('');
  };
  const line = (path: string, dash?: readonly number[]): SceneNode => ({
    kind: 'path',
    d: path,
    stroke: 'ink',
    strokeWidth: 1.8 * unit,
    join: 'round',
    cap: 'round',
    ...(dash === undefined ? {} : { dash: dash.map((length) => length * unit) }),
  });
  const cut = (path: string): SceneNode => ({
    kind: 'path',
    d: path,
    stroke: 'paper',
    strokeWidth: 2.2 * unit,
    join: 'round',
    cap: 'round',
  });
  const disc = (cx: number, cy: number, r: number): SceneNode => ({
    kind: 'circle',
    x: x + cx * unit,
    y: y + cy * unit,
    radius: r * unit,
    fill: 'ink',
  });
  const ring = (dash?: readonly number[]): SceneNode => ({
    kind: 'circle',
    x: x + 10 * unit,
    y: y + 10 * unit,
    radius: 8.6 * unit,
    fill: 'none',
    stroke: 'ink',
    strokeWidth: 1.8 * unit,
    ...(dash === undefined ? {} : { dash: dash.map((length) => length * unit) }),
  });
  const parts: Readonly<Record<Marked, () => readonly SceneNode[]>> = {
    'safe to say': () => [disc(10, 10, 9), cut(d('M', 5.6, 10.4, 'L', 8.6, 13.4, 'L', 14.4, 7))],
    'say with care': () => [
      line(d('M', 10, 2.4, 'L', 18.6, 17.6, 'L', 1.4, 17.6, 'Z')),
      line(d('M', 10, 8, 'L', 10, 12.2)),
      disc(10, 14.8, 1.15),
    ],
    'don’t say': () => [
      {
        kind: 'path',
        d: d('M', 1.5, 1.5, 'L', 18.5, 1.5, 'L', 18.5, 18.5, 'L', 1.5, 18.5, 'Z'),
        fill: 'ink',
      },
      cut(d('M', 6.3, 6.3, 'L', 13.7, 13.7, 'M', 13.7, 6.3, 'L', 6.3, 13.7)),
    ],
    'can’t tell': () => [
      ring([7, 3.8]),
      line(d('M', 7.6, 8.2, 'C', 7.6, 4.8, 12.6, 5, 12.6, 8, 'C', 12.6, 9.9, 10.2, 10, 10.2, 12)),
      disc(10.2, 14.6, 1.1),
    ],
    unreadable: () => [
      line(d('M', 3.4, 1.6, 'L', 13, 1.6, 'L', 16.6, 5.2, 'L', 16.6, 18.4, 'L', 3.4, 18.4, 'Z')),
      line(d('M', 6.6, 8.4, 'L', 8.6, 8.4, 'M', 11.4, 8.4, 'L', 13.4, 8.4, 'M', 6.6, 11.6, 'L', 8, 11.6)),
      line(d('M', 10.2, 11.6, 'L', 13.4, 11.6, 'M', 6.6, 14.8, 'L', 10, 14.8)),
    ],
    reported: () => [
      line(
        d(
          'M',
          10,
          5.2,
          'C',
          8,
          3.6,
          5,
          3.2,
          1.6,
          3.4,
          'L',
          1.6,
          15.6,
          'C',
          5,
          15.4,
          8,
          15.8,
          10,
          17.4,
          'C',
          12,
          15.8,
          15,
          15.4,
          18.4,
          15.6,
          'L',
          18.4,
          3.4,
          'C',
          15,
          3.2,
          12,
          3.6,
          10,
          5.2,
          'Z',
          'M',
          10,
          5.2,
          'L',
          10,
          17.2,
        ),
      ),
    ],
    'not checked': () => [ring()],
  };
  return group('verdict', parts[marked]());
}
