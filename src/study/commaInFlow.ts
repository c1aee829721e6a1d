/**
 * A decimal comma inside braces or brackets: YAML reads `{ efficiency: 97,5 % }` as a key `efficiency` and a key
 * `5 %`, and `[3,5 km]` as two values. Found here, so that the message speaks of the comma.
 */
import { isScalar, type Node, type Pair, Scalar, type YAMLMap } from 'yaml';

const WHOLE = /^[+-]?\d+$/;
const FRACTION = /^\d/;

/** The text of a value of digits only, which may be what stands before a decimal comma. */
function wholeOf(node: unknown): string | null {
  return isScalar(node) && WHOLE.test(String(node.value).trim()) ? String(node.value).trim() : null;
}

/** The text of a key without a value that begins with a digit, which may be what stands behind a decimal comma. */
function fractionOf(pair: Pair | undefined): string | null {
  if (pair === undefined || !isScalar(pair.key)) return null;
  const empty =
    pair.value === null || (isScalar(pair.value) && pair.value.value === '' && !pair.value.source);
  const text = String(pair.key.value).trim();
  return empty && FRACTION.test(text) ? text : null;
}

export interface CommaValue {
  /** As it was meant, with a comma and with a point. */ readonly text: string;
  readonly pointed: string;
  /** A value that reads as it was meant. */ readonly node: Node;
  /** How many pairs it took besides its own. */ readonly taken: number;
}

/** The value of the pair at `index` of a map in braces, where commas tore it apart; null where none did. */
export function tornValue(map: YAMLMap, index: number): CommaValue | null {
  const pair = map.items[index] as Pair | undefined;
  const value = pair?.value;
  if (!map.flow || !isScalar(value)) return null;
  let text = String(value.value).trim();
  let pointed = text;
  let taken = 0;
  for (;;) {
    const fraction = fractionOf(map.items[index + 1 + taken] as Pair | undefined);
    if (fraction === null || !/\d$/.test(text)) break;
    text = `${text},${fraction}`;
    pointed = `${pointed}.${fraction}`;
    taken += 1;
  }
  if (taken === 0) return null;
  const node = new Scalar(pointed);
  node.type = 'PLAIN';
  if (value.range) node.range = value.range;
  return { text, pointed, node, taken };
}

/** `[3,5 km]`: what the item at `index` and the next would be with a point; null where that is not the case. */
export function tornItem(items: readonly { readonly node: Node | null }[], index: number): string | null {
  const whole = wholeOf(items[index]?.node);
  const next = items[index + 1]?.node;
  if (whole === null || !isScalar(next)) return null;
  const fraction = String(next.value).trim();
  return FRACTION.test(fraction) && !WHOLE.test(fraction) ? `${whole}.${fraction}` : null;
}
