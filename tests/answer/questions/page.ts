/** The page of questions, from the entries and what the program gave. */
import { CAUTION } from '../../../src/answer/caution.ts';
import type { Question, QuestionNumber } from './question.ts';

export interface Answered {
  readonly question: Question;
  /** [SI] in the order of its numbers */ readonly values: readonly number[];
  /** Pages of docs/methods that its quantities stand on. */ readonly models: readonly string[];
  /** Title of its picture. */ readonly title: string;
}

const shown = (value: number, digits: number): string =>
  String(Number(value.toPrecision(digits))).replace(/^-/, '−');

const unitBehind = (number: string, unit: string): string =>
  unit === '' || unit === '°' ? `${number}${unit}` : `${number} ${unit}`;

function withUnit({ perSI, digits, unit }: QuestionNumber, value: number): string {
  return unitBehind(shown(value * perSI, digits), unit);
}

/** Its ends rounded outwards, so that none rounds past the number. */
function bandText({ band: { least, greatest }, digits, unit }: QuestionNumber): string {
  const to = Math.max(3, digits);
  return unitBehind(
    `${shown(outwards(least, to, Math.floor), to)} to ${shown(outwards(greatest, to, Math.ceil), to)}`,
    unit,
  );
}

function outwards(end: number, digits: number, round: (value: number) => number): number {
  if (end === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(end))) + 1 - digits);
  // What is whole but for rounding stays.
  return round(Number((end / step).toPrecision(12))) * step;
}

const cell = (text: string): string => text.replaceAll('|', '\\|');

function entryText({ question, values, models, title }: Answered): string {
  const { asked, starter, numbers, conditions, trap, slug, answer } = question;
  const spoken = numbers.reduce(
    (text, number, i) => text.replaceAll(`{${i + 1}}`, `**${withUnit(number, values[i]!)}**`),
    answer,
  );
  const rows = numbers.map(
    (number, i) =>
      `| ${cell(number.label)} | \`${cell(number.expression)}\` | ${withUnit(number, values[i]!)} | ${bandText(number)} | ${cell(number.how)} |`,
  );
  return `## ${asked}

${spoken}

![${title.replaceAll(/[[\]]/g, '')}](pictures/questions/${slug}.svg)

Under these conditions: ${conditions} What is often missed: ${trap}

| number | asked as | Plumeline | must lie in | found how |
| --- | --- | --: | --: | --- |
${rows.join('\n')}

Models: ${models.map((model) => `[${model}](methods/${model}.md)`).join(', ')}.

To have it before you: \`plumeline new answer --from ${starter}\`, then \`plumeline check answer\`.
`;
}

export function questionsPage(answered: readonly Answered[]): string {
  return `# Questions, answered

Questions that people ask about rocket engines, each with the number that answers it, its conditions and a picture. A test works out every number on this page from the starter named, and holds it to a band found by other means: closed forms, published tables, a general-purpose library. The page is written by that test (\`npm run docs\`).

${CAUTION}

${answered.map(({ question }) => `- [${question.asked}](#${anchor(question.asked)})`).join('\n')}

${answered.map(entryText).join('\n')}`;
}

const anchor = (heading: string): string =>
  heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');
