/** What is said of sideways forces, in words: no published constant carries over from one nozzle to another. */

export type WallForm = 'cone' | 'ideal' | 'thrust-optimised';

const LET_GO = 'Part of the wall has no gas on it. ';

const PERHAPS_LET_GO =
  'The deciding criterion keeps the gas on the wall, but by others part of the wall has no gas on it. ';

const ALWAYS =
  'The ring where the gas lets go is never quite round and wanders, so the jet pushes the nozzle sideways, ' +
  'most while the chamber starts and stops and the ring walks along the wall. Sideways forces have bent and broken nozzles and their mounts; none is computed here. ';

const FREE_ONLY =
  'On this contour the jet stays off the wall once it has let go (free shock separation); the published transitions back onto the wall belong to thrust-optimised contours.';

const BOTH =
  'On a thrust-optimised contour the jet can jump back onto the wall further down (restricted shock separation), where the wall pressure can exceed the outside’s; ' +
  'the jumps from free to restricted separation and back are the strongest published causes of sideways force. The thrust given is that of free separation.';

/**
 * Caution that goes with every separated flow, and with one that some criterion has separated.
 *
 * Source: M. Frey, G. Hagemann, J. Propulsion & Power 16(3), 2000, 478–484; G. Hagemann, M. Frey, W. Koschel, J. Propulsion
 * & Power 18(3), 2002, 577–584; L. H. Nave, G. A. Coffey, AIAA 73-1284; J. Östlund, KTH, 2002 (patterns and transitions).
 */
export function sideLoadCaution(form: WallForm, decided: boolean): string {
  return (decided ? LET_GO : PERHAPS_LET_GO) + ALWAYS + (form === 'thrust-optimised' ? BOTH : FREE_ONLY);
}
