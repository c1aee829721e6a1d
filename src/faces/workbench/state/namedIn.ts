/** Which quantities an expression or a test names, and whose: `bell.thrust(12 km) > 2 * plug.thrust(pad)`. */

import { findQuantity } from '../../../answer/catalogue.ts';
import { attempt } from '../../../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../../../physics/air/index.ts';
import { parseQuantity } from '../../../study/units.ts';

export interface NamedQuantity {
  readonly owner: string;
  /** Name in the catalogue. */ readonly quantity: string;
  /** As written, brackets too. */ readonly expression: string;
  /** What stands in the brackets; null where there are none. */ readonly place: string | null;
}

const NAMED = /(?<![\w.])([A-Za-z][\w-]*)\.([A-Za-z][\w]*(?:\.[A-Za-z]\w*)*)(\([^()]*\))?/g;
/** Of a vehicle: `booster.payload` is called `flight.payload`, and so on. */
const BELOW_VEHICLE = ['', 'flight.', 'flight.points.', 'vehicle.'];

export function namedIn(text: string, owners: readonly string[]): readonly NamedQuantity[] {
  return [...text.matchAll(NAMED)].flatMap(([expression, owner = '', name = '', brackets]) => {
    if (!owners.includes(owner)) return [];
    const quantity = BELOW_VEHICLE.map((prefix) => findQuantity(`${prefix}${name}`)).find(
      (one) => one !== undefined,
    );
    if (quantity === undefined) return [];
    return [{ owner, quantity: quantity.name, expression, place: brackets?.slice(1, -1).trim() ?? null }];
  });
}

/** The one quantity that an expression is; null where it is made of several, or of more. */
export function oneNamedIn(text: string, owners: readonly string[]): NamedQuantity | null {
  const [first, ...others] = namedIn(text, owners);
  return first !== undefined && others.length === 0 && first.expression === text.trim() ? first : null;
}

/** On the altitude scale [km]; null where the brackets name no place in the air. */
export function kilometresOf(place: string | null): number | null {
  if (place === null) return null;
  if (place === 'vacuum') return Number.POSITIVE_INFINITY;
  if (/^(pad|sea level)$/.test(place)) return 0;
  const length = parseQuantity(place, 'length');
  if (length.ok) return length.value.value / 1000;
  const pressure = parseQuantity(place, 'pressure');
  if (!pressure.ok || !(pressure.value.value > 0)) return null;
  // A pressure that the standard air has nowhere stands at no altitude.
  const altitude = attempt(() => geometricAltitudeAtPressure(pressure.value.value));
  return altitude.ok ? altitude.value / 1000 : null;
}
