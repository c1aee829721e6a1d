/** Plain expressions told with their spans: what the engines themselves are told, and what engines share cancels. */

import { expect, test } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { plainAsk } from '../../../src/answer/asked/plainAsk.ts';
import { tellNumbers } from '../../../src/answer/numbers/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { readStudy } from '../../../src/study/index.ts';
import { knownNames } from '../../../src/study/names.ts';

const shelf = openDataShelf();
const outcome = readStudy(
  `
plumeline: 1
question: Which gives more?
engines:
  short:
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.1 }
    chamber: { pressure: 80 bar, efficiency: 97 ± 1 % }
    size: { throat: 200 mm }
    nozzle: { kind: ideal, areaRatio: 12 }
  long: { like: short, nozzle: { areaRatio: 40 } }
`,
  knownNames(await shelf.propellants()),
);
if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
const { study } = outcome;

test('values are those that the engines are asked for, spans hold them, and what is shared cancels', async () => {
  const crew = await localCrew(study, shelf);
  const isp = (engine: string): string => `${engine}.specificImpulse(vacuum)`;
  const difference = `${isp('long')} - ${isp('short')}`;
  const told = await tellNumbers(
    study,
    [isp('long'), isp('short'), difference, '2 * 3 bar', isp('long')],
    crew,
  );
  expect(told.size).toBe(4);
  const [direct] = await crew.tell([plainAsk('long', 'specificImpulse', { kind: 'vacuum' })], [{}]);
  const own = direct![0]!;
  const long = told.get(isp('long'))!;
  expect(own.ok && own.value).toBe(long.value);
  expect(long).toMatchObject({ quantity: 'specificImpulse', madeOf: ['specificImpulse'], problem: null });
  for (const { value, low, high } of told.values()) expect(low! <= value! && value! <= high!).toBe(true);
  const width = (expression: string): number => told.get(expression)!.high! - told.get(expression)!.low!;
  expect(width(isp('long'))).toBeGreaterThan(1);
  expect(width(difference)).toBeLessThan(0.3 * width(isp('long')));
  expect(told.get(difference)!.value).toBeCloseTo(long.value! - told.get(isp('short'))!.value!, 9);
  // Nothing is asked: exact. 2 × 3 bar = 600 000 Pa.
  expect(told.get('2 * 3 bar')).toMatchObject({ value: 6e5, low: 6e5, high: 6e5 });
});

test('a difference of temperatures is one', async () => {
  const crew = await localCrew(study, shelf);
  const apart = 'long.chamber.temperature - long.exit.temperature';
  const told = await tellNumbers(study, ['long.chamber.temperature', apart], crew);
  expect(told.get('long.chamber.temperature')!.isDifference).toBe(false);
  expect(told.get(apart)!.isDifference).toBe(true);
});

test.each([
  ['long.thrsut(vacuum)', 'thrust'],
  ['long.thrust(vacuum) + 3 bar', 'force'],
  ['short.thrust(vacuum) / (1 - 1)', 'value'],
])('%s has no value, and says why', async (expression, part) => {
  const told = await tellNumbers(study, [expression], await localCrew(study, shelf));
  const { value, low, problem } = told.get(expression)!;
  expect([value, low]).toEqual([null, null]);
  expect(`${problem!.what} ${problem!.why ?? ''} ${problem!.mend}`).toContain(part);
});
