/** A picture of 512 × 256 cells from its neighbour: the field in a quarter less air, each mesh from the one before. */
import { pathToFileURL } from 'node:url';
import { throatRadius } from './fieldEngine.mjs';
import { onCore } from './fieldTeam.mjs';

/** Cells from axis to wall; the last mesh has 135 488 cells, the picture asked for 131 072. */
const ACROSS = [9, 18, 36, 72];
/** [Pa] of the neighbour, and of the picture: two kilometres higher. */
const [NEIGHBOUR, HERE] = [60_000, 47_000];

/**
 * By one thread, then by more. @param engineOf see preparedEngine @param dist folder of the build
 * @param counts how many threads @param pinned two threads alone: each on a core of its own
 */
export async function neighbourTimes(engineOf, { dist, counts = [1, 2], pinned = true }) {
  const load = (path) => import(pathToFileURL(`${dist}/${path}.js`).href);
  const { flowKernel } = await load('physics/euler/index');
  const { settle, thrustOf, axisPressure } = await load('physics/wholeFlow/index');
  const { flowTeam } = await load('faces/crew/flowTeam');
  // As `plumeline flow` has them; of what it watches, thrust and axis.
  const { STEPS, STILL } = await load('answer/flow/flowFields');
  const still = STILL.slice(0, 2);
  const settled = (fieldAt, across, from, [least, most], ambient) => {
    const round = fieldAt(across, from, { ambient, coarsest: ACROSS[0] });
    const watch = () => [thrustOf(round), axisPressure(round)];
    return { round, ...settle(round.flow, { least, most, watch, still }) };
  };
  const rows = [];
  for (const threads of counts) {
    // A thread begins on the core of the one that starts it.
    if (pinned) onCore(threads - 1);
    const team = threads === 1 ? null : flowTeam({ threads });
    const fieldAt = engineOf(flowKernel(32, team));
    try {
      fieldAt(ACROSS.at(-1), null, { coarsest: ACROSS[0] }).flow.relax(0.5);
      if (pinned) onCore(0);
      let from = settled(fieldAt, ACROSS[0], null, STEPS.cold, NEIGHBOUR).averages.blocks();
      const began = { clock: performance.now(), processor: process.cpuUsage() };
      let last = null;
      for (const [k, across] of ACROSS.entries()) {
        last = settled(fieldAt, across, from, k === 0 ? STEPS.warm : STEPS.finer, HERE);
        from = last.averages.blocks();
      }
      const { user, system } = process.cpuUsage(began.processor);
      const [thrust] = last.watched;
      rows.push({
        threads,
        cells: last.round.flow.fields.reduce((sum, { mesh }) => sum + mesh.ni * mesh.nj, 0),
        steps: last.steps,
        clock: (performance.now() - began.clock) / 1e3,
        processor: (user + system) / 1e6,
        coefficient: thrust.mean / (100e5 * Math.PI * throatRadius ** 2),
        swing: thrust.swing,
      });
    } finally {
      await team?.dismiss();
    }
  }
  return rows.map(
    ({ threads, cells, steps, clock, processor, coefficient, swing }) =>
      `| ${threads} | ${cells} | ${steps} | ${clock.toFixed(1)} s | ${processor.toFixed(1)} s | ${coefficient.toFixed(4)} ± ${(100 * swing).toFixed(2)} % |`,
  );
}
