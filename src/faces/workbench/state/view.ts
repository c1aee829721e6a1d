/** What the page shows but the study does not hold: chosen pair, open panel, theme. */

import { computed, signal } from '@preact/signals';
import type { Tint } from '../../../telling/look/flowRamps.ts';

/** What the gas in the drawing is tinted by. */
export const tint = signal<Tint>('pressure');

/** Which part of the engines is drawn larger beside them; null: none. */
export const closer = signal<'throat' | 'lip' | null>(null);

/** The two engines shown, by id; null: those the study compares. */
export const chosenPair = signal<readonly [string, string] | null>(null);

export type Panel =
  | 'inputs'
  | 'sentences'
  | 'script'
  | 'sweeps'
  | 'figures'
  | 'vehicles'
  | 'worth'
  | 'models'
  | 'published';
export const panel = signal<Panel>('inputs');

/** A number whose catalogue entry stands in the right column. */
export interface OpenCard {
  /** Name in the catalogue. */ readonly quantity: string;
  /** Whose number it is, if an engine's. */ readonly engine: string | null;
  /** The number as shown where it was clicked. */ readonly shown: string;
  /** Where it holds, e.g. `at 12.0 km`. */ readonly condition: string;
  /** How a test names it, e.g. `bell.thrust(12 km)`; null where no test can. */ readonly expression:
    | string
    | null;
  /** Where no test can: what says as much. */ readonly instead?: SaidInstead;
}

/** In place of a number that no test names: a sentence with its test, and what can be followed. */
export interface SaidInstead {
  readonly say: string;
  readonly holds: string;
  readonly sweep: {
    readonly quantity: string;
    /** What it is followed against; null: whatever was chosen last. */ readonly input: string | null;
    /** Whose flight it is; null where it is no flight's. */ readonly vehicle: string | null;
  };
}
export const openCard = signal<OpenCard | null>(null);

/** What was pressed to open the card; it gets the focus back. */
let opener: Element | null = null;

export function showCard(card: OpenCard): void {
  if (openCard.value === null) opener = document.activeElement;
  openCard.value = card;
}

/** Closes the card and goes back to where it was opened from. */
export function closeCard(): void {
  openCard.value = null;
  const back = opener?.isConnected === true ? opener : document.getElementById(`tab-${panel.value}`);
  opener = null;
  if (back instanceof HTMLElement) back.focus();
}

/** Of the inputs only those are shown that are not the same in both engines. */
export const onlyDiffering = signal(false);

/** On a narrow screen one engine is shown at a time. */
export const engineInFront = signal<0 | 1>(0);

export type ThemeChoice = 'light' | 'dark';

const storedTheme = 'plumeline-theme';
const systemDark = matchMedia('(prefers-color-scheme: dark)');
const systemTheme = signal<ThemeChoice>(systemDark.matches ? 'dark' : 'light');
systemDark.addEventListener('change', (event) => {
  systemTheme.value = event.matches ? 'dark' : 'light';
});

/** What the person chose; null follows the system. */
const chosenTheme = signal<ThemeChoice | null>(readStoredTheme());

export const theme = computed<ThemeChoice>(() => chosenTheme.value ?? systemTheme.value);

export function toggleTheme(): void {
  const next = theme.value === 'dark' ? 'light' : 'dark';
  // Back on the system's own theme there is no choice left to remember.
  chosenTheme.value = next === systemTheme.value ? null : next;
  if (chosenTheme.value === null) localStorage.removeItem(storedTheme);
  else localStorage.setItem(storedTheme, chosenTheme.value);
}

function readStoredTheme(): ThemeChoice | null {
  const stored = localStorage.getItem(storedTheme);
  return stored === 'light' || stored === 'dark' ? stored : null;
}

const reduced = matchMedia('(prefers-reduced-motion: reduce)');
export const reducedMotion = signal(reduced.matches);
reduced.addEventListener('change', (event) => {
  reducedMotion.value = event.matches;
});
