/** A sweep or a map as options of the command line ask for it. */

import type { Quantity, SweptInput } from '../../study/model.ts';
import { listNames, quote } from '../../study/report.ts';
import {
  mapPoints,
  nearestSwept,
  type SweptKind,
  stepsField,
  sweepPoints,
  sweptConditions,
  sweptKindOf,
} from '../../study/sweepForm.ts';
import { parseQuantity } from '../../study/units.ts';
import { BadInput } from './badInput.ts';

export interface SweptFlags {
  readonly over: string | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly steps: string | undefined;
}

/** What each of those options is called. */
export type SweptNames = Readonly<Record<keyof SweptFlags, string>>;

/**
 * @param say told where the ends stood the wrong way round
 * @throws BadInput with what to mend
 */
export function sweptFrom(flags: SweptFlags, names: SweptNames, say: (line: string) => void): SweptInput {
  const { over, steps } = flags;
  if (over === undefined) {
    throw bad(
      'sweep-over-missing',
      `${names.over} is missing.`,
      `Say what moves: ${names.over} nozzle.areaRatio.`,
    );
  }
  const kind = sweptKindOf(over);
  if (kind === null) {
    const near = nearestSwept(over);
    throw bad(
      'sweep-input-unknown',
      `${names.over}: ${quote(over)} is nothing that can be swept.`,
      `${near === null ? '' : `Did you mean ${near}? `}Name an input as it stands below an engine or a vehicle, such as nozzle.areaRatio or first.dry, or ${listNames(Object.keys(sweptConditions))}.`,
    );
  }
  const end = (key: 'from' | 'to'): Quantity | null => endFrom(flags[key], names[key], kind);
  const [from, to] = [end('from'), end('to')];
  const rest = { over, steps: stepsFrom(steps, names.steps), path: names.over };
  if (from === null || to === null || from.value <= to.value) return { ...rest, from, to };
  say(`${names.from} ${from.text} lies above ${names.to} ${to.text}; taken from ${to.text} to ${from.text}.`);
  return { ...rest, from: to, to: from };
}

function endFrom(text: string | undefined, option: string, kind: SweptKind): Quantity | null {
  if (text === undefined) return null;
  const parsed = parseQuantity(text, ...kind.kinds);
  if (!parsed.ok) throw new BadInput([{ ...parsed.problem, what: `${option}: ${parsed.problem.what}` }]);
  const { value } = parsed.value;
  return { value, plusMinus: null, text, path: option, byDefault: false };
}

function stepsFrom(text: string | undefined, option: string): SweptInput['steps'] {
  if (text === undefined) return null;
  const found = stepsField.options.find((word) => word === text);
  if (found !== undefined) return found;
  throw bad(
    'word-unknown',
    `${option}: ${quote(text)} is not known.`,
    `Allowed here: ${listNames(stepsField.options)}.`,
  );
}

export function pointsFrom(text: string | undefined, of: 'sweep' | 'map'): number | null {
  if (text === undefined) return null;
  const { least, most } = of === 'sweep' ? sweepPoints : mapPoints;
  const points = Number(text);
  if (/^\d{1,4}$/.test(text) && points >= least && points <= most) return points;
  throw bad(
    'sweep-points',
    `--points: ${quote(text)} is no number of points.`,
    `Give a whole number from ${least} to ${most}.`,
  );
}

/** The study's own of that id; all of them where none is named. */
export function namedOf<Item extends { readonly id: string }>(
  items: readonly Item[],
  id: string | undefined,
  what: 'sweep' | 'map' | 'need',
): readonly Item[] {
  const found = id === undefined ? items : items.filter((item) => item.id === id);
  if (found.length > 0) return found;
  const moves =
    what === 'map' ? '--across propellants.ratio --up nozzle.areaRatio' : '--over nozzle.areaRatio';
  const follow =
    what === 'need'
      ? 'what is to hold and what moves: --so "bell.thrust(pad) >= plug.thrust(pad)"'
      : 'what to follow and what moves: --of "bell.specificImpulse(vacuum)"';
  const mend = `Write some under “${what}s” in study.yaml, or say here ${follow} ${moves}, with the id of an engine of yours for bell.`;
  if (items.length === 0) throw bad(`${what}-none`, `The study has no ${what}s.`, mend);
  throw bad(
    `${what}-unknown`,
    `--id: the study has no ${what} ${quote(id ?? '')}.`,
    `Those of this study: ${listNames(items.map((item) => item.id))}.`,
  );
}

export function bad(code: string, what: string, mend: string): BadInput {
  return new BadInput([{ code, what, mend }]);
}
