/** A need of the study as a request: what it leaves open of the range is filled with what is worth looking over. */

import type { NeedInput, Study } from '../../study/model.ts';
import { sweptRangeOf } from '../sweeps/requested.ts';
import type { NeedRequest } from './model.ts';

export function needRequestOf(study: Study, { id, title, so, range, engines }: NeedInput): NeedRequest {
  return { id, title, so, range: sweptRangeOf(study, range, engines), engines };
}
