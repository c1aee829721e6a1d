/** The parts of a step by the kernel: fields live in its memory. */

import type { Problem } from '../../../numerics/problem.ts';
import type { GasPair } from '../field.ts';
import { cellAt, type MeshBlock } from '../mesh.ts';
import { blurAround, brokeAt } from '../stage.ts';
import type { StepWork } from '../stepWork.ts';
import { callsOf, type FlowKernel } from './flowKernel.ts';
import { bytesFor, layOut, placesIn, writeGas, writeWalls } from './kernelMemory.ts';

/** Bytes of a page of memory. */
const PAGE = 65_536;

export function kernelWork(kernel: FlowKernel, meshes: readonly MeshBlock[], gases: GasPair): StepWork {
  const { bits } = kernel;
  const needed = bytesFor(meshes, bits, [gases.inner, gases.outer]);
  const memory = new WebAssembly.Memory({ initial: Math.ceil(needed / PAGE) });
  const places = placesIn();
  const blocks = meshes.map((mesh) => layOut(mesh, bits, memory, places));
  const inner = writeGas(gases.inner, memory, places);
  const outer = gases.inner === gases.outer ? inner : writeGas(gases.outer, memory, places);
  const { stage, shocks, steps, settle } = callsOf(kernel, memory);
  return {
    rooms: blocks.map(({ room }) => room),
    on: (fields) => {
      for (const [b, field] of fields.entries()) writeWalls(field, blocks[b]!);
      /** What the kernel’s list of broken cells says: all are to go without slopes, the first is told. */
      const broken = (b: number, count: number): Problem | null => {
        if (count === 0) return null;
        const cells = blocks[b]!.broken.subarray(0, count);
        for (const at of cells) blurAround(fields[b]!, at);
        return brokeAt(fields[b]!, cells[0]!);
      };
      return {
        // Kept by the first stage itself.
        keep: () => undefined,
        restore() {
          for (const [b, { mesh, ...field }] of fields.entries())
            for (const [k, kept] of blocks[b]!.kept.entries())
              for (let j = 0; j < mesh.nj; j++) {
                const from = cellAt(mesh, 0, j);
                field[KEPT_OF[k]!].set(kept.subarray(from, from + mesh.ni), from);
              }
        },
        markShocks(b) {
          shocks(blocks[b]!.words);
        },
        stage: (b, which, flat) => broken(b, stage(blocks[b]!.words, which, flat ? 1 : 0)),
        settle: (b, every) => broken(b, settle(blocks[b]!.words, inner, outer, every ? 1 : 0)),
        shortest: () => Math.min(...blocks.map(({ words }) => steps(words, 1))),
        ownSteps(courant) {
          for (const { words } of blocks) steps(words, courant);
        },
        sameSteps(seconds) {
          for (const block of blocks) block.seconds.fill(seconds);
        },
      };
    },
  };
}

/** What is kept, in the order of the kernel’s words. */
const KEPT_OF = ['density', 'u', 'v', 'pressure', 'share', 'kappa', 'eta', 'zeta', 'energy'] as const;
