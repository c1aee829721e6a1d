/** The catalogue as a page of documentation. */

import { needsOf } from './asked/askProblem.ts';
import { type CatalogueEntry, catalogue, type QuantityPlace } from './catalogue.ts';
import { unitWords } from './spoken/unitWords.ts';

const headings: Readonly<Record<QuantityPlace, string>> = {
  engine: 'One value an engine',
  altitude: 'One value for each altitude or outside pressure',
  wall: 'Along the wall, from the injector face to the lip',
  comparison: 'Of two engines compared',
  air: 'Of the air',
  input: 'Stated by the study of an engine',
  vehicle: 'Of a vehicle',
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
    'Each can be asked for by its name, or by a shorter one that stands under *Asked as*, with the engine in front and ' +
      'what it hangs on in brackets: `bell.thrust(12 km)`, `bell.wall.pressure(lip)`. Where there are several of it, the one ' +
      'meant is named: `bell.thrustParts.force(vacuum, surface nozzle wall)`.',
    'Spoken, a value is rounded as people do, to two significant digits, or three where two would be off by more than a ' +
      'hundredth: “about a hundred and twenty bar”, “three hundred and fifty seconds”, “two point four per cent”.',
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
    `- Typical error: ${entry.typicalError}`,
    `- Asked as: ${askedAs(entry)}`,
    `- Spoken: ${spokenIn(entry)}`,
    `- Method: ${page}`,
  ]
    .join('\n')
    .replace(/(###.*)\n(\*\*)/, '$1\n\n$2')
    .replace(/\n- Equation/, '\n\n- Equation');
}

/** Names and brackets, e.g. `exitPressure(12 km)`; why not where it can't be asked. */
export function askedAs(entry: CatalogueEntry): string {
  const { notAsked, name, aliases = [], part } = entry;
  if (notAsked !== undefined) return `not at all. ${notAsked.why} ${notAsked.instead}`;
  const brackets = bracketsOf(entry);
  const names = [name, ...aliases].map((each) => `\`${each}${brackets}\``);
  return [...names, ...(part && !part.needed ? [`\`${name}(${part.example})\``] : [])].join(', ');
}

function bracketsOf(entry: CatalogueEntry): string {
  if (entry.part?.needed === true) return `(${entry.part.example})`;
  const { ambient, station, time } = needsOf(entry);
  const inside = [
    ...(ambient ? ['12 km'] : []),
    ...(time ? ['60 s'] : []),
    ...(station === 'wall' ? ['lip'] : station === 'jet' ? ['2 m behind throat'] : []),
  ];
  return inside.length === 0 ? '' : `(${inside.join(', ')})`;
}

/** The unit in words, e.g. `in kilonewtons, newtons where it is small`. */
export function spokenIn({ unit, unitForSmall, dimension }: CatalogueEntry): string {
  if (dimension === 'sameAsCompared') return 'in the unit of what is compared';
  const { many } = unitWords(unit.symbol);
  if (many === '') return 'as a bare number';
  return `in ${many}${unitForSmall ? `, ${unitWords(unitForSmall.symbol).many} where it is small` : ''}`;
}

function capital(text: string): string {
  return text[0] === undefined ? text : text[0].toUpperCase() + text.slice(1);
}
