/** What is needed with an item, and who needs it, through any number of steps; as sets of bits. */

export type Bits = Uint32Array;

export const bitsOf = (size: number): Bits => new Uint32Array((size + 31) >>> 5);
export const hasBit = (bits: Bits, at: number): boolean => ((bits[at >>> 5]! >>> (at & 31)) & 1) === 1;
export const setBit = (bits: Bits, at: number): void => {
  bits[at >>> 5]! |= 1 << (at & 31);
};

export interface Closures {
  /** Of each item: itself and all that must be taken with it. */ readonly below: readonly Bits[];
  /** Of each item: itself and all that cannot be taken without it. */ readonly above: readonly Bits[];
}

export function closuresOf(needs: readonly (readonly number[])[]): Closures {
  const neededBy: number[][] = needs.map(() => []);
  needs.forEach((list, i) => {
    for (const j of list) neededBy[j]!.push(i);
  });
  return { below: needs.map((_, i) => reach(i, needs)), above: needs.map((_, i) => reach(i, neededBy)) };
}

function reach(from: number, next: readonly (readonly number[])[]): Bits {
  const found = bitsOf(next.length);
  setBit(found, from);
  const todo = [from];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    for (const to of next[at]!) {
      if (hasBit(found, to)) continue;
      setBit(found, to);
      todo.push(to);
    }
  }
  return found;
}

export function eachBit(bits: Bits, visit: (at: number) => void): void {
  for (let word = 0; word < bits.length; word++) {
    let rest = bits[word]!;
    while (rest !== 0) {
      const low = rest & -rest;
      visit((word << 5) + 31 - Math.clz32(low));
      rest ^= low;
    }
  }
}
