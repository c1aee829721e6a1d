/** Published figures in words, the same on every face. */

import { quantity } from '../catalogue.ts';
import { roundedText, show, showIn, showStated, unitFor } from '../display.ts';
import type { EngineAnswer, PublishedCheck, PublishedFigure } from '../model.ts';
import { bandWords } from './solveProblems.ts';

export interface FigureWords {
  /** `thrust in vacuum`; where the study states a cycle, `thrust of the whole engine in vacuum` */ readonly what: string;
  /** As the study writes it. */ readonly published: string;
  readonly computed: string;
  /** `+3.1 kN, +0.4 %`; empty where there is none. */ readonly difference: string;
  /** `inside its ±`, `outside its digits`, …; empty where there is no computed value. */ readonly verdict: string;
  readonly source: string;
}

export function figureWords(figure: PublishedFigure): FigureWords {
  const {
    quantity: name,
    comparedWith,
    computed,
    difference,
    share,
    within,
    plusMinus,
    text,
    source,
  } = figure;
  const what = `${quantity(comparedWith).label}${placeWords(figure)}`;
  if (computed === null || difference === null || share === null || within === null) {
    return { what, published: text, computed: 'no number', difference: '', verdict: '', source };
  }
  const { unit } = showIn(unitFor(quantity(name), [computed, figure.value]), computed, 4);
  return {
    what,
    published: published(figure, unit),
    computed: show(name, computed).text,
    difference:
      Math.abs(share) < LAST_BITS
        ? 'the same'
        : `${differenceText(name, difference, computed)}, ${signed(roundedText(100 * share, 2))} %`,
    verdict: `${within ? 'inside' : 'outside'} its ${plusMinus === null ? 'digits' : '±'}`,
    source,
  };
}

/** As written; in another unit than the computed value stands in, with that beside it. */
function published({ quantity: name, value, text }: PublishedFigure, unit: string): string {
  return unit === '' || text.includes(unit) ? text : `${text} (${show(name, value).text})`;
}

function placeWords({ at }: PublishedFigure): string {
  if (at === null) return '';
  if (at.ambientPressure === 0) return ' in vacuum';
  if (at.altitude === 0) return ' at sea level';
  return at.altitude === null
    ? ` in ${showStated('ambientPressure', at.ambientPressure).text}`
    : ` at ${showStated('altitude', at.altitude).text}`;
}

/** Two digits, in the unit of the computed value. */
function differenceText(name: string, difference: number, computed: number): string {
  return signed(showIn(unitFor(quantity(name), [computed]), difference, 2).text);
}

/** Less than this share of the value is the last bits of a sum. */
const LAST_BITS = 1e-9;

function signed(text: string): string {
  return text.startsWith('−') || text === '0' || text.startsWith('0 ') ? text : `+${text}`;
}

/** Contradictions, then how many of the checks agree. */
export function checkWords(checks: readonly PublishedCheck[]): readonly string[] {
  const against = checks.filter(({ agrees }) => !agrees);
  const agreeing = checks.length - against.length;
  return [
    ...against.map(({ words, one, other }) => `${words} Rows: ${rowNames([...one.rows, ...other.rows])}.`),
    ...(agreeing === 0
      ? []
      : [
          `${agreeing === 1 ? 'One check' : `${agreeing} checks`} of the rows against each other ${agreeing === 1 ? 'agrees' : 'agree'}.`,
        ]),
  ];
}

/** Counted from 1, as a reader counts; a path of the study as it is. */
function rowNames(rows: readonly string[]): string {
  return [...new Set(rows)]
    .map((row) => {
      const index = /^published\[(\d+)\]$/.exec(row)?.[1];
      return index === undefined ? row : `${Number(index) + 1}`;
    })
    .join(', ');
}

/** What the rows settle, in one sentence; null where they are not asked. */
export function solveWords({ publishedSolve, reasons }: EngineAnswer): string | null {
  if (publishedSolve === undefined) return null;
  const { quantity: name, value, bands, used, stated } = publishedSolve;
  const { label } = quantity(name);
  if (value === null) {
    const why = reasons.find(({ path }) => path === 'publishedSolve.value');
    return `${why?.reason ?? 'The rows settle no value.'} ${why?.mend ?? ''}`.trim();
  }
  const found = `The rows are met with ${label} ${bandWords(name, bands)}; best ${show(name, value).text}.`;
  return stated
    ? `${found} The study states ${show(name, used).text}.`
    : `${found} That is what this engine was computed with.`;
}
