/** One place in the inputs of an engine, or of a vehicle, that holds a number. */

import type { Range } from '../../study/form.ts';
import type { EngineInput, Quantity } from '../../study/model.ts';
import type { QuantityKind } from '../../study/unitTable.ts';

export interface InputSlot<Of = EngineInput> {
  /** As in the study below its owner. */ readonly name: string;
  /** Name in the catalogue. */ readonly quantity: string;
  readonly field: { readonly kinds: readonly QuantityKind[]; readonly range: Range };
  readonly whole?: true;
  /** Null where the study does not say and the program finds it. */ readonly now: Quantity | null;
  put(value: Quantity): Of;
}
