/** Mean over steps of all that a field holds: what never comes to rest is told by it. */

import { cellAt, type Flow, type MeshBlock } from '../euler/index.ts';

/** Values of the cells of one block, i running, without ghosts. */
export interface BlockFlow {
  readonly mesh: MeshBlock;
  readonly density: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly pressure: Float64Array;
  readonly share: Float64Array;
}
const VALUES = ['density', 'u', 'v', 'pressure', 'share'] as const;

export interface Averages {
  /** Take the field as it is now into the mean. */ add(): void;
  /** Take in all that another mean of the same flow has taken in. */ addAll(other: Averages): void;
  readonly count: number;
  /** Of all that was taken in. */ readonly sums: readonly BlockFlow[];
  /** The mean; the field itself where nothing was taken in yet. */ blocks(): readonly BlockFlow[];
}

export function averagesFor(flow: Flow): Averages {
  let count = 0;
  const sums = flow.fields.map(({ mesh }) => emptyBlock(mesh));
  return {
    get count() {
      return count;
    },
    sums,
    addAll(other) {
      count += other.count;
      for (const [b, sum] of sums.entries())
        for (const key of VALUES) {
          const [to, from] = [sum[key], other.sums[b]![key]];
          for (let k = 0; k < to.length; k++) to[k] = to[k]! + from[k]!;
        }
    },
    add() {
      count += 1;
      for (const [b, field] of flow.fields.entries()) {
        const { ni, nj } = field.mesh;
        for (const key of VALUES) {
          const [sum, from] = [sums[b]![key], field[key]];
          for (let j = 0; j < nj; j++) {
            const row = cellAt(field.mesh, 0, j);
            for (let i = 0; i < ni; i++) sum[j * ni + i] = sum[j * ni + i]! + from[row + i]!;
          }
        }
      }
    },
    blocks() {
      if (count === 0) this.add();
      return sums.map((sum) => {
        const mean = (of: Float64Array): Float64Array => of.map((value) => value / count);
        return {
          mesh: sum.mesh,
          density: mean(sum.density),
          u: mean(sum.u),
          v: mean(sum.v),
          pressure: mean(sum.pressure),
          share: mean(sum.share),
        };
      });
    },
  };
}

function emptyBlock(mesh: MeshBlock): BlockFlow {
  const array = (): Float64Array => new Float64Array(mesh.ni * mesh.nj);
  return { mesh, density: array(), u: array(), v: array(), pressure: array(), share: array() };
}
