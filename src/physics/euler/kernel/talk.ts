/** What the threads of a field tell each other, in the memory that they share: orders one way, findings the other. */

/** What all of them are to do with their shares. */
export const ORDER = { shocks: 0, edges: 1, stage: 2, settle: 3, steps: 4, leave: 5 } as const;
export type Order = (typeof ORDER)[keyof typeof ORDER];

/** Words of the head: see {@link talkIn}. */
const SEQUENCE = 0;
const BUSY = 1;
const KIND = 2;
const FIRST = 3;
const SECOND = 4;
const FAILED = 5;
const LOT = 6;
const HEAD = 32;

/** Looks at a word before the thread lies down to wait: most shares end within microseconds of each other. */
const LOOKS = 2000;

export function talkBytes(blocks: number, threads: number): number {
  return HEAD + 8 + 12 * blocks * threads + blocks;
}

/** Blocks that an order is for. */
export interface Lot {
  readonly id: number;
  /** Rising. */ readonly blocks: readonly number[];
  /** How many threads share it: all, or one. */ readonly threads: number;
}

/** An order with its numbers: `courant` of steps; `first` and `second` are flags, see share.ts. */
export interface Ordered {
  readonly kind: Order;
  readonly first: 0 | 1;
  readonly second: 0 | 1;
  readonly courant: number;
  readonly lot: Lot;
}

export interface Talk {
  /** Of each thread, block by block: its shortest step [s]. */ readonly shortest: Float64Array;
  /** Likewise how many cells broke, or the first. */ readonly found: Int32Array;
  /** How many orders were given. */ count(): number;
  /** To all other threads. */ give(order: Ordered): void;
  /** Until all others are done, at most so long [ms]. */ await(patience: number): 'done' | 'failed' | 'lost';
  /** The next order behind so many. */ next(after: number): Ordered;
  done(): void;
  /** This thread cannot go on. */ fail(): void;
}

export function talkIn(memory: WebAssembly.Memory, place: number, blocks: number, threads: number): Talk {
  const { buffer } = memory;
  const words = new Int32Array(buffer, place, HEAD / 4);
  const courant = new Float64Array(buffer, place + HEAD, 1);
  const shortest = new Float64Array(buffer, place + HEAD + 8, blocks * threads);
  const found = new Int32Array(buffer, shortest.byteOffset + shortest.byteLength, blocks * threads);
  const chosen = new Uint8Array(buffer, found.byteOffset + found.byteLength, blocks);
  /** Those that this thread was told. */
  const lots = new Map<number, Lot>();
  const stays = (word: number, value: number, most: number): boolean => {
    for (let k = 0; k < LOOKS; k++) if (Atomics.load(words, word) !== value) return false;
    return Atomics.wait(words, word, value, most) === 'timed-out';
  };
  const told = (id: number): Lot => {
    const lot = lots.get(id) ?? {
      id,
      blocks: Array.from({ length: blocks }, (_, b) => b).filter((b) => chosen[b] === 1),
      threads,
    };
    lots.set(id, lot);
    return lot;
  };
  return {
    shortest,
    found,
    count: () => Atomics.load(words, SEQUENCE),
    give(order) {
      words[KIND] = order.kind;
      words[FIRST] = order.first;
      words[SECOND] = order.second;
      words[LOT] = order.lot.id;
      chosen.fill(0);
      for (const block of order.lot.blocks) chosen[block] = 1;
      courant[0] = order.courant;
      Atomics.store(words, BUSY, threads - 1);
      Atomics.add(words, SEQUENCE, 1);
      Atomics.notify(words, SEQUENCE);
    },
    await(patience) {
      for (;;) {
        if (Atomics.load(words, FAILED) !== 0) return 'failed';
        const busy = Atomics.load(words, BUSY);
        if (busy === 0) return 'done';
        if (stays(BUSY, busy, patience)) return 'lost';
      }
    },
    next(after) {
      while (Atomics.load(words, SEQUENCE) === after) stays(SEQUENCE, after, Number.POSITIVE_INFINITY);
      return {
        kind: words[KIND] as Order,
        first: words[FIRST] as 0 | 1,
        second: words[SECOND] as 0 | 1,
        courant: courant[0]!,
        lot: told(words[LOT]!),
      };
    },
    done() {
      Atomics.sub(words, BUSY, 1);
      Atomics.notify(words, BUSY);
    },
    fail() {
      Atomics.store(words, FAILED, 1);
      this.done();
    },
  };
}
