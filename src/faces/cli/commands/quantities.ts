import { nearestQuantities, resolveQuantity } from '../../../answer/asked/resolveQuantity.ts';
import { type CatalogueEntry, catalogue } from '../../../answer/catalogue.ts';
import { askedAs, spokenIn } from '../../../answer/quantitiesPage.ts';
import type { Outcome } from '../../../numerics/problem.ts';
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
  const found = asAsked(name);
  if (!found.ok) {
    throw new BadInput([found.problem]);
  }
  terminal.out(quantityText(found.value, terminal.width));
  return EXIT.answered;
}

/** By name, or as a test asks for it: `bell.thrust(pad)` is about `thrust`. */
function asAsked(name: string): Outcome<CatalogueEntry> {
  const [bare = ''] = name.split('(');
  const hasPlace = bare !== name;
  const found = resolveQuantity(bare.trim(), hasPlace);
  if (found.ok) return found;
  const ofEngine = resolveQuantity(bare.trim().replace(/^[^.]*\./, ''), hasPlace);
  return ofEngine.ok || nearestQuantities(name).length === 0 ? ofEngine : resolveQuantity(name, false);
}

function listText(): string {
  const longest = Math.max(...catalogue.map(({ name }) => visibleLength(name)));
  return catalogue
    .map(({ name, label, unit, aliases }) => {
      const also = aliases === undefined ? '' : ` (also ${aliases.join(', ')})`;
      const inUnit = unit.symbol === '' ? '' : ` [${unit.symbol}]`;
      return `${padEnd(name, longest + 2)}${label}${inUnit}${also}`;
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
    ['Error', entry.typicalError],
    ['Asked as', askedAs(entry).replaceAll('`', '')],
    ['Spoken', spokenIn(entry)],
    ['Method', page],
  ];
  const body = lines.map(([head, text]) => wrapped(text, width, '          ', padEnd(head, 10)));
  return [`${entry.name}: ${entry.label}`, ...body].join('\n');
}
