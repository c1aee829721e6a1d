/** What an engine says of its cooling; the reader, the JSON Schema and the reference follow this table. */

import type { ChoiceField, Fields, QuantityField } from './form.ts';

/** Rows of data/coolants/index.json. */
export const COOLANTS = [
  'hydrogen',
  'normal-hydrogen',
  'methane',
  'dodecane',
  'ethanol',
  'oxygen',
  'water',
  'ammonia',
  'propane',
] as const;
export type CoolantId = (typeof COOLANTS)[number];

/** Rows of data/walls.json. */
export const WALLS = [
  'copper',
  'copper-chromium-zirconium',
  'copper-silver-zirconium',
  'copper-chromium-niobium',
  'nickel',
  'nickel-alloy-718',
  'nickel-alloy-625',
  'stainless-steel',
  'low-alloy-steel',
  'aluminium',
  'titanium',
  'niobium',
  'molybdenum',
  'rhenium',
  'carbon-carbon',
  'silicon-carbide-composite',
] as const;
export type WallId = (typeof WALLS)[number];

export const CORRELATION_WORDS = ['dittusBoelter', 'siederTate', 'gnielinski', 'taylor', 'bishop'] as const;

const thin = { above: 0, upTo: 0.05, words: 'more than 0 mm and up to 50 mm' };

/** Defaults are common practice, no source, unless they say otherwise. */
export const coolingFields = {
  coolant: {
    is: 'choice',
    options: ['fuel', 'oxidiser', ...COOLANTS],
    byDefault: 'fuel',
    meaning:
      'What flows in the channels: the engine’s fuel or oxidiser, or a coolant by name. Kerosenes are reckoned as n-dodecane.',
  },
  share: {
    is: 'quantity',
    kinds: ['share'],
    range: { above: 0, upTo: 1, words: 'more than 0 % and up to 100 %' },
    example: '80 %',
    byDefault: '100 %',
    meaning: 'Share of the flow of that propellant that goes through the channels.',
  },
  flow: {
    is: 'quantity',
    kinds: ['massFlow'],
    range: { above: 0, words: 'more than 0 kg/s' },
    example: '5 kg/s',
    optional: true,
    meaning: 'Instead of `share`: the flow of the coolant. Needed where it is no propellant of the engine.',
  },
  inletTemperature: {
    is: 'quantity',
    kinds: ['temperature'],
    range: { above: 0, words: 'more than 0 K' },
    example: '120 K',
    optional: true,
    meaning: 'Of the coolant where it enters. Absent: as its propellant is fed, 298.15 K for others.',
  },
  inletPressure: {
    is: 'quantity',
    kinds: ['pressure'],
    range: { above: 0, words: 'more than 0 Pa' },
    example: '150 bar',
    optional: true,
    meaning:
      'Of the coolant where it enters. Absent: 1.2 times the chamber pressure, which the injector needs, and the pressure drop.',
  },
  pressureDrop: {
    is: 'quantity',
    kinds: ['pressure'],
    range: { above: 0, words: 'more than 0 Pa' },
    example: '25 bar',
    optional: true,
    meaning:
      'What the coolant loses in the channels; their depth follows from it. Absent: a quarter of the chamber pressure, unless `channelDepth` is given.',
  },
  channelDepth: {
    is: 'quantity',
    kinds: ['length'],
    range: thin,
    example: '4 mm',
    optional: true,
    meaning: 'Instead of `pressureDrop`: depth of the channels at the throat.',
  },
  channelWidth: {
    is: 'quantity',
    kinds: ['length'],
    range: thin,
    example: '1 mm',
    optional: true,
    meaning:
      'Width of a channel at the throat. Absent: 1 mm, or a hundredth of the throat’s diameter if that is more.',
  },
  land: {
    is: 'quantity',
    kinds: ['length'],
    range: thin,
    example: '1 mm',
    byDefault: '1 mm',
    meaning: 'Metal between two channels at the throat.',
  },
  wall: {
    is: 'choice',
    options: WALLS,
    byDefault: 'copper-chromium-zirconium',
    meaning: 'What the wall between gas and coolant is made of.',
  },
  thickness: {
    is: 'quantity',
    kinds: ['length'],
    range: thin,
    example: '1 mm',
    byDefault: '0.8 mm',
    meaning: 'Of the wall between gas and coolant.',
  },
  film: {
    is: 'quantity',
    kinds: ['share'],
    range: { from: 0, upTo: 0.5, words: '0 % to 50 %' },
    example: '3 %',
    byDefault: '0 %',
    meaning: 'Share of the fuel that runs down the wall as a film from the injector on.',
  },
  skirtFrom: {
    is: 'quantity',
    kinds: ['number'],
    range: { above: 1, upTo: 1000, words: 'more than 1 and up to 1000' },
    example: '12',
    optional: true,
    meaning:
      'Area ratio from which the wall has no channels and only radiates. Absent: channels to the lip. Cones and bells only.',
  },
  skirtWall: {
    is: 'choice',
    options: WALLS,
    byDefault: 'niobium',
    meaning: 'What that skirt is made of.',
  },
  correlation: {
    is: 'choice',
    options: ['usual', ...CORRELATION_WORDS],
    byDefault: 'usual',
    meaning:
      'How the heat passes from wall to coolant; the usual one is Taylor’s for hydrogen and Gnielinski’s for all others.',
  },
} as const satisfies Fields;

type CoolingFields = typeof coolingFields;
type KeysOf<Kind extends 'quantity' | 'choice'> = {
  [Key in keyof CoolingFields]: CoolingFields[Key]['is'] extends Kind ? Key : never;
}[keyof CoolingFields];

export const coolingQuantities = (Object.keys(coolingFields) as (keyof CoolingFields)[]).filter(
  (key): key is KeysOf<'quantity'> => coolingFields[key].is === 'quantity',
);

export type CoolingQuantityKey = KeysOf<'quantity'>;

export function coolingQuantity(key: CoolingQuantityKey): QuantityField {
  return coolingFields[key];
}

export type CoolingChoiceKey = KeysOf<'choice'>;

export function coolingChoice<Key extends CoolingChoiceKey>(
  key: Key,
): Omit<ChoiceField, 'options'> & { readonly options: CoolingFields[Key]['options'] } {
  return coolingFields[key];
}
