/** The correction note: dated, before and after, the old value kept to be seen. */

import { capital } from '../../study/capital.ts';
import { escapeMarkdown as text } from '../scene/safeText.ts';
import type { PackageChange } from './changes.ts';

const TITLE = '# Corrections';
const DRAFT = 'Drafted by Plumeline from what differs between two packages; edit it before you publish it.';

/**
 * @param earlier the note of the package before: its head and its days are kept as they were left; null: there was none
 * @param changes since that package; none: the note stays as it was
 */
export function correctionNote(
  earlier: string | null,
  changes: readonly PackageChange[],
  date: string | null,
  caution: string,
): string | null {
  if (changes.length === 0) return earlier;
  const first = earlier === null ? -1 : earlier.search(/^## /m);
  // The head is the writer's once they have changed it.
  const own =
    earlier === null ? `${TITLE}\n\n${DRAFT}` : (first < 0 ? earlier : earlier.slice(0, first)).trimEnd();
  const head = own.includes(caution) ? own : `${own}\n\n${caution}`;
  const kept = earlier === null || first < 0 ? '' : earlier.slice(first);
  const lines = changes.map((change) => `- ${changeLine(change)}`);
  const section = `## ${date ?? 'No day given'}\n\n${lines.join('\n')}\n`;
  return `${head}\n\n${section}${kept === '' ? '' : `\n${kept}`}`;
}

function changeLine({ what, of, before, after }: PackageChange): string {
  if (what === 'figures') return `Figures ${of}: ${text(after ?? before ?? '')}.`;
  if (what === 'table') return `In all, ${text(after ?? '')} ${text(of)} have changed.`;
  const name = capital(text(of));
  if (before === null) return `${name}: new: ${text(after ?? '')}`;
  if (after === null) return `${name}: no longer there: ~~${text(before)}~~`;
  return `${name}: ~~${text(before)}~~ → **${text(after)}**`;
}

/** Days on which something was corrected, newest first, each with its lines, for other texts. */
export function correctionsIn(
  note: string | null,
): readonly { readonly day: string; readonly lines: readonly string[] }[] {
  if (note === null) return [];
  return note
    .split(/^## /m)
    .slice(1)
    .map((section) => {
      const [day = '', ...rest] = section.split('\n');
      return {
        day: day.trim(),
        lines: rest.filter((line) => line.startsWith('- ')).map((line) => line.slice(2)),
      };
    });
}

/** Markdown of the note back to plain words. */
export function plainWords(line: string): string {
  return line
    .replace(/~~(.*?)~~/g, 'was $1')
    .replace(/\*\*(.*?)\*\*/g, 'is $1')
    .replace(/ → /g, ', ')
    .replace(/\\([\\`*_{}[\]()<>#+!|~-])/g, '$1')
    .replace(/&#58;/g, ':')
    .replace(/&#46;/g, '.')
    .replace(/&amp;/g, '&');
}
