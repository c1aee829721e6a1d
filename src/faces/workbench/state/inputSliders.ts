/** Sliders of inputs: over which values each goes, and what is written at each of its places. */

import type { SweepRange } from '../../../answer/inputs/model.ts';
import { placeOf, type SliderPlaces, sliderPlaces } from '../../../answer/inputs/sliderPlaces.ts';
import type { InputSlot } from '../../../answer/inputs/slot.ts';
import { slotsOf } from '../../../answer/inputs/slots.ts';
import { sweepRangeOf } from '../../../answer/inputs/sweepRange.ts';
import { vehicleSlots } from '../../../answer/inputs/vehicleSlots.ts';
import { movedText, numberInUnit } from '../../../study/movedText.ts';
import { isVehicle, type Owner } from '../../../study/owners.ts';
import { parseQuantity } from '../../../study/units.ts';
import type { InputRow } from './inputRows.ts';

export interface InputSlider {
  /** Last place; the first is 0. */ readonly last: number;
  /** Place of what is written, or null where it cannot be read. */ placeOf(text: string): number | null;
  /** What is written at a place. */ textAt(place: number): string | null;
}

type Slot = Omit<InputSlot, 'put'>;

/** The rows of one line, one an owner: over one range, so that their places can be compared. */
export function slidersOf(
  line: readonly { readonly owner: Owner; readonly row: InputRow | undefined }[],
): readonly (InputSlider | null)[] {
  const slots = line.map(({ owner, row }) => (row === undefined ? null : slotOf(owner, row)));
  const range = rangeOf(
    line.flatMap(({ owner, row }, i) => {
      const slot = slots[i];
      return slot && row?.stated ? [{ key: `${owner.id}.${slot.name}`, slot, value: row.stated.value }] : [];
    }),
  );
  return line.map(({ row }, i) => {
    const slot = slots[i];
    return slot && row && range ? sliderOf(row, slot, range) : null;
  });
}

function slotOf(owner: Owner, { key, fixed, stated }: InputRow): Slot | null {
  if (fixed || stated === undefined) return null;
  const slots: readonly Slot[] = isVehicle(owner) ? vehicleSlots(owner) : slotsOf(owner);
  const slot = slots.find(({ name }) => name === key);
  // One share of a blend cannot move alone.
  return slot === undefined || slot.quantity === 'propellants.share' ? null : slot;
}

function sliderOf(row: InputRow, slot: Slot, range: SweepRange): InputSlider | null {
  const parsed = parseQuantity(row.text, ...slot.field.kinds);
  if (!parsed.ok) return null;
  const stated = parsed.value;
  const unit = (si: number): number => numberInUnit(stated, si);
  const places: SliderPlaces = sliderPlaces(range, unit, slot.whole === true);
  if (places.values.length < 2) return null;
  return {
    last: places.values.length - 1,
    placeOf(text) {
      const read = parseQuantity(text, ...slot.field.kinds);
      return read.ok ? placeOf(places, unit(read.value.value)) : null;
    },
    textAt(place) {
      const number = places.values[place];
      return number === undefined ? null : movedText(row.text, stated, number);
    },
  };
}

interface Ranged {
  readonly key: string;
  readonly slot: Slot;
  readonly value: number;
}

/** A range stays where it is under the hand that moves in it; it grows where a value outside is typed. */
const known = new Map<string, SweepRange>();

function rangeOf(all: readonly Ranged[]): SweepRange | null {
  if (all.length === 0) return null;
  const key = all.map((one) => `${one.key} ${one.slot.field.range.words}`).join(', ');
  const before = known.get(key);
  if (before && all.every(({ value }) => value >= before.from && value <= before.to)) return before;
  const ranges = all.map(({ slot, value }) => sweepRangeOf(slot.field.range, value, slot.quantity));
  const both = before === undefined ? ranges : [before, ...ranges];
  const [from, to] = [Math.min(...both.map((one) => one.from)), Math.max(...both.map((one) => one.to))];
  const isWide = ranges.some(({ spacing }) => spacing === 'in equal ratios');
  const range: SweepRange = { from, to, spacing: isWide && from > 0 ? 'in equal ratios' : 'even' };
  known.set(key, range);
  return range;
}
