/** The places in an engine's inputs that hold a number, whether the study states it or not. */

import { coolingQuantities, coolingQuantity } from '../../study/coolingForm.ts';
import { chamberFields, sizeForms } from '../../study/form.ts';
import type { EngineInput } from '../../study/model.ts';
import { cycleSlots } from './cycleSlots.ts';
import { nozzleSlots } from './nozzleSlots.ts';
import { propellantSlots } from './propellantSlots.ts';
import type { InputSlot } from './slot.ts';

export function slotsOf(engine: EngineInput): readonly InputSlot[] {
  return [
    ...propellantSlots(engine),
    ...chamberSlots(engine),
    ...nozzleSlots(engine),
    ...sizeSlots(engine),
    ...coolingSlots(engine),
    ...cycleSlots(engine),
  ];
}

/** Where one of two fixes the other, setting one lets the other go. */
const COOLING_OTHER: Readonly<Record<string, string>> = {
  share: 'flow',
  pressureDrop: 'channelDepth',
  channelDepth: 'pressureDrop',
};

function coolingSlots(engine: EngineInput): readonly InputSlot[] {
  const { cooling } = engine;
  if (cooling === null) return [];
  return coolingQuantities.map((key) => {
    const other = COOLING_OTHER[key];
    return {
      name: `cooling.${key}`,
      quantity: `cooling.${key}`,
      field: coolingQuantity(key),
      now: cooling[key],
      put: (value) => ({
        ...engine,
        cooling: { ...cooling, ...(other !== undefined && { [other]: null }), [key]: value },
      }),
    };
  });
}

const chamberKeys = [
  'pressure',
  'efficiency',
  'contractionRatio',
  'characteristicLength',
  'convergingAngle',
] as const;

function chamberSlots(engine: EngineInput): readonly InputSlot[] {
  const { chamber } = engine;
  return chamberKeys.map((key) => ({
    name: `chamber.${key}`,
    quantity: `chamber.${key}`,
    field: chamberFields[key],
    now: chamber[key],
    put: (value) => ({ ...engine, chamber: { ...chamber, [key]: value } }),
  }));
}

/** A throat or an exit set on an engine sized otherwise gives it its size from then on. */
function sizeSlots(engine: EngineInput): readonly InputSlot[] {
  const { size } = engine;
  const diameter = (by: 'throat' | 'exit', field: InputSlot['field']): InputSlot => ({
    name: `size.${by}`,
    quantity: `${by}.diameter`,
    field,
    now: size.by === by ? size.diameter : null,
    put: (value) => ({ ...engine, size: { by, diameter: value } }),
  });
  const slots = [diameter('throat', sizeForms.throat.throat), diameter('exit', sizeForms.exit.exit)];
  if (size.by !== 'thrust' && !(size.by === 'same' && size.what === 'thrust')) return slots;
  const thrust: InputSlot = {
    name: 'size.thrust',
    quantity: 'size.thrust',
    field: sizeForms.thrust.thrust,
    now: size.by === 'thrust' ? size.thrust : null,
    put: (value) => ({ ...engine, size: { by: 'thrust', thrust: value, at: size.at } }),
  };
  return [thrust, ...slots];
}
