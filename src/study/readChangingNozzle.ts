/** Reading of the nozzles that work in two ways: skirt, insert, dual bell, expansion–deflection. */

import { ambientAt, type Entries, keyOffset } from './cursor.ts';
import { altitudeRange, ambientPressureRange, nozzleForms, type QuantityField } from './form.ts';
import type { Ambient, Nozzle, Quantity } from './model.ts';
import type { Report } from './report.ts';

const kinds = ['extendableSkirt', 'insert', 'dualBell', 'expansionDeflection'] as const;
type ChangingKind = (typeof kinds)[number];

export function isChanging(kind: string): kind is ChangingKind {
  return kinds.some((each) => each === kind);
}

interface ReadQuantities {
  /** Given, by default, or null with a problem told. */
  readonly required: (key: string, field: QuantityField) => Quantity | null;
  /** Given, or null. */ readonly optional: (key: string, field: QuantityField) => Quantity | null;
}

export function readChangingNozzle(
  kind: ChangingKind,
  entries: Entries,
  read: ReadQuantities,
  report: Report,
): Nozzle | null {
  if (kind === 'dualBell') return readDualBell(entries, read, report);
  if (kind === 'expansionDeflection') return readExpansionDeflection(read);
  const at = entries.get('switchAt');
  const switchAt = at === undefined ? null : ambientAt(at, altitudeRange, ambientPressureRange, report);
  if (at !== undefined && switchAt === null) return null;
  return kind === 'insert' ? readInsert(switchAt, read) : readSkirt(switchAt, read);
}

function readExpansionDeflection({ required }: ReadQuantities): Nozzle | null {
  const form = nozzleForms.expansionDeflection;
  const areaRatio = required('areaRatio', form.areaRatio);
  const pintleAreaRatio = required('pintleAreaRatio', form.pintleAreaRatio);
  const length = required('length', form.length);
  const throatAngle = required('throatAngle', form.throatAngle);
  const lipAngle = required('lipAngle', form.lipAngle);
  if (areaRatio === null || pintleAreaRatio === null || length === null) return null;
  if (throatAngle === null || lipAngle === null) return null;
  return { kind: 'expansionDeflection', areaRatio, pintleAreaRatio, length, throatAngle, lipAngle };
}

function readInsert(switchAt: Ambient | null, { required }: ReadQuantities): Nozzle | null {
  const form = nozzleForms.insert;
  const areaRatio = required('areaRatio', form.areaRatio);
  const insertAreaRatio = required('insertAreaRatio', form.insertAreaRatio);
  const length = required('length', form.length);
  const insertLength = required('insertLength', form.insertLength);
  if (areaRatio === null || insertAreaRatio === null || length === null || insertLength === null) return null;
  return { kind: 'insert', areaRatio, insertAreaRatio, length, insertLength, switchAt };
}

function readSkirt(switchAt: Ambient | null, { required, optional }: ReadQuantities): Nozzle | null {
  const form = nozzleForms.extendableSkirt;
  const areaRatio = required('areaRatio', form.areaRatio);
  const shortAreaRatio = required('shortAreaRatio', form.shortAreaRatio);
  const length = required('length', form.length);
  const throatAngle = optional('throatAngle', form.throatAngle);
  const lipAngle = optional('lipAngle', form.lipAngle);
  if (areaRatio === null || shortAreaRatio === null || length === null) return null;
  return { kind: 'extendableSkirt', areaRatio, shortAreaRatio, length, throatAngle, lipAngle, switchAt };
}

function readDualBell(
  entries: Entries,
  { required, optional }: ReadQuantities,
  report: Report,
): Nozzle | null {
  const form = nozzleForms.dualBell;
  const areaRatio = required('areaRatio', form.areaRatio);
  const baseAreaRatio = required('baseAreaRatio', form.baseAreaRatio);
  const baseLength = required('baseLength', form.baseLength);
  const throatAngle = optional('throatAngle', form.throatAngle);
  const baseLipAngle = optional('baseLipAngle', form.baseLipAngle);
  const pressureRise = required('pressureRise', form.pressureRise);
  const inflectionAngle = optional('inflectionAngle', form.inflectionAngle);
  const lengthAt = entries.get('extensionLength');
  if (entries.has('inflectionAngle') && lengthAt !== undefined) {
    report.problem(
      {
        code: 'nozzle-two-ways',
        what: 'Both extensionLength and inflectionAngle of a dual bell are given.',
        why: 'The gas shapes the extension, so that either of them fixes the other.',
        mend: 'Keep one of them.',
      },
      lengthAt.path,
      keyOffset(lengthAt),
    );
    return null;
  }
  const extensionLength = entries.has('inflectionAngle')
    ? null
    : required('extensionLength', form.extensionLength);
  if (areaRatio === null || baseAreaRatio === null || baseLength === null || pressureRise === null)
    return null;
  if (extensionLength === null && inflectionAngle === null) return null;
  return {
    kind: 'dualBell',
    areaRatio,
    baseAreaRatio,
    baseLength,
    throatAngle,
    baseLipAngle,
    extensionLength,
    inflectionAngle,
    pressureRise,
  };
}
