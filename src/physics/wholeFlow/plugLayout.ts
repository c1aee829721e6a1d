/** Where the nodes of a plug’s mesh lie. */

import type { MeshSymmetry } from '../euler/index.ts';
import { nearestPlace, placesAlong, stretchedShares, throughPlace } from './places.ts';
import { rowsAcross } from './plugRows.ts';
import { apart, type Place, type PolyLine, polyLine } from './polyLine.ts';

/** Two walls, station by station across the ring, and the plug behind it. */
export interface PlugShape {
  /** From where the gas comes in to the lip. */ readonly ring: readonly {
    readonly inner: Place;
    readonly outer: Place;
  }[];
  /** From the last inner place of the ring to the cut. */ readonly plug: readonly Place[];
  /** The station of the throat, where the plug’s wall has a sharp corner; the last one where there is none. */ readonly throat: number;
  /** [m] of the cowl at the lip */ readonly thickness: number;
  /** `flat`: a linear plug, above its middle plane. */ readonly symmetry: MeshSymmetry;
}

export interface PlugRoom {
  /** From the lip on as far as over the cut: where the edge of the jet is expected. */ readonly edge: readonly Place[];
  /** Radius of that edge further behind [m], by the distance behind its last place. */ readonly edgeBehind: (
    behind: number,
  ) => number;
  /** [m] behind the cut up to which cells stay fine, and where the field ends; from the axis. */ readonly fine: number;
  readonly long: number;
  readonly wide: number;
}

export interface PlugSize {
  readonly across: number;
  /** Length of the cells beside the lip over their width there. */ readonly lipCell: number;
  /** Whether the rows of the gas are even, and the first of the air is as high as those behind the lip. */ readonly calm: boolean;
  readonly base: number;
  readonly outside: number;
  readonly ring: number;
  /** Of the ring ahead of the throat. */ readonly throat: number;
  readonly plug: number;
  readonly fine: number;
  readonly rest: number;
  readonly ahead: number;
  /** Across half of the wake. */ readonly wake: number;
}

/** Cells beside the lip and those of the air: through time the shortest of them set the length of the steps. */
export const AT_LIP = {
  atRest: { lipCell: 0.2, calm: false },
  inTime: { lipCell: 0.7, calm: true },
} as const;
/** Cells of the plug are no longer than this share of the lip’s radius, at 8 across. */
const LONGEST_CELL = 0.05;

/** Places along the ring, counted in stations; cells there by the length of its middle line. */
export function ringPlaces(
  shape: PlugShape,
  across: number,
  lipCell: number,
  cells?: Pick<PlugSize, 'ring' | 'throat'>,
): readonly number[] {
  const { ring, throat } = shape;
  const lengths = [0];
  for (let k = 1; k < ring.length; k++) {
    const [a, b] = [ring[k - 1]!, ring[k]!];
    lengths.push(lengths[k - 1]! + (apart(a.inner, b.inner) + apart(a.outer, b.outer)) / 2);
  }
  const stationAt = (length: number): number => {
    let k = 1;
    while (k < ring.length - 1 && lengths[k]! < length) k++;
    return k - 1 + (length - lengths[k - 1]!) / (lengths[k]! - lengths[k - 1]!);
  };
  const end = lengths.at(-1)!;
  const widthAt = (length: number): number => {
    const { inner, outer } = ring[Math.round(stationAt(length))]!;
    return apart(inner, outer);
  };
  // Short beside the lip, where the fan stands.
  const atLip = (lipCell * widthAt(end)) / across;
  const places = placesAlong(
    0,
    end,
    (length) => Math.min((1.5 * widthAt(length)) / across, atLip + 0.15 * (end - length)),
    cells?.ring,
  );
  const at = lengths[throat]!;
  return throughPlace(places, at, cells?.throat ?? nearestPlace(places, at)).map(stationAt);
}

export function plugPlaces(
  { ring, plug }: PlugShape,
  across: number,
  lipCell: number,
  count?: number,
): readonly number[] {
  const { inner, outer } = ring.at(-1)!;
  const first = (lipCell * apart(inner, outer)) / across;
  const most = (LONGEST_CELL * outer[1] * 8) / across;
  return placesAlong(0, polyLine(plug).length, (s) => Math.min(most, first + 0.1 * s), count);
}

/** The wake narrows to this share of the base’s radius, within so many of it. */
const WAKE_NARROWS = 0.4;

/** The rows of the gas in the ring and behind it. */
export function plugRows({ ring, symmetry }: PlugShape, { across, calm }: PlugSize) {
  return rowsAcross(ring.at(-1)!, across, { even: calm, round: symmetry === 'round' });
}

export function plugLayout(shape: PlugShape, room: PlugRoom, size: PlugSize) {
  const { plug, fine, rest, across, base, outside } = size;
  const wall: PolyLine = polyLine(shape.plug);
  const edge: PolyLine = polyLine(room.edge);
  const onWall = plugPlaces(shape, across, size.lipCell, plug);
  const [cutX, cutR] = wall.at(wall.length);
  const [overX] = edge.at(edge.length);
  const lastCell = wall.length - onWall[plug - 1]!;
  const near = placesAlong(0, room.fine, (x) => Math.min(room.fine / fine, lastCell + 0.1 * x), fine);
  const far = stretchedShares(
    rest,
    Math.min(1 / rest, (room.fine - near[fine - 1]!) / (room.long - room.fine)),
  );
  const behind = [...near, ...far.slice(1).map((share) => room.fine + share * (room.long - room.fine))];
  const inner = (i: number): Place => {
    if (i <= plug) return wall.at(onWall[i]!);
    const x = behind[i - plug]!;
    return [cutX + x, cutR * (WAKE_NARROWS + (1 - WAKE_NARROWS) * Math.exp(-x / (1.5 * cutR)))];
  };
  const upper = (i: number): Place => {
    if (i <= plug) return edge.at((edge.length * onWall[i]!) / wall.length);
    const x = behind[i - plug]!;
    // Slowly enough that the nodes keep their order.
    const lean = (overX - cutX) * Math.exp(-x / (2 * Math.max(cutR, overX - cutX)));
    return [cutX + x + lean, room.edgeBehind(cutX + x + lean - overX)];
  };
  const lip = shape.ring.at(-1)!.outer;
  const first = size.calm ? shape.thickness / base : (1.5 * apart(shape.ring.at(-1)!.inner, lip)) / across;
  const outer = stretchedShares(outside, Math.min(1 / outside, first / room.wide));
  const row = plugRows(shape, size);
  const node = (i: number, j: number): Place => {
    const [a, b] = [inner(i), upper(i)];
    if (j <= across) return row(a, b, j);
    const thick = shape.thickness + 0.1 * Math.max(0, b[0] - lip[0]) * 0.3;
    if (j <= across + base) return [b[0], b[1] + (thick * (j - across)) / base];
    const from = b[1] + thick;
    return [b[0], from + outer[j - across - base]! * (room.wide - from)];
  };
  return { inner, node, outer };
}
