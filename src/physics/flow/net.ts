import { NODE } from './points.ts';

/**
 * A characteristic net: lines of nodes one after the other, each line a C− from the wall (first node) inward.
 * Owns its buffer; grows by doubling.
 */
export class CharacteristicNet {
  nodes: Float64Array;
  /** Number of the first node of each line; one more entry than lines. */
  readonly starts: number[] = [0];

  constructor(nodesExpected = 4096) {
    this.nodes = new Float64Array(nodesExpected * NODE);
  }

  get lineCount(): number {
    return this.starts.length - 1;
  }

  get nodeCount(): number {
    return this.starts[this.starts.length - 1]!;
  }

  lineLength(line: number): number {
    return this.starts[line + 1]! - this.starts[line]!;
  }

  /** Offset in `nodes` of node `index` of `line`. */
  offset(line: number, index: number): number {
    return (this.starts[line]! + index) * NODE;
  }

  /** Make room for a line of `count` nodes after the last one and return the offset of its first node. */
  openLine(count: number): number {
    const first = this.nodeCount;
    if ((first + count) * NODE > this.nodes.length) {
      const larger = new Float64Array(Math.max(this.nodes.length * 2, (first + count) * NODE));
      larger.set(this.nodes);
      this.nodes = larger;
    }
    return first * NODE;
  }

  /** Close the line opened last, keeping its first `count` nodes. */
  closeLine(count: number): void {
    this.starts.push(this.nodeCount + count);
  }
}
