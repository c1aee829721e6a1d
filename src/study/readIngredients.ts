/** Ingredients of propellants: names from the data or from the study itself, and their shares by mass. */
import { isMap } from 'yaml';
import {
  type Cursor,
  entriesAt,
  fieldQuantityAt,
  keyOffset,
  offsetAt,
  quantityAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import { type IngredientsField, ingredientFields, PLAIN_ID, shareRange } from './form.ts';
import { molarMassOf, parseFormula } from './formula.ts';
import type { Ingredient, Quantity } from './model.ts';
import type { NameBook } from './names.ts';
import { nearestName } from './nearest.ts';
import { plainQuantity, quantityOver } from './plainQuantity.ts';
import { listNames, quote, type Report } from './report.ts';

type Custom = NonNullable<Ingredient['custom']>;

/** Ingredients the study describes, by id; null where the description has a problem. */
export type CustomIngredients = ReadonlyMap<string, Custom | null>;

function customAt(cursor: Cursor, report: Report): Custom | null {
  const keys = Object.keys(ingredientFields);
  const mend = 'Write { formula: C10H18, enthalpy: -50 kJ/mol, temperature: 298.15 K }.';
  const entries = entriesAt(cursor, 'a description of an ingredient', mend, report);
  if (entries === null) return null;
  refuseOtherKeys(entries, keys, 'an ingredient', report);
  for (const key of ['formula', 'enthalpy', 'temperature']) {
    if (entries.has(key)) continue;
    report.problem(
      { code: 'key-missing', what: `${quote(cursor.path)} has no ${key}.`, mend },
      `${cursor.path}.${key}`,
      keyOffset(cursor),
    );
  }
  const formulaAt = entries.get('formula');
  const formulaText = formulaAt && textAt(formulaAt, 'a chemical formula', mend, report);
  let elements: Custom['elements'] | null = null;
  if (formulaAt && typeof formulaText === 'string') {
    const parsed = parseFormula(formulaText);
    if (parsed.ok) elements = parsed.value;
    else report.problem(parsed.problem, formulaAt.path, offsetAt(formulaAt));
  }
  const given = (key: 'enthalpy' | 'temperature' | 'density') => {
    const at = entries.get(key);
    return at === undefined ? null : fieldQuantityAt(at, ingredientFields[key], report);
  };
  const enthalpy = given('enthalpy');
  const temperature = given('temperature');
  const density = given('density');
  if (elements === null || enthalpy === null || temperature === null) return null;
  if (entries.has('density') && density === null) return null;
  const perMass = enthalpy.kind === 'energyPerMole' ? molarMassOf(elements) : 1;
  return {
    elements,
    enthalpy: quantityOver(enthalpy, perMass),
    temperature: plainQuantity(temperature),
    density: density === null ? null : plainQuantity(density),
  };
}

/** The section `ingredients` of the study. */
export function customIngredientsAt(
  cursor: Cursor,
  book: NameBook | null,
  report: Report,
): CustomIngredients {
  const custom = new Map<string, Custom | null>();
  const entries = entriesAt(
    cursor,
    'a map of ingredients',
    'Write each as name: { formula: …, enthalpy: …, temperature: … }.',
    report,
  );
  for (const [id, at] of entries ?? []) {
    const taken = book?.find(id) ?? null;
    if (!PLAIN_ID.test(id)) {
      report.problem(
        {
          code: 'id-unfit',
          what: `${quote(id)} cannot name an ingredient.`,
          mend: 'Use letters, digits, dashes, dots and underscores, up to 64 of them.',
        },
        at.path,
        keyOffset(at),
      );
    } else if (taken !== null) {
      report.problem(
        {
          code: 'ingredient-name-taken',
          what: `${quote(id)} is already the name of ${taken.name} in the propellant data.`,
          mend: 'Give your ingredient another name.',
        },
        at.path,
        keyOffset(at),
      );
    }
    custom.set(id, customAt(at, report));
  }
  return custom;
}

export interface Pantry {
  readonly custom: CustomIngredients;
  /** Null: names are taken as written. */ readonly book: NameBook | null;
  /** What is looked for, for messages. */ readonly noun: 'propellant' | 'gas';
  /** The role this place in the study asks for. */ readonly role: 'oxidizer' | 'fuel' | null;
}

/** Id and description of the ingredient called `name`; null with a problem where there is none. */
function resolve(
  name: string,
  at: Cursor,
  offset: number | null,
  pantry: Pantry,
  report: Report,
): Pick<Ingredient, 'id' | 'custom'> | null {
  if (pantry.custom.has(name)) {
    const custom = pantry.custom.get(name)!;
    return custom === null ? null : { id: name, custom };
  }
  if (pantry.book === null) return { id: name, custom: null };
  const row = pantry.book.find(name);
  if (row === null) {
    const near = nearestName(name, pantry.custom.keys()) ?? pantry.book.nearest(name);
    const known = listNames([...pantry.custom.keys(), ...pantry.book.known.map((r) => r.id)], 100);
    report.problem(
      {
        code: `${pantry.noun}-unknown`,
        what: `${quote(name)} is not a known ${pantry.noun}.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}Known: ${known}, and their plain names.${pantry.noun === 'propellant' ? ' Another can be described under ingredients.' : ''}`,
      },
      at.path,
      offset,
    );
    return null;
  }
  const other = pantry.role === 'oxidizer' ? 'fuel' : 'oxidizer';
  if (pantry.role !== null && row.role === other) {
    report.warning(
      {
        code: 'role-unusual',
        what: `${quote(name)} is listed as ${other === 'fuel' ? 'a fuel' : 'an oxidiser'} and stands here as ${other === 'fuel' ? 'an oxidiser' : 'a fuel'}.`,
        mend: 'Check that the two are not exchanged.',
      },
      at.path,
      offset,
    );
  }
  return { id: row.id, custom: null };
}

/** Shares must make a whole to this; what is left is rounding of the shares as written. */
const SUM_TOLERANCE = 1e-4;

/** A name, or names with their shares. Null with problems where it cannot be read. */
export function ingredientsAt(
  cursor: Cursor,
  field: IngredientsField,
  pantry: Pantry,
  report: Report,
): readonly Ingredient[] | null {
  const mend = `Write it like ${field.example}.`;
  if (!isMap(cursor.node)) {
    const name = textAt(cursor, 'a name, or names with their shares', mend, report)?.trim();
    if (name === undefined) return null;
    const found = resolve(name, cursor, offsetAt(cursor), pantry, report);
    const share: Quantity = { value: 1, plusMinus: null, text: '100 %', path: cursor.path, byDefault: true };
    return found === null ? null : [{ ...found, share }];
  }
  const entries = entriesAt(cursor, 'names with their shares', mend, report);
  if (entries === null) return null;
  const parts: Ingredient[] = [];
  const used = new Map<string, string>();
  let whole = true;
  for (const [name, at] of entries) {
    const found = resolve(name, at, keyOffset(at), pantry, report);
    const share = quantityAt(at, ['share'], shareRange, '75 %', report);
    if (found === null || share === null) {
      whole = false;
      continue;
    }
    const before = used.get(found.id);
    if (before !== undefined) {
      report.problem(
        {
          code: 'ingredient-twice',
          what: `${quote(before)} and ${quote(name)} are the same ${pantry.noun}.`,
          mend: 'Add their shares into one.',
        },
        at.path,
        keyOffset(at),
      );
      whole = false;
    }
    used.set(found.id, name);
    parts.push({ ...found, share: plainQuantity(share) });
  }
  if (!whole) return null;
  const sum = parts.reduce((total, part) => total + part.share.value, 0);
  if (Math.abs(sum - 1) > SUM_TOLERANCE) {
    report.problem(
      {
        code: 'shares-not-whole',
        what: `The shares in ${quote(cursor.path)} add up to ${Number((100 * sum).toPrecision(6))} %, not to 100 %.`,
        mend: parts.length === 0 ? mend : 'Correct one of them.',
        facts: { sum },
      },
      cursor.path,
      offsetAt(cursor),
    );
    return null;
  }
  return parts;
}
