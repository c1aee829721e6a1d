/** The catalogue as a page of documentation. */

import { type CatalogueEntry, catalogue, type QuantityPlace } from './catalogue.ts';

const headings: Readonly<Record<QuantityPlace, string>> = {
  engine: 'One value an engine',
  altitude: 'One value for each altitude or outside pressure',
  wall: 'Along the wall, from the injector face to the lip',
  comparison: 'Of two engines compared',
  air: 'Of the air',
  input: 'Stated by the study',
};

/** Markdown; the same text every time. */
export function quantitiesPage(): string {
  const sections = (Object.keys(headings) as QuantityPlace[]).map((place) =>
    [`## ${headings[place]}`, ...catalogue.filter((entry) => entry.place === place).map(entryText)].join(
      '\n\n',
    ),
  );
  return `${[
    '# Quantities',
    'Every number that Plumeline prints, made from its catalogue. JSON answers carry SI units (specific impulse in ' +
      'seconds, altitude geometric); the unit named here is the one shown to readers.',
    ...sections,
  ].join('\n\n')}\n`;
}

function entryText(entry: CatalogueEntry): string {
  const unit = entry.unit.symbol === '' ? 'no unit' : entry.unit.symbol;
  const page =
    entry.model === 'study-file'
      ? '[study-file](study-file.md)'
      : `[${entry.model}](methods/${entry.model}.md)`;
  return [
    `### \`${entry.name}\``,
    `**${capital(entry.label)}** (${unit}). ${entry.meaning}`,
    `- Equation: ${entry.equation}`,
    `- Source: ${entry.source}`,
    `- Limits: ${entry.limits}`,
    `- Method: ${page}`,
  ]
    .join('\n')
    .replace(/(###.*)\n(\*\*)/, '$1\n\n$2')
    .replace(/\n- Equation/, '\n\n- Equation');
}

function capital(text: string): string {
  return text[0] === undefined ? text : text[0].toUpperCase() + text.slice(1);
}
