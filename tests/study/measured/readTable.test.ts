import { describe, expect, test } from 'vitest';
import { readCsv } from '../../../src/study/measured/readCsv.ts';
import { readMeasuredTable } from '../../../src/study/measured/readTable.ts';
import { readStudy } from '../../../src/study/read.ts';

const read = (text: string) => readMeasuredTable(text, 'run.csv');
const problem = (text: string) => {
  const found = read(text);
  if (found.ok) throw new Error('read');
  return found.problems.map(({ where, what }) => `${where} ${what}`).join('\n');
};

describe('a table of measured points', () => {
  test('is read into SI, with ± as differences and empty cells as none', () => {
    const found = read('altitude [km],thrust [lbf],± thrust [kN]\n# a remark\n0,100,1\n\n10,,2\n');
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    const { place, columns } = found.table;
    expect(place).toMatchObject({ name: 'altitude', unit: 'km', values: [0, 10_000] });
    expect(columns).toHaveLength(1);
    // 1 lbf = 0.45359237 kg × 9.80665 m/s², exact by definition (NIST SP 811, appendix B.8, from memory).
    expect(columns[0]!.values[0]).toBeCloseTo(444.8221615, 6);
    expect(columns[0]!.values[1]).toBeNull();
    expect(columns[0]!.plusMinus).toEqual([1000, 2000]);
  });

  test.each([
    ['altitude [km],thrust [kN]\n1,x\n', 'run.csv:2:3 “x” is no number'],
    ['altitude [km],thrust [kN]\n1,2,3\n', 'run.csv:2:1 The row has 3 cells'],
    ['altitude [miles per],thrust\n1,2\n', 'run.csv:1:1 “miles per” is no unit'],
    ['altitude [km],thrust [kN],± pressure [bar]\n1,2,3\n', 'stands after “thrust”'],
    ['altitude [km]\n1\n', 'has 1 columns'],
    ['altitude [km],thrust [kN]\n,2\n', 'The place of the point is missing'],
    ['altitude [km],thrust [kN]\n1,Infinity\n', 'is no number'],
  ])('%j is told where it is wrong', (text, words) => {
    expect(problem(text)).toContain(words);
  });
});

// RFC 4180, section 2: quoted cells hold commas, line breaks and doubled quotes.
test('cells are read as RFC 4180 has them, each with its place', () => {
  const rows = readCsv('\ufeffa,"b, ""c""\nd",\r\n1,2,3');
  expect(rows.map((row) => row.map(({ text }) => text))).toEqual([
    ['a', 'b, "c"\nd', ''],
    ['1', '2', '3'],
  ]);
  expect(rows[1]![2]).toMatchObject({ line: 3, column: 5 });
});

describe('the section of a study', () => {
  const study = (measured: string): string => `plumeline: 1
question: Does it fit?
engines:
  bell: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 70 bar, efficiency: 98 % }, size: { throat: 200 mm }, nozzle: { kind: cone, areaRatio: 25, halfAngle: 15 deg } }
measured:
  - ${measured}
sources:
  run: { title: A run }
`;

  test('names a file, an engine and a source', () => {
    const outcome = readStudy(study('{ id: a, file: run.csv, of: bell, source: run, at: 0.97 bar }'));
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    expect(outcome.study.measured[0]).toMatchObject({
      file: 'run.csv',
      of: 'bell',
      source: 'run',
      at: { kind: 'pressure', value: 97_000 },
    });
  });

  test.each([
    ['{ id: a, file: ../run.csv, of: bell, source: run }', 'measured-file'],
    ['{ id: a, file: /etc/run.csv, of: bell, source: run }', 'measured-file'],
    ['{ id: a, file: run.csv, of: bel, source: run }', 'measured-engine'],
    ['{ id: a, file: run.csv, of: bell, source: other }', 'measured-source'],
    ['{ id: a, file: run.csv, of: bell }', 'key-missing'],
    ['{ id: a, file: run.csv, of: bell, source: run, at: blue }', 'measured-at'],
  ])('%s is refused with its place', (entry, code) => {
    const outcome = readStudy(study(entry));
    if (outcome.ok) throw new Error('read');
    expect(outcome.problems.map((each) => each.code)).toContain(code);
    expect(outcome.problems[0]!.place?.line).toBe(6);
  });
});
