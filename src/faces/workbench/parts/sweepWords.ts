/** What a sweep shows, in a few short lines. */

import { showStated } from '../../../answer/display.ts';
import type { CurvePoint, Extreme, Sweep, SweepCurve } from '../../../answer/sweeps/model.ts';
import { formatNumber, formatSpoken } from '../../../telling/numbers/formatNumber.ts';
import { engineInputs } from '../state/pair.ts';

export function sweepWords(sweep: Sweep): readonly string[] {
  const { from, to, quantity } = sweep.range;
  // The ends as they were asked for, what was found between them to three digits.
  const place = (x: number) =>
    x === from || x === to ? showStated(quantity, x).text : formatSpoken(quantity, x);
  return [
    ...sweep.curves.flatMap((curve) => courseWords(curve, place)),
    ...sweep.crossings.map(({ x, y, curves, jump }) => {
      const [one, other] = curves.map((index) => sweep.curves[index]);
      const where = `at ${sweep.range.label} ${place(x)}`;
      if (one === undefined || other === undefined) return '';
      if (jump) return `The two change places at a jump ${where}.`;
      return `The two are equal ${where}: ${curveValue(one, y)}.`;
    }),
    ...sweep.curves.flatMap((curve) =>
      curve.holes.map(
        ({ from, to, problem }) =>
          `${ownerOf(curve)} has no value from ${place(from)} to ${place(to)}: ${problem.what}`,
      ),
    ),
  ];
}

function courseWords(curve: SweepCurve, place: (x: number) => string): readonly string[] {
  const known = curve.points.filter((point): point is CurvePoint & { y: number } => point.y !== null);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return [`${ownerOf(curve)} has no value here.`];
  const inside = (['highest', 'lowest'] as const).flatMap((which) => {
    const extreme: Extreme | null = curve[which];
    if (extreme?.at !== 'inside') return [];
    return [`${ownerOf(curve)} is ${which} at ${place(extreme.x)}: ${curveValue(curve, extreme.y)}.`];
  });
  if (inside.length > 0) return inside;
  return [
    `${ownerOf(curve)}: ${curveValue(curve, first.y)} at ${place(first.x)}, ${curveValue(curve, last.y)} at ${place(last.x)}.`,
  ];
}

export function ownerOf({ engines, expression }: SweepCurve): string {
  return engineInputs.value.find(({ id }) => id === engines[0])?.name ?? expression;
}

export function curveValue({ quantity }: SweepCurve, value: number): string {
  return quantity === null ? formatNumber(value, 4) : formatSpoken(quantity, value, 4);
}
