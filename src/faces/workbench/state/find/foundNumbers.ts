/** Numbers for the find box: quantities by plain words, each of every engine meant, where it is meant. */

import { signal } from '@preact/signals';
import { needsOf } from '../../../../answer/asked/askProblem.ts';
import { type Ask, type AskedAmbient, askKey, type Told } from '../../../../answer/asked/model.ts';
import { plainAsk } from '../../../../answer/asked/plainAsk.ts';
import type { CatalogueEntry } from '../../../../answer/catalogue.ts';
import { show } from '../../../../answer/display.ts';
import { findQuantities, readWanted, type Wanted } from '../../../../answer/find/index.ts';
import { formatPressure } from '../../../../telling/numbers/formatNumber.ts';
import { tellNumbers } from '../../workshop/workshop.ts';
import { altitude, setAltitude } from '../altitude.ts';
import { liveHash } from '../liveHash.ts';
import { openLive } from '../liveRoute.ts';
import { engineInputs, shownEngines } from '../pair.ts';
import { showPanel } from '../panels.ts';
import { kilometresText } from '../shown.ts';
import { solved, solving } from '../studyStore.ts';
import { showCard } from '../view.ts';
import type { Found } from './found.ts';

/** Quantities told, and engines told of the first and of the others. */
const mostQuantities = 4;
const mostOwners = 4;
const mostOwnersLater = 2;

/** What the engines of a study said so far, by {@link askKey}. */
const told = signal<{ readonly of: unknown; readonly numbers: ReadonlyMap<string, Told> }>({
  of: null,
  numbers: new Map(),
});

/** Of the study on screen; nothing of one before it. */
const toldNow = (): ReadonlyMap<string, Told> =>
  told.value.of === solved.value ? told.value.numbers : NOTHING;
const NOTHING: ReadonlyMap<string, Told> = new Map();

interface FoundNumber {
  readonly entry: CatalogueEntry;
  readonly ask: Ask;
  readonly owner: string | null;
}

/** The scale's own place where none is named. */
export function placeMeant({ at }: Wanted): AskedAmbient {
  if (at !== null) return at;
  const here = altitude.value;
  return Number.isFinite(here) ? { kind: 'altitude', altitude: here * 1000 } : { kind: 'vacuum' };
}

function numbersMeant(wanted: Wanted): readonly FoundNumber[] {
  const at = placeMeant(wanted);
  const pair = shownEngines.value.map(({ id }) => id);
  const all = engineInputs.value.map(({ id }) => id);
  const others = all.filter((id) => !pair.includes(id));
  const owners = wanted.owners.length > 0 ? wanted.owners : [...pair, ...others];
  return findQuantities(wanted)
    .map(({ item }) => item)
    .filter(({ place, notAsked }) => notAsked === undefined && place !== 'comparison')
    .slice(0, mostQuantities)
    .flatMap((entry, i): readonly FoundNumber[] => {
      const ambient = needsOf(entry).ambient ? at : null;
      if (entry.place === 'air')
        return [{ entry, owner: null, ask: { ...plainAsk('', entry.name, ambient), engine: null } }];
      if (entry.place === 'vehicle') return [{ entry, owner: null, ask: plainAsk('', entry.name, null) }];
      return owners
        .filter((id) => all.includes(id))
        .slice(0, i === 0 ? mostOwners : mostOwnersLater)
        .map((id) => ({ entry, owner: id, ask: plainAsk(id, entry.name, ambient) }));
    });
}

/** One number of one engine, or of the air; not one of many along a wall or a flight. */
export const isOneNumber = ({ place, part, along }: CatalogueEntry): boolean =>
  place !== 'wall' && place !== 'vehicle' && part?.needed !== true && along === undefined;

/** Asks for the numbers that are not known yet; they come within a moment. To be asked again of each study that comes on screen. */
export async function askNumbers(typed: string): Promise<void> {
  const study = solved.value;
  // As long as it comes piece by piece, its engines may still be those before.
  if (study?.isWhole === false || solving.value) return;
  if (told.value.of !== study) told.value = { of: study, numbers: new Map() };
  const asks = numbersMeant(readWanted(typed, engineInputs.value))
    .filter(({ entry, ask }) => isOneNumber(entry) && !told.value.numbers.has(askKey(ask)))
    .map(({ ask }) => ask);
  if (asks.length === 0) return;
  const answers = await tellNumbers(asks);
  if (study !== solved.value || solving.value) return;
  const next = new Map(told.value.numbers);
  asks.forEach((ask, i) => {
    const answer = answers[i];
    if (answer !== undefined) next.set(askKey(ask), answer);
  });
  told.value = { of: study, numbers: next };
}

export function foundNumbers(typed: string): readonly Found[] {
  const meant = numbersMeant(readWanted(typed, engineInputs.value));
  const best = meant[0]?.entry;
  const ofBest = meant.filter(({ entry }) => entry === best);
  return [
    ...ofBest.map(foundNumber),
    ...foundDifference(ofBest),
    ...meant.slice(ofBest.length).map(foundNumber),
  ];
}

/** A number as a test names it, found by plain words. */
export interface NamedNumber {
  readonly expression: string;
  readonly label: string;
  /** What it is, where that is known by now. */ readonly shown: string;
}

export function namedNumbers(typed: string): readonly NamedNumber[] {
  return numbersMeant(readWanted(typed, engineInputs.value))
    .filter(({ entry }) => isOneNumber(entry))
    .map((number) => ({
      expression: expressionOf(number.ask),
      label: labelOf(number),
      shown: shownText(number.entry, number.ask),
    }));
}

function labelOf({ entry, ask, owner }: FoundNumber): string {
  const name = engineInputs.value.find(({ id }) => id === owner)?.name;
  const where = ask.ambient === null ? '' : ` ${placeWords(ask.ambient)}`;
  return `${name === undefined ? '' : `${name}, `}${entry.label}${where}`;
}

function foundNumber(number: FoundNumber): Found {
  const { entry, ask, owner } = number;
  const where = ask.ambient === null ? '' : ` ${placeWords(ask.ambient)}`;
  const shown = shownText(entry, ask);
  return {
    key: `number-${askKey(ask)}`,
    group: 'Numbers',
    label: labelOf(number),
    detail: shown,
    choose() {
      if (entry.place === 'vehicle') return showPanel('vehicles');
      if (ask.ambient?.kind === 'altitude') setAltitude(ask.ambient.altitude / 1000);
      if (ask.ambient?.kind === 'vacuum') setAltitude(Number.POSITIVE_INFINITY);
      showCard({
        quantity: entry.name,
        engine: owner,
        shown,
        condition: where.trim(),
        expression: isOneNumber(entry) ? expressionOf(ask) : null,
      });
    },
    live:
      isOneNumber(entry) && owner !== null
        ? liveHash({ quantity: entry.name, of: owner, against: null, at: ask.ambient })
        : null,
  };
}

/** The engines shown held against each other, where both have the number; its place is the full screen. */
function foundDifference(meant: readonly FoundNumber[]): readonly Found[] {
  const pair = shownEngines.value.map(({ id }) => id);
  const [base, other] = pair.map((id) => meant.find(({ owner }) => owner === id));
  const [from, to] = [base, other].map((one) => one && toldNow().get(askKey(one.ask)));
  if (base?.owner == null || other?.owner == null || !from?.ok || !to?.ok || from.value === 0) return [];
  const { entry, ask } = other;
  const share = (100 * (to.value - from.value)) / Math.abs(from.value);
  const live = liveHash({ quantity: entry.name, of: other.owner, against: base.owner, at: ask.ambient });
  const [first, second] = shownEngines.value.map(({ input }) => input.name);
  return [
    {
      key: `difference-${askKey(ask)}`,
      group: 'Numbers',
      label: `${second} against ${first}, ${entry.label}${ask.ambient === null ? '' : ` ${placeWords(ask.ambient)}`}`,
      detail: `${share < 0 ? '\u2212' : '+'}${Math.abs(share).toFixed(1)}\u00a0%`,
      choose: () => openLive(live),
      live,
    },
  ];
}

function shownText(entry: CatalogueEntry, ask: Ask): string {
  if (!isOneNumber(entry)) return entry.place === 'vehicle' ? 'of each vehicle' : 'one at each place';
  const answer = toldNow().get(askKey(ask));
  if (answer === undefined) return '…';
  return answer.ok ? show(entry.name, answer.value).text : 'no number';
}

/** `at 10.0 km`, `in vacuum`, `at 0.5 bar of air`. */
export function placeWords(at: AskedAmbient): string {
  if (at.kind === 'vacuum') return 'in vacuum';
  if (at.kind === 'pressure') return `at ${formatPressure(at.pressure)} of air`;
  return at.altitude === 0 ? 'at the pad' : `at ${kilometresText(at.altitude / 1000)}`;
}

/** As a test writes it: `bell.thrust(12 km)`. */
function expressionOf({ engine, quantity, ambient }: Ask): string {
  const place =
    ambient === null
      ? ''
      : ambient.kind === 'vacuum'
        ? '(vacuum)'
        : ambient.kind === 'pressure'
          ? `(${ambient.pressure / 1e5} bar)`
          : `(${ambient.altitude / 1000} km)`;
  return engine === null ? `${quantity}${place}` : `${engine}.${quantity}${place}`;
}
