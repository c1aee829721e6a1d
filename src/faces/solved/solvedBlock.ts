/**
 * A solved study as bytes, piece behind piece, for the page's first answer: the server works it out while the browser is still
 * starting, and keeps it. Of each piece: length of what follows and length of the text [uint32 each, little-endian], the text as
 * JSON filled up with blanks to whole words, then the numbers of all fields.
 */

import type { SolvedPiece } from './solvedPiece.ts';

const wordLength = 4;
const headLength = 2 * wordLength;
const NO_NUMBERS = new Float32Array(0);

/** @throws where a number is none: JSON would make nothing of it */
export function writtenPiece(piece: SolvedPiece): Uint8Array<ArrayBuffer> {
  const numbers = piece.kind === 'engine' ? piece.ladder.numbers : NO_NUMBERS;
  const text = JSON.stringify(piece, (key, value: unknown) => {
    if (value === numbers) return undefined;
    if (typeof value !== 'number' || Number.isFinite(value)) return value;
    throw new Error(`The first answer has no number at ${key}`);
  });
  const bytes = new TextEncoder().encode(text);
  const textLength = wordLength * Math.ceil(bytes.length / wordLength);
  const end = headLength + textLength;
  const block = new Uint8Array(end + wordLength * numbers.length).fill(0x20, headLength, end);
  const head = new DataView(block.buffer);
  head.setUint32(0, block.length - wordLength, true);
  head.setUint32(wordLength, textLength, true);
  block.set(bytes, headLength);
  new Float32Array(block.buffer, end).set(numbers);
  return block;
}

/** Server and browser are one machine: both keep numbers in the same order of bytes. */
function readPiece(block: Uint8Array<ArrayBuffer>): SolvedPiece {
  const textLength = new DataView(block.buffer, block.byteOffset).getUint32(wordLength, true);
  const end = headLength + textLength;
  const piece = JSON.parse(new TextDecoder().decode(block.subarray(headLength, end))) as SolvedPiece;
  if (piece.kind !== 'engine') return piece;
  // Copied: its own numbers alone, standing on whole words.
  const numbers = new Float32Array(block.slice(end).buffer);
  return { ...piece, ladder: { ...piece.ladder, numbers } };
}

/** The pieces of bytes that come bit by bit, each as soon as it is whole. */
export async function* piecesFrom(
  chunks: AsyncIterable<Uint8Array>,
): AsyncGenerator<SolvedPiece, void, undefined> {
  let waiting = new Uint8Array(0);
  for await (const chunk of chunks) {
    const joined = new Uint8Array(waiting.length + chunk.length);
    joined.set(waiting);
    joined.set(chunk, waiting.length);
    waiting = joined;
    for (;;) {
      if (waiting.length < headLength) break;
      const length = wordLength + new DataView(waiting.buffer, waiting.byteOffset).getUint32(0, true);
      if (waiting.length < length) break;
      yield readPiece(waiting.subarray(0, length));
      waiting = waiting.slice(length);
    }
  }
  if (waiting.length > 0) throw new Error('The first answer was cut off.');
}
