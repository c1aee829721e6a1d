/** The step of a flow field by one thread and by two that share its memory: least wall times, turn and turn about. */
import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { pathToFileURL } from 'node:url';

/** @param newFlow makes the field by a kernel @param dist folder of the build */
export async function teamTimes({ dist, turns, steps, seconds, sumOf, newFlow }) {
  const load = (path) => import(pathToFileURL(`${dist}/${path}.js`).href);
  const { flowKernel } = await load('physics/euler/index');
  const { flowTeam } = await load('faces/crew/flowTeam');
  // Two threads need two cores.
  spawnSync('taskset', ['-a', '-c', '-p', `0-${cpus().length - 1}`, String(process.pid)], {
    stdio: 'ignore',
  });
  const team = flowTeam({ threads: 2 });
  if (team === null) throw new Error('no team of threads: is the program built?');
  try {
    return [64, 32].map((bits) => {
      const results = [null, team].map((each) => ({
        kernel: flowKernel(bits, each),
        least: Infinity,
        sum: 0,
      }));
      for (let turn = 0; turn < turns; turn++)
        for (const each of results) {
          const flow = newFlow(each.kernel);
          for (let n = 0; n < steps; n++) {
            const from = performance.now();
            flow.step(seconds);
            each.least = Math.min(each.least, (performance.now() - from) / 1e3);
          }
          each.sum = sumOf(flow);
        }
      const [one, two] = results;
      if (one.sum !== two.sum) throw new Error(`${bits} bits: two threads give ${two.sum}, one ${one.sum}`);
      return { bits, one: one.least, two: two.least };
    });
  } finally {
    await team.dismiss();
    spawnSync('taskset', ['-a', '-c', '-p', '0', String(process.pid)], { stdio: 'ignore' });
  }
}
