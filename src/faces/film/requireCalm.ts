import { ProblemError } from '../../numerics/problem.ts';
import type { Clip } from '../../telling/clips/clip.ts';
import type { FlashVerdict } from '../../telling/clips/flashVerdict.ts';

/** A film that flashes does not leave the program. */
export function requireCalm(clip: Clip, { passes, mostFlashes, at, largestArea }: FlashVerdict): void {
  if (passes) return;
  throw new ProblemError({
    code: 'film-flashes',
    what: `The clip “${clip.title}” flashes ${mostFlashes} times within a second, on ${Math.round(100 * largestArea)} % of a field of 10 degrees, until ${(at ?? 0).toFixed(1)} s.`,
    why: 'More than three flashes a second can bring on seizures (WCAG 2.2, success criterion 2.3.1).',
    mend: 'Make the clip longer, so that it changes more slowly.',
  });
}
