import { describe, expect, test } from 'vitest';
import { askProblem } from '../../../src/answer/asked/askProblem.ts';
import type { Ask } from '../../../src/answer/asked/model.ts';
import { tell } from '../../../src/answer/asked/tell.ts';
import { tellAir } from '../../../src/answer/asked/tellAir.ts';
import { catalogue, quantity } from '../../../src/answer/catalogue.ts';
import { solveText } from '../solveText.ts';

const plain: Ask = { engine: 'bell', quantity: '', ambient: null, throttle: null, station: null, inputs: [] };
const pad = { kind: 'altitude', altitude: 0 } as const;
const lip = { kind: 'lip' } as const;

describe('what cannot be asked so', () => {
  test.each<readonly [string, Partial<Ask>, string]>([
    ['chamber.temperature', { ambient: pad }, 'ambient-not-expected'],
    ['thrust', {}, 'ambient-missing'],
    ['wall.pressure', {}, 'station-missing'],
    ['wall.pressure', { station: lip, ambient: pad }, 'ambient-not-expected'],
    ['thrust', { ambient: pad, station: lip }, 'station-not-expected'],
    ['wall.pressure', { station: { kind: 'areaRatio', areaRatio: 0.5 } }, 'station-out-of-range'],
    ['wall.pressure', { station: { kind: 'distance', distance: Number.NaN } }, 'station-out-of-range'],
    ['plume.boundary.radius', { ambient: pad, station: lip }, 'station-not-expected'],
    ['plume.boundary.radius', { ambient: pad }, 'station-missing'],
    ['thrust', { ambient: { kind: 'altitude', altitude: 2e6 } }, 'ambient-out-of-range'],
    ['thrust', { ambient: { kind: 'pressure', pressure: -1 } }, 'ambient-out-of-range'],
    ['thrust', { ambient: { kind: 'pressure', pressure: Number.NaN } }, 'ambient-out-of-range'],
    ['altitude', { ambient: { kind: 'vacuum' } }, 'ambient-not-air'],
    ['thrustParts.force', { ambient: pad }, 'part-missing'],
    ['massFlow', { part: 'plug' }, 'part-not-expected'],
    ['massFlow', { engine: null }, 'engine-missing'],
    ['air.pressure', { ambient: pad }, 'engine-not-expected'],
    ['air.pressure', { engine: null, ambient: pad, throttle: 0.5 }, 'input-not-expected'],
    ['air.pressure', { engine: null, ambient: { kind: 'vacuum' } }, 'ambient-not-air'],
    ['thrust', { ambient: pad, throttle: 0 }, 'throttle-out-of-range'],
    ['comparison.difference', {}, 'quantity-not-asked'],
    ['published.share', {}, 'quantity-not-asked'],
    ['separation.throttle.share', {}, 'quantity-not-asked'],
  ])('%s %o', (name, asked, code) => {
    const problem = askProblem(quantity(name), { ...plain, quantity: name, ...asked });
    expect(problem).toMatchObject({ code, where: name });
    expect(problem!.mend).toMatch(/\.$/);
  });

  test.each<readonly [string, Partial<Ask>]>([
    ['thrust', { ambient: pad, throttle: 0.6 }],
    ['thrust', { ambient: { kind: 'vacuum' }, part: 'skirt drawn up' }],
    ['wall.pressure', { station: { kind: 'areaRatio', areaRatio: 5 } }],
    ['plume.boundary.radius', { ambient: pad, station: { kind: 'distance', distance: 2 } }],
    ['thrustParts.force', { ambient: pad, part: 'nozzle wall' }],
    ['air.pressure', { engine: null, ambient: pad }],
    ['massFlow', {}],
  ])('%s %o may be asked', (name, asked) => {
    expect(askProblem(quantity(name), { ...plain, quantity: name, ...asked })).toBeNull();
  });
});

describe('any way of asking', () => {
  const places = [null, pad, { kind: 'vacuum' }, { kind: 'pressure', pressure: 9e7 }] as const;
  const stations = [
    null,
    lip,
    { kind: 'injector' },
    { kind: 'throat' },
    { kind: 'areaRatio', areaRatio: 3 },
    { kind: 'distance', distance: 0.05 },
  ] as const;
  const parts = [undefined, 'no such thing', 'low', 'schmucker', 'H2O'];

  test('is a finite number or a problem with words', async () => {
    const { solutions } = await solveText(
      `bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 60 } }`,
    );
    let numbers = 0;
    for (const { name, place } of catalogue) {
      for (const ambient of places) {
        for (const station of stations) {
          for (const part of parts) {
            const engine = place === 'air' ? null : 'bell';
            const ask: Ask = { ...plain, engine, quantity: name, ambient, station, ...(part && { part }) };
            const told = place === 'air' ? tellAir(ask) : tell(solutions.get('bell')!, ask);
            if (told.ok) {
              numbers++;
              expect(Number.isFinite(told.value), name).toBe(true);
              for (const { low, high } of told.scatter)
                expect([low, high].every(Number.isFinite), name).toBe(true);
            } else {
              expect(told.problem.what.length * told.problem.mend.length, name).toBeGreaterThan(0);
            }
          }
        }
      }
    }
    expect(numbers).toBeGreaterThan(150);
  });
});
