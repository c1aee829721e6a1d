/** Studies with one fault each: the text, and the code, line and column of what must be told. */

export interface BadStudy {
  readonly about: string;
  readonly text: string;
  /** `code line:column`, in order of place. */ readonly told: readonly string[];
}

/** A study without a fault; line numbers below count in it. */
export const goodStudy = `plumeline: 1
question: Which one lifts more?
engines:
  bell:
    name: Alder B
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }
    chemistry: shifting
    chamber: { pressure: 100 bar, efficiency: 97.5 ± 1 % }
    size: { thrust: 800 kN, at: vacuum }
    nozzle: { kind: bell, areaRatio: 25, length: 80 % }
    losses: default
  wide:
    like: bell
    size: { same: throat, as: bell }
    nozzle: { areaRatio: 60 }
compare: { base: bell, other: wide }
altitudes: [5 km]
ambients: [0.2 bar]
ingredients:
  pitch: { formula: CH1.5, enthalpy: -20 kJ/mol, temperature: 298 K }
sentences:
  - id: more
    say: The wide one lifts more.
    holds: wide.thrust > bell.thrust
    sources: [book]
sources:
  book: { title: A book, author: A. Author, year: 1972 }
`;

/** The good study with one piece of text changed. */
function changed(about: string, from: string, to: string, ...told: string[]): BadStudy {
  if (goodStudy.split(from).length !== 2) throw new Error(`“${from}” does not stand once in the good study`);
  return { about, text: goodStudy.replace(from, to), told };
}

const whole = (about: string, text: string, ...told: string[]): BadStudy => ({ about, text, told });

export const badStudies: readonly BadStudy[] = [
  // The file as such
  whole('an empty file', '', 'file-empty 1:1'),
  whole('comments only', '# nothing yet\n', 'file-empty 1:1'),
  whole('a list instead of a map', '- plumeline: 1\n', 'value-of-other-form 1:1'),
  whole('a single word', 'hello\n', 'value-of-other-form 1:1'),
  whole('a bracket not closed', 'plumeline: 1\nquestion: [a,\n', 'yaml-syntax 3:1'),
  whole('a quote not closed', 'plumeline: 1\nquestion: "a\n', 'yaml-syntax 3:1'),
  whole('a tab', 'plumeline: 1\nengines:\n\tbell: {}\n', 'yaml-syntax 3:1'),
  whole('a second colon', 'plumeline: 1\nquestion: why: this\n', 'yaml-syntax 2:11'),
  whole('a reserved sign', 'plumeline: 1\nquestion: @home\n', 'yaml-syntax 2:11'),
  whole('two documents', 'plumeline: 1\n---\nplumeline: 1\n', 'several-documents 2:1'),
  whole('a control character', 'plumeline: 1\nquestion: a\u0000b\n', 'control-character 2:12'),
  whole(
    'a directive',
    '%YAML 1.1\n---\nplumeline: 1\n',
    'yaml-directive 1:1',
    'key-missing 1:1',
    'key-missing 1:1',
  ),
  whole('too deep', `plumeline: 1\nquestion: ${'['.repeat(40)}${']'.repeat(40)}\n`, 'nested-too-deep 2:31'),
  changed('an anchor', 'altitudes: [5 km]', 'altitudes: &here [5 km]', 'yaml-anchor 17:18'),
  changed('an alias', 'other: wide', 'other: *here', 'yaml-alias 16:31'),
  changed('a merge key', '    like: bell', '    <<: bell\n    like: bell', 'yaml-merge-key 13:5'),
  changed('a tag', '5 km', '!!str 5 km', 'yaml-tag 17:19'),
  changed('a map as a key', 'altitudes: [5 km]', '? { a: b }\n: x', 'key-not-a-word 17:3'),

  // Version
  changed('no version', 'plumeline: 1\n', '', 'version-missing 1:1'),
  changed('a newer version', 'plumeline: 1', 'plumeline: 2', 'version-newer 1:12'),
  changed('a version that is no number', 'plumeline: 1', 'plumeline: one', 'version-unreadable 1:12'),
  changed('a version with a fraction', 'plumeline: 1', 'plumeline: 1.5', 'version-unreadable 1:12'),

  // Keys
  changed('an unknown key of the study', 'altitudes:', 'altitude:', 'key-unknown 17:1'),
  changed('an unknown key of an engine', '    losses: default', '    loses: default', 'key-unknown 11:5'),
  changed('an unknown key of the chamber', 'efficiency:', 'eficiency:', 'key-unknown 8:35'),
  changed('a key of another kind of nozzle', 'length: 80 %', 'halfAngle: 15 deg', 'key-unknown 10:42'),
  changed('a key twice', '    losses: default', '    chemistry: frozen', 'key-twice 11:5'),
  changed('no question', 'question: Which one lifts more?\n', '', 'key-missing 1:1'),
  changed('an empty question', 'Which one lifts more?', '', 'value-missing 2:1'),
  changed('a question of two parts', 'Which one lifts more?', '[a, b]', 'value-of-other-form 2:11'),
  whole('no engines', 'plumeline: 1\nquestion: q\n', 'key-missing 1:1'),
  whole('engines without an engine', 'plumeline: 1\nquestion: q\nengines: {}\n', 'value-missing 3:1'),
  whole('an engine without anything', 'plumeline: 1\nquestion: q\nengines:\n  bell:\n', 'value-missing 4:3'),
  whole(
    'an engine with nothing in it',
    'plumeline: 1\nquestion: q\nengines:\n  bell: {}\n',
    'key-missing 4:3',
    'key-missing 4:3',
    'key-missing 4:3',
    'key-missing 4:3',
  ),

  // Engines and their names
  changed('an engine id with a dash', '  wide:\n', '  wide-bell:\n', 'id-unfit 12:3', 'engine-unknown 16:31'),
  changed(
    'an engine id that is taken',
    '  wide:\n',
    '  constructor:\n',
    'id-unfit 12:3',
    'engine-unknown 16:31',
  ),
  changed('like an unknown engine', '    like: bell', '    like: bel', 'engine-unknown 13:11'),
  changed('like itself', '    like: bell', '    like: wide', 'like-circle 13:11'),
  changed('like in a circle', '    name: Alder B', '    like: wide', 'like-circle 13:11'),
  changed('a size as an unknown engine', 'throat, as: bell', 'throat, as: ball', 'engine-unknown 14:31'),
  changed('a size as itself', 'throat, as: bell', 'throat, as: wide', 'size-of-itself 14:31'),
  changed(
    'sizes in a circle',
    'size: { thrust: 800 kN, at: vacuum }',
    'size: { same: exit, as: wide }',
    'size-circle 12:3',
  ),
  changed('compared with an unknown engine', 'other: wide', 'other: wid', 'engine-unknown 16:31'),
  changed('compared with itself', 'other: wide', 'other: bell', 'compare-with-itself 16:31'),
  changed('compared with nothing', ', other: wide', '', 'key-missing 16:1'),

  // Propellants
  changed('an unknown fuel', 'fuel: methane', 'fuel: metane', 'propellant-unknown 6:44'),
  changed('no fuel', 'fuel: methane, ', '', 'key-missing 6:5'),
  changed('no ratio', ', ratio: 3.5 ± 0.05', '', 'key-missing 6:5'),
  changed(
    'two ratios',
    'ratio: 3.5 ± 0.05',
    'ratio: 3.5, equivalenceRatio: 1.1',
    'propellants-two-ways 6:65',
  ),
  changed('two forms', 'ratio: 3.5 ± 0.05', 'gamma: 1.2', 'propellants-two-ways 6:53'),
  changed('both spellings', 'fuel: methane', 'oxidizer: oxygen, fuel: methane', 'key-twice 6:38'),
  changed('a ratio with a decimal comma', 'ratio: 3.5 ± 0.05', 'ratio: "3,5"', 'decimal-comma 6:60'),
  changed('a decimal comma inside braces', 'ratio: 3.5 ± 0.05', 'ratio: 3,5', 'decimal-comma 6:53'),
  changed(
    'one with a unit, and keys behind it',
    'pressure: 100 bar',
    'pressure: 97,5 bar',
    'decimal-comma 8:16',
  ),
  changed('two in one value', 'ratio: 3.5 ± 0.05', 'ratio: 3,5 ± 0,05', 'decimal-comma 6:53'),
  changed('a decimal comma in a list', '[5 km]', '[3,5 km]', 'decimal-comma 17:13'),
  changed('a ratio of nothing', 'ratio: 3.5 ± 0.05', 'ratio: 0', 'value-out-of-range 6:60'),
  changed('a ratio beyond all numbers', 'ratio: 3.5 ± 0.05', 'ratio: 1e400', 'number-not-finite 6:60'),
  changed(
    'shares that make no whole',
    'fuel: methane',
    'fuel: { ethanol: 75 %, water: 20 % }',
    'shares-not-whole 6:44',
  ),
  changed(
    'one ingredient twice',
    'fuel: methane',
    'fuel: { methane: 50 %, LCH4: 50 % }',
    'ingredient-twice 6:61',
  ),
  changed(
    'shares without a percent sign',
    'fuel: methane',
    'fuel: { ethanol: 75, water: 25 }',
    'value-out-of-range 6:55',
    'value-out-of-range 6:66',
  ),
  changed(
    'a gas nobody knows',
    '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }',
    '{ gas: phlogiston, temperature: 2700 K }',
    'gas-unknown 6:25',
  ),
  changed(
    'a heated gas without a temperature',
    '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }',
    '{ gas: hydrogen }',
    'key-missing 6:5',
  ),
  changed(
    'a perfect gas that is not one',
    '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }',
    '{ gamma: 0.9, molarMass: 22 kg/mol, temperature: -5 °C }',
    'value-out-of-range 6:27',
    'value-out-of-range 6:43',
  ),

  // Chemistry, chamber, nozzle, size
  changed('an unknown chemistry', 'chemistry: shifting', 'chemistry: shiftin', 'word-unknown 7:16'),
  changed(
    'a chemistry frozen from nowhere',
    'chemistry: shifting',
    'chemistry: { frozenFrom: {} }',
    'key-missing 7:18',
  ),
  changed(
    'a chemistry frozen from two points',
    'chemistry: shifting',
    'chemistry: { frozenFrom: { areaRatio: 3, pressure: 5 bar } }',
    'chemistry-two-ways 7:18',
  ),
  changed('a pressure without a unit', 'pressure: 100 bar', 'pressure: 100', 'unit-missing 8:26'),
  changed('a unit nobody knows', 'pressure: 100 bar', 'pressure: 100 barr', 'unit-unknown 8:26'),
  changed('a unit of another kind', 'pressure: 100 bar', 'pressure: 100 m', 'unit-of-other-kind 8:26'),
  changed('a gauge pressure', 'pressure: 100 bar', 'pressure: 1450 psig', 'pressure-gauge 8:26'),
  changed('a negative pressure', 'pressure: 100 bar', 'pressure: −3 bar', 'value-out-of-range 8:26'),
  changed('an efficiency above one', '97.5 ± 1 %', '104 %', 'value-out-of-range 8:47'),
  changed('an efficiency without its sign', '97.5 ± 1 %', '97.5', 'value-out-of-range 8:47'),
  changed('an unknown kind of nozzle', 'kind: bell', 'kind: belle', 'word-unknown 10:21'),
  changed('a nozzle without a kind', 'kind: bell, ', '', 'key-missing 10:5'),
  changed('a nozzle that narrows', 'areaRatio: 25', 'areaRatio: 0.5', 'value-out-of-range 10:38'),
  changed('an area ratio in percent', 'areaRatio: 25', 'areaRatio: 25 %', 'unit-of-other-kind 10:38'),
  changed('a bell too short', 'length: 80 %', 'length: 30 %', 'value-out-of-range 10:50'),
  changed('a size two ways', 'thrust: 800 kN', 'thrust: 800 kN, throat: 20 cm', 'size-two-ways 9:29'),
  changed('a thrust at no place', ', at: vacuum', '', 'key-missing 9:5'),
  changed('a thrust at an unknown place', 'at: vacuum', 'at: vacum', 'place-unknown 9:33'),
  changed('a thrust at a place of the wrong kind', 'at: vacuum', 'at: 5 s', 'unit-of-other-kind 9:33'),
  changed('a thrust above the air', 'at: vacuum', 'at: 2000 km', 'value-out-of-range 9:33'),
  changed('an equal thrust at no place', 'same: throat', 'same: thrust', 'key-missing 14:5'),
  changed('an equal throat at a place', 'as: bell }', 'as: bell, at: vacuum }', 'key-unknown 14:37'),
  changed('unknown losses', 'losses: default', 'losses: some', 'word-unknown 11:13'),

  // The rest
  changed('altitudes that are no list', '[5 km]', '5 km', 'value-of-other-form 17:12'),
  changed('too many altitudes', '[5 km]', `[${'5 km, '.repeat(201)}]`, 'too-many-values 17:12'),
  changed('an altitude in seconds', '[5 km]', '[5 km, 3 s]', 'unit-of-other-kind 17:19'),
  changed('a pressure below nothing', '[0.2 bar]', '[-1 bar]', 'value-out-of-range 18:12'),
  changed('an element without data', 'CH1.5', 'CUO', 'element-unknown 20:21'),
  changed('a formula that is none', 'CH1.5', '(CH', 'formula-unreadable 20:21'),
  changed('an ingredient named like the data', '  pitch:', '  methane:', 'ingredient-name-taken 20:3'),
  changed('an ingredient without enthalpy', 'enthalpy: -20 kJ/mol, ', '', 'key-missing 20:3'),
  changed('an enthalpy of the wrong kind', '-20 kJ/mol', '-20 kJ', 'unit-of-other-kind 20:38'),
  changed('a sentence without an id', '- id: more\n    say', '- say', 'key-missing 22:5'),
  changed('a sentence with nothing to say', 'say: The wide one lifts more.', 'say:', 'value-missing 23:5'),
  changed('an unknown source', 'sources: [book]', 'sources: [boook]', 'source-unknown 25:15'),
  changed('a source without a title', 'title: A book, ', '', 'key-missing 27:3'),
  changed('a year that is none', 'year: 1972', 'year: last', 'year-unreadable 27:51'),
  changed(
    'a sentence twice',
    'sources: [book]',
    'sources: [book]\n  - { id: more, say: Again. }',
    'id-twice 26:11',
  ),

  // Several at once, in one go and in order
  {
    about: 'four faults in four places',
    text: goodStudy
      .replace('100 bar', '100 barr')
      .replace('kind: bell', 'kind: belle')
      .replace('[5 km]', '[5]')
      .replace('year: 1972', 'yaer: 1972'),
    told: ['unit-unknown 8:26', 'word-unknown 10:21', 'unit-missing 17:13', 'key-unknown 27:45'],
  },
];
