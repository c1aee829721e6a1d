/** The sections of a vehicle as they are read: keys, defaults, and problems with their place. */

import {
  type Cursor,
  choiceAt,
  defaultQuantity,
  type Entries,
  fieldQuantityAt,
  keyOffset,
  offsetAt,
  refuseOtherKeys,
} from './cursor.ts';
import type { QuantityField } from './form.ts';
import type { Quantity } from './model.ts';
import { plainQuantity } from './plainQuantity.ts';
import type { EngineContext } from './readEngine.ts';
import { quote } from './report.ts';
import { type VehicleSection, vehicleForms } from './vehicleForm.ts';

/** A vehicle as written, with what it has from others. */
export interface WrittenVehicle {
  readonly sections: ReadonlyMap<string, Entries>;
  /** Where each of them is written last. */ readonly cursors: ReadonlyMap<string, Cursor>;
  readonly payload: Cursor | null;
  readonly held: Cursor | null;
}

export type SectionReader = ReturnType<typeof sectionReader>;

export function sectionReader(
  cursor: Cursor,
  { sections, cursors }: WrittenVehicle,
  { report }: EngineContext,
) {
  const seen = new Set<VehicleSection>();
  function problem(name: VehicleSection, code: string, what: string, mend: string): void {
    const at = cursors.get(name) ?? cursor;
    report.problem({ code, what: `${quote(at.path)}: ${what}`, mend }, at.path, keyOffset(at));
  }
  function section(name: VehicleSection) {
    const entries: Entries = sections.get(name) ?? new Map<string, Cursor>();
    if (!seen.has(name))
      refuseOtherKeys(entries, Object.keys(vehicleForms[name]), `the section ${name} of a vehicle`, report);
    seen.add(name);
    function required(key: string, field: QuantityField): Quantity | null {
      const at = entries.get(key);
      if (at !== undefined) {
        const read = fieldQuantityAt(at, field, report);
        return read === null ? null : plainQuantity(read);
      }
      if (field.byDefault !== undefined) return defaultQuantity(field, `${cursor.path}.${name}.${key}`);
      const where = cursors.get(name) ?? cursor;
      report.problem(
        {
          code: 'key-missing',
          what: `${quote(`${cursor.path}.${name}`)} has no ${key}.`,
          mend: `Add it, e.g. ${key}: ${field.example}.`,
        },
        `${cursor.path}.${name}.${key}`,
        keyOffset(where),
      );
      return null;
    }
    function whole(key: string, field: QuantityField): Quantity | null {
      const read = required(key, field);
      if (read === null || Number.isInteger(read.value)) return read;
      const at = entries.get(key)!;
      report.problem(
        {
          code: 'not-whole',
          what: `${quote(read.text)} is no whole number.`,
          mend: `Write ${field.range.words}.`,
        },
        at.path,
        offsetAt(at),
      );
      return null;
    }
    return {
      entries,
      required,
      whole,
      optional: (key: string, field: QuantityField): Quantity | null =>
        entries.has(key) ? required(key, field) : null,
      choice<T extends string>(
        key: string,
        field: {
          readonly is: 'choice';
          readonly options: readonly T[];
          readonly byDefault: T;
          readonly meaning: string;
        },
      ): T | null {
        const at = entries.get(key);
        return at === undefined ? field.byDefault : choiceAt(at, field, report);
      },
    };
  }
  return { section, problem, has: (name: VehicleSection): boolean => sections.has(name) };
}
