/** The reference of the study file as a page of documentation, made from the table that the reader follows. */

import { coolingFields } from './coolingForm.ts';
import { courseForms, EXPONENT_TOLERANCE } from './courseWords.ts';
import { cycleForms, cycleMeaning } from './cycleForm.ts';
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
import { publishedFields, solveForField } from './publishedForm.ts';
import { mapPoints, sweepPoints, sweptConditions } from './sweepForm.ts';
import { unitSpellings, unitTable } from './unitTable.ts';
import { heldField, payloadField, vehicleForms, vehicleMeaning } from './vehicleForm.ts';

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
  '0,3,0,0,0,0': 'volume',
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
    'Units combine with `/`, `·` and powers: `g/mol`, `kJ/kg`, `kg/m³` (or `kg/m^3`, `kg/m3`), `m/s`, `kg/s`. Upper and lower case count.',
    '',
    `Also read: ${[...unitSpellings].map(([spelling, symbol]) => `\`${spelling}\` for \`${symbol}\``).join(', ')}.`,
    '',
    'Every factor is exact by definition (NIST Special Publication 811, appendix B.8). `t` is the tonne of 1000 kg, `tf` its weight, `mi` the international mile, `nmi` the nautical mile, `cal` the thermochemical calorie. `ton` is refused: there are several.',
  ].join('\n');
}

function nameTable(names: readonly KnownName[]): string {
  return [
    '| id | what | also called |',
    '| --- | --- | --- |',
    ...names.map(({ id, name, alsoCalled }) => `| \`${id}\` | ${name} | ${alsoCalled.join(', ')} |`),
  ].join('\n');
}

const keyTable = (rows: readonly (readonly [key: string, meaning: string])[]): string =>
  ['| key | meaning |', '| --- | --- |', ...rows.map(([key, meaning]) => `| \`${key}\` | ${meaning} |`)].join(
    '\n',
  );

function vehiclesPart(): readonly string[] {
  return [
    '## `vehicles`',
    'What the engines lift, and where to ([flight](methods/flight.md)). Ids are those of engines, and no engine has the same. `name` and `like` work as for engines: sections are merged key by key. Every number takes a ± or a range. Sentences ask a vehicle as they ask an engine, `booster.payload`; in the brackets the engine of the first stage is exchanged, `booster.payload(engine = plug)`, and any input below is set, `booster.payload(first.dry = 20 t)`. What the other engine weighs more or less is set there as well, or left to `engineMass: estimated`.',
    ...forms(vehicleForms, vehicleMeaning, (section) => `\`${section}\``),
    '### `payload`, `held`',
    table({ payload: payloadField, held: heldField }),
    [
      '```yml',
      'vehicles:',
      '  booster:',
      '    name: Alder booster',
      '    first: { engine: bell, count: 5, propellant: 240 t, dry: 19 t ± 5 %, lowestThrottle: 50 % }',
      '    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 40 t, dry: 4 t, coast: 4 s }',
      '    fairing: { mass: 1.2 t, dropAltitude: 110 km }',
      '    drag: { area: 11 m2 }',
      '    limits: { acceleration: 45 m/s2, dynamicPressure: 34 kPa }',
      '    launch: { latitude: 28 deg }',
      '    orbit: { altitude: 200 km }',
      '```',
    ].join('\n'),
  ];
}

function factsPart(): readonly string[] {
  return [
    '## `facts`',
    'History, dates and records, which no computation decides. Each is told as *reported, not computed*. Without a source, or with one that the study does not have, the study is still solved, but the fact fails the check.',
    keyTable([
      ['id', 'Stable.'],
      ['say', 'The words.'],
      ['value', 'As you like: the number in them, with its unit.'],
      ['at', 'As you like: where or when it holds, in words.'],
      ['sources', 'Ids of `sources`: at least one.'],
      [
        'disagree',
        'Where two sources differ: `values`, two of `{ value, source }`; `chosen`, 1 or 2; `because`, why that one is followed.',
      ],
    ]),
    [
      '```yml',
      'facts:',
      '  - id: first-run',
      '    say: The Alder bell first ran for 162 seconds.',
      '    value: 162 s',
      '    at: on the stand, full throttle',
      '    sources: [stand-log]',
      '    disagree:',
      '      values: [{ value: 162 s, source: stand-log }, { value: 160 s, source: newsletter }]',
      '      chosen: 1',
      '      because: The log was written at the stand; the newsletter rounds.',
      '```',
    ].join('\n'),
  ];
}

function analogiesPart(): readonly string[] {
  return [
    '## `analogies`',
    'A likeness stands on legs: things that it makes people believe. Each leg is tested against the engines of the study; a leg with the wrong sign, direction or scaling changes the verdict ([claims and analogies](claims.md)).',
    keyTable([
      ['id', 'Stable.'],
      ['say', 'The likeness, as it is told.'],
      ['said', '`false` where it is kept to be discussed.'],
      [
        'stands',
        'What stands for what: `{ this, for }`, and as you like `relation`, the quantity of the catalogue that it is tied to.',
      ],
      [
        'legs',
        'Each with `say`, and either `holds`, a [test](sentences.md), or `as`. `main: true` marks the point of the likeness; without a mark it is the first.',
      ],
      [
        'legs … as',
        '`of`, an expression; `over`, what moves (an input such as `engines.bell.chamber.pressure` or `nozzle.areaRatio`, or `altitude`, `ambientPressure`, `throttle`, `time` in a flight); `from` and `to`, as you like; `goes`, how it goes.',
      ],
      ['holdsFor', 'Where the likeness holds, in words.'],
      [
        'breaksWhere',
        'Where it breaks: words, or `{ say, when }` with a test that holds there. Where it holds in this study, the likeness needs care.',
      ],
      ['sources', 'As you like: ids of `sources`.'],
    ]),
    `\`goes\` is one of: ${courseForms.map((form) => `\`${form}\``).join(', ')}. Behind a power a tolerance of its exponent may stand, \`like the square ± 0.2\`; ± ${EXPONENT_TOLERANCE} if nothing is said.`,
    [
      '```yml',
      'analogies:',
      '  - id: hose',
      '    say: A rocket engine is like a garden hose with a thumb over its end.',
      '    stands:',
      '      - { this: the thumb, for: the throat, relation: throat.area }',
      '      - { this: the tap, for: the pressure in the chamber, relation: chamber.pressure }',
      '    legs:',
      '      - say: More pressure pushes more through.',
      '        main: true',
      '        as: { of: bell.massFlow, over: engines.bell.chamber.pressure, goes: up }',
      '      - say: Behind the narrow place it only gets slower.',
      '        holds: bell.exit.velocity < bell.throat.velocity',
      '    holdsFor: gas that is slower than sound',
      '    breaksWhere:',
      '      - { say: behind the throat the gas is faster than sound and speeds up as it widens, when: bell.exit.mach > 1 }',
      '```',
    ].join('\n'),
  ];
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
    'A quantity carries its unit: `100 bar`, `1450 psi`, `80 %`, `1.2e3 kN`. What has no unit, such as an area ratio, is a bare number; what has one is refused without it, zero included. A share is written in percent or as a bare number below 1: `97.5 %` or `0.975`.',
    [
      '- **±** tells how well a value is known: `97.5 ± 1 %` (the unit counts for both), `97.5 % ± 1 %`, `100 bar ± 50 kPa`, `3.5 +/- 0.1`. After a value with a unit, `± 2 %` is a share of that value: `100 bar ± 2 %` is ± 2 bar; after a share it is percentage points. ± of a temperature is a difference: `20 ± 5 °C` is ± 5 K. It is taken as two standard deviations of a normal spread: the value lies within with a chance of 95 %.',
      '- **Ranges** tell between which ends a value lies: `95 to 97 %`, `3.4–3.6` (anywhere between alike, the middle is taken where one value is needed), `3.4 to 3.6 most likely 3.5` (that value is taken; the chance falls straight to nothing at both ends).',
      '- **Pressures are absolute**, `psi` and `bar` included. A gauge pressure (`psig`, `bar gauge`) is refused, because the ambient it is measured from would have to be guessed: add it.',
      '- **Digits**: a point for decimals, nothing between thousands. `3,5`, `1,000` and `1 000` are refused with the way to write them, since a comma means one thing here and another there.',
    ].join('\n'),
    unitRows(),
    '## The top of the file',
    [
      '| key | meaning |',
      '| --- | --- |',
      `| \`plumeline\` | Version of the file form, ${STUDY_FORMAT} now. A file of a newer version is refused and left untouched. |`,
      '| `question` | The question, in your words. |',
      '| `engines` | The engines by id; ids are words of letters, digits and `_`. |',
      '| `vehicles` | The vehicles that the engines lift, by id: [vehicles](#vehicles). |',
      '| `compare` | `{ base, other }`: the two engines set against each other; *more* and *less* are told from the base. Absent: the first two. |',
      '| `altitudes`, `ambients` | Lists of altitudes and of pressures of interest, besides the standard ones. |',
      '| `ingredients` | Propellants that the data does not have. |',
      '| `sentences` | What you mean to say: `id` (stable), `say`, and as you like `holds` (the test that decides it, see [sentences](sentences.md)), `sources`, and `said: false` for a sentence that is not meant to be said, such as a half-truth kept to discuss. |',
      '| `facts` | What is reported, not computed: [facts](#facts). |',
      '| `analogies` | Likenesses, and what of them is tested: [analogies](#analogies). |',
      '| `sweeps`, `maps` | Curves over one input, and one number over two: see below. |',
      '| `needs` | What an input would have to be for a comparison to hold: see below. |',
      '| `measured` | Measured points in CSV files beside the study: [measured](#measured). |',
      '| `package` | What `plumeline pack` gives: `shapes` of the figures (`16:9`, `9:16`, `1:1`, `print`; absent: the first three), `clips` by name, besides those that the script shows, and their `clipShapes` (absent: `16:9`). `package: { shapes: [16:9, print], clips: [rings-bell] }` |',
      '| `sources` | Citations by id: `title`, and as you like `author`, `year`, `where`. |',
    ].join('\n'),
    '## An engine',
    '`name` is what it is called on screen (absent: its id). `like: <id>` takes over every input of another engine. A section that is not given is taken whole; a section given in the same form is merged key by key; a section given in another form (another kind of nozzle, a size by another key, other propellants) starts afresh. Of `ratio` and `equivalenceRatio`, the one given drives out the other. `chemistry` and `losses` are replaced as a whole. `published` is never inherited. An input that two engines share this way is one input: its ± is the same unknown for both.',
    'Ids begin with a letter and hold letters, digits and `_`, since they take part in the tests of sentences.',
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
    '## `cooling`',
    'How the walls are kept from melting ([heat-cooling](methods/heat-cooling.md)); absent or `none`: nothing is said of it. Of `share` and `flow`, and of `pressureDrop` and `channelDepth`, the one given drives out the other. For comparison, not for building: a wall that holds here may fail in metal.',
    table(coolingFields),
    '## `cycle`',
    'How the propellants reach the chamber and who pays for it ([cycle](methods/cycle.md)); absent or `none`: nothing is said of it, and specific impulses are those of the thrust chamber alone. The key `kind` names the kind. For comparison, not for building: pressures and tanks here are estimates, no design.',
    ...forms(cycleForms, cycleMeaning, (form) => `Cycle, \`kind: ${form}\``),
    '## `published`',
    'Figures that a maker, a paper or a viewer states of this engine, each with where it holds and where it was published; they are shown beside what the models give, and held against each other ([published-figures](methods/published-figures.md)). A list of rows, or a map of `rows` and `solveFor`. An engine that is `like` another does not inherit them: they are about the other one.',
    table(publishedFields),
    table({ solveFor: solveForField }),
    [
      '```yaml',
      'plumeline: 1',
      'question: Do the figures of the data sheet fit each other?',
      'engines:',
      '  bell:',
      '    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }',
      '    chamber: { pressure: 100 bar, efficiency: 97.5 % }',
      '    size: { throat: 236 mm }',
      '    nozzle: { kind: bell, length: 80 % } # the area ratio is left to the rows',
      '    published:',
      '      solveFor: areaRatio',
      '      rows:',
      '        - { quantity: thrust, value: 812 ± 4 kN, at: vacuum, source: data-sheet }',
      '        - { quantity: massFlow, value: 245 kg/s, source: data-sheet }',
      'sources:',
      '  data-sheet: { title: Data sheet of an invented engine }',
      '```',
    ].join('\n'),
    'Where a row states no ±, its digits do: half a unit of the last one (`331.4 s` is ± 0.05 s). Zeros at the end of a whole number are taken for rounding as long as that leaves at most 1 % open (`1700 kN` is ± 5 kN, `100 bar` is ± 0.5 bar).',
    ...vehiclesPart(),
    ...factsPart(),
    ...analogiesPart(),
    '## `measured`',
    'Points that somebody measured, set beside what is computed, with residuals: drawn over the curves, listed by `plumeline measured` and in the package. Each set is a CSV file in the folder of the study, with the engine or the vehicle that was measured and a source.',
    ['```yml', 'measured:', '  - { id: stand-run, file: stand-run.csv, of: bell, source: book }', '```'].join(
      '\n',
    ),
    'The header of the file names each quantity with its unit in square brackets. The first column is the place: `altitude`, `ambientPressure`, `throttle`, `wall.axial` (distance from the throat), an input of the engine such as `nozzle.areaRatio`, or of a vehicle `time` since lift-off (with `flight.points.altitude` and its like); the others are names of the [catalogue](quantities.md). A column whose name begins with ± holds two standard deviations of the column before it. Where the place says nothing of the surroundings, `at: vacuum`, `at: 0 km` or `at: 0.97 bar` does. Empty cells are left out; lines that begin with # are remarks.',
    ['```csv', 'altitude [km], thrust [kN], ± thrust [kN]', '0, 688, 6', '10, 771, 6', '```'].join('\n'),
    '## `sweeps` and `maps`',
    'A sweep follows one or a few expressions, written as in a test, while one input moves; a map follows one expression while two do ([sweeps](methods/sweeps.md)). `plumeline sweep` and `plumeline map` do the same from the command line, and `plumeline pack` draws those of the study.',
    [
      '| key | meaning |',
      '| --- | --- |',
      '| `id` | Stable name; the figures are called by it. |',
      '| `of` | What is followed: an expression, or in a sweep a list of up to eight. What has commas in it goes into quotes or on a line of its own. |',
      `| \`over\` | What moves: ${Object.keys(sweptConditions)
        .map((name) => `\`${name}\``)
        .join(
          ', ',
        )}, an input as it stands below an engine (\`nozzle.areaRatio\`, \`propellants.fuel.ethanol\`, \`cooling.share\`) or a vehicle (\`first.dry\`, \`payload\`), or its path in the study (\`engines.bell.chamber.pressure\`, \`vehicles.booster.first.dry\`). A place, a throttle or a time (\`time\`: since lift-off, of a vehicle) that an expression leaves open is the one of the sweep. |`,
      '| `from`, `to` | The ends, with their unit. Absent: a range worth looking over. |',
      '| `steps` | `even` or `ratios`. Absent: ratios where the end is twenty times the beginning or more. |',
      '| `across`, `up` | Of a map, in place of the four keys before: `{ over, from, to, steps }` along either side. |',
      '| `engines` | The input moves on these alone. Absent: where the study states it, so that engines that inherit it, and those that take their size from them, move along. |',
      `| \`points\` | At most so many points of a sweep (${sweepPoints.least} to ${sweepPoints.most}, absent: 33), or along each side of a map (${mapPoints.least} to ${mapPoints.most}, absent: 17). |`,
      '| `title` | Said over the figure instead of what is found. |',
    ].join('\n'),
    [
      '```yaml',
      'plumeline: 1',
      'question: Which area ratio, and which mixture?',
      'engines:',
      '  bell:',
      '    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }',
      '    chamber: { pressure: 100 bar, efficiency: 97.5 % }',
      '    size: { throat: 236 mm }',
      '    nozzle: { kind: bell, areaRatio: 25 }',
      'sweeps:',
      '  - id: area-ratio',
      '    of: [bell.specificImpulse(vacuum), bell.specificImpulse(0 km)]',
      '    over: nozzle.areaRatio',
      '    from: 5',
      '    to: 100',
      'maps:',
      '  - id: mixture-and-pressure',
      '    of: bell.specificImpulse(vacuum)',
      '    across: { over: propellants.ratio, from: 2.5, to: 4.5 }',
      '    up: { over: chamber.pressure, from: 20 bar, to: 300 bar }',
      '```',
    ].join('\n'),
    '## `needs`',
    'A need names a comparison and the input that is to see to it. What is found: from which value on, or up to which, the comparison holds, with the band that all else that is not known leaves; or that no value in the range does it, and which comes nearest ([needs](methods/needs.md)). `plumeline need` does the same from the command line.',
    [
      '| key | meaning |',
      '| --- | --- |',
      '| `id`, `title`, `over`, `from`, `to`, `steps`, `engines` | As in a sweep. |',
      '| `so` | The comparison that is to hold: two expressions, written as in a test, with `>=`, `<=`, `>` or `<` between them. |',
    ].join('\n'),
    [
      '```yaml',
      'plumeline: 1',
      'question: How large would a bell have to be to do in vacuum what a plug does?',
      'engines:',
      '  bell:',
      '    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }',
      '    chamber: { pressure: 100 bar, efficiency: 97.5 % }',
      '    size: { throat: 236 mm }',
      '    nozzle: { kind: bell, areaRatio: 25 }',
      '  plug: { like: bell, nozzle: { kind: plug, areaRatio: 60, kept: 30 % } }',
      'needs:',
      '  - id: as-good-in-vacuum',
      '    so: bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum)',
      '    over: nozzle.areaRatio',
      '    engines: bell',
      '    from: 20',
      '    to: 100',
      '```',
    ].join('\n'),
    '## An ingredient of your own',
    'Under `ingredients`, by a name of your choice:',
    table(ingredientFields),
    '## Names of propellants',
    'Upper and lower case, dashes and spaces make no difference. A gas that is heated instead of burnt goes by the same names.',
    nameTable(propellants),
    '## When something is wrong',
    'Every problem names file, line and column, what was found, what is allowed, and the nearest known name. All problems are told at once, and with any problem nothing is computed.',
    '```text\nstudy.yaml:8:26 (engines.bell.chamber.pressure): “barr” in “100 barr” is not a known unit. Did you mean bar? Write it in bar, MPa, kPa, Pa, mbar, psi, atm, Torr or mmHg.\n```',
    [
      '- Anchors, aliases, merge keys, tags, directives and further documents of YAML are refused: a study does not need them. Indent with spaces. Text that holds a colon and a space goes into quotes.',
      '- A file holds up to one million bytes, 20 levels, 50 engines and 200 altitudes or ambients; a text up to 2000 signs.',
      '- Some things are warned of and computed all the same: an efficiency that is not stated, a ± that reaches outside the range of its key, an oxidiser in the place of the fuel, a chemistry beside a perfect gas.',
    ].join('\n'),
    '## Versions',
    `\`plumeline: ${STUDY_FORMAT}\` is the version of this form. A file without it is refused, since it could be misread; a file of a newer version is refused and left as it is; an older one is read by the migrations in between.`,
    '## How the program writes it',
    'A change made in the workbench replaces the text of that one value; every other byte, comments and line ends included, stays. A change that would bring a new problem into the study is refused. The file is replaced in one step, so that a crash leaves the old text or the new one, whole. A symbolic link stays a link, and permissions are kept.',
  ].join('\n\n')}\n`;
}
