/** The step of a flow field by one thread and by two that share its memory: least times on the clock, turn and turn about. */
import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';

/**
 * @param cases of each its name, floats, how its flow is made by a kernel, how one step is taken, and a sum over the field
 * @param dist folder of the build
 */
export async function teamTimes(cases, { dist, turns, steps }) {
  const load = (path) => import(pathToFileURL(`${dist}/${path}.js`).href);
  const { flowKernel } = await load('physics/euler/index');
  const { flowTeam } = await load('faces/crew/flowTeam');
  const team = flowTeam({ threads: 2 });
  if (team === null) throw new Error('no team of threads: is the program built?');
  // Each on a core of its own: a thread begins on that of the one that starts it.
  onCore(1);
  const [first] = cases;
  first.step(first.newFlow(flowKernel(first.bits, team)));
  onCore(0);
  try {
    return cases.map(({ name, bits, newFlow, step, sumOf }) => {
      const results = [null, team].map((each) => ({
        kernel: flowKernel(bits, each),
        least: Number.POSITIVE_INFINITY,
        sum: 0,
      }));
      for (let turn = 0; turn < turns; turn++)
        for (const each of results) {
          const flow = newFlow(each.kernel);
          for (let n = 0; n < steps; n++) {
            const from = performance.now();
            step(flow);
            each.least = Math.min(each.least, (performance.now() - from) / 1e3);
          }
          each.sum = sumOf(flow);
        }
      const [one, two] = results;
      if (one.sum !== two.sum) throw new Error(`${name}: two threads give ${two.sum}, one ${one.sum}`);
      return { name, one: one.least, two: two.least };
    });
  } finally {
    await team.dismiss();
  }
}

/** This thread alone, where the system lets us say so (Linux). */
export function onCore(core) {
  spawnSync('taskset', ['-c', '-p', String(core), String(process.pid)], { stdio: 'ignore' });
}
