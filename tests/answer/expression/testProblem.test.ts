import { expect, test } from 'vitest';
import { compileTest, testProblem } from '../../../src/answer/expression/index.ts';
import { describeStudyProblem, placeInTest } from '../../../src/study/index.ts';
import { parseAsText } from '../../../src/study/textEdit.ts';
import { alder, alderScope, alderText } from './alderScope.ts';

const study = (holds: string): string => `plumeline: 1
sentences:
  - id: other
    say: Something else.
    holds: plug.massFlow > 1 kg/s
  - id: wanted
    say: The words.
    holds: ${holds}
`;

/** As the study reader takes it. */
const readValue = (text: string): string => String(parseAsText(text).getIn(['sentences', 1, 'holds'])).trim();

const WRITTEN = [
  'bell.thrust(0 km) > plug.WRONG(0 km)',
  '"bell.thrust(0 km) > plug.WRONG(0 km)"',
  "'bell.thrust(0 km) > plug.WRONG(0 km)'",
  `"bell.chamber.composition(species \\"H2O\\") > 1 and plug.WRONG > 1"`,
  `'bell.chamber.composition(species ''H2O'') > 1 and plug.WRONG > 1'`,
  `>-
      bell.thrust(0 km)
      > plug.WRONG(0 km)`,
  `|
      bell.thrust(0 km)
        > plug.WRONG(0 km)`,
  `bell.thrust(0 km)
      > plug.WRONG(0 km)`,
];

test.each(WRITTEN)('%s', (written) => {
  const text = study(written);
  const offset = readValue(text).indexOf('plug.WRONG');
  const place = placeInTest(text, 'wanted', offset)!;
  const line = text.split('\n')[place.line - 1]!;
  expect(line.slice(place.column - 1)).toMatch(/^plug\.WRONG/);
});

test('a problem of a test is told with file, line and column', () => {
  const broken = alderText.replace('plug.specificImpulse(5 km) <', 'plug.specificImpulse(5 bars) <');
  const compiled = compileTest('plug.specificImpulse(5 bars) < bell.specificImpulse(5 km)', alderScope);
  if (compiled.ok) throw new Error('compiles');
  const problem = testProblem('study.yaml', broken, 'on-the-way', compiled.problem);
  const line = broken.split('\n').findIndex((one) => one.includes('5 bars')) + 1;
  expect(problem.place).toEqual({ line, column: broken.split('\n')[line - 1]!.indexOf('bars') + 1 });
  expect(describeStudyProblem(problem)).toContain(`study.yaml:${line}:`);
});

test('no sentence, no place', () => {
  expect(placeInTest(alderText, 'none', 0)).toBeNull();
  expect(placeInTest('', 'none', 0)).toBeNull();
  expect(alder.sentences.length).toBeGreaterThan(0);
});
