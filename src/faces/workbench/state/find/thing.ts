/** Something to be found that is no number. */

import type { Findable } from '../../../../answer/find/index.ts';
import type { Found, FoundGroup } from './found.ts';

export type Thing = Findable & Found;

/** What is in the study itself comes before the like of it elsewhere. */
const nearest: Readonly<Partial<Record<FoundGroup, number>>> = { 'In this study': 0.25, Do: 0.2 };

export const thing = (
  group: FoundGroup,
  key: string,
  label: string,
  detail: string,
  choose: () => void,
  more: Partial<Thing> = {},
): Thing => ({
  key: `${group}-${key}`,
  group,
  label,
  detail,
  choose,
  live: null,
  weight: nearest[group] ?? 0,
  ...more,
});
