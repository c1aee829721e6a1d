import { beforeAll, describe, expect, test } from 'vitest';
import type { Ask, AskedAmbient, AskedStation, Told } from '../../../src/answer/asked/model.ts';
import { tell, toldOfAnEngine } from '../../../src/answer/asked/tell.ts';
import { toldOfAir } from '../../../src/answer/asked/tellAir.ts';
import { catalogue, findQuantity } from '../../../src/answer/catalogue.ts';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { solveText } from '../solveText.ts';

const engines = `
bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 60 } }
plug: { name: Plug, like: bell, nozzle: { kind: plug, areaRatio: 40, kept: 30 %, modules: 24, machOne: 8 km } }
dual: { name: Dual, like: bell, nozzle: { kind: dualBell, areaRatio: 80, baseAreaRatio: 25, extensionLength: 80 % } }
skirt: { name: Skirt, like: bell, nozzle: { kind: extendableSkirt, areaRatio: 80, shortAreaRatio: 25 } }
deflection: { name: Deflection, like: bell, nozzle: { kind: expansionDeflection, areaRatio: 40 } }
ideal: { name: Ideal, propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3000 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }`;

let solved: SolvedStudy;
beforeAll(async () => {
  solved = await solveText(engines, 'ambients: [0.2 bar]\naltitudes: [12 km]');
});

const nothing = { throttle: null, inputs: [], ambient: null, station: null } as const;

function told(
  engine: string,
  quantity: string,
  ambient: AskedAmbient | null = null,
  station: AskedStation | null = null,
  part?: string,
): Told {
  const ask: Ask = { ...nothing, engine, quantity, ambient, station, ...(part !== undefined && { part }) };
  return tell(solved.solutions.get(engine)!, ask);
}

describe('every quantity of the catalogue', () => {
  test('is told of an engine or of the air, or says why it is not', () => {
    const known = new Set([...toldOfAnEngine, ...toldOfAir]);
    const neither = catalogue.filter(({ name, notAsked }) => !known.has(name) && notAsked === undefined);
    expect(neither.map(({ name }) => name)).toEqual([]);
    expect([...known].filter((name) => findQuantity(name) === undefined)).toEqual([]);
  });
});

describe('thrust of a bell', () => {
  test('is that of the answer, with its scatter', () => {
    const vacuum = told('bell', 'thrust', { kind: 'vacuum' });
    expect(vacuum).toMatchObject({ ok: true, value: solved.answer.engines.bell!.vacuum.thrust });
    expect(vacuum.ok && vacuum.scatter.map(({ name }) => name)).toContain('friction on the wall');
  });
});
