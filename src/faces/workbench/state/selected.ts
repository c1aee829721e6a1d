/** What is selected: the quantities of the number whose card is open. Every view marks them. */

import { computed } from '@preact/signals';
import { type NamedQuantity, namedIn } from './namedIn.ts';
import { solved } from './studyStore.ts';
import { openCard } from './view.ts';

export const ownerIds = computed((): readonly string[] => {
  const study = solved.value?.study;
  return [...(study?.engines ?? []), ...(study?.vehicles ?? [])].map(({ id }) => id);
});

const selected = computed((): readonly Pick<NamedQuantity, 'owner' | 'quantity'>[] => {
  const card = openCard.value;
  if (card === null) return [];
  const named = card.expression === null ? [] : namedIn(card.expression, ownerIds.value);
  return named.length > 0 || card.engine === null ? named : [{ owner: card.engine, quantity: card.quantity }];
});

export function isSelected(owner: string | null, quantity: string): boolean {
  return selected.value.some((one) => one.owner === owner && one.quantity === quantity);
}

/** A test or an expression that names one of them. */
export function namesSelected(text: string | null): boolean {
  return (
    text !== null &&
    selected.value.length > 0 &&
    namedIn(text, ownerIds.value).some(({ owner, quantity }) => isSelected(owner, quantity))
  );
}

/** What the curves beside the scale are of: the specific impulse, unless a thrust is selected. */
export const charted = computed((): 'specificImpulse' | 'thrust' =>
  selected.value.some(({ quantity }) => quantity === 'thrust') &&
  !selected.value.some(({ quantity }) => quantity === 'specificImpulse')
    ? 'thrust'
    : 'specificImpulse',
);

/** Engines whose curve is lit. */
export const litEngines = computed((): readonly string[] =>
  selected.value.filter(({ quantity }) => quantity === charted.value).map(({ owner }) => owner),
);
