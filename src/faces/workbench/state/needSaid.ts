/** A need as one says it before it is worked out. */

import { findQuantity } from '../../../answer/catalogue.ts';
import { capital } from '../../../study/capital.ts';
import type { NeedInput } from '../../../study/model.ts';
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

/** `the specific impulse of Alder B in vacuum` */
function sideWords(side: string, owners: readonly Owner[]): string | null {
  if (/^[\d.]+\s*[^\s()*/+-]*$/.test(side)) return side;
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
