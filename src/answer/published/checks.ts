/** Published rows held against each other: the same quantity by every two roads that lead to it. */

import type { EngineInput } from '../../study/model.ts';
import { quantity } from '../catalogue.ts';
import { isOpen } from '../cycle/asStated.ts';
import { show, showIn, unitFor } from '../display.ts';
import { diameterOf } from '../solution.ts';
import { gap } from './interval.ts';
import type { PublishedCheck, PublishedRoad } from './model.ts';
import { type Roads, roadsOf } from './roads.ts';
import { statedInputs, statedRows } from './statedRows.ts';

/** Two values that differ by no more than this share of the larger are equal: the last bits of a sum. */
const LAST_BITS = 1e-12;

/** Contradictions first, the widest first among them. */
export function publishedChecks(input: EngineInput): readonly PublishedCheck[] {
  const { published, cycle } = input;
  if (published === null || published.rows.length === 0) return [];
  const rows = statedRows(published.rows);
  return roadsOf(rows, statedInputs(input), cycle === null || !isOpen(cycle))
    .flatMap(pairsOf)
    .sort((a, b) => b.beyond / Math.abs(b.one.value) - a.beyond / Math.abs(a.one.value));
}

function pairsOf({ quantity: name, pressure, roads }: Roads): readonly PublishedCheck[] {
  return roads.flatMap((one, i) =>
    roads
      .slice(i + 1)
      // Two inputs of the study are the study's own affair; it is held against the rows here.
      .filter((other) => [...one.rows, ...other.rows].some((row) => row.startsWith('published[')))
      .map((other) => checkOf(name, pressure, one, other)),
  );
}

function checkOf(
  name: string,
  ambientPressure: number | null,
  one: PublishedRoad,
  other: PublishedRoad,
): PublishedCheck {
  const missed = gap(one, other);
  const beyond = missed > LAST_BITS * Math.max(Math.abs(one.value), Math.abs(other.value)) ? missed : 0;
  const difference = other.value - one.value;
  const share = one.value === 0 ? 0 : difference / Math.abs(one.value);
  const bare = {
    quantity: name,
    ambientPressure,
    one,
    other,
    agrees: beyond === 0,
    difference,
    share,
    beyond,
  };
  return { ...bare, words: wordsOf(bare) };
}

function wordsOf({
  quantity: name,
  one,
  other,
  agrees,
  share,
  beyond,
}: Omit<PublishedCheck, 'words'>): string {
  const by = other.by.replace(/,$/, '');
  const two = `${capital(one.by)} gives ${valueText(name, one.value)}; ${by} gives ${valueText(name, other.value)}`;
  const size = showIn(quantity('published.share').unit, Math.abs(share), 2).text;
  const apart = share === 0 ? 'the same' : `${size} ${share > 0 ? 'more' : 'less'}`;
  return agrees
    ? `${two}: ${apart}, within what ± and digits allow.`
    : `${two}: ${apart}, ${beyondText(name, beyond, one.value, other.value)} beyond what ± and digits allow.`;
}

function valueText(name: string, value: number): string {
  const { text } = show(name, value);
  return name === 'exit.area' && value > 0
    ? `${text} (${show('exit.diameter', diameterOf(value)).text} across)`
    : text;
}

/** In the unit of the two values it stands between. */
function beyondText(name: string, beyond: number, ...values: readonly number[]): string {
  return showIn(unitFor(quantity(name), values), beyond, 2).text;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
