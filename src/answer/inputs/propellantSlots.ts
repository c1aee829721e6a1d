/** Numbers of what is burnt or heated, and of how the composition follows. */

import { frozenFromFields, propellantForms, shareRange } from '../../study/form.ts';
import type { EngineInput, Ingredient, Propellants, Quantity } from '../../study/model.ts';
import { belowEngine } from './belowEngine.ts';
import type { InputSlot } from './slot.ts';

export function propellantSlots(engine: EngineInput): readonly InputSlot[] {
  const { propellants } = engine;
  const put = (changed: Propellants): EngineInput => ({ ...engine, propellants: changed });
  switch (propellants.kind) {
    case 'burnt':
      return [
        ...mixtureSlots(propellants, put),
        ...shareSlots(propellants.oxidiser, (oxidiser) => put({ ...propellants, oxidiser })),
        ...shareSlots(propellants.fuel, (fuel) => put({ ...propellants, fuel })),
        ...chemistrySlots(engine),
      ];
    case 'mixed':
      return [
        ...shareSlots(propellants.parts, (parts) => put({ ...propellants, parts })),
        ...chemistrySlots(engine),
      ];
    case 'heated':
      return [
        {
          name: 'propellants.temperature',
          quantity: 'propellants.temperature',
          field: propellantForms.heated.temperature,
          now: propellants.temperature,
          put: (temperature) => put({ ...propellants, temperature }),
        },
        ...chemistrySlots(engine),
      ];
    case 'perfect':
      return (['gamma', 'molarMass', 'temperature'] as const).map((key) => ({
        name: `propellants.${key}`,
        quantity: `propellants.${key}`,
        field: propellantForms.perfect[key],
        now: propellants[key],
        put: (value: Quantity) => put({ ...propellants, [key]: value }),
      }));
  }
}

/** Stated either way, it may be set either way. */
function mixtureSlots(
  propellants: Propellants & { kind: 'burnt' },
  put: (changed: Propellants) => EngineInput,
): readonly InputSlot[] {
  const { mixture } = propellants;
  return (['massRatio', 'equivalenceRatio'] as const).map((by) => {
    const key = by === 'massRatio' ? 'ratio' : 'equivalenceRatio';
    return {
      name: `propellants.${key}`,
      quantity: `propellants.${key}`,
      field: propellantForms.burnt[key],
      now: mixture.by === by ? mixture.ratio : null,
      put: (ratio: Quantity) => put({ ...propellants, mixture: { by, ratio } }),
    };
  });
}

/** One share of a blend; the others keep their proportions and make up the rest. */
function shareSlots(
  parts: readonly Ingredient[],
  put: (parts: readonly Ingredient[]) => EngineInput,
): readonly InputSlot[] {
  if (parts.length < 2) return [];
  return parts.map((part) => ({
    name: belowEngine(part.share.path),
    quantity: 'propellants.share',
    field: { kinds: ['share'], range: shareRange },
    now: part.share,
    put: (share) => put(parts.map((each) => rescaled(each, part, share))),
  }));
}

function rescaled(each: Ingredient, moved: Ingredient, share: Quantity): Ingredient {
  if (each === moved) return { ...each, share };
  const value = (each.share.value * (1 - share.value)) / (1 - moved.share.value);
  return { ...each, share: { ...each.share, value, plusMinus: null } };
}

function chemistrySlots(engine: EngineInput): readonly InputSlot[] {
  const { chemistry } = engine;
  const stated = chemistry.kind === 'frozenFrom' ? chemistry : null;
  return [
    {
      name: 'chemistry.frozenFrom.areaRatio',
      quantity: 'chemistry.areaRatio',
      field: frozenFromFields.areaRatio,
      now: stated !== null && 'areaRatio' in stated ? stated.areaRatio : null,
      put: (areaRatio) => ({ ...engine, chemistry: { kind: 'frozenFrom', areaRatio } }),
    },
    {
      name: 'chemistry.frozenFrom.pressure',
      quantity: 'chemistry.pressure',
      field: frozenFromFields.pressure,
      now: stated !== null && 'pressure' in stated ? stated.pressure : null,
      put: (pressure) => ({ ...engine, chemistry: { kind: 'frozenFrom', pressure } }),
    },
  ];
}
