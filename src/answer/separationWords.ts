/** What is said of gas that leaves the wall, in a line: at the faces and in figures. */

import { show } from './display.ts';
import type { RowSeparation } from './model.ts';

/** E.g. `at area ratio 21 (18 to 25; by 6 of 7 published rules it lets go)`; null where every criterion keeps the gas on to the lip. */
export function separationPlaceWords({
  place,
  earliest,
  latest,
  counted,
  lettingGo,
}: RowSeparation): string | null {
  if (lettingGo === 0) return null;
  const ratio = (value: number): string => show('separation.place.areaRatio', value).text;
  const span =
    earliest.areaRatio === latest.areaRatio
      ? ''
      : `${ratio(earliest.areaRatio)} to ${ratio(latest.areaRatio)}; `;
  return `at area ratio ${ratio(place.areaRatio)} (${span}by ${lettingGo} of ${counted} published rules it lets go)`;
}

/** What the flow does, in words short enough for a table; how the jet opens or closes at the lip is told beside it. */
export const caseWords: Readonly<Record<RowSeparation['case'], string>> = {
  underexpanded: 'fills the nozzle',
  matched: 'fills the nozzle',
  overexpanded: 'fills the nozzle',
  'near the limit': 'fills it, near the limit',
  separated: 'lets go of the wall',
  'shock in the throat': 'lets go at the throat',
  unchoked: 'may not choke',
  'subsonic jet': 'flows subsonic',
  'no outflow': 'does not flow out',
};
