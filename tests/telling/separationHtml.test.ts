import { expect, test } from 'vitest';
import { separationHtml } from '../../src/telling/page/separationHtml.ts';
import { solveText } from '../answer/solveText.ts';

const common =
  'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 60 bar }, size: { throat: 100 mm }';

test('the page lists every criterion, counting or not, and carries the caution about sideways forces', async () => {
  const { answer } = await solveText(`e: { ${common}, nozzle: { kind: bell, areaRatio: 60 } }
bound: { ${common}, nozzle: { kind: adapting, areaRatio: 60 } }`);
  const html = separationHtml(Object.values(answer.engines));
  expect(html.match(/<tr><th scope="row"/g)).toHaveLength(7);
  expect(html).toContain('of the wall, at area ratio');
  expect(html).toContain('restricted shock separation');
  expect(html.match(/<h3>/g)).toHaveLength(1);
});

test('a nozzle that keeps its gas has no such caution, and what does not count says why', async () => {
  const high = common.replace('60 bar', '207 bar');
  const { answer } = await solveText(`e: { ${high}, nozzle: { kind: bell, areaRatio: 77.5 } }`);
  const html = separationHtml(Object.values(answer.engines));
  expect(html).toContain('the gas fills the nozzle');
  expect(html).not.toContain('class="caution"');
  expect(html).toMatch(/<td>no: Mach \d\.\d\d at its place lies outside/);
});
