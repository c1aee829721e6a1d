/** Numbers of the nozzle, by its kind. */

import { attempt } from '../../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import { altitudeRange, type Field, type Fields, nozzleForms } from '../../study/form.ts';
import type { Ambient, EngineInput, Nozzle, Quantity } from '../../study/model.ts';
import { findQuantity } from '../catalogue.ts';
import type { InputSlot } from './slot.ts';

/** Where one of two fixes the other, setting one lets the other go. */
const EITHER: Readonly<Record<string, string>> = {
  designMach: 'length',
  inflectionAngle: 'extensionLength',
  extensionLength: 'inflectionAngle',
};

export function nozzleSlots(engine: EngineInput): readonly InputSlot[] {
  const fields: Fields = nozzleForms[engine.nozzle.kind];
  return Object.entries(fields).flatMap(([key, field]) => slotOf(engine, key, field));
}

function slotOf(engine: EngineInput, key: string, field: Field): readonly InputSlot[] {
  const { nozzle } = engine;
  if (field.is === 'ambient') return 'switchAt' in nozzle ? [switchSlot(engine, nozzle)] : [];
  if (field.is !== 'quantity' || hasNoEffect(nozzle, key)) return [];
  const own = `nozzle.${key}`;
  const now = (nozzle as unknown as Readonly<Record<string, Quantity | null>>)[key] ?? null;
  return [
    {
      name: own,
      quantity: findQuantity(own)?.name ?? key,
      field,
      ...(key === 'modules' && { whole: true as const }),
      now,
      put: (value) => ({ ...engine, nozzle: withNumber(nozzle, key, value) }),
    },
  ];
}

function withNumber(nozzle: Nozzle, key: string, value: Quantity): Nozzle {
  const other = nozzle.kind === 'idealBell' && key === 'length' ? 'designMach' : EITHER[key];
  const cleared = other === undefined ? {} : { [other]: null };
  return { ...nozzle, ...cleared, [key]: value };
}

/** An annular plug has no width. */
function hasNoEffect(nozzle: Nozzle, key: string): boolean {
  return nozzle.kind === 'plug' && nozzle.form === 'annular' && key === 'aspectRatio';
}

/** Where a nozzle goes over from one way of working to the other, as an altitude. */
function switchSlot(engine: EngineInput, nozzle: Nozzle & { switchAt: Ambient | null }): InputSlot {
  return {
    name: 'nozzle.switchAt',
    quantity: 'change.altitude',
    field: { kinds: ['length'], range: altitudeRange },
    now: altitudeOf(nozzle.switchAt),
    put: (altitude) => ({ ...engine, nozzle: { ...nozzle, switchAt: { kind: 'altitude', altitude } } }),
  };
}

/** A stated pressure as the altitude that has it; null in vacuum and where it is to be the best place. */
function altitudeOf(at: Ambient | null): Quantity | null {
  if (at === null || at.kind === 'vacuum') return null;
  if (at.kind === 'altitude') return at.altitude;
  const altitude = attempt(() => geometricAltitudeAtPressure(at.pressure.value));
  return altitude.ok ? { ...at.pressure, value: altitude.value, plusMinus: null } : null;
}
