import { expect, test } from 'vitest';
import { areAlike, touchedEngines, withTextAt } from '../../../src/answer/estimate/index.ts';
import { editStudy } from '../../../src/study/edit.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { shelf } from '../solveText.ts';

const text = `plumeline: 1
question: Which?
engines:
  a:
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.1 }
    chamber: { pressure: 100 bar, efficiency: 97 % }
    size: { thrust: 800 kN, at: vacuum }
    nozzle: { kind: bell, areaRatio: 25, length: 80 % }
  b:
    like: a
    size: { same: throat, as: a }
    nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % }
  c:
    like: a
    size: { throat: 200 mm }
    chamber: { pressure: 60 bar }
`;

async function enginesOf(of: string) {
  const read = readStudy(of, await options());
  if (!read.ok) throw new Error(read.problems[0]?.what);
  return read.study.engines;
}
const options = async () => ({ file: 'study.yaml', ...knownNames(await shelf.propellants()) });

const changes = [
  ['engines.a.chamber.pressure', '1450 psi'],
  ['engines.a.propellants.ratio', '3.4 ± 0.2'],
  ['engines.a.propellants.ratio', '3.2 to 3.6'],
  ['engines.a.chamber.efficiency', '96 %'],
  ['engines.a.size.thrust', '1 MN'],
  ['engines.a.nozzle.areaRatio', '30'],
  ['engines.b.nozzle.kept', '40 %'],
  ['engines.c.size.throat', '8 in'],
] as const;

test.each(changes)('%s: %s leads to the engines that reading the changed text gives', async (path, value) => {
  const engines = await enginesOf(text);
  const edited = editStudy(text, [{ path: path.split('.'), value }], await options());
  const quick = withTextAt(engines, path, value);
  expect(JSON.parse(JSON.stringify(quick))).toEqual(JSON.parse(JSON.stringify(await enginesOf(edited))));
});

test('what cannot be read at once is left to the reader of the study', async () => {
  const engines = await enginesOf(text);
  for (const [path, value] of [
    ['engines.a.chamber.pressure', '100 b'],
    ['engines.a.chamber.pressure', '100 kN'],
    ['engines.a.chamber.efficiency', '120 %'],
    ['engines.a.nozzle.kind', 'cone'],
    ['engines.b.chamber.pressure', '90 bar'],
    ['engines.a.size.at', '10 km'],
  ] as const) {
    expect(withTextAt(engines, path, value), `${path}: ${value}`).toBeNull();
  }
});

test('an engine that takes its size from one that moves comes after it', async () => {
  const engines = await enginesOf(text);
  const moved = withTextAt(engines, 'engines.a.size.thrust', '900 kN')!;
  expect(touchedEngines(engines, moved).map(({ now }) => now.id)).toEqual(['a', 'b']);
  expect(touchedEngines(engines, engines)).toEqual([]);
  expect(areAlike(engines[0], moved[0])).toBe(false);
});
