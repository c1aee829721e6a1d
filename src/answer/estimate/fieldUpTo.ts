import type { ConditionRow } from '../model.ts';

type Field = NonNullable<ConditionRow['field']>;

/** Lines of a field up to an axial place [m], each with the first point beyond it; those that begin there are left out. */
export function fieldUpTo(field: Field, axial: number): Field {
  return field.flatMap((line) => {
    const beyond = line.findIndex((point) => point.axial > axial);
    if (beyond < 0) return [line];
    return beyond === 0 ? [] : [line.slice(0, beyond + 1)];
  });
}
