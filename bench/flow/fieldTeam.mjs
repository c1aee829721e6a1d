/** The step of a flow field by one thread and by several that share its memory: least times on the clock, turn and turn about. */
import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';

/**
 * @param cases of each its name, floats, how its flow is made by a kernel, how one step is taken, and a sum over the field
 * @param dist folder of the build @param threads how many, one of them first @param pinned two threads alone: each on a core of its own
 * @returns of each case its name and its least times [s], in the order of `threads`
 */
export async function teamTimes(cases, { dist, turns, steps, threads = [1, 2], pinned = true }) {
  const load = (path) => import(pathToFileURL(`${dist}/${path}.js`).href);
  const { flowKernel } = await load('physics/euler/index');
  const { flowTeam } = await load('faces/crew/flowTeam');
  const teams = threads.map((count) => (count === 1 ? null : flowTeam({ threads: count })));
  if (teams.slice(1).includes(null)) throw new Error('no team of threads: is the program built?');
  // Each on a core of its own: a thread begins on that of the one that starts it.
  if (pinned) onCore(1);
  const [first] = cases;
  for (const team of teams.slice(1)) first.step(first.newFlow(flowKernel(first.bits, team)));
  if (pinned) onCore(0);
  try {
    return cases.map(({ name, bits, newFlow, step, sumOf }) => {
      const results = teams.map((each) => ({
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
      for (const [k, { sum }] of results.entries())
        if (sum !== results[0].sum)
          throw new Error(`${name}: ${threads[k]} threads give ${sum}, one ${results[0].sum}`);
      return { name, least: results.map(({ least }) => least) };
    });
  } finally {
    await Promise.all(teams.map((team) => team?.dismiss()));
  }
}

/** This thread alone, where the system lets us say so (Linux). */
export function onCore(core) {
  spawnSync('taskset', ['-c', '-p', String(core), String(process.pid)], { stdio: 'ignore' });
}
