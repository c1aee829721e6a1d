/** Published figures on the page of a package, in its table of numbers, and at the terminal. */
import { expect, test } from 'vitest';
import { answerText } from '../../src/faces/cli/text/answerText.ts';
import { numbersCsv } from '../../src/telling/numbersTable.ts';
import { packagePage } from '../../src/telling/page/packagePage.ts';
import { solveText, studyOf } from '../answer/solveText.ts';

const engines = `bell:
  name: Alder B
  propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
  chamber: { pressure: 60 bar }
  size: { throat: 200 mm }
  nozzle: { kind: ideal, areaRatio: 12 }
  published:
    solveFor: areaRatio
    rows:
      - { quantity: thrust, value: 70000 lbf, at: vacuum, source: leaflet }
      - { quantity: thrust, value: 250 kN, at: sea level, source: "a <b>talk</b>" }
      - { quantity: exitDiameter, value: 900 mm, source: leaflet }`;
const rest = 'sources: { leaflet: { title: Leaflet of the invented Alder engines } }';
const { answer } = await solveText(engines, rest);

test('the terminal has each row with its difference, the contradictions, and what the rows settle', () => {
  const text = answerText(answer, [], { altitudes: [], ambients: [] }, 400);
  expect(text).toContain('Published figures of Alder B');
  expect(text).toMatch(
    /1\. thrust in vacuum: 70000 lbf \(311\.4 kN\) published, .* kN computed: .* outside its digits/,
  );
  expect(text).toContain('Source: Leaflet of the invented Alder engines.');
  expect(text).toMatch(/beyond what ± and digits allow\. Rows: 1, 2, engines\.bell/);
  expect(text).toContain('The published rows do not agree on one area ratio');
});

test('the page has the same, and no markup of a stranger', async () => {
  const page = packagePage({
    answer,
    sentences: [],
    analogies: [],
    study: await studyOf(engines, rest),
    figures: [],
    fonts: [],
    worth: null,
    needs: [],
    vehicleWorths: [],
  });
  expect(page).toContain('Published figures of Alder B');
  expect(page).toContain('70000 lbf (311.4 kN)');
  expect(page).toContain('a &lt;b&gt;talk&lt;/b&gt;');
  expect(page).not.toContain('<b>talk');
});

test('the table of numbers names each by its quantity', () => {
  const lines = numbersCsv(answer).split('\r\n');
  const line = (path: string) => lines.find((text) => text.startsWith(`bell,${path},`));
  expect(line('published[0].value')).toMatch(
    /^bell,published\[0\]\.value,thrust,thrust,311375\.\d+,311\.37\d*,kN$/,
  );
  expect(line('published[2].computed')).toContain(',exit.diameter,');
  expect(line('published[0].share')).toContain(',published.share,');
  expect(line('publishedChecks[0].one.value')).toContain(',exit.area,');
});
