import { belowVehicle } from '../../../answer/asked/askProblem.ts';
import { isVehicle, type Owner } from '../../../study/owners.ts';
import type { InputRow } from '../state/inputRows.ts';
import { showCard } from '../state/view.ts';

/** The name of an input; pressed, it tells what it is. */
export function LabelButton({ row, owner }: { readonly row: InputRow; readonly owner: Owner }) {
  const { quantity, label, text } = row;
  if (quantity === null) return <span class="label-words">{label}</span>;
  const name = isVehicle(owner) ? belowVehicle(quantity) : quantity;
  return (
    <button
      type="button"
      class="label"
      onClick={() => {
        showCard({
          quantity,
          engine: owner.id,
          shown: text,
          condition: 'as set in the study',
          expression: `${owner.id}.${name}`,
        });
      }}
    >
      {label}
    </button>
  );
}
