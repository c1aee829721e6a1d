/** The cooling of an engine, read into SI. */

import { type CoolingChoiceKey, type CoolingQuantityKey, coolingFields } from './coolingForm.ts';
import { type Cursor, choiceAt, keyOffset, refuseOtherKeys } from './cursor.ts';
import type { QuantityField } from './form.ts';
import type { Cooling, Quantity } from './model.ts';
import { quote, type Report } from './report.ts';
import type { GivenSection } from './sections.ts';

interface ReadQuantities {
  readonly required: (key: string, field: QuantityField) => Quantity | null;
  readonly optional: (key: string, field: QuantityField) => Quantity | null;
}

/** Of each pair one drives out the other. */
export const COOLING_EITHER = [
  ['share', 'flow'],
  ['pressureDrop', 'channelDepth'],
] as const;

export function readCooling(
  section: GivenSection<'cooling'>,
  { required, optional }: ReadQuantities,
  report: Report,
): Cooling | null {
  const { entries } = section;
  refuseOtherKeys(entries, Object.keys(coolingFields), 'the cooling', report);
  const atOdds = COOLING_EITHER.map(([one, other]) => atOddsOf(entries.get(one), entries.get(other), report));
  const choices = {
    coolant: choice('coolant'),
    wall: choice('wall'),
    skirtWall: choice('skirtWall'),
    correlation: choice('correlation'),
  };
  const given = (key: CoolingQuantityKey): Quantity | null => required(key, coolingFields[key]);
  const [share, land, thickness, film] = [given('share'), given('land'), given('thickness'), given('film')];
  const maybe = (key: CoolingQuantityKey): Quantity | null => optional(key, coolingFields[key]);
  const rest = {
    flow: maybe('flow'),
    inletTemperature: maybe('inletTemperature'),
    inletPressure: maybe('inletPressure'),
    pressureDrop: maybe('pressureDrop'),
    channelDepth: maybe('channelDepth'),
    channelWidth: maybe('channelWidth'),
    skirtFrom: maybe('skirtFrom'),
  };
  const broken = Object.entries(rest).some(([key, value]) => entries.has(key) && value === null);
  if (broken || atOdds.some((each) => each)) return null;
  if (share === null || land === null || thickness === null || film === null) return null;
  const { coolant, wall, skirtWall, correlation } = choices;
  if (coolant === null || wall === null || skirtWall === null || correlation === null) return null;
  return { coolant, wall, skirtWall, correlation, share, land, thickness, film, ...rest };

  function choice<Key extends CoolingChoiceKey>(key: Key) {
    type Word = (typeof coolingFields)[Key]['options'][number];
    const at = entries.get(key);
    const field = coolingFields[key];
    if (at === undefined) return field.byDefault as Word;
    return choiceAt<Word>(at, { ...field, options: field.options as readonly Word[] }, report);
  }
}

function atOddsOf(one: Cursor | undefined, other: Cursor | undefined, report: Report): boolean {
  if (one === undefined || other === undefined) return false;
  report.problem(
    {
      code: 'cooling-two-ways',
      what: `Both ${quote(one.path)} and ${quote(other.path)} are given.`,
      why: 'Either of them fixes the other.',
      mend: 'Keep one of them.',
    },
    other.path,
    keyOffset(other),
  );
  return true;
}
