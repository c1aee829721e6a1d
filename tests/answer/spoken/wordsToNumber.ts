/** Reads a number back from English words: the inverse of what is said, written apart from it. */

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const SCALES: Readonly<Record<string, number>> = {
  million: 1e6,
  billion: 1e9,
  trillion: 1e12,
  millionth: 1e-6,
  millionths: 1e-6,
  billionth: 1e-9,
  billionths: 1e-9,
};

export function wordsToNumber(text: string): number {
  const [number = '', power] = text.split(' times ten to the ');
  if (power !== undefined) return wordsToNumber(number) * 10 ** wordsToNumber(power);
  const words = text.replaceAll('-', ' ').split(' ');
  const sign = words[0] === 'minus' ? -1 : 1;
  let total = 0;
  let group = 0;
  let place = 0;
  let scale = 1;
  for (const word of words.slice(sign < 0 ? 1 : 0)) {
    const one = ONES.indexOf(word);
    const ten = TENS.indexOf(word);
    if (word === 'and') continue;
    if (word === 'point') place = 0.1;
    else if (place > 0 && one >= 0) {
      group += one * place;
      place /= 10;
    } else if (word === 'a') group += 1;
    else if (one >= 0) group += one;
    else if (ten >= 0) group += 10 * (ten + 2);
    else if (word === 'hundred') group *= 100;
    else if (word === 'thousand') {
      total += group * 1000;
      group = 0;
    } else if (SCALES[word] !== undefined) scale = SCALES[word];
    else throw new Error(`“${word}” is no word of a number`);
  }
  return sign * (total + group) * scale;
}
