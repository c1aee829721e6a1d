/** No rendered number differs from the one that was told by more than its own rounding, whatever is asked of it. */

import { expect, test } from 'vitest';
import { randomStream } from '../../../src/numerics/randomStream.ts';
import type { ScriptUnits } from '../../../src/study/script/model.ts';
import { parseQuantity } from '../../../src/study/units.ts';
import { tellNumber } from '../../../src/telling/script/tellNumber.ts';
import { FORCE, PRESSURE, piece, TEMPERATURE, TIME, told } from './told.ts';

const KINDS = [
  { dimension: FORCE, kind: 'force', least: 1e3, units: ['kN', 'N', 'MN', 'lbf'] },
  { dimension: PRESSURE, kind: 'pressure', least: 1e4, units: ['bar', 'kPa', 'psi'] },
  { dimension: TIME, kind: 'time', least: 1, units: ['s', 'min'] },
  { dimension: TEMPERATURE, kind: 'temperature', least: 300, units: ['K', '°C', '°F'] },
  { dimension: [0, 1, 0, 0, 0, 0], kind: 'length', least: 1e-2, units: ['m', 'mm', 'km', 'ft', 'in'] },
  { dimension: [1, 0, 0, 0, 0, 0], kind: 'mass', least: 1, units: ['kg', 't', 'lb'] },
] as const;

test('three thousand random numbers, read back', () => {
  const next = randomStream(23);
  const pick = <T>(all: readonly T[]): T => all[Math.floor(all.length * next())]!;
  let read = 0;
  for (let i = 0; i < 3000; i++) {
    const { dimension, kind, least, units } = pick(KINDS);
    const value = least * 10 ** (3 * next());
    const spread = value * 0.1 * next() ** 3;
    const number = told('x', value, [value - spread, value + spread], { dimension });
    const asked = {
      about: next() < 0.3,
      ...(next() < 0.5 && { unit: pick(units) }),
      ...(next() < 0.3 && { digits: 1 + Math.floor(4 * next()) }),
    };
    const found = tellNumber(piece('x', asked), number, pick<ScriptUnits>(['metric', 'customary', 'both']));
    for (const text of found.text.replaceAll('\u202f', '').split(/ \(|\)/)) {
      if (text === '') continue;
      const clean = text.replace(/^about /, '').replace(/(?<=\d)\u00a0(?=\d)/g, '');
      const parsed = parseQuantity(clean, kind);
      if (!parsed.ok) throw new Error(`${found.text}: ${parsed.problem.what}`);
      // The unit of the last digit written; noughts at the end may be rounded ones.
      const digits = /[\d.]+/.exec(clean)![0];
      const decimals = digits.split('.')[1]?.length ?? 0;
      const zeros = decimals > 0 ? 0 : (/0+$/.exec(digits)?.[0].length ?? 0);
      const unit = parseQuantity(clean.replace(/[−-]?[\d.]+/, '1'), kind);
      const none = parseQuantity(clean.replace(/[−-]?[\d.]+/, '0'), kind);
      if (!unit.ok || !none.ok) throw new Error(clean);
      const step = (unit.value.value - none.value.value) * 10 ** (decimals > 0 ? -decimals : zeros);
      // A nought behind the point is left out: one digit more than is written may be meant.
      expect(Math.abs(parsed.value.value - value), `${found.text} for ${value}`).toBeLessThanOrEqual(
        0.5001 * step + 1e-9 * value,
      );
      read += 1;
    }
  }
  expect(read).toBeGreaterThan(3000);
});
