/** The faint band beside a curve: the criteria's own span, inside the plot, only where they disagree. */
import { expect, test } from 'vitest';
import { altitudeCurve } from '../../src/answer/conditions.ts';
import { conditionAt } from '../../src/telling/figures/conditions.ts';
import { criteriaSpan, spanOutlines } from '../../src/telling/figures/separationSpan.ts';
import { solveText } from '../answer/solveText.ts';

const { solutions } = await solveText(
  'e: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 60 bar }, size: { throat: 100 mm }, nozzle: { kind: bell, areaRatio: 60 } }',
);
const rows = altitudeCurve(solutions.get('e')!);

test('the span holds the value, and there is none where every criterion keeps the gas on the wall', () => {
  const spans = rows.map((row) => criteriaSpan('thrust', row));
  expect(spans[0]).not.toBeNull();
  expect(spans.at(-1)).toBeNull();
  spans.forEach((span, i) => {
    expect(span !== null).toBe(rows[i]!.separation!.lettingGo > 0);
    if (span === null) return;
    expect(rows[i]!.thrust).toBeGreaterThanOrEqual(span.low);
    expect(rows[i]!.thrust).toBeLessThanOrEqual(span.high);
  });
});

test('one closed outline from the pad up, held inside the plot', () => {
  const plot = { x: 0, y: 0, width: 100, height: 100 };
  const outlines = spanOutlines(
    'thrust',
    rows,
    (value) => value / 200 - 100,
    (i) => i,
    plot,
  );
  expect(outlines).toHaveLength(1);
  const count = rows.filter((row) => criteriaSpan('thrust', row) !== null).length;
  expect(outlines[0]).toHaveLength(2 * count);
  for (const { x } of outlines[0]!) {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x).toBeLessThanOrEqual(100);
  }
});

test('between two rows places and spans lie between theirs', () => {
  const [dense, thin] = [rows[0]!, rows[2]!];
  const middle = conditionAt([dense, thin], 0.5 * (dense.ambientPressure + thin.ambientPressure));
  expect(middle.separation!.place.axial).toBeCloseTo(
    0.5 * (dense.separation!.place.axial + thin.separation!.place.axial),
    9,
  );
  expect(middle.separation!.thrust!.low).toBeGreaterThan(dense.separation!.thrust!.low);
  expect(middle.separation!.thrust!.low).toBeLessThan(thin.separation!.thrust!.low);
});
