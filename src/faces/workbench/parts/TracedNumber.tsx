import type { ComponentChildren } from 'preact';
import { isSelected } from '../state/selected.ts';
import { closeCard, openCard, showCard } from '../state/view.ts';

interface TracedNumberProps {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly engine: string | null;
  readonly shown: string;
  readonly condition: string;
  /** What the button is called by assistive technology, e.g. `Alder B, thrust`. */ readonly label: string;
  /** How a test names it, e.g. `bell.thrust(12 km)`; null where no test can. */ readonly expression:
    | string
    | null;
  readonly children?: ComponentChildren;
}

/** A number that, when pressed, tells where it comes from. */
export function TracedNumber({
  quantity,
  engine,
  shown,
  condition,
  label,
  expression,
  children,
}: TracedNumberProps) {
  const card = openCard.value;
  const open = card?.quantity === quantity && card.engine === engine && card.expression === expression;
  return (
    <button
      type="button"
      class={`number${open ? ' open' : ''}${isSelected(engine, quantity) ? ' marked' : ''}`}
      aria-expanded={open}
      aria-label={`${label}: ${shown}. Where this number comes from`}
      onClick={() => {
        if (open) closeCard();
        else showCard({ quantity, engine, shown, condition, expression });
      }}
    >
      {children ?? shown}
    </button>
  );
}
