/**
 * A computed field between two places of a climb: never one field through another, which doubles shocks, but one of them
 * moved behind the engine’s end so that its shock, and in clips the lines of its mesh too, go evenly from one place to the next.
 */

import type { FlowField } from '../../answer/flow/index.ts';
import type { PictureBlock } from '../../physics/wholeFlow/index.ts';

/** What is looked at of a field to place it between others. */
export type Placed = Pick<FlowField, 'ambientPressure' | 'mainShock' | 'mode' | 'lip' | 'end'>;

export interface FlowMorph<Field extends Placed = FlowField> {
  readonly field: Field;
  /** Length behind the engine’s end in the picture over that in the field; 1: as computed. */ readonly longer: number;
  /** The other of the two places, and the share of the way to it, 0 to 0.5; null: the field stays as it is. */
  readonly beside: { readonly field: Field; readonly share: number } | null;
}

/** Further than this a picture would say what no field says. */
const MOST = 1.25;

/**
 * The nearest field of the air’s pressure, and by how much it is drawn longer: the distance of the main shock from the engine’s
 * end is ln-linear in p between two neighbours that both have one of a kind; else the nearest stays as it is.
 * @param flows of one engine, one at least, by falling pressure of the air
 */
export function flowMorph<Field extends Placed>(flows: readonly Field[], ambient: number): FlowMorph<Field> {
  const at = Math.log(Math.max(ambient, flows.at(-1)!.ambientPressure));
  const ln = (field: Field): number => Math.log(field.ambientPressure);
  const next = flows.findIndex((field) => ln(field) <= at);
  const [above, below] = [flows[next - 1], flows[next]];
  if (below === undefined) return asComputed(flows.at(-1)!);
  if (above === undefined) return asComputed(below);
  const way = (ln(above) - at) / (ln(above) - ln(below));
  const [field, other, share] = way < 0.5 ? [above, below, way] : [below, above, 1 - way];
  const ratio = shockRatio(field, other);
  return ratio === null
    ? asComputed(field)
    : { field, longer: ratio ** share, beside: { field: other, share } };
}

const asComputed = <Field extends Placed>(field: Field): FlowMorph<Field> => ({
  field,
  longer: 1,
  beside: null,
});

/** Distance of the other’s main shock from the engine’s end over that of this one; null: they are not the same shock, or too far apart. */
function shockRatio(one: Placed, other: Placed): number | null {
  const [from, to] = [one.mainShock, other.mainShock];
  if (from === null || to === null || from.disk !== to.disk || one.mode !== other.mode) return null;
  const [here, there] = [behindEnd(one, from.behind), behindEnd(other, to.behind)];
  if (here <= 0 || there <= 0) return null;
  // At the middle of the way each is drawn longer by the root of it.
  const ratio = there / here;
  return ratio <= MOST ** 2 && ratio >= MOST ** -2 ? ratio : null;
}

/** [m] from the engine’s end: a bell’s lip, a plug’s cut */
const behindEnd = ({ lip, end }: Placed, behindLip: number): number => lip.axial + behindLip - end;

/** The field with its mesh between its own and its neighbour’s, and all behind the engine’s end moved along the axis to where its shock belongs. */
export function drawnBetween({ field, longer, beside }: FlowMorph): FlowField {
  if (beside === null || beside.share === 0) return field;
  const { lip, end, mainShock, shocks, seen } = field;
  const blocks = isAlike(field, beside.field)
    ? field.blocks.map((block, b) => between(block, beside.field.blocks[b]!, beside.share))
    : field.blocks;
  const axis = (x: number): number => carried(x, field.blocks[field.axisBlock]!, blocks[field.axisBlock]!);
  const shock = mainShock === null ? null : lip.axial + mainShock.behind;
  const wanted = shock === null ? null : end + longer * (shock - end);
  const factor = shock === null || wanted === null ? 1 : (wanted - end) / (axis(shock) - end);
  const moved = (x: number): number => (x <= end ? x : end + factor * (x - end));
  const behind = (distance: number): number => moved(axis(lip.axial + distance)) - lip.axial;
  return {
    ...field,
    seen: behind(seen),
    mainShock: mainShock && { ...mainShock, behind: behind(mainShock.behind) },
    // Laws, and the cell that is held against one, are those of the field where it was computed.
    firstCell: null,
    byLaw: { machDisk: null, cellLength: null },
    shocks: shocks.map((each) => ({ ...each, behind: behind(each.behind) })),
    blocks: blocks.map((block) => ({ ...block, axial: block.axial.map(moved) })),
  };
}

const isAlike = (one: FlowField, other: FlowField): boolean =>
  one.blocks.length === other.blocks.length &&
  one.blocks.every(({ ni, nj }, b) => ni === other.blocks[b]!.ni && nj === other.blocks[b]!.nj);

/** Walls, which both meshes follow, stay where they are. */
function between(block: PictureBlock, other: PictureBlock, share: number): PictureBlock {
  const mean = (own: Float32Array, its: Float32Array): Float32Array =>
    own.map((value, k) => value + share * (its[k]! - value));
  return {
    ...block,
    axial: mean(block.axial, other.axial),
    radius: mean(block.radius, other.radius),
  };
}

/** Where a place on the axis goes with the nodes beside it. */
function carried(x: number, from: PictureBlock, to: PictureBlock): number {
  const [first, last] = [from.axial[0]!, from.axial[from.ni]!];
  if (x <= first || x >= last) return x <= first ? x : x - last + to.axial[to.ni]!;
  let i = 0;
  while (from.axial[i + 1]! < x) i++;
  const [a, b] = [from.axial[i]!, from.axial[i + 1]!];
  return to.axial[i]! + ((x - a) / (b - a)) * (to.axial[i + 1]! - to.axial[i]!);
}
