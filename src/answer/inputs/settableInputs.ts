/** The registry of what may be set on an engine or a vehicle: for expressions, sweeps and draws. */

import type { Range } from '../../study/form.ts';
import { isVehicle, type Owner } from '../../study/owners.ts';
import { quantityKinds } from '../../study/unitTable.ts';
import { quantity } from '../catalogue.ts';
import type { EngineInputEntry } from './model.ts';
import type { InputSlot } from './slot.ts';
import { slotsOf } from './slots.ts';
import { sweepRangeOf } from './sweepRange.ts';
import { vehicleSlots } from './vehicleSlots.ts';

/** All inputs of this engine or vehicle that are numbers; found once for each. */
export function settableInputs(owner: Owner): readonly EngineInputEntry[] {
  const known = found.get(owner);
  if (known !== undefined) return known;
  const entries = entriesOf(owner);
  found.set(owner, entries);
  return entries;
}

const found = new WeakMap<Owner, readonly EngineInputEntry[]>();

function entriesOf(owner: Owner): readonly EngineInputEntry[] {
  return isVehicle(owner)
    ? vehicleSlots(owner).map((slot) => entryOf(`vehicles.${owner.id}`, slot))
    : slotsOf(owner).map((slot) => entryOf(`engines.${owner.id}`, slot));
}

function entryOf(below: string, slot: Omit<InputSlot, 'put'>): EngineInputEntry {
  const { name, now, field } = slot;
  const { range } = field;
  return {
    name,
    label: labelOf(slot),
    quantity: slot.quantity,
    dimension: quantityKinds[field.kinds[0]!].dimension,
    lowest: range.above ?? range.from ?? null,
    highest: range.below ?? range.upTo ?? null,
    range: range.words,
    openBelow: range.above !== undefined,
    openAbove: range.below !== undefined,
    whole: slot.whole ?? false,
    current: now?.value ?? null,
    path: now?.path ?? `${below}.${name}`,
    stated: now !== null && !now.byDefault,
    sweep: sweepRangeOf(range, now?.value ?? null, slot.quantity),
  };
}

/** That of the catalogue; a share says of what. */
function labelOf({ name, quantity: of }: Omit<InputSlot, 'put'>): string {
  const { label } = quantity(of);
  if (of === 'propellants.share') return `share of ${name.split('.').slice(2).join('.')} by mass`;
  if (of === 'change.altitude') return 'altitude at which the nozzle changes over';
  return label;
}

/** Whether the study form would allow this value. */
export function isAllowed(value: number, { above, from, upTo, below }: Range): boolean {
  return (
    Number.isFinite(value) &&
    (above === undefined || value > above) &&
    (from === undefined || value >= from) &&
    (upTo === undefined || value <= upTo) &&
    (below === undefined || value < below)
  );
}
