/** One number asked of one engine at one place, and what is told: its best value with what is known of its error. */

import type { Problem } from '../../numerics/problem.ts';

/** The surroundings in which a number is asked for. */
export type AskedAmbient =
  | { readonly kind: 'vacuum' }
  /** geometric [m] */
  | { readonly kind: 'altitude'; readonly altitude: number }
  /** [Pa] */
  | { readonly kind: 'pressure'; readonly pressure: number };

/** A place along the wall. */
export type AskedStation =
  | { readonly kind: 'injector' | 'throat' | 'lip' }
  /** behind the throat [–] */
  | { readonly kind: 'areaRatio'; readonly areaRatio: number }
  /** from the throat plane, downstream positive [m] */
  | { readonly kind: 'distance'; readonly distance: number };

/** One input of the asked engine alone, set to another value [SI]; the rest of the study stays. */
export interface ChangedInput {
  /** As in the study below the engine, e.g. `nozzle.areaRatio`, `chamber.pressure`, `propellants.ratio`. */
  readonly input: string;
  readonly value: number;
}

export interface Ask {
  /** Id of the engine or of the vehicle in the study; null for quantities of the air alone. */ readonly engine:
    | string
    | null;
  /** Name in the catalogue. */ readonly quantity: string;
  /** Null where the quantity has no surroundings. */ readonly ambient: AskedAmbient | null;
  /** Chamber pressure over that of the study [–]; null: full. */ readonly throttle: number | null;
  /** Null where the quantity has no place along the wall. */ readonly station: AskedStation | null;
  /** Since lift-off [s]; absent where the quantity is none of one moment of a flight. */ readonly time?: number;
  /**
   * Which one of several, in the answer’s own words; absent: the one that the model takes, or there is only one.
   * Written after its kind: `thrustParts.force(vacuum, surface nozzle wall)`, `losses.items.share(item friction on the wall)`,
   * `chamber.composition(species H2O)`, `separation.criteria.ratio(criterion schmucker)`,
   * `separation.place.areaRatio(0 km, criterion stark)`, `separation.thrust(0 km, end least)`,
   * `thrust(12 km, mode skirt drawn up)`, `propellants.density(ingredient methane)`, `payload(engine plug)` of a vehicle with another engine below. The kinds stand in {@link PART_KINDS}.
   */
  readonly part?: string;
  readonly inputs: readonly ChangedInput[];
}

/** What {@link Ask.part} may name, the word written before it. */
export const PART_KINDS = [
  'surface',
  'item',
  'species',
  'criterion',
  'end',
  'mode',
  'ingredient',
  'engine',
] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** The same text for the same question: a key for maps and for what travels between threads. */
export function askKey({ engine, quantity, ambient, throttle, station, time, part, inputs }: Ask): string {
  return JSON.stringify([
    engine,
    quantity,
    ambient,
    throttle,
    station,
    time ?? null,
    part ?? null,
    inputs.map(({ input, value }) => [input, value]),
  ]);
}

/**
 * One model's published error. All numbers that share its name take the same draw: what two engines share cancels
 * in their difference. A band holds 95 % (two standard deviations on either side), as a stated ± does.
 */
export interface Scatter {
  /** Of the model's error, e.g. `friction on the wall`. */ readonly name: string;
  /** The number [SI] at the lower end of that error's band, all else at its best value… */ readonly low: number;
  /** …and at its upper end; it may be below `low` where the number falls as the error grows. */
  readonly high: number;
  /** Where the band comes from. */ readonly source: string;
}

/** The number by one of several published models that stand beside each other: no probabilities, a band. */
export interface Alternative {
  /** What they are alternatives for, e.g. `separation criterion`. */ readonly of: string;
  /** e.g. `Schmucker 1973` */ readonly by: string;
  /** [SI]; null where that model has none here */ readonly value: number | null;
}

export type Told =
  | {
      readonly ok: true;
      /** [SI] */ readonly value: number;
      readonly scatter: readonly Scatter[];
      readonly alternatives: readonly Alternative[];
    }
  | { readonly ok: false; readonly problem: Problem };
