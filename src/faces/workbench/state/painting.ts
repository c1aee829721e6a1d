/** What a canvas must know that style sheets see to elsewhere: how fine the screen is, which theme, and whether it goes to paper. */

import { computed, signal } from '@preact/signals';
import type { Theme } from '../../../telling/look/tokens.ts';
import { theme } from './view.ts';

/** Pixels for one of the page on paper: 300 to the inch and more. */
const onPaper = 3;

const screenRatio = signal(devicePixelRatio);
followRatio();

/** Changes with the screen that the window is on, and with the browser's zoom. */
function followRatio(): void {
  const now = devicePixelRatio;
  screenRatio.value = now;
  matchMedia(`(resolution: ${now}dppx)`).addEventListener('change', followRatio, { once: true });
}

const paper = matchMedia('print');
const printing = signal(paper.matches);
paper.addEventListener('change', ({ matches }) => {
  printing.value = matches;
});

export const pixelRatio = computed(() =>
  printing.value ? Math.max(onPaper, screenRatio.value) : screenRatio.value,
);

/** On paper every drawing is light. */
export const paintedTheme = computed<Theme>(() => (printing.value ? 'light' : theme.value));
