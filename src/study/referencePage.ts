/** The reference of the study file as a page of documentation, made from the table that the reader follows. */

import {
  chamberFields,
  type Field,
  type Fields,
  frozenFromFields,
  ingredientFields,
  lossesField,
  nozzleForms,
  nozzleMeaning,
  propellantForms,
  propellantMeaning,
  STUDY_FORMAT,
  sizeForms,
  sizeMeaning,
} from './form.ts';
import type { KnownName } from './names.ts';
import { unitTable } from './unitTable.ts';

function fieldRow(key: string, field: Field): string {
  const cells = [`\`${key}\``, field.meaning, rangeOf(field), exampleOf(field), defaultOf(field)];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

function rangeOf(field: Field): string {
  if (field.is === 'quantity') return field.range.words;
  if (field.is === 'choice') return field.options.join(', ');
  if (field.is === 'ambient') return '`vacuum`, `sea level`, an altitude or a pressure';
  if (field.is === 'ingredients') return 'a name, or names with shares';
  return field.is === 'engine' ? 'id of an engine' : 'text';
}

function exampleOf(field: Field): string {
  return 'example' in field ? `\`${field.example}\`` : '';
}

function defaultOf(field: Field): string {
  if ('byDefault' in field && field.byDefault !== undefined) return `\`${field.byDefault}\``;
  return 'optional' in field && field.optional ? 'may be absent' : '';
}

function table(fields: Fields): string {
  return [
    '| key | meaning | allowed | example | when absent |',
    '| --- | --- | --- | --- | --- |',
    ...Object.entries(fields).map(([key, field]) => fieldRow(key, field)),
  ].join('\n');
}

function forms(
  all: Readonly<Record<string, Fields>>,
  meaning: Readonly<Record<string, string>>,
  title: (form: string) => string,
): string[] {
  return Object.entries(all).flatMap(([form, fields]) => [
    `### ${title(form)}`,
    meaning[form] ?? '',
    table(fields),
  ]);
}

/** What a dimension is called; those that no key of a study uses by itself stand under what they are made of. */
const dimensionNames: Readonly<Record<string, string>> = {
  '0,0,0,0,0,0': 'share',
  '1,0,0,0,0,0': 'mass',
  '0,1,0,0,0,0': 'length',
  '0,0,1,0,0,0': 'time',
  '0,0,0,1,0,0': 'temperature',
  '0,0,0,0,1,0': 'amount of substance',
  '0,0,0,0,0,1': 'angle',
  '1,1,-2,0,0,0': 'force',
  '1,-1,-2,0,0,0': 'pressure',
  '1,2,-2,0,0,0': 'energy',
  '1,2,-3,0,0,0': 'power',
};

function unitRows(): string {
  const byDimension = new Map<string, string[]>();
  for (const [symbol, { dimension }] of unitTable) {
    const key = dimension.join(',');
    byDimension.set(key, [...(byDimension.get(key) ?? []), symbol]);
  }
  return [
    '| quantity | units |',
    '| --- | --- |',
    ...[...byDimension].map(
      ([key, symbols]) =>
        `| ${dimensionNames[key] ?? 'other'} | ${symbols.map((s) => `\`${s}\``).join(', ')} |`,
    ),
    '',
    'Units combine with `/`, `·` and powers: `g/mol`, `kJ/kg`, `kg/m³`, `m/s`, `kg/s`.',
  ].join('\n');
}

function nameTable(names: readonly KnownName[]): string {
  return [
    '| id | what | also called |',
    '| --- | --- | --- |',
    ...names.map(({ id, name, alsoCalled }) => `| \`${id}\` | ${name} | ${alsoCalled.join(', ')} |`),
  ].join('\n');
}

/** Markdown; the same text every time for the same propellants. */
export function studyFilePage(propellants: readonly KnownName[]): string {
  return `${[
    '# The study file',
    'A study is a folder with `study.yaml`: one question, the engines that answer it, and the sentences you mean to say. It is plain YAML that you edit by hand or through the workbench; comments and order are kept when the program writes it. This page is made from the table that the reader follows. `docs/study.schema.json` is the same as JSON Schema, for editors that check while you type.',
    'For explanation and comparison only, not for building, pressurising or firing hardware.',
    '## The smallest study',
    '```yaml\nplumeline: 1\nquestion: How much does a longer nozzle give?\nengines:\n  short:\n    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }\n    chamber: { pressure: 100 bar }\n    size: { throat: 200 mm }\n    nozzle: { kind: bell, areaRatio: 20 }\n  long:\n    like: short\n    nozzle: { areaRatio: 60 }\n```',
    '## Numbers and units',
    'A quantity carries its unit: `100 bar`, `1450 psi`, `80 %`, `3.5 ± 0.1`, `97.5 ± 1 %` (`+/-` is read as `±`). Pressures are absolute; a gauge pressure (`psig`, `bar gauge`) is refused, because the ambient it is measured from would have to be guessed. The decimal sign is the point; thousands are not separated. `psi` is read as absolute.',
    unitRows(),
    '## The top of the file',
    [
      '| key | meaning |',
      '| --- | --- |',
      `| \`plumeline\` | Version of the file form, ${STUDY_FORMAT} now. A file of a newer version is refused and left untouched. |`,
      '| `question` | The question, in your words. |',
      '| `engines` | The engines by id; ids are words of letters, digits and `_`. |',
      '| `compare` | `{ base, other }`: the two engines set against each other; *more* and *less* are told from the base. Absent: the first two. |',
      '| `altitudes`, `ambients` | Lists of altitudes and of pressures of interest, besides the standard ones. |',
      '| `ingredients` | Propellants that the data does not have. |',
      '| `sentences` | What you mean to say: `id` (stable), `say`, and as you like `holds` (the test that decides it) and `sources`. This version keeps and shows them; it does not judge them. |',
      '| `sources` | Citations by id: `title`, and as you like `author`, `year`, `where`. |',
    ].join('\n'),
    '## An engine',
    '`name` is what it is called on screen (absent: its id). `like: <id>` takes over every input of another engine. A section that is not given is taken whole; a section given in the same form is merged key by key; a section given in another form (another kind of nozzle, a size by another key, other propellants) starts afresh.',
    '## `propellants`',
    ...forms(propellantForms, propellantMeaning, (form) => `Propellants, ${form}`),
    '## `chemistry`',
    '`shifting` (the default): the composition follows the expansion. `frozen`: it is held from the chamber on. `{ frozenFrom: … }`: it follows to a place and is held from there.',
    table(frozenFromFields),
    '## `chamber`',
    table(chamberFields),
    '## `nozzle`',
    'The key `kind` names the kind.',
    ...forms(nozzleForms, nozzleMeaning, (form) => `\`kind: ${form}\``),
    '## `size`',
    ...forms(sizeForms, sizeMeaning, (form) => `Size by ${form}`),
    '## `losses`',
    table({ losses: lossesField }),
    '## An ingredient of your own',
    'Under `ingredients`, by a name of your choice:',
    table(ingredientFields),
    '## Names of propellants',
    'Upper and lower case, dashes and spaces make no difference. A gas that is heated instead of burnt goes by the same names.',
    nameTable(propellants),
    '## When something is wrong',
    'Every problem names file, line and column, what was found, what is allowed, and the nearest known name; all problems are told at once. Anchors, aliases, merge keys and tags of YAML are refused, since a study does not need them.',
  ].join('\n\n')}\n`;
}
