/** The tabs of the right column: which there are, which of them have something to show, and which is shown. */

import { computed } from '@preact/signals';
import { publishedShown } from './pair.ts';
import { solved } from './studyStore.ts';
import { openCard, type Panel, panel } from './view.ts';

export const panels: readonly { readonly id: Panel; readonly label: string }[] = [
  { id: 'inputs', label: 'Inputs' },
  { id: 'sentences', label: 'Sentences' },
  { id: 'script', label: 'Script' },
  { id: 'sweeps', label: 'Sweeps' },
  { id: 'figures', label: 'Figures' },
  { id: 'vehicles', label: 'Vehicles' },
  { id: 'worth', label: 'Worth' },
  { id: 'models', label: 'Models' },
  { id: 'published', label: 'Published' },
];

/** What has nothing to show is not there: published figures, vehicles, a pair. */
export const panelsThere = computed(() =>
  panels.filter(({ id }) => {
    if (id === 'published') return publishedShown.value;
    const study = solved.value?.study;
    if (id === 'worth') return (study?.engines.length ?? 0) > 1 || (study?.needs.length ?? 0) > 0;
    return id !== 'vehicles' || (study?.vehicles.length ?? 0) > 0;
  }),
);

export const shownPanel = computed(() =>
  panelsThere.value.some(({ id }) => id === panel.value) ? panel.value : 'inputs',
);

/** Shows a tab, and takes away the card that may lie over it. */
export function showPanel(id: Panel): void {
  openCard.value = null;
  panel.value = id;
}
