import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { EngineAnswer } from '../../src/answer/model.ts';
import { STANDARD_GRAVITY } from '../../src/physics/constants.ts';
import { solveText } from './solveText.ts';

/*
 * Engines whose cycle dumps nothing, default budget, no value fitted to any of them. 80 % bells throughout: the real contours
 * were not at hand. Sources of the published figures:
 *   RS-25 (first): P. Fortescue and others, Spacecraft Systems Engineering, table 6.2 (seen)
 *   RS-25D: encyclopaedia page (secondary); its mixture ratio from memory
 *   RL10A-3-3A: from memory; its cycle and use: NASA CR-195478 (seen)
 *   RD-0120, LE-7: copies of encyclopaedia pages (seen, secondary)
 *   NK-33: copy of an encyclopaedia page (seen, secondary); area and mixture ratio from memory
 *   Vinci: copy of an encyclopaedia page (seen, secondary); area ratio from memory
 */
interface Row {
  readonly engine: string;
  readonly cycle: string;
  readonly fuel: string;
  readonly ratio: number;
  readonly pressure: string;
  readonly areaRatio: number;
  readonly thrust: string;
  /** [s] */ readonly vacuum: number;
  /** [s]; null where the nozzle does not run full there */ readonly seaLevel: number | null;
  /** What misses the 2 %; the page says why. */ readonly misses?: readonly ('vacuum' | 'seaLevel')[];
}

const rows: readonly Row[] = [
  {
    engine: 'RS-25 (first)',
    cycle: 'staged',
    fuel: 'hydrogen',
    ratio: 6,
    pressure: '207 bar',
    areaRatio: 77.5,
    thrust: '2090 kN',
    vacuum: 455,
    seaLevel: 363,
  },
  {
    engine: 'RS-25D',
    cycle: 'staged',
    fuel: 'hydrogen',
    ratio: 6.03,
    pressure: '2994 psi',
    areaRatio: 69,
    thrust: '512300 lbf',
    vacuum: 452.3,
    seaLevel: 366,
  },
  {
    engine: 'RD-0120',
    cycle: 'staged',
    fuel: 'hydrogen',
    ratio: 6,
    pressure: '219 bar',
    areaRatio: 85.7,
    thrust: '1961.3 kN',
    vacuum: 455,
    seaLevel: 353.2,
    misses: ['seaLevel'],
  },
  {
    engine: 'LE-7',
    cycle: 'staged',
    fuel: 'hydrogen',
    ratio: 5.9,
    pressure: '127 bar',
    areaRatio: 52,
    thrust: '1078 kN',
    vacuum: 446,
    seaLevel: 349,
  },
  {
    engine: 'NK-33',
    cycle: 'staged',
    fuel: 'kerosene',
    ratio: 2.8,
    pressure: '145 bar',
    areaRatio: 27,
    thrust: '1753.8 kN',
    vacuum: 331,
    seaLevel: 297,
    misses: ['vacuum', 'seaLevel'],
  },
  {
    engine: 'RL10A-3-3A',
    cycle: 'expander',
    fuel: 'hydrogen',
    ratio: 5,
    pressure: '475 psi',
    areaRatio: 61,
    thrust: '16500 lbf',
    vacuum: 444.4,
    seaLevel: null,
  },
  {
    engine: 'Vinci',
    cycle: 'expander',
    fuel: 'hydrogen',
    ratio: 5.8,
    pressure: '60.8 bar',
    areaRatio: 240,
    thrust: '180 kN',
    vacuum: 465.1,
    seaLevel: null,
  },
];

function engineText(row: Row): string {
  return `{ propellants: { oxidiser: oxygen, fuel: ${row.fuel}, ratio: ${row.ratio} }, chamber: { pressure: ${row.pressure} }, size: { thrust: ${row.thrust}, at: vacuum }, nozzle: { kind: bell, areaRatio: ${row.areaRatio}, length: 80 % } }`;
}

const { answer } = await solveText(rows.map((row, i) => `e${i}: ${engineText(row)}`).join('\n'));
const engines = rows.map((_, i) => answer.engines[`e${i}`]!);

/** [s] at sea level if the gas fills the nozzle, as the published figures have it. */
function seaLevelFull({ seaLevel, massFlow }: EngineAnswer): number {
  return seaLevel.thrustIfFull / (massFlow * STANDARD_GRAVITY);
}

const share = (computed: number, published: number): number => computed / published - 1;
describe('engines that dump nothing', () => {
  test.each(rows.map((row, i) => ({ ...row, one: engines[i]! })))('$engine within 2 %', ({ one, ...row }) => {
    const limit = (place: 'vacuum' | 'seaLevel'): number => (row.misses?.includes(place) ? 0.03 : 0.02);
    expect(Math.abs(share(one.losses.delivered, row.vacuum))).toBeLessThan(limit('vacuum'));
    if (row.seaLevel === null) return;
    expect(Math.abs(share(seaLevelFull(one), row.seaLevel))).toBeLessThan(limit('seaLevel'));
  });

  // (F_vac − F_SL)/p_SL is the exit area, 1526 kN at sea level by the same page; pressure and area ratio give another.
  test('the sea-level figure of the RD-0120 contradicts its own pressure and area ratio by 5 to 12 %', () => {
    const published = (1961.3e3 - 1526e3) / 101325;
    const { exit } = engines[rows.findIndex(({ engine }) => engine === 'RD-0120')]!;
    const ours = (Math.PI * exit.diameter ** 2) / 4;
    expect(published / ours - 1).toBeGreaterThan(0.05);
    expect(published / ours - 1).toBeLessThan(0.12);
  });

  test('the published figure lies inside the band of the budget', () => {
    for (const [i, { engine, vacuum }] of rows.entries()) {
      const { ideal, sum } = engines[i]!.losses;
      expect(vacuum, engine).toBeLessThan(ideal * (1 - sum.low));
      expect(vacuum, engine).toBeGreaterThan(ideal * (1 - sum.high));
    }
  });

  // Half a second: the page need not follow every change in the sixth digit.
  test('the page shows what is computed', () => {
    const page = readFileSync(new URL('../../docs/methods/losses.md', import.meta.url), 'utf8');
    for (const [i, { engine, vacuum, seaLevel }] of rows.entries()) {
      const line = page.split('\n').find((text) => text.startsWith(`| ${engine}, `));
      const [, , , , inVacuum, atSeaLevel] = line!.split('|').slice(1);
      const [computed, published] = inVacuum!.match(/[\d.]+/g)!.map(Number);
      expect(Math.abs(computed! - engines[i]!.losses.delivered), engine).toBeLessThan(0.5);
      expect(published, engine).toBe(vacuum);
      if (seaLevel === null) continue;
      const [low, printed] = atSeaLevel!.match(/[\d.]+/g)!.map(Number);
      expect(Math.abs(low! - seaLevelFull(engines[i]!)), engine).toBeLessThan(0.5);
      expect(printed, engine).toBe(seaLevel);
    }
  });
});
