/** A whole flow that breaks for good on its way to rest: told and drawn as it was last, with the reason. */

import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import type { FlowField } from '../../../src/answer/flow/index.ts';
import { flowFolder } from '../../../src/faces/disk/flowShelf.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import type * as Euler from '../../../src/physics/euler/index.ts';
import { runMain } from './runMain.ts';

/** Steps that are taken before none is any more. */
const HOLDS = 30;

vi.mock('../../../src/physics/euler/index.ts', async (load) => {
  const euler = await load<typeof Euler>();
  return {
    ...euler,
    newFlow(...asked: Parameters<typeof euler.newFlow>) {
      const flow = euler.newFlow(...asked);
      const relax = flow.relax.bind(flow);
      let taken = 0;
      flow.relax = (...how) => {
        if (taken === HOLDS)
          throw new ProblemError({ code: 'field-broke', what: 'A cell has no pressure.', mend: 'None.' });
        relax(...how);
        taken += 1;
      };
      return flow;
    },
  };
});

const place = mkdtempSync(join(tmpdir(), 'plumeline-broke-'));
vi.stubEnv('XDG_CACHE_HOME', join(place, 'cache'));
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(place, { recursive: true, force: true });
});
mkdirSync(join(place, 'cold'));
writeFileSync(
  join(place, 'cold', 'study.yaml'),
  `plumeline: 1
question: Where does its shock stand?
engines:
  cold: { name: Cold, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: 20 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }
`,
);

test('is told with the last that held, ends incomplete, and is not kept', async () => {
  const asked = ['flow', join(place, 'cold'), '--ambient', '0.2 bar'];
  const picture = join(place, 'last.svg');
  const told = await runMain([...asked, '--out', picture]);
  expect(told.status).toBe(1);
  const words = told.out.replaceAll(/\s+/g, ' ');
  expect(words).toContain(`${HOLDS}, broke`);
  expect(words).toContain('This is not how the gas comes to rest');
  expect(words).toContain('A cell has no pressure.');
  expect(readFileSync(picture, 'utf8')).toContain('This is not how the gas comes to rest');
  const { fields } = JSON.parse((await runMain([...asked, '--json'])).out) as {
    readonly fields: readonly FlowField[];
  };
  expect(fields.map(({ fineness, steps, ended }) => [fineness, steps, ended?.code])).toEqual([
    ['coarse', HOLDS, 'field-broke'],
  ]);
  expect(existsSync(flowFolder()) ? readdirSync(flowFolder()) : []).toEqual([]);
}, 120_000);
