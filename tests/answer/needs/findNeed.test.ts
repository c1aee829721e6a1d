import { describe, expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { findNeed, type Need, type NeedRequest, needWords } from '../../../src/answer/needs/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { studyOf } from '../solveText.ts';

// A teaching gas, γ = 1.4: what is sought is known in closed form.
const engines = `
one: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 1000 ± 40 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 }, losses: none }
two: { like: one, nozzle: { areaRatio: 25 } }
`;

async function need(
  so: string,
  over: string,
  from: number,
  to: number,
  rest: Partial<NeedRequest> = {},
): Promise<Need> {
  const study = await studyOf(engines.trim());
  const range = { over, from, to, spacing: 'even' as const };
  const request = { id: null, title: null, so, range, engines: ['one'], ...rest };
  return findNeed(study, await localCrew(study, openDataShelf()), request);
}

describe('what an input would have to be', () => {
  // NACA Report 1135 (Ames Research Staff, 1953): A/A* = 4.2346 at M = 3, γ = 1.4.
  it('an area ratio for an exit Mach number', async () => {
    const { found, stretches } = await need('one.exit.mach >= 3', 'nozzle.areaRatio', 2, 12);
    expect(found).toHaveLength(1);
    expect(found[0]!.x).toBeCloseTo(4.2346, 2);
    expect(found[0]!.holdsAbove).toBe(true);
    expect(stretches.map(({ holds }) => holds)).toEqual([false, true]);
    // Neither temperature nor anything else that is open takes part.
    expect(found[0]!.low).toBeNull();
  });

  it('turned round, up to the same value', async () => {
    const { found } = await need('one.exit.mach < 3', 'nozzle.areaRatio', 2, 12);
    expect(found[0]!.x).toBeCloseTo(4.2346, 2);
    expect(found[0]!.holdsAbove).toBe(false);
  });

  // v ~ √(T/M): with T 4 % up or down, the same speed needs M 4 % up or down.
  it('its band is what all else that is not known leaves', async () => {
    const at28 = await need('one.exit.velocity <= two.exit.velocity', 'propellants.molarMass', 0.02, 0.04);
    // Both hang on the one temperature, which cancels.
    expect(at28.found[0]!.low).toBeNull();
    const { found } = await need('one.exit.velocity <= 1300 m/s', 'propellants.molarMass', 0.01, 0.06);
    const { x, low, high } = found[0]!;
    expect((high! - low!) / (2 * x)).toBeCloseTo(0.04, 2);
  });

  it('no answer in range: the nearest place, and what is missing there', async () => {
    const found = await need('one.exit.mach >= 7', 'nozzle.areaRatio', 2, 12);
    expect(found.found).toEqual([]);
    expect(found.nearest!.x).toBe(12);
    // A/A* = 12 is M = 4.127 for γ = 1.4 (the same equation).
    expect(found.nearest!.missing).toBeCloseTo(7 - 4.127, 2);
    expect(needWords(found)[0]).toMatch(/^No answer: at no area ratio from 2 to 12/);
  });

  it('at every value of the range', async () => {
    const found = await need('one.exit.mach >= 1.5', 'nozzle.areaRatio', 2, 12);
    expect(found.nearest).toBeNull();
    expect(needWords(found)[0]).toMatch(/^At every area ratio/);
  });

  it('another engine: they move apart', async () => {
    const { found } = await need(
      'one.specificImpulse(vacuum) >= two.specificImpulse(vacuum)',
      'nozzle.areaRatio',
      5,
      60,
    );
    expect(found[0]!.x).toBeCloseTo(25, 1);
    expect(
      needWords({ ...(await need('one.exit.mach >= two.exit.mach', 'nozzle.areaRatio', 5, 60)) })[0],
    ).toMatch(
      /^It is so where area ratio is at least 25\.0: the Mach number at the lip of one, flowing full, is at least the Mach number at the lip of two, flowing full\.$/,
    );
  });
});

describe('what is no need', () => {
  it.each([
    ['one.exit.mach rises for e from 1 to 2', 'need-no-comparison'],
    ['one.exit.mach', 'no-comparison'],
    ['one.exit.mach >= two.exit.velocity', 'compares-unlike'],
  ])('%s', async (so, code) => {
    const error = await need(so, 'nozzle.areaRatio', 2, 12).catch((caught: unknown) => caught);
    expect(error).toBeInstanceOf(ProblemError);
    expect((error as ProblemError).problem.code).toBe(code);
  });
});

// Thrust at the pad has a flat top over the area ratio: a straight line there leads far from where the curve goes.
describe('a band along a curve that bends', () => {
  const neededAt = async (pressure: string) => {
    const study = await studyOf(
      `one: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: ${pressure}, efficiency: 100 % }, size: { throat: 250 mm }, nozzle: { kind: ideal, areaRatio: 10 }, losses: none }`,
    );
    const crew = await localCrew(study, openDataShelf());
    const found = await findNeed(study, crew, {
      id: null,
      title: null,
      so: 'one.thrust(pad) >= 690 kN',
      range: { over: 'nozzle.areaRatio', from: 5, to: 60, spacing: 'even' },
      engines: null,
    });
    return { found: found.found.find(({ holdsAbove }) => !holdsAbove)!, words: needWords(found) };
  };

  it('its ends lie near those of the ends of what is not known', async () => {
    const [less, open, more] = await Promise.all(['97 bar', '100 ± 3 bar', '103 bar'].map(neededAt));
    expect(less!.found.isOpen).toBe(false);
    expect(open!.found.low! / less!.found.x).toBeGreaterThan(0.93);
    expect(open!.found.low! / less!.found.x).toBeLessThan(1.07);
    expect(open!.found.high! / more!.found.x).toBeGreaterThan(0.93);
    expect(open!.found.high! / more!.found.x).toBeLessThan(1.07);
  });

  it('an end that the range does not hold is said to be none', async () => {
    const { found, words } = await neededAt('100 ± 30 bar');
    expect(found).toMatchObject({ isOpen: true, low: null, high: null });
    expect(words.join(' ')).toMatch(/no end of it in the range with all else/);
  });
});
