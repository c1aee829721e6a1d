/** Each number that is told of a vehicle leads to what it is worked out from, and what no test names to a sentence that says as much. */

import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileTest, scopeOf } from '../../../src/answer/expression/index.ts';
import { type SolvedStudy, solveStudyLive } from '../../../src/answer/solve.ts';
import { vehicleWorths } from '../../../src/answer/worth/vehicleWorth.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { exchangeSaid } from '../../../src/faces/workbench/state/exchangeSaid.ts';
import { toldParts } from '../../../src/faces/workbench/state/toldParts.ts';
import { vehicleNumbers } from '../../../src/faces/workbench/state/vehicleNumbers.ts';
import type { Study } from '../../../src/study/model.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';

const shelf = openDataShelf();
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

let study: Study;
let solved: SolvedStudy;
beforeAll(async () => {
  const outcome = readStudy(await readFile(example, 'utf8'), {
    file: 'study.yaml',
    ...knownNames(await shelf.propellants()),
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  study = outcome.study;
  solved = await solveStudyLive(study, shelf);
});

describe('the numbers told of a vehicle', () => {
  it('are all of its words: payload, gain and share of it, masses and engines as stated', () => {
    const [vehicle] = solved.answer.vehicles;
    const [input] = study.vehicles;
    if (vehicle === undefined || input === undefined) throw new Error('the example has a vehicle');
    const cards = vehicleNumbers(vehicle, input);
    const found = [vehicle.words, vehicle.comparison?.words ?? '', vehicle.description].map((text) => {
      const parts = toldParts(text, cards);
      expect(parts.map((part) => part.text + part.mark).join('')).toBe(text);
      for (const part of parts) if (part.card === null) expect(part.text).not.toMatch(/\d/);
      return parts.flatMap(({ card }) => card?.expression ?? []);
    });
    expect(found).toEqual([
      ['booster.payload', 'booster.orbit.altitude', 'booster.massToOrbit'],
      [
        'booster.payload(engine = plug) - booster.payload',
        'booster.payload(engine = plug) / booster.payload - 1',
      ],
      [
        'booster.first.count',
        'booster.first.propellant',
        'booster.second.specificImpulse',
        'booster.second.thrust',
        'booster.second.propellant',
      ],
    ]);
  });

  it('have exchange rates said as a step of the input, where the study states it, in a test that can be read', () => {
    const [vehicle] = study.vehicles;
    const [worth] = vehicleWorths(study, solved.answer, solved.solutions);
    if (vehicle === undefined || worth === undefined) throw new Error('the example has a vehicle');
    const said = worth.exchange.rates.map((rate) => exchangeSaid(vehicle, rate));
    // Specific impulse and thrust of the first stage are its engine's.
    expect(said.map((one) => one?.sweep.input)).toEqual([
      undefined,
      'first.dry',
      undefined,
      'first.propellant',
      'second.specificImpulse',
      'second.dry',
      'second.thrust',
      'second.propellant',
    ]);
    const scope = scopeOf(study);
    for (const one of said)
      if (one) expect(compileTest(one.holds, scope), one.holds).toMatchObject({ ok: true });
    expect(said[1]?.holds).toMatch(
      /^booster\.payload - booster\.payload\(first\.dry = 16\.16 t\) is about \d+ kg within 20 %$/,
    );
  });
});
