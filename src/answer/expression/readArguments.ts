/** Reads what stands in the brackets behind a quantity: a place, a throttle, changed inputs, which one of several. */

import { listNames, quote } from '../../study/report.ts';
import { PART_KINDS } from '../asked/model.ts';
import {
  expectSign,
  peek,
  type Reader,
  refuseHere,
  signAt,
  spanFrom,
  take,
  takeOneOf,
  takeSign,
  takeWords,
  wordAt,
} from './reader.ts';
import { type ReadExpression, takePad } from './readRange.ts';
import type { Argument, Station } from './tree.ts';

const STATIONS: readonly (readonly [string, Station])[] = [
  ['the lip', 'lip'],
  ['lip', 'lip'],
  ['the throat', 'throat'],
  ['throat', 'throat'],
  ['the injector', 'injector'],
  ['injector', 'injector'],
];

/** The opening bracket is taken already; takes the closing one. */
export function readArguments(reader: Reader, expression: ReadExpression): readonly Argument[] {
  if (signAt(reader) === ')') {
    refuseHere(
      reader,
      'Nothing stands in the brackets.',
      'Write where, e.g. (vacuum), (0 km) or (lip), or leave the brackets out.',
    );
  }
  const args = [readArgument(reader, expression)];
  while (takeSign(reader, ',') !== null) args.push(readArgument(reader, expression));
  expectSign(reader, ')', 'behind what stands in the brackets');
  return args;
}

function readArgument(reader: Reader, expression: ReadExpression): Argument {
  const { start } = peek(reader);
  const word = wordAt(reader);
  if (word === 'engine' && signAt(reader, 1) === '=') {
    take(reader);
    take(reader);
    return { is: 'part', kind: word, name: restOfArgument(reader, word), ...spanFrom(reader, start) };
  }
  const input = inputBeforeEquals(reader);
  if (input !== null) {
    const value = expression(reader);
    return { is: 'set', input, value, ...spanFrom(reader, start) };
  }
  if (word !== null && (PART_KINDS as readonly string[]).includes(word) && !endsAt(reader, 1)) {
    take(reader);
    const name = restOfArgument(reader, word);
    return { is: 'part', kind: word, name, ...spanFrom(reader, start) };
  }
  if (takeWords(reader, 'vacuum')) return { is: 'vacuum', ...spanFrom(reader, start) };
  if (takePad(reader)) return { is: 'pad', ...spanFrom(reader, start) };
  const station = endsAt(reader, word === 'the' ? 2 : 1) ? takeOneOf(reader, STATIONS) : null;
  if (station !== null) return { is: 'station', station, ...spanFrom(reader, start) };
  if (takeWords(reader, 'areaRatio') || takeWords(reader, 'area ratio')) {
    const value = expression(reader);
    return { is: 'areaRatio', value, ...spanFrom(reader, start) };
  }
  return placeAt(reader, expression, start);
}

/** Name of an input and the sign = behind it; a name may hold dashes (`propellants.fuel.RP-1`) but no gaps. */
function inputBeforeEquals(reader: Reader): string | null {
  if (wordAt(reader) === null) return null;
  let count = 1;
  while (signAt(reader, count) !== '=') {
    if (peek(reader, count).start !== peek(reader, count - 1).end || endsAt(reader, count)) return null;
    if (peek(reader, count).is === 'end') return null;
    count += 1;
  }
  const name = reader.text.slice(peek(reader).start, peek(reader, count - 1).end);
  reader.at += count + 1;
  return name;
}

function placeAt(reader: Reader, expression: ReadExpression, start: number): Argument {
  const value = expression(reader);
  const side = takeOneOf(reader, [
    ['behind', 'behind'],
    ['downstream of', 'behind'],
    ['ahead of', 'ahead'],
    ['upstream of', 'ahead'],
  ] as const);
  if (side === null) return { is: 'place', value, ...spanFrom(reader, start) };
  if (!takeWords(reader, 'the throat') && !takeWords(reader, 'throat')) {
    refuseHere(
      reader,
      `Distances count from the throat, but ${quote(wordAt(reader) ?? ')')} stands here.`,
      'Write it like 0.3 m behind throat.',
    );
  }
  return { is: 'distance', value, side, ...spanFrom(reader, start) };
}

function endsAt(reader: Reader, ahead: number): boolean {
  const sign = signAt(reader, ahead);
  return sign === ',' || sign === ')';
}

/** The name of a part as written, up to the comma or bracket that ends it; its own brackets belong to it. */
function restOfArgument(reader: Reader, kind: string): string {
  const first = peek(reader);
  let open = 0;
  let last = first;
  for (;;) {
    const sign = signAt(reader);
    if (open === 0 && (sign === ',' || sign === ')')) break;
    if (sign === '(') open += 1;
    if (sign === ')') open -= 1;
    last = peek(reader);
    if (last.is === 'end') {
      refuseHere(reader, `The name of the ${kind} is not closed.`, 'Write ) behind it.');
    }
    take(reader);
  }
  const name = reader.text
    .slice(first.start, last.end)
    .replace(/^["“”']|["“”']$/g, '')
    .trim();
  if (name === '' || last === undefined) {
    refuseHere(reader, `No ${kind} is named.`, `Write ${listNames(PART_KINDS)} and its name.`);
  }
  return name;
}
