/** A need as one says it before it is worked out. */

import { findQuantity } from '../../../answer/catalogue.ts';
import { settableConditions, settableInputs } from '../../../answer/inputs/index.ts';
import { capital } from '../../../study/capital.ts';
import type { EngineInput, NeedInput } from '../../../study/model.ts';
import { findUnit } from '../../../study/units.ts';
import { kilometresOf, namedIn } from './namedIn.ts';
import { kilometresText } from './shown.ts';

interface Owner {
  readonly id: string;
  readonly name: string;
}

/** Longer signs first: one of them holds the others. */
const SIGNS = [
  ['>=', 'is at least'],
  ['<=', 'is at most'],
  ['>', 'is more than'],
  ['<', 'is less than'],
] as const;

/** Its title; else its comparison in words, and the input that is to bring it about. The comparison as written, where it takes more than one quantity a side. @param input its name */
export function needSaid({ title, so }: NeedInput, owners: readonly Owner[], input: string): string {
  if (title !== null) return title;
  const sign = SIGNS.find(([written]) => so.includes(written));
  if (sign === undefined) return so;
  const sides = so.split(sign[0]).map((side) => sideWords(side.trim(), owners));
  const [left, right] = sides;
  if (sides.length !== 2 || left == null || right == null) return so;
  return `${capital(left)} ${sign[1]} ${right}: at which ${input}?`;
}

/** What the input that moves is called on the engines that it moves on; as written, where it has no name of its own there. */
export function inputOfNeed({ range: { over }, engines }: NeedInput, all: readonly EngineInput[]): string {
  const condition = settableConditions.find(({ name }) => name === over);
  if (condition !== undefined) return condition.label;
  const [, only = null, name = over] = /^engines\.([^.]+)\.(.+)$/.exec(over) ?? [];
  const moved = all.filter(({ id }) => (only === null ? (engines?.includes(id) ?? true) : id === only));
  return moved.flatMap(settableInputs).find((input) => input.name === name)?.label ?? over;
}

/** A number with a unit or none, as `3000 m/s`. */
function isStated(side: string): boolean {
  const [, unit] = /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*(.*)$/i.exec(side) ?? [];
  return unit === '' || (unit !== undefined && findUnit(unit) !== null);
}

/** `the specific impulse of Alder B in vacuum` */
function sideWords(side: string, owners: readonly Owner[]): string | null {
  if (isStated(side)) return side;
  const [named] = namedIn(
    side,
    owners.map(({ id }) => id),
  );
  const entry = named && findQuantity(named.quantity);
  if (entry === undefined || named?.expression !== side) return null;
  const owner = owners.find(({ id }) => id === named.owner)?.name ?? named.owner;
  const where = placeWords(named.place);
  return where === null ? null : `the ${entry.label} of ${owner}${where}`;
}

function placeWords(place: string | null): string | null {
  if (place === null) return '';
  const kilometres = kilometresOf(place);
  if (kilometres === null) return null;
  if (kilometres === 0) return ' at the pad';
  return Number.isFinite(kilometres) ? ` at ${kilometresText(kilometres)}` : ' in vacuum';
}
