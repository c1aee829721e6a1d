/** Plain words as they are compared: small letters, plural and accents off, names taken apart. */

/** Words that say nothing of what is looked for. */
const FILLERS: ReadonlySet<string> = new Set(
  'a an and at by do does for from has have how i in is it its many me much my of on or show tell that the their this to was what when where which with'.split(
    ' ',
  ),
);

export const isFiller = (word: string): boolean => FILLERS.has(word);

/** How people say it → how the catalogue does. */
const SAID_OTHERWISE: Readonly<Record<string, readonly string[]>> = {
  isp: ['specific', 'impulse'],
  push: ['thrust'],
  velocity: ['speed'],
  leaves: ['exit'],
  gets: ['payload'],
  carries: ['payload'],
  weight: ['mass'],
  weighs: ['mass'],
  width: ['diameter'],
  hot: ['temperature'],
  spike: ['plug'],
  aerospike: ['plug'],
};

/** The words of a text, fillers too. */
export function wordsOf(text: string): readonly string[] {
  return (
    text
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  ).map(singular);
}

/** The words that matter of what was typed, said as the catalogue says them. */
export function wordsWanted(text: string): readonly string[] {
  const words = wordsOf(text);
  const telling = words.filter((word) => !FILLERS.has(word));
  return (telling.length > 0 ? telling : words).flatMap((word) => SAID_OTHERWISE[word] ?? [word]);
}

function singular(word: string): string {
  return word.length > 3 && word.endsWith('s') && !/(ss|us|is)$/.test(word) ? word.slice(0, -1) : word;
}

/** How well a typed word fits a word of a text, 0 to 1: the same, its beginning, or one wrong letter away. */
export function fitOf(typed: string, word: string): number {
  if (typed === word) return 1;
  if (word.startsWith(typed)) return 0.5 + (0.4 * typed.length) / word.length;
  if (word.length > 3 && typed.startsWith(word)) return 0.5;
  return typed.length > 4 && isOneLetterOff(typed, word) ? 0.45 : 0;
}

/** One letter wrong, missing, too many, or two neighbours changed over. */
function isOneLetterOff(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let from = 0;
  while (from < a.length && a[from] === b[from]) from += 1;
  const [restA, restB] = [a.slice(from), b.slice(from)];
  if (restA.length > restB.length) return restA.slice(1) === restB;
  if (restB.length > restA.length) return restB.slice(1) === restA;
  const isSwapped = restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
  return isSwapped || restA.slice(1) === restB.slice(1);
}
