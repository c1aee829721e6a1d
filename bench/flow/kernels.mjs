/** The two kernels on the TypeScript side, with the checksums that the C version computes. */
import { copyOf } from './inputs.mjs';

export function bellKernel(kernels, { table, start, wall }) {
  return (summed) => {
    const { net } = kernels.marchAlongWall(table, 'axisymmetric', start, wall);
    const count = net.nodeCount;
    let checksum = 0;
    if (summed) for (let i = 0; i < count * kernels.NODE; i++) checksum += net.nodes[i];
    return { checksum, count };
  };
}

export function plugKernel(kernels, { tubeGas, marches }) {
  return (summed) => {
    let checksum = 0;
    let count = 0;
    for (const { boundary, front, line } of marches) {
      const marched = kernels.marchTubes({
        gas: tubeGas,
        front: copyOf(front),
        lower: [kernels.wallBoundary(line)],
        upper: [boundary],
      });
      if (marched.stopped !== null) throw new Error(marched.stopped.what);
      count += marched.steps;
      checksum += last(marched.lower.force) + last(marched.upper.force);
      if (summed) {
        for (let j = 0; j < front.count; j++) {
          checksum += marched.front.momentumX[j] + marched.front.momentumR[j];
        }
      }
    }
    return { checksum, count };
  };
}

function last(array) {
  return array[array.length - 1];
}
