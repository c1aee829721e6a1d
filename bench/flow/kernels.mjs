/** The two kernels on the TypeScript side, with the checksums that the C version computes. */
import { setFront } from './inputs.mjs';

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
  const front = kernels.newFront(marches[0].front.count, 'axisymmetric');
  return (summed) => {
    let checksum = 0;
    let count = 0;
    for (const { boundary, front: first, line } of marches) {
      setFront(front, first);
      const marched = kernels.marchTubes({
        gas: tubeGas,
        front,
        lower: [kernels.wallBoundary(line)],
        upper: [boundary],
      });
      if (marched.stopped !== null) throw new Error(marched.stopped.what);
      count += marched.steps;
      checksum += last(marched.lower.force) + last(marched.upper.force);
      if (summed) {
        for (let j = 0; j < front.count; j++) {
          checksum += front.momentumX[j] + front.momentumR[j];
        }
      }
    }
    return { checksum, count };
  };
}

function last(array) {
  return array[array.length - 1];
}
