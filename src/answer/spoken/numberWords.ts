/** Numbers in English words, as one says them. */

const SMALL = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** From here on a number is so many of these, with a decimal where it needs one: `one point two million`. */
const LARGE = [
  { size: 1e12, word: 'trillion' },
  { size: 1e9, word: 'billion' },
  { size: 1e6, word: 'million' },
] as const;

/** Below a thousandth a number is so many of these. */
const PARTS = [
  { size: 1e-6, one: 'millionth', many: 'millionths' },
  { size: 1e-9, one: 'billionth', many: 'billionths' },
] as const;

export interface NumberInWords {
  /** `a hundred and twenty`, `minus two point four`, `two hundred and fifty millionths`. */
  readonly words: string;
  /** Whether a unit after it stands in the singular: for one of it, and after `of a` behind parts. */
  readonly isOne: boolean;
  /** True where the number counts parts of the unit: `three millionths of a metre`. */ readonly ofParts: boolean;
}

/** A number of at most `digits` significant digits, 1 to 6. */
export function numberInWords(value: number, digits: number): NumberInWords {
  const rounded = Number(value.toPrecision(digits));
  if (rounded === 0) return { words: 'zero', isOne: false, ofParts: false };
  const size = Math.abs(rounded);
  const sign = rounded < 0 ? 'minus ' : '';
  if (size >= 1e15 || size < 1e-9) return { words: sign + inPowers(size), isOne: false, ofParts: false };
  if (size < 1e-3) return { ...inParts(size, sign), ofParts: true };
  return { words: sign + ofSize(size), isOne: size === 1, ofParts: false };
}

function ofSize(size: number): string {
  const large = LARGE.find((scale) => size >= scale.size);
  if (large === undefined) return decimal(size);
  const many = tidy(size / large.size);
  return `${many === 1 ? 'a' : decimal(many)} ${large.word}`;
}

function inParts(size: number, sign: string): { readonly words: string; readonly isOne: boolean } {
  const part = PARTS.find((each) => size >= each.size) ?? PARTS[1];
  const many = tidy(size / part.size);
  return { words: `${sign}${decimal(many)} ${many === 1 ? part.one : part.many}`, isOne: true };
}

function inPowers(size: number): string {
  const [mantissa = '', exponent = ''] = size.toExponential().split('e');
  const power = Number(exponent);
  return `${decimal(Number(mantissa))} times ten to the ${power < 0 ? 'minus ' : ''}${whole(Math.abs(power), false)}`;
}

/** Below a million, with the decimals it has. */
function decimal(size: number): string {
  const [before = '0', after] = plainText(size).split('.');
  if (after === undefined) return whole(Number(before), true);
  return `${whole(Number(before), false)} point ${[...after].map((digit) => SMALL[Number(digit)]).join(' ')}`;
}

/** Decimal digits without an exponent. */
function plainText(size: number): string {
  const text = String(size);
  return text.includes('e') ? size.toFixed(12).replace(/0+$/, '') : text;
}

/** @param article `a hundred` and `a thousand` instead of `one hundred`, where nothing but tens and ones follow */
function whole(size: number, article: boolean): string {
  if (size < 20) return SMALL[size]!;
  if (size < 100) {
    const ones = size % 10;
    return TENS[Math.floor(size / 10)]! + (ones === 0 ? '' : `-${SMALL[ones]}`);
  }
  if (size < 1000) {
    const [hundreds, rest] = [Math.floor(size / 100), size % 100];
    const first = hundreds === 1 && article ? 'a hundred' : `${SMALL[hundreds]} hundred`;
    return rest === 0 ? first : `${first} and ${whole(rest, false)}`;
  }
  const [thousands, rest] = [Math.floor(size / 1000), size % 1000];
  const first =
    thousands === 1 && article && rest < 100 ? 'a thousand' : `${whole(thousands, article)} thousand`;
  if (rest === 0) return first;
  return `${first} ${rest < 100 ? 'and ' : ''}${whole(rest, false)}`;
}

/** Without what binary fractions leave behind. */
function tidy(size: number): number {
  return Number(size.toPrecision(12));
}
