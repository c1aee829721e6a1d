/** An option that names one of a few. */

import { quote } from '../../study/report.ts';
import { BadInput } from './badInput.ts';

/** @throws BadInput with what there is */
export function choiceFrom<T extends string>(given: string, known: readonly T[], option: string): T {
  const found = known.find((each) => each === given.trim());
  if (found !== undefined) return found;
  throw new BadInput([
    {
      code: 'choice-unknown',
      what: `${option}: there is no ${quote(given)}.`,
      mend: `Give ${known.slice(0, -1).join(', ')} or ${known.at(-1)!}.`,
    },
  ]);
}
