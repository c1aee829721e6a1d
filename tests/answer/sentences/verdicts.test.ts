import { describe, expect, test } from 'vitest';
import { PRESSURE } from '../spread/fakeCrew.ts';
import { check, checkOne, isOf, plain, withAlternatives, z } from './closedForms.ts';

/** massFlow = 100 kg/s + z, z standard normal: shares are those of the normal law. */
const normal = (_: unknown, point: Readonly<Record<string, number>>): number => 100 + z(point);

describe('the share decides', () => {
  // Φ(2) = 0.9772, Φ(1.5) = 0.9332: tables of the normal law.
  test.each([
    ['a.massFlow > 98 kg/s', 'safe to say', 0.9772],
    ['a.massFlow > 98.5 kg/s', 'say with care', 0.9332],
    ['a.massFlow > 100 kg/s', 'say with care', 0.5],
    ['a.massFlow > 101.5 kg/s', 'say with care', 0.0668],
    ['a.massFlow > 102 kg/s', 'don’t say', 0.0228],
  ] as const)('%s: %s', async (holds, verdict, share) => {
    const found = await checkOne({ holds }, normal);
    expect(found.verdict).toBe(verdict);
    expect(Math.abs(found.share! - share)).toBeLessThan(0.01);
    expect(found.shareError).toBeLessThan(0.01);
  });

  test('a line within the error of the share is told', async () => {
    // Φ(1.645) = 0.95
    const on = await checkOne({ holds: 'a.massFlow > 98.355 kg/s' }, normal);
    expect(on.why).toMatch(/The line at 95 % lies within the error/);
    const off = await checkOne({ holds: 'a.massFlow > 98.8 kg/s' }, normal);
    expect(off.why).not.toMatch(/lies within the error/);
  });

  test('nothing open: it holds or it does not', async () => {
    const [holds, fails] = await check(
      [{ holds: 'a.massFlow > 99 kg/s' }, { holds: 'a.massFlow > 101 kg/s' }],
      () => 100,
      { flips: false },
      '3.5',
    );
    expect(holds).toMatchObject({ verdict: 'safe to say', share: 1, shareError: 0 });
    expect(holds!.why).toMatch(/nothing in it is left open/);
    expect(fails).toMatchObject({ verdict: 'don’t say', share: 0 });
  });

  test('what two engines share cancels in their difference', async () => {
    const both = await checkOne({ holds: 'a.massFlow - b.massFlow > 0.5 kg/s' }, (ask, point) =>
      isOf(ask, 'a') ? 101 + z(point) : 100 + z(point),
    );
    expect(both).toMatchObject({ verdict: 'safe to say', share: 1 });
    const apart = await checkOne({ holds: 'a.massFlow - b.massFlow > 0.5 kg/s' }, (ask, point) =>
      isOf(ask, 'a') ? 101 + z(point) : 100,
    );
    // P(1 + z > 0.5) = Φ(0.5) = 0.6915
    expect(Math.abs(apart.share! - 0.6915)).toBeLessThan(0.01);
  });
});

describe('what no surface follows', () => {
  const wave = (point: Readonly<Record<string, number>>): number => 10 * Math.sin(5 * z(point));
  test('shared by both sides, it cannot turn their order', async () => {
    const both = await checkOne(
      { holds: 'a.massFlow > b.massFlow' },
      (ask, point) => (isOf(ask, 'a') ? 100.1 : 100) + wave(point),
    );
    expect(both).toMatchObject({ verdict: 'safe to say', share: 1 });
  });
  test('on one side alone, it can', async () => {
    const one = await checkOne({ holds: 'a.massFlow > b.massFlow' }, (ask, point) =>
      isOf(ask, 'a') ? 100.1 + wave(point) : 100,
    );
    expect(one.verdict).toBe('can’t tell');
    expect(one.why).toMatch(/response surface/);
  });
});

describe('published models that stand beside each other', () => {
  const by = (stark: number, schmucker: number) => () =>
    withAlternatives(schmucker, { Stark: stark, Schmucker: schmucker });
  test('all agree', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 98 kg/s' }, by(99, 101));
    expect(found.verdict).toBe('safe to say');
    expect(found.alternatives).toEqual([
      { of: 'separation criterion', by: 'Stark', share: 1 },
      { of: 'separation criterion', by: 'Schmucker', share: 1 },
    ]);
  });
  test('they disagree: can’t tell, with both sides named', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 100 kg/s' }, by(95, 105));
    expect(found.verdict).toBe('can’t tell');
    expect(found.why).toMatch(/it does not hold by Stark/);
    expect(found.why).toMatch(/it holds by Schmucker/);
    // What both allow is still true.
    expect(found.wording).toContain('between 95 and 105');
  });
  test('they agree at the middle values and part beside them: each of them judges', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 100 kg/s' }, (_, point) =>
      z(point) === 0 ? plain(105) : withAlternatives(105, { Stark: 95, Schmucker: 105 }),
    );
    expect(found.alternatives.map((one) => [one.by, one.share])).toEqual([
      ['Stark', 0],
      ['Schmucker', 1],
    ]);
    expect(found.verdict).toBe('can’t tell');
  });
  test('all are open: say with care', async () => {
    const open = await checkOne({ holds: 'a.massFlow > 100 kg/s' }, (_, point) =>
      withAlternatives(100 + z(point), { Stark: 100.5 + z(point), Schmucker: 99.5 + z(point) }),
    );
    expect(open.verdict).toBe('say with care');
  });
});

describe('what cannot be told', () => {
  const absent = {
    ok: false,
    problem: { code: 'no-flow', what: 'The flow is not choked.', mend: 'Raise the pressure.' },
  } as const;
  test('a number that is absent everywhere', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 1 kg/s' }, () => absent);
    expect(found).toMatchObject({ verdict: 'can’t tell', share: null, wording: null });
    expect(found.why).toMatch(/The flow is not choked/);
  });
  test('one side of an “or” holds: the other may be absent', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 1 kg/s or b.massFlow > 1 kg/s' }, (ask) =>
      isOf(ask, 'a') ? plain(2) : absent,
    );
    expect(found.verdict).toBe('safe to say');
  });
  test('a test that cannot be read is a problem with its place', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 3 bar' }, () => 1);
    expect(found.verdict).toBe('can’t tell');
    expect(found.problem).toMatchObject({ where: 'sentences.s0.holds' });
    expect(found.why).toMatch(/pressure/);
  });
  test('no test: not checked', async () => {
    expect(await checkOne({}, () => 1)).toMatchObject({ verdict: 'not checked', problem: null, share: null });
  });
});

test('what matters is ranked, and told where care is needed', async () => {
  const found = await checkOne({ holds: 'a.massFlow > 100 kg/s' }, normal);
  expect(found.matters).toHaveLength(1);
  expect(found.matters[0]).toMatchObject({
    source: 'engines.a.propellants.ratio',
    words: 'mixture ratio (100 %)',
  });
  expect(found.why).toMatch(/hangs mostly on the mixture ratio \(100 %\)/);
});

describe('flip points', () => {
  test('lie where the closed form says, nearest first, with the side', async () => {
    const found = await checkOne(
      { holds: 'a.massFlow > 92 kg/s' },
      (_, point) => (100 * (point[PRESSURE] ?? 100e5)) / 100e5,
      {},
      '3.5',
    );
    expect(found.flips).toHaveLength(1);
    // ṁ = p/bar kg/s: 92 bar
    expect(found.flips[0]!.value / 1e5).toBeCloseTo(92, 1);
    expect(found.flips[0]!.words).toMatch(/turns false below about 92\.0 bar/);
  });
  test('a curved margin on both sides of the value', async () => {
    // (p/bar − 100)² kg/s < 400: between 80 and 120 bar
    const found = await checkOne(
      { holds: 'a.massFlow < 400 kg/s' },
      (_, point) => ((point[PRESSURE] ?? 100e5) / 1e5 - 100) ** 2,
      {},
      '3.5',
    );
    const values = found.flips.map(({ value }) => value / 1e5).sort((a, b) => a - b);
    expect(values).toHaveLength(2);
    // Closed in on by four steps of false position and halving.
    expect(Math.abs(values[0]! - 80)).toBeLessThan(1.5);
    expect(Math.abs(values[1]! - 120)).toBeLessThan(1.5);
  });
  test('none where nothing turns it', async () => {
    expect((await checkOne({ holds: 'a.massFlow > 92 kg/s' }, () => 100, {})).flips).toEqual([]);
  });
});

test('first provisional, then final; aborts', async () => {
  const seen: boolean[] = [];
  const found = await check([{ holds: 'a.massFlow > 99 kg/s' }], normal, {
    onProvisional: ([first]) => void seen.push(first!.provisional),
  });
  expect(seen[0]).toBe(true);
  expect(found[0]!.provisional).toBe(false);
  const stop = new AbortController();
  stop.abort(new Error('enough'));
  await expect(check([{ holds: 'a.massFlow > 99 kg/s' }], normal, { signal: stop.signal })).rejects.toThrow(
    'enough',
  );
});
