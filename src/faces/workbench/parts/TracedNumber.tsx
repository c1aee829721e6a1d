import type { ComponentChildren } from 'preact';
import { isSelected } from '../state/selected.ts';
import { closeCard, openCard, type SaidInstead, showCard } from '../state/view.ts';

interface TracedNumberProps {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly engine: string | null;
  readonly shown: string;
  readonly condition: string;
  /** What the button is called by assistive technology, e.g. `Alder B, thrust`. */ readonly label: string;
  /** How a test names it, e.g. `bell.thrust(12 km)`; null where no test can. */ readonly expression:
    | string
    | null;
  /** Where no test can: what says as much. */ readonly instead?: SaidInstead | undefined;
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
  instead,
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
        else showCard({ quantity, engine, shown, condition, expression, ...(instead && { instead }) });
      }}
    >
      {children ?? shown}
    </button>
  );
}
