/** The cycle of an engine, read into SI. */

import { choiceAt, keyOffset, refuseOtherKeys } from './cursor.ts';
import { type CycleKind, cycleForms, cycleKinds } from './cycleForm.ts';
import type { Fields, QuantityField } from './form.ts';
import type { Cycle, Quantity } from './model.ts';
import { nearestName } from './nearest.ts';
import { listNames, quote, type Report } from './report.ts';
import type { FormOf, GivenSection } from './sections.ts';

/** The kind as written, or the inherited one. */
export const cycleFormOf: FormOf<CycleKind> = (entries, inherited, cursor, report) => {
  const at = entries.get('kind');
  if (at !== undefined) {
    return choiceAt(at, { is: 'choice', options: cycleKinds, meaning: 'The cycle.' }, report);
  }
  if (inherited !== null) return inherited;
  const given = [...entries.keys()].join(' ');
  const near = nearestName(given, cycleKinds);
  report.problem(
    {
      code: 'key-missing',
      what: `${quote(cursor.path)} has no kind.`,
      mend: `${near === null ? '' : `Did you mean kind: ${near}? `}Give kind as ${listNames(cycleKinds)}.`,
    },
    `${cursor.path}.kind`,
    keyOffset(cursor),
  );
  return null;
};

interface ReadQuantities {
  readonly required: (key: string, field: QuantityField) => Quantity | null;
  readonly optional: (key: string, field: QuantityField) => Quantity | null;
}

/** Null with a problem where one of its values cannot be read. */
export function readCycle(
  section: GivenSection<CycleKind>,
  { required, optional }: ReadQuantities,
  report: Report,
): Cycle | null {
  const { form: kind, entries } = section;
  const fields: Fields = cycleForms[kind];
  refuseOtherKeys(entries, ['kind', ...Object.keys(fields)], `a cycle of the kind ${kind}`, report);
  const values: Record<string, Quantity | null> = {};
  let broken = false;
  for (const [key, field] of Object.entries(fields)) {
    if (field.is !== 'quantity') continue;
    const value = field.optional === true ? optional(key, field) : required(key, field);
    values[key] = value;
    broken ||= value === null && (field.optional !== true || entries.has(key));
  }
  const richAt = entries.get('rich');
  const { rich: richField } = cycleForms.stagedCombustion;
  const rich = richAt === undefined ? richField.byDefault : choiceAt(richAt, richField, report);
  if (broken || rich === null) return null;
  const read = { kind, ...values, ...(kind === 'stagedCombustion' && { rich }) };
  return read as unknown as Cycle;
}
