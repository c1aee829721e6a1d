/** What the meter for flashes found. */

export interface FlashVerdict {
  readonly passes: boolean;
  /** Most flashes within a second that any quarter of a 10 degree field sees [–]; halves are single changes. */
  readonly mostFlashes: number;
  /** [s] where the second with the most flashes ends; null where nothing flashes */ readonly at:
    | number
    | null;
  /** Largest share of a 10 degree field with more than three flashes in a second [–]. */
  readonly largestArea: number;
}
