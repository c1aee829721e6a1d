/** The inputs of an engine as lines of a form: what each is called, how it is written, where it stands. */

import { quantity } from '../../../answer/catalogue.ts';
import { cycleName } from '../../../answer/cycle/cycleWords.ts';
import { cycleSlots } from '../../../answer/inputs/cycleSlots.ts';
import type { Ambient, EngineInput, Ingredient, Nozzle, Quantity } from '../../../study/model.ts';
import { nozzleKinds } from '../../../study/nozzleKind.ts';

export interface InputRow {
  /** The same for the same input of two engines. */ readonly key: string;
  readonly label: string;
  /** Name in the catalogue, where the input has one. */ readonly quantity: string | null;
  /** Where to write it, e.g. `engines.plug.chamber.pressure`. */ readonly path: string;
  readonly text: string;
  /** `shared`: it stands in the engine that this one is like. `default`: the study does not say. */
  readonly origin: 'own' | 'shared' | 'default';
  /** The only texts allowed, if they are few. */ readonly choices?: readonly string[];
  /** Shown, but changed in the file itself. */ readonly fixed?: true;
  /** Where it is a number. */ readonly stated?: Quantity;
}

/** Inputs of several engines come in this order, whichever of them has what. */
const groups = [
  'propellants',
  'chemistry',
  'chamber.pressure',
  'chamber.efficiency',
  'nozzle',
  'size',
  '',
] as const;

/** Which inputs stand in the lines of a form of several engines: each once, in one order. */
export function lineKeys(engines: readonly (readonly InputRow[])[]): readonly string[] {
  const keys = [...new Set(engines.flatMap((rows) => rows.map((row) => row.key)))];
  return groups.flatMap((group) =>
    keys.filter((key) => groups.find((name) => key.startsWith(name)) === group),
  );
}

/** All inputs of an engine, in the order in which they are shown. */
export function inputRows(engine: EngineInput): readonly InputRow[] {
  const row = (label: string, quantity: string | null, value: Quantity): InputRow => {
    const tail = tailOf(value.path);
    const own = value.path.startsWith(`engines.${engine.id}.`);
    return {
      key: tail,
      label,
      quantity,
      path: `engines.${engine.id}.${tail}`,
      text: value.text,
      origin: value.byDefault ? 'default' : own ? 'own' : 'shared',
      stated: value,
    };
  };
  const words = (key: string, label: string, text: string): InputRow => ({
    key,
    label,
    quantity: null,
    path: `engines.${engine.id}.${key}`,
    text,
    origin: 'own',
    fixed: true,
  });
  return [
    ...propellantRows(engine, row, words),
    ...chemistryRows(engine, row, words),
    row('Chamber pressure', 'chamber.pressure', engine.chamber.pressure),
    row('Efficiency', 'chamber.efficiency', engine.chamber.efficiency),
    ...nozzleRows(engine, row, words),
    ...sizeRows(engine, row, words),
    ...cycleInputs(engine, row, words),
    row('Contraction ratio', 'chamber.contractionRatio', engine.chamber.contractionRatio),
    row('Characteristic length', 'chamber.characteristicLength', engine.chamber.characteristicLength),
    row('Converging angle', 'chamber.convergingAngle', engine.chamber.convergingAngle),
  ];
}

/** Its kind is changed in the file; optional values that are not stated are left out. */
function cycleInputs(engine: EngineInput, row: MakeRow, words: MakeWords): readonly InputRow[] {
  const { cycle } = engine;
  if (cycle === null) return [];
  return [
    words('cycle.kind', 'Cycle', cycleName(cycle.kind)),
    ...cycleSlots(engine).flatMap(({ quantity: name, now }) =>
      now === null ? [] : [row(capital(quantity(name).label), name, now)],
    ),
  ];
}

export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** The path inside the engine: `engines.bell.chamber.pressure` → `chamber.pressure`. */
function tailOf(path: string): string {
  return path.replace(/^engines\.[^.]+\./, '');
}

type MakeRow = (label: string, quantity: string | null, value: Quantity) => InputRow;
type MakeWords = (key: string, label: string, text: string) => InputRow;

function propellantRows({ propellants }: EngineInput, row: MakeRow, words: MakeWords): InputRow[] {
  switch (propellants.kind) {
    case 'burnt':
      return [
        ingredients('propellants.oxidiser', 'Oxidiser', propellants.oxidiser, words),
        ingredients('propellants.fuel', 'Fuel', propellants.fuel, words),
        propellants.mixture.by === 'massRatio'
          ? row('Mixture ratio', 'propellants.ratio', propellants.mixture.ratio)
          : row('Equivalence ratio', 'propellants.equivalenceRatio', propellants.mixture.ratio),
      ];
    case 'mixed':
      return propellants.parts.map((part) => row(part.id, 'propellants.share', part.share));
    case 'heated':
      return [
        words('propellants.gas', 'Gas', namesOf(propellants.parts)),
        row('Heated to', 'propellants.temperature', propellants.temperature),
      ];
    case 'perfect':
      return [
        row('Ratio of heats γ', 'propellants.gamma', propellants.gamma),
        row('Molar mass', 'propellants.molarMass', propellants.molarMass),
        row('Temperature', 'propellants.temperature', propellants.temperature),
      ];
  }
}

/** One ingredient of the data can be named anew in the form; a blend is changed in the file. */
function ingredients(key: string, label: string, parts: readonly Ingredient[], words: MakeWords): InputRow {
  const line = words(key, label, namesOf(parts));
  return parts.length === 1 && parts[0]?.custom === null ? free(line) : line;
}

/** The same line, open for change. */
function free({ fixed: _, ...line }: InputRow): InputRow {
  return line;
}

function namesOf(parts: readonly Ingredient[]): string {
  if (parts.length === 1) return parts[0]?.id ?? '';
  return parts.map((part) => `${part.id} ${part.share.text}`).join(', ');
}

function chemistryRows({ chemistry, propellants }: EngineInput, row: MakeRow, words: MakeWords): InputRow[] {
  if (propellants.kind === 'perfect') return [];
  if (chemistry.kind !== 'frozenFrom') {
    const line = free(words('chemistry', 'Chemistry', chemistry.kind));
    return [{ ...line, choices: ['shifting', 'frozen'] }];
  }
  return 'areaRatio' in chemistry
    ? [row('Frozen from area ratio', 'chemistry.areaRatio', chemistry.areaRatio)]
    : [row('Frozen from pressure', 'chemistry.pressure', chemistry.pressure)];
}

function nozzleRows({ nozzle }: EngineInput, row: MakeRow, words: MakeWords): InputRow[] {
  const rows = [
    { ...free(words('nozzle.kind', 'Nozzle', nozzle.kind)), choices: nozzleKinds },
    row('Area ratio', 'areaRatio', nozzle.areaRatio),
  ];
  if (nozzle.kind === 'cone') rows.push(row('Half-angle', 'nozzle.halfAngle', nozzle.halfAngle));
  if (nozzle.kind === 'bell') {
    rows.push(row('Bell length', 'nozzle.length', nozzle.length), ...angleRows(nozzle, row));
  }
  if (nozzle.kind === 'idealBell') {
    if (nozzle.length !== null) rows.push(row('Bell length', 'nozzle.length', nozzle.length));
    if (nozzle.designMach !== null)
      rows.push(row('Design Mach number', 'nozzle.designMach', nozzle.designMach));
  }
  if (nozzle.kind === 'plug') rows.push(...plugRows(nozzle, row, words));
  if (nozzle.kind === 'extendableSkirt') {
    rows.push(row('Area ratio, skirt up', 'nozzle.shortAreaRatio', nozzle.shortAreaRatio));
    rows.push(row('Bell length', 'nozzle.length', nozzle.length));
    rows.push(...angleRows(nozzle, row), switchRow('Skirt slides out', nozzle.switchAt, row, words));
  }
  if (nozzle.kind === 'expansionDeflection') {
    rows.push(row('Pintle area', 'nozzle.pintleAreaRatio', nozzle.pintleAreaRatio));
    rows.push(row('Length', 'nozzle.length', nozzle.length));
    rows.push(...angleRows(nozzle, row));
  }
  if (nozzle.kind === 'dualBell') {
    rows.push(row('Area ratio, base', 'nozzle.baseAreaRatio', nozzle.baseAreaRatio));
    rows.push(row('Base length', 'nozzle.baseLength', nozzle.baseLength));
    if (nozzle.extensionLength !== null)
      rows.push(row('Extension length', 'nozzle.extensionLength', nozzle.extensionLength));
    if (nozzle.inflectionAngle !== null)
      rows.push(row('Turn at inflection', 'nozzle.inflectionAngle', nozzle.inflectionAngle));
    rows.push(row('Pressure rise', 'nozzle.pressureRise', nozzle.pressureRise));
    rows.push(...angleRows({ throatAngle: nozzle.throatAngle, lipAngle: null }, row));
    if (nozzle.baseLipAngle !== null)
      rows.push(row('Angle, end of base', 'nozzle.baseLipAngle', nozzle.baseLipAngle));
  }
  if (nozzle.kind === 'insert') {
    rows.push(row('Area ratio, insert', 'nozzle.insertAreaRatio', nozzle.insertAreaRatio));
    rows.push(row('Bell length', 'nozzle.length', nozzle.length));
    rows.push(row('Insert length', 'nozzle.insertLength', nozzle.insertLength));
    rows.push(switchRow('Insert drops away', nozzle.switchAt, row, words));
  }
  return rows;
}

function plugRows(nozzle: Nozzle & { kind: 'plug' }, row: MakeRow, words: MakeWords): InputRow[] {
  const { form, kept, innerMach, aspectRatio, modules, moduleShape, machOne } = nozzle;
  return [
    { ...free(words('nozzle.form', 'Form', form)), choices: ['annular', 'linear'] },
    row('Plug kept', 'nozzle.kept', kept),
    ...(innerMach === null
      ? [words('nozzle.innerMach', 'Inner Mach', 'lip turns by 60°')]
      : [row('Inner Mach', 'nozzle.innerMach', innerMach)]),
    ...(aspectRatio === null ? [] : [row('Width over height', 'nozzle.aspectRatio', aspectRatio)]),
    ...(modules === null
      ? []
      : [
          row('Modules', 'nozzle.modules', modules),
          {
            ...free(words('nozzle.moduleShape', 'Module shape', moduleShape)),
            choices: ['rectangular', 'round'],
          },
        ]),
    ...(machOne === null ? [] : [row('Mach 1 at', 'nozzle.machOne', machOne)]),
  ];
}

interface StatedAngles {
  readonly throatAngle: Quantity | null;
  readonly lipAngle: Quantity | null;
}

function angleRows({ throatAngle, lipAngle }: StatedAngles, row: MakeRow): InputRow[] {
  return [
    ...(throatAngle === null ? [] : [row('Angle at throat', 'contour.steepestAngle', throatAngle)]),
    ...(lipAngle === null ? [] : [row('Angle at lip', 'contour.lipAngle', lipAngle)]),
  ];
}

/** Where a nozzle changes over: a stated place is open for change, the best one stands as a word. */
function switchRow(label: string, at: Ambient | null, row: MakeRow, words: MakeWords): InputRow {
  if (at === null) return words('nozzle.switchAt', label, 'where it is best');
  if (at.kind === 'vacuum') return free(words('nozzle.switchAt', label, 'vacuum'));
  return at.kind === 'altitude'
    ? row(label, 'change.altitude', at.altitude)
    : row(label, 'change.ambientPressure', at.pressure);
}

function sizeRows({ size }: EngineInput, row: MakeRow, words: MakeWords): InputRow[] {
  switch (size.by) {
    case 'throat':
      return [row('Throat diameter', 'throat.diameter', size.diameter)];
    case 'exit':
      return [row('Exit diameter', 'exit.diameter', size.diameter)];
    case 'thrust': {
      const where =
        size.at.kind === 'vacuum'
          ? free(words('size.at', 'Thrust at', 'vacuum'))
          : size.at.kind === 'altitude'
            ? row('Thrust at', 'altitude', size.at.altitude)
            : row('Thrust at', 'ambientPressure', size.at.pressure);
      return [row('Thrust', 'thrust', size.thrust), where];
    }
    case 'same':
      return [words('size.same', 'Size', `same ${size.what} as ${size.as}`)];
  }
}

/**
 * The text one step up or down: the last digit written moves by one, or the one before it in a large step.
 * Null where the text does not begin with a number.
 */
export function steppedText(text: string, direction: 1 | -1, large: boolean): string | null {
  const match = /^(\s*)([-−]?\d+)(?:\.(\d+))?/.exec(text);
  if (match === null) return null;
  const [found, space = '', whole = '', decimals = ''] = match;
  const digits = decimals.length;
  const value = Number(`${whole.replace('−', '-')}.${decimals || '0'}`);
  const step = 10 ** -digits * (large ? 10 : 1);
  return `${space}${(value + direction * step).toFixed(digits)}${text.slice(found.length)}`;
}
