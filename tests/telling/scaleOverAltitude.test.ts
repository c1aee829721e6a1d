/** The scale of a quantity over altitude follows what the models give; what they refuse cannot press it together. */
import { describe, expect, test } from 'vitest';
import { altitudeCurve } from '../../src/answer/conditions.ts';
import { clippedBetween } from '../../src/telling/figures/clipLine.ts';
import { overAltitudePanel } from '../../src/telling/figures/overAltitude.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../src/telling/look/formats.ts';
import { solveText } from '../answer/solveText.ts';

describe('a line cut at two sides', () => {
  const p = (x: number, y: number) => ({ x, y });
  test('inside it stays whole', () => {
    expect(clippedBetween([p(1, 0), p(2, 1)], 0, 3)).toEqual([[p(1, 0), p(2, 1)]]);
  });
  test('it ends where it leaves, and begins where it comes back', () => {
    expect(clippedBetween([p(1, 0), p(-1, 2), p(1, 4)], 0, 3)).toEqual([
      [p(1, 0), p(0, 1)],
      [p(0, 3), p(1, 4)],
    ]);
  });
  test('it passes through', () => {
    expect(clippedBetween([p(-1, 0), p(4, 5)], 0, 3)).toEqual([[p(0, 1), p(3, 4)]]);
  });
  test('outside nothing is left', () => {
    expect(clippedBetween([p(-3, 0), p(-1, 5)], 0, 3)).toEqual([]);
  });
});

describe('the scale', () => {
  const common =
    'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 20 bar }, size: { throat: 100 mm }';

  async function panelOf(nozzles: readonly string[]) {
    const text = nozzles.map((nozzle, i) => `e${i}: { ${common}, nozzle: ${nozzle} }`).join('\n');
    const { answer, solutions } = await solveText(text);
    const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
    const box = { x: 0, y: 0, width: 300, height: 400 };
    const panel = overAltitudePanel(
      answer,
      'specificImpulse',
      box,
      { type: SCREEN_TYPE, line: SCREEN_LINES },
      { size: { width: 480, height: 480 }, theme: 'light', curves },
    );
    return { panel, answer };
  }

  test('a bell that would pull at the pad does not rule it', async () => {
    const { panel, answer } = await panelOf([
      '{ kind: cone, areaRatio: 4 }',
      '{ kind: cone, areaRatio: 400 }',
    ]);
    // 400 times the throat at 20 bar: full flow would pull with hundreds of newtons for each one it pushes.
    const [small, wide] = Object.values(answer.engines);
    expect(wide!.seaLevel.thrust).toBeGreaterThan(0);
    expect(wide!.seaLevel.thrustIfFull).toBeLessThan(-wide!.vacuum.thrust!);
    const { plot } = panel;
    const [pad, vacuum] = [small!.seaLevel.specificImpulse!, wide!.vacuum.specificImpulse!];
    expect(panel.x(pad)).toBeGreaterThan(plot.x);
    // What is given keeps a good part of the width; ruled by full flow it would have less than a tenth.
    expect(panel.x(vacuum) - panel.x(pad)).toBeGreaterThan(0.4 * plot.width);
  });

  test('no curve leaves the plot', async () => {
    const { panel } = await panelOf(['{ kind: ideal, areaRatio: 400 }', '{ kind: cone, areaRatio: 400 }']);
    const { plot } = panel;
    const xs = JSON.stringify(panel.nodes.filter((node) => JSON.stringify(node).includes(' curve')))
      .match(/[ML](-?[\d.]+) /g)
      ?.map((text) => Number(text.slice(1)));
    expect(xs?.length).toBeGreaterThan(10);
    for (const at of xs ?? []) {
      expect(at).toBeGreaterThan(plot.x - 0.01);
      expect(at).toBeLessThan(plot.x + plot.width + 0.01);
    }
  });
});
