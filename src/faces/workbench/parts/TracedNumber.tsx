import type { ComponentChildren } from 'preact';
import { openCard } from '../state/view.ts';

interface TracedNumberProps {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly engine: string | null;
  readonly shown: string;
  readonly condition: string;
  /** What the button is called by assistive technology, e.g. `Alder B, thrust`. */ readonly label: string;
  readonly children?: ComponentChildren;
}

/** A number that, when pressed, tells where it comes from. */
export function TracedNumber({ quantity, engine, shown, condition, label, children }: TracedNumberProps) {
  const card = openCard.value;
  const open = card?.quantity === quantity && card.engine === engine;
  return (
    <button
      type="button"
      class={open ? 'number open' : 'number'}
      aria-expanded={open}
      aria-label={`${label}: ${shown}. Where this number comes from`}
      onClick={() => {
        openCard.value = open ? null : { quantity, engine, shown, condition };
      }}
    >
      {children ?? shown}
    </button>
  );
}
