/** The quantity that a name stands for: its own, or another plain name of it. */

import type { Outcome } from '../../numerics/problem.ts';
import { nearestName } from '../../study/nearest.ts';
import { publishedKindOf } from '../../study/publishedForm.ts';
import { tradeNameOf } from '../../study/tradeNames.ts';
import { type CatalogueEntry, catalogue } from '../catalogue.ts';
import { listed } from '../compare/speech.ts';
import { needsOf } from './askProblem.ts';

const byAnyName = new Map<string, readonly CatalogueEntry[]>();
for (const entry of catalogue) {
  for (const name of [entry.name, ...(entry.aliases ?? [])]) {
    byAnyName.set(name, [...(byAnyName.get(name) ?? []), entry]);
  }
}

/** Every name that is understood. */
export const quantityNames: readonly string[] = [...byAnyName.keys()];

/**
 * @param hasPlace whether surroundings or a place along the wall are named: `exitPressure(10 km)` is the pressure at the lip
 *   there, `exitPressure` alone `exit.pressure`
 */
export function resolveQuantity(name: string, hasPlace: boolean): Outcome<CatalogueEntry> {
  const candidates = byAnyName.get(name) ?? [];
  const fitting = candidates.find((entry) => hasAPlace(entry) === hasPlace) ?? candidates[0];
  if (fitting !== undefined) return { ok: true, value: fitting };
  const near = nearestQuantities(name);
  return {
    ok: false,
    problem: {
      code: 'quantity-unknown',
      what: `There is no quantity “${name}”.${near.length === 0 ? '' : ` Did you mean ${orOf(near)}?`}`,
      mend: 'plumeline quantities lists them all.',
    },
  };
}

function hasAPlace(entry: CatalogueEntry): boolean {
  const { ambient, station, time } = needsOf(entry);
  return ambient || time || station !== null;
}

const MOST_NEAR = 3;

/** The names nearest to one that is none: by symbol of the trade, by slip, by a word of the label. */
export function nearestQuantities(name: string): readonly string[] {
  const wanted = name.trim();
  const meant = publishedKindOf(tradeNameOf(wanted) ?? wanted)?.kind.quantity;
  if (meant !== undefined) return [meant];
  const slip = nearestName(wanted, quantityNames);
  const all = [...(slip === null ? [] : [slip]), ...labelled(wanted)];
  return [...new Set(all)].slice(0, MOST_NEAR);
}

/** Quantities whose label has the words of a name: `plug.exitPressure` → `exit pressure`. */
function labelled(wanted: string): readonly string[] {
  const last = wanted.split('.').at(-1)!;
  const words = last.replace(/([A-Z])/g, ' $1').toLowerCase();
  if (words.length < 3) return [];
  return catalogue
    .filter(({ label }) => ` ${label.toLowerCase()}`.includes(` ${words}`))
    .map(({ name }) => name);
}

function orOf(names: readonly string[]): string {
  return listed(names).replace(/ and (?!.* and )/, ' or ');
}
