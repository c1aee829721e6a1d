/** Heat and cooling of whole engines: laws of scale, bell against plug, what the study states. */

import { beforeAll, expect, test } from 'vitest';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { solveText } from '../solveText.ts';

const bell = (more: string): string => `
  propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
  nozzle: { kind: bell, areaRatio: 20, length: 80 % }
${more}`;
const cooled = '  cooling: { coolant: fuel, wall: copper-chromium-niobium, film: 3 % }\n';
const chamber = (bar: number): string =>
  `  chamber: { pressure: ${bar} bar, efficiency: 97.5 %, contractionRatio: 3 }\n`;

let solved: SolvedStudy;
beforeAll(async () => {
  solved = await solveText(`base:${bell(`${chamber(80)}  size: { throat: 100 mm }\n${cooled}`)}
large:${bell(`${chamber(80)}  size: { throat: 200 mm }\n${cooled}`)}
high:${bell(`${chamber(160)}  size: { throat: 100 mm }\n${cooled}`)}
plug:
  like: base
  nozzle: { kind: plug, form: annular, areaRatio: 20, kept: 30 % }
foreign:
  like: base
  cooling: { coolant: water }
pintle:
  like: base
  nozzle: { kind: expansionDeflection, areaRatio: 40, pintleAreaRatio: 2, length: 60 %, throatAngle: 60 deg, lipAngle: 8 deg }
thin:
  like: pintle
  nozzle: { kind: expansionDeflection, areaRatio: 40, pintleAreaRatio: 0.8, length: 60 %, throatAngle: 60 deg, lipAngle: 8 deg }
bare:
  like: base
  cooling: none
ideal:
  like: bare
  nozzle: { kind: ideal, areaRatio: 20 }
`);
});
const heatOf = (id: string) => solved.answer.engines[id]!.heat!;

test('flux grows as pressure^0.8 and shrinks as throat^0.2', () => {
  // Hotter gas at more pressure, and radiation, which grows otherwise: 8 %.
  expect(Math.log2(heatOf('high').peakFlux / heatOf('base').peakFlux)).toBeCloseTo(0.8, 0);
  expect(Math.abs(heatOf('high').peakFlux / heatOf('base').peakFlux / 2 ** 0.8 - 1)).toBeLessThan(0.08);
  expect(Math.abs(heatOf('large').peakFlux / heatOf('base').peakFlux / 2 ** -0.2 - 1)).toBeLessThan(0.04);
});

test('heat to a fixed shape grows as diameter^1.8: as thrust^0.9', () => {
  const ratio = heatOf('large').total / heatOf('base').total;
  // The characteristic length is the same, so that the larger chamber is relatively shorter: up to half less; a quarter more for radiation.
  expect(ratio).toBeLessThan(2 ** 1.8 * 1.25);
  expect(ratio).toBeGreaterThan(2 ** 1.8 * 0.5);
});

test('both models give the same heat within half', () => {
  for (const id of ['base', 'large', 'high', 'plug']) {
    const { total, layerTotal } = heatOf(id);
    expect(layerTotal / total).toBeGreaterThan(0.67);
    expect(layerTotal / total).toBeLessThan(1.5);
  }
});

test('a ring has twice its circumference for an edge, and twice its gap for a diameter', () => {
  const { contour } = solved.solutions.get('plug')!;
  const { throatEdge, throatHydraulicDiameter, wettedArea, total, gapError } = heatOf('plug');
  const area = Math.PI * contour.throatRadius ** 2;
  expect((throatHydraulicDiameter * throatEdge) / 4 / area).toBeCloseTo(1, 1);
  expect(throatHydraulicDiameter / contour.plug!.throatGap).toBeCloseTo(2, 1);
  expect(gapError.area).toBeCloseTo(1e-4 / contour.plug!.throatGap, 9);
  expect(throatEdge).toBeGreaterThan(5 * heatOf('base').throatEdge);
  expect(wettedArea).toBeGreaterThan(heatOf('base').wettedArea);
  expect(total).toBeGreaterThan(2 * heatOf('base').total);
});

test.each([
  ['pintle', 2, 2.5],
  ['thin', 0.8, null],
] as const)(
  '%s: gap and arc of its throat are those of the walls that are drawn, and heat reads them',
  (id, ratio, halfGaps) => {
    const solution = solved.solutions.get(id)!;
    const { contour } = solution;
    const size = contour.throatRadius;
    const bore = Math.min(...contour.wall.map(({ radius }) => radius));
    const line = contour.wall.find(({ part }) => part === 'nozzle')!;
    // Square to the flow, from the pintle’s edge of r_i² = ratio.
    const gap = (line.radius - size * Math.sqrt(ratio)) / Math.cos(line.angle);
    // From the bore the arc comes outwards by ρ (1 − cos θ).
    const arc = (line.radius - bore) / (1 - Math.cos(line.angle));
    expect(contour.pintle!.throatGap / gap).toBeCloseTo(1, 9);
    expect(contour.pintle!.throatArc / arc).toBeCloseTo(1, 9);
    if (halfGaps !== null) expect(arc / (gap / 2)).toBeCloseTo(halfGaps, 9);
    else expect(arc / (gap / 2)).toBeLessThan(0.6);
    expect(heatOf(id).gapError.area).toBeCloseTo(1e-4 / gap, 9);
    // Bartz: h = 0.026 (μ^0.2 c_p/Pr^0.6)₀ G^0.8 D^−0.2 (D⁎/r_c)^0.1, of the same gas as the bell’s, whose arcs are 1.882/2 radii.
    const [here, there] = [solution, solved.solutions.get('base')!].map((each) => {
      const [first] = each.heat().sides;
      const { side } = first!;
      const { uncorrected, massFlux, diameter } = side.points[side.throat]!;
      return uncorrected / (massFlux ** 0.8 * diameter ** -0.2);
    });
    expect(here! / there!).toBeCloseTo(((2 * gap) / arc / (2 / 0.941)) ** 0.1, 9);
  },
);

test('the plug is harder to cool than the bell at the same throat', () => {
  const { base, plug } = solved.answer.engines;
  expect(plug!.cooling!.margin).toBeLessThan(base!.cooling!.margin);
  expect(plug!.cooling!.walls.map(({ name }) => name)).toEqual(['outer wall', 'plug']);
});

test('the margin over the whole engine grows with thrust, the one at the throat falls with pressure', () => {
  const { heatMarginWithThrust, wallMarginWithPressure } = solved.answer.engines['base']!.cooling!.scaling;
  // F^0.1 by Bartz at one wall temperature.
  expect(heatMarginWithThrust).toBeGreaterThan(0);
  expect(heatMarginWithThrust).toBeLessThan(0.25);
  expect(wallMarginWithPressure).toBeLessThan(0);
});

test('what goes into the coolant is what the walls give', () => {
  const { cooling } = solved.solutions.get('base')!.cooling();
  const { march, massFlow } = cooling.sides[0]!;
  const { supply, inletPressure } = cooling.setup;
  const start = supply.fluid.enthalpyAt(inletPressure, supply.temperature);
  expect(Math.abs((massFlow * (march.outlet.enthalpy - start)) / march.heat - 1)).toBeLessThan(0.02);
});

test('what cannot be computed says why', () => {
  const { foreign, bare, ideal } = solved.answer.engines;
  expect(foreign!.cooling).toBeNull();
  expect(foreign!.reasons.find(({ path }) => path === 'cooling')?.mend).toContain('flow: 5 kg/s');
  expect(bare!.cooling).toBeUndefined();
  expect(ideal!.heat).toBeNull();
  expect(ideal!.reasons.some(({ path }) => path === 'heat')).toBe(true);
});
