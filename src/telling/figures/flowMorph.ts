/** A computed field drawn longer or shorter along the axis behind the lip, so that its shock stands where those of its neighbours say. */

import type { FlowField } from '../../answer/flow/index.ts';

/** What is looked at of a field to place it between others. */
export type Placed = Pick<FlowField, 'ambientPressure' | 'mainShock' | 'form' | 'mode'>;

export interface FlowMorph<Field extends Placed = FlowField> {
  readonly field: Field;
  /** Length of the jet in the picture over that in the field; 1: as computed. */ readonly longer: number;
}

/** Further than this a picture would say what no field says. */
const MOST = 1.25;

/**
 * The nearest field of the air’s pressure, and by how much it is drawn longer: the distance of the main shock is linear in ln p
 * between two neighbours that both have one of a kind; else the nearest stays as it is.
 * @param flows of one engine, one at least, by falling pressure of the air
 */
export function flowMorph<Field extends Placed>(flows: readonly Field[], ambient: number): FlowMorph<Field> {
  const at = Math.log(Math.max(ambient, flows.at(-1)!.ambientPressure));
  const ln = (field: Field): number => Math.log(field.ambientPressure);
  const next = flows.findIndex((field) => ln(field) <= at);
  const [above, below] = [flows[next - 1], flows[next]];
  if (below === undefined) return { field: flows.at(-1)!, longer: 1 };
  if (above === undefined) return { field: below, longer: 1 };
  const share = (ln(above) - at) / (ln(above) - ln(below));
  const field = share < 0.5 ? above : below;
  return { field, longer: longerFor(above, below, share, field) };
}

function longerFor(above: Placed, below: Placed, share: number, shown: Placed): number {
  const [from, to] = [above.mainShock, below.mainShock];
  // A plug’s own body would be drawn longer with its jet.
  if (shown.form === 'plug' || from === null || to === null || from.disk !== to.disk) return 1;
  if (above.mode !== below.mode) return 1;
  const wanted = from.behind * (to.behind / from.behind) ** share;
  const longer = wanted / shown.mainShock!.behind;
  return longer > MOST || longer < 1 / MOST ? 1 : longer;
}

/** The field with all that lies behind the lip moved along the axis. */
export function drawnLonger({ field, longer }: FlowMorph): FlowField {
  if (longer === 1) return field;
  const { lip, blocks, mainShock, firstCell, shocks } = field;
  const moved = (x: number): number => (x <= lip.axial ? x : lip.axial + longer * (x - lip.axial));
  return {
    ...field,
    seen: longer * field.seen,
    mainShock: mainShock && { ...mainShock, behind: longer * mainShock.behind },
    firstCell: firstCell === null ? null : longer * firstCell,
    byLaw: { machDisk: null, cellLength: null },
    shocks: shocks.map((shock) => ({ ...shock, behind: longer * shock.behind })),
    blocks: blocks.map((block) => ({ ...block, axial: block.axial.map(moved) })),
  };
}
