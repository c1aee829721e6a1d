import { type CatalogueEntry, catalogue, findQuantity } from '../../../answer/catalogue.ts';
import { nearestName } from '../../../study/nearest.ts';
import { publishedKindOf } from '../../../study/publishedForm.ts';
import { tradeNameOf } from '../../../study/tradeNames.ts';
import { BadInput } from '../badInput.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import type { Terminal } from '../terminal.ts';
import { padEnd, visibleLength, wrapped } from '../text/wrap.ts';

/** Explains one quantity, or lists them all. */
export function quantitiesCommand(name: string | undefined, terminal: Terminal): ExitStatus {
  if (name === undefined) {
    terminal.out(listText());
    return EXIT.answered;
  }
  const entry = findQuantity(name);
  if (entry === undefined) {
    const near = meantBy(name);
    throw new BadInput([
      {
        code: 'quantity-unknown',
        what: `There is no quantity “${name}”.${near === null ? '' : ` Did you mean ${near}?`}`,
        mend: 'plumeline quantities lists them all.',
      },
    ]);
  }
  terminal.out(quantityText(entry, terminal.width));
  return EXIT.answered;
}

/** The quantity that a symbol of the trade, a plain name, a slip or a word of a label stands for; null for none. */
function meantBy(name: string): string | null {
  const plain = publishedKindOf(tradeNameOf(name) ?? name)?.kind.quantity;
  if (plain !== undefined) return plain;
  const names = catalogue.map((known) => known.name);
  const labelled = catalogue.find(({ label }) => label.toLowerCase().includes(name.trim().toLowerCase()));
  return nearestName(name, names) ?? (name.trim().length > 2 ? (labelled?.name ?? null) : null);
}

function listText(): string {
  const longest = Math.max(...catalogue.map(({ name }) => visibleLength(name)));
  return catalogue
    .map(({ name, label, unit }) => {
      const inUnit = unit.symbol === '' ? '' : ` [${unit.symbol}]`;
      return `${padEnd(name, longest + 2)}${label}${inUnit}`;
    })
    .join('\n');
}

function quantityText(entry: CatalogueEntry, width: number): string {
  const page = entry.model === 'study-file' ? 'docs/study-file.md' : `docs/methods/${entry.model}.md`;
  const lines: readonly (readonly [string, string])[] = [
    ['Meaning', entry.meaning],
    ['Unit', entry.unit.symbol === '' ? 'none' : entry.unit.symbol],
    ['Equation', entry.equation],
    ['Source', entry.source],
    ['Limits', entry.limits],
    ['Method', page],
  ];
  const body = lines.map(([head, text]) => wrapped(text, width, '          ', padEnd(head, 10)));
  return [`${entry.name}: ${entry.label}`, ...body].join('\n');
}
