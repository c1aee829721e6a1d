/** `--size` of a figure or a clip. */

import { quote } from '../../study/report.ts';
import type { FigureSize } from '../../telling/look/formats.ts';
import { BadInput } from './badInput.ts';

const NAMED = ['16:9', '9:16', '1:1', 'print'] as const;

/** @throws BadInput with what to mend */
export function figureSizeFrom(given: string): FigureSize {
  const named = NAMED.find((size) => size === given);
  if (named !== undefined) return named;
  const [, width, height] = /^(\d+)\s*[x×]\s*(\d+)$/i.exec(given) ?? [];
  if (width !== undefined && height !== undefined) return { width: Number(width), height: Number(height) };
  throw new BadInput([
    {
      code: 'size-unknown',
      what: `--size: ${quote(given)} is no size.`,
      mend: `Give ${NAMED.join(', ')}, or pixels such as 1280x720.`,
    },
  ]);
}
