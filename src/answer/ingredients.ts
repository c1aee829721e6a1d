/** Ingredients of a study turned into what the gas physics takes in. */

import { ProblemError } from '../numerics/problem.ts';
import type { PropellantRecord, ReactantPart } from '../physics/gas/index.ts';
import { molarMassOf } from '../study/formula.ts';
import type { Ingredient } from '../study/model.ts';
import { showStated } from './display.ts';
import type { Materials } from './materials.ts';

export interface ResolvedIngredient {
  readonly part: ReactantPart;
  /** Plain name, e.g. `methane`. */ readonly name: string;
  /** null: described in the study itself. */ readonly record: PropellantRecord | null;
}

/** @throws ProblemError when neither the data nor the study knows the ingredient */
export function resolveIngredient(ingredient: Ingredient, materials: Materials): ResolvedIngredient {
  const { id, share, custom } = ingredient;
  if (custom !== null) {
    return {
      name: id,
      record: null,
      part: {
        elements: custom.elements,
        molarMass: molarMassOf(custom.elements),
        enthalpy: custom.enthalpy.value,
        density: custom.density?.value ?? null,
        share: share.value,
      },
    };
  }
  const record = materials.propellants.get(id);
  if (record === undefined) {
    throw new ProblemError({
      code: 'propellant-unknown',
      what: `The data has no propellant called “${id}”.`,
      mend: `Use one of ${[...materials.propellants.keys()].join(', ')}, or describe it under ingredients.`,
      where: share.path,
    });
  }
  const { elements, molarMass, enthalpy, density } = record;
  return {
    name: plainName(record),
    record,
    part: { elements, molarMass, enthalpy, density, share: share.value },
  };
}

/** `oxygen` for LOX, `kerosene` for RP-1: the id if it is a word, else the first other name that is more than the id. */
function plainName(record: PropellantRecord): string {
  if (/^[a-z]+$/.test(record.id)) return record.id;
  const letters = (name: string): string => name.toLowerCase().replace(/[^a-z]/g, '');
  const other = record.alsoCalled.find((name) => letters(name) !== letters(record.id));
  if (other !== undefined) return other;
  return /^[A-Z][a-z]/.test(record.name) ? record.name[0]!.toLowerCase() + record.name.slice(1) : record.name;
}

/** `oxygen`, or `75 % ethanol and 25 % water by mass`. */
export function blendText(parts: readonly ResolvedIngredient[]): string {
  const [only] = parts;
  if (parts.length === 1 && only) return only.name;
  const shares = parts.map(({ name, part }) => `${showStated('propellants.share', part.share).text} ${name}`);
  return `${shares.slice(0, -1).join(', ')} and ${shares.at(-1)} by mass`;
}
