/** Names of propellants and gases as people write them, resolved to the ids of the data. */
import { nearestName } from './nearest.ts';

export interface KnownName {
  readonly id: string;
  readonly name: string;
  readonly alsoCalled: readonly string[];
  readonly role?: string;
}

/** Upper and lower case, dashes, underscores and runs of spaces make no difference between names. */
const folded = (name: string): string =>
  name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .replace(/ ?% ?/g, ' % ')
    .trim();

export interface NameBook {
  readonly known: readonly KnownName[];
  find(name: string): KnownName | null;
  /** The known name that looks most like `name`; null where none is near. */
  nearest(name: string): string | null;
}

/** An id wins over a spelling that only looks like it; earlier rows win over later ones. */
export function nameBook(known: readonly KnownName[]): NameBook {
  const exact = new Map<string, KnownName>();
  const loose = new Map<string, KnownName>();
  for (const row of known) if (!exact.has(row.id)) exact.set(row.id, row);
  for (const row of known) if (!loose.has(folded(row.id))) loose.set(folded(row.id), row);
  for (const row of known) {
    for (const name of [row.name, ...row.alsoCalled])
      if (!loose.has(folded(name))) loose.set(folded(name), row);
  }
  return {
    known,
    find: (name) => exact.get(name) ?? loose.get(folded(name)) ?? null,
    nearest: (name) => nearestName(name, [...known.flatMap((row) => [row.id, ...row.alsoCalled])]),
  };
}

interface RowOfPropellant extends KnownName {
  readonly phase: string;
  readonly elements: Readonly<Record<string, number>>;
}

const elementsKey = (elements: Readonly<Record<string, number>>): string =>
  Object.entries(elements)
    .map(([element, count]) => `${element}${count}`)
    .sort()
    .join(' ');

/**
 * What a study may name, from the propellant list: for burning every row; for heating every row that is not
 * solid, where a plain name such as `hydrogen` leads to the row stored as a gas if the list has one of the same
 * elements (its temperature is given, so only the elements count).
 */
export function knownNames(propellants: readonly RowOfPropellant[]): {
  readonly knownPropellants: readonly KnownName[];
  readonly knownGases: readonly KnownName[];
} {
  const gasOf = new Map<string, RowOfPropellant>();
  for (const row of propellants) {
    if (row.phase === 'gas' && !gasOf.has(elementsKey(row.elements)))
      gasOf.set(elementsKey(row.elements), row);
  }
  const knownGases = propellants
    .filter((row) => row.phase !== 'solid')
    .map((row) => ({
      id: gasOf.get(elementsKey(row.elements))?.id ?? row.id,
      name: row.name,
      alsoCalled: [row.id, ...row.alsoCalled],
    }));
  return { knownPropellants: propellants, knownGases };
}
