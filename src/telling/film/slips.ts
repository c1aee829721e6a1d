/** What the film says otherwise than its script: numbers, lines left out, other words in what was checked. */

import { plainText } from '../scene/safeText.ts';
import type { Laid } from './laid.ts';
import type { FilmLine, Slip } from './model.ts';
import { isSameKind, isSameNumber } from './sameNumber.ts';

/** In the order of time. */
export function slipsOf(laid: Laid, lines: readonly FilmLine[]): readonly Slip[] {
  const times = timesBefore(laid);
  const slips = [
    ...numberSlips(laid, lines, times),
    ...lineSlips(laid, lines, times),
    ...wordSlips(laid, lines, times),
  ];
  return slips.sort((a, b) => a.time - b.time);
}

/** [s] By pair: when it is said, or the end of what is said before it. */
function timesBefore({ film, pairs }: Laid): readonly number[] {
  let last = 0;
  return pairs.map(({ b }) => {
    if (b === null) return last;
    last = film[b]!.end;
    return film[b]!.start;
  });
}

function numberSlips(
  { lines, script, film, pairs }: Laid,
  told: readonly FilmLine[],
  times: readonly number[],
): readonly Slip[] {
  let open: number | null = null;
  const isSaidElse = saidOtherwise(script, film, pairs);
  return pairs.flatMap(({ a, b }, i): readonly Slip[] => {
    const [meant, said] = [a === null ? null : script[a]!, b === null ? null : film[b]!];
    if (meant !== null) open = told[meant.line]!.start === null ? null : meant.line;
    const number = said?.number ?? null;
    const time = times[i]!;
    if (meant?.number != null && number !== null) {
      if (isSameNumber(meant.number, number, meant.live)) return [];
      const isKind = isSameKind(meant.number, number);
      const words = `Says ${quoted(said!.text)}; the ${meant.live === null ? 'script has' : 'number is'} ${quoted(meant.text)}.`;
      return [slip(isKind ? 'number' : 'unit', time, lines[meant.line]!, said!.text, meant.text, words)];
    }
    // Those of a line that is left out are told with it.
    if (meant?.number != null && meant.live !== null && told[meant.line]!.start !== null) {
      if (isSaidElse(meant)) return [];
      const words = `Does not say the number ${quoted(meant.text)}.`;
      return [slip('number missing', time, lines[meant.line]!, '', meant.text, words)];
    }
    // Small numbers without a unit are words as often as not: “one of them”.
    if (
      number === null ||
      meant?.number != null ||
      (number.value <= 10 && !number.dimension.some((e) => e !== 0))
    )
      return [];
    const line = open === null ? null : lines[open]!;
    return [
      slip(
        'number added',
        time,
        line,
        said!.text,
        '',
        `Says ${quoted(said!.text)}, a number that the script does not have here.`,
      ),
    ];
  });
}

/** In metric and customary units, one of both is enough. */
function saidOtherwise(
  script: Laid['script'],
  film: Laid['film'],
  pairs: Laid['pairs'],
): (meant: Laid['script'][number]) => boolean {
  const said = pairs.flatMap(({ a, b }) => {
    const [meant, other] = [a === null ? null : script[a]!, b === null ? null : film[b]!];
    if (meant?.number == null || other?.number == null) return [];
    return isSameNumber(meant.number, other.number, meant.live) ? [meant] : [];
  });
  return ({ live, number }) =>
    said.some(
      (one) =>
        one.live === live &&
        isSameKind(one.number!, number!) &&
        Math.abs(one.number!.value - number!.value) <= one.number!.rounding + number!.rounding,
    );
}

function lineSlips(
  { lines, script, pairs }: Laid,
  told: readonly FilmLine[],
  times: readonly number[],
): readonly Slip[] {
  return told.flatMap(({ start }, place): readonly Slip[] => {
    if (start !== null || !script.some(({ line }) => line === place)) return [];
    const at = pairs.findIndex(({ a }) => a !== null && script[a]!.line === place);
    const line = lines[place]!;
    return [slip('line missing', times[at]!, line, '', line.text, `The line ${line.line.id} is not said.`)];
  });
}

/** Words that change nothing. */
const FILLERS: ReadonlySet<string> = new Set(
  "uh um er ah oh well so now and then just really actually basically okay ok right the a an that it is that's it's you know".split(
    ' ',
  ),
);

/** Only lines that say a checked sentence: its verdict is on its words. */
function wordSlips(
  { lines, script, film, pairs }: Laid,
  told: readonly FilmLine[],
  times: readonly number[],
): readonly Slip[] {
  return lines.flatMap((line, place): readonly Slip[] => {
    if (line.line.says === undefined || told[place]!.start === null) return [];
    const own = pairs.flatMap(({ a }, i) => (a !== null && script[a]!.line === place ? [i] : []));
    const [first, last] = [own[0]!, own.at(-1)!];
    const inside = pairs.slice(first, last + 1);
    const changed = inside.flatMap(({ a, b }): readonly string[] => {
      const [meant, said] = [a === null ? null : script[a]!, b === null ? null : film[b]!];
      if (meant?.key === said?.key) return [];
      const [left, added] = [meant, said].map((token) =>
        token === null || token.number !== null || FILLERS.has(token.key) ? null : quoted(token.text),
      );
      if (left != null && added != null) return [`${added} for ${left}`];
      return left != null ? [`without ${left}`] : added != null ? [`with ${added}`] : [];
    });
    if (changed.length === 0) return [];
    const said = inside.flatMap(({ b }) => (b === null ? [] : [film[b]!.text])).join(' ');
    const words = `Other words than the checked ones: ${changed.join(', ')}.`;
    return [slip('wording', times[first]!, line, said, line.text, words)];
  });
}

function slip(
  kind: Slip['kind'],
  time: number,
  line: Laid['lines'][number] | null,
  said: string,
  meant: string,
  words: string,
): Slip {
  const sentence = line?.line.says ?? null;
  return {
    kind,
    time,
    line: line?.line.id ?? null,
    sentence,
    said: plainText(said),
    meant: plainText(meant),
    words,
  };
}

const quoted = (text: string): string => `“${plainText(text).replace(/[.,;:!?]+$/, '')}”`;
