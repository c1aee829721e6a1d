/** One engine: its own sections over those of the engine it is like, read into SI. */
import { isMap, isScalar } from 'yaml';
import {
  ambientAt,
  type Cursor,
  choiceAt,
  defaultQuantity,
  type Entries,
  entriesAt,
  fieldQuantityAt,
  keyOffset,
  offsetAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import {
  altitudeRange,
  ambientPressureRange,
  chamberFields,
  chemistryWords,
  engineKeys,
  frozenFromFields,
  lossesField,
  nozzleForms,
  propellantForms,
  type QuantityField,
  sizeForms,
} from './form.ts';
import { leftByBase, publishedOf, withRoomFor } from './leftToPublished.ts';
import type {
  Chamber,
  Chemistry,
  EngineInput,
  Nozzle,
  Propellants,
  Quantity,
  SettledInput,
  Size,
} from './model.ts';
import type { NameBook } from './names.ts';
import { nearestName } from './nearest.ts';
import { plainQuantity } from './plainQuantity.ts';
import { SETTLED_TEXT, settledAt } from './publishedForm.ts';
import { isChanging, readChangingNozzle } from './readChangingNozzle.ts';
import { COOLING_EITHER, readCooling } from './readCooling.ts';
import { cycleFormOf, readCycle } from './readCycle.ts';
import { type CustomIngredients, ingredientsAt, type Pantry } from './readIngredients.ts';
import { readPublished } from './readPublished.ts';
import { listNames, quote, type Report } from './report.ts';
import {
  BROKEN,
  chamberFormOf,
  coolingFormOf,
  type EngineDraft,
  type EngineSections,
  type GivenSection,
  mergeSection,
  nozzleFormOf,
  propellantFormOf,
  type Section,
  sizeFormOf,
  spellOxidiser,
} from './sections.ts';

export interface EngineContext {
  readonly custom: CustomIngredients;
  readonly propellantBook: NameBook | null;
  readonly gasBook: NameBook | null;
  /** Ids of all engines of the study. */ readonly engineIds: readonly string[];
  /** Ids of the sources of the study. */ readonly sourceIds: readonly string[];
  readonly report: Report;
}

const noSections: EngineSections = {
  propellants: null,
  chamber: null,
  nozzle: null,
  size: null,
  cooling: null,
  cycle: null,
  chemistry: null,
  losses: null,
};
const brokenSections: EngineSections = {
  propellants: BROKEN,
  chamber: BROKEN,
  nozzle: BROKEN,
  size: BROKEN,
  cooling: null,
  cycle: null,
  chemistry: null,
  losses: null,
};

const propellantMend =
  'Write { oxidiser: oxygen, fuel: methane, ratio: 3.5 }; other forms are in docs/study-file.md.';

function gatherSections(entries: Entries, base: EngineSections, report: Report): EngineSections {
  const given = (key: string): Cursor | null => entries.get(key) ?? null;
  const spelt = given('propellants');
  return {
    propellants: mergeSection(
      spelt,
      base.propellants,
      'a map of propellants',
      propellantMend,
      propellantFormOf(base.propellants === BROKEN),
      report,
      [['ratio', 'equivalenceRatio']],
      spellOxidiser,
    ),
    chamber: mergeSection(
      given('chamber'),
      base.chamber,
      'a map of the chamber',
      'Write { pressure: 100 bar, efficiency: 97.5 ± 1 % }.',
      chamberFormOf,
      report,
    ),
    nozzle: mergeSection(
      given('nozzle'),
      base.nozzle,
      'a map of the nozzle',
      'Write { kind: bell, areaRatio: 25 }.',
      nozzleFormOf(base.nozzle === BROKEN),
      report,
      [['extensionLength', 'inflectionAngle']],
    ),
    size: mergeSection(
      given('size'),
      base.size,
      'a map of the size',
      'Write { throat: 210 mm } or { thrust: 800 kN, at: vacuum }.',
      sizeFormOf(base.size === BROKEN),
      report,
    ),
    cooling: isNone(given('cooling'))
      ? null
      : mergeSection(
          given('cooling'),
          base.cooling,
          'a map of the cooling',
          'Write { coolant: fuel, wall: copper-chromium-zirconium }, or none.',
          coolingFormOf,
          report,
          COOLING_EITHER,
        ),
    cycle: isNone(given('cycle'))
      ? null
      : mergeSection(
          given('cycle'),
          base.cycle,
          'a map of the cycle',
          'Write { kind: gasGenerator }, or none.',
          cycleFormOf,
          report,
        ),
    chemistry: given('chemistry') ?? base.chemistry,
    losses: given('losses') ?? base.losses,
  };
}

/** `none` takes away what is inherited. */
function isNone(cursor: Cursor | null): boolean {
  return cursor !== null && isScalar(cursor.node) && cursor.node.value === 'none';
}

/** Reads the quantities of one section: given, by default, left to the published rows, or missing with a problem. */
function sectionReader(
  section: GivenSection<string>,
  enginePath: string,
  name: string,
  report: Report,
  settled: SettledInput | null = null,
) {
  const path = (key: string): string => `${enginePath}.${name}.${key}`;
  const missing = (key: string, mend: string): null => {
    if (section.silent) return null;
    report.problem(
      { code: 'key-missing', what: `${quote(section.cursor.path)} has no ${key}.`, mend },
      `${section.cursor.path}.${key}`,
      keyOffset(section.cursor),
    );
    return null;
  };
  const required = (key: string, field: QuantityField): Quantity | null => {
    const at = section.entries.get(key);
    if (at === undefined) {
      const left = settled === null ? null : settledAt[settled];
      if (left !== null && left.section === name && left.key === key) {
        return { ...defaultQuantity({ ...field, byDefault: left.start }, path(key)), text: SETTLED_TEXT };
      }
      if (field.byDefault !== undefined) return defaultQuantity(field, path(key));
      return missing(key, `Add it, e.g. ${key}: ${field.example}.`);
    }
    const read = fieldQuantityAt(at, field, report);
    return read === null ? null : plainQuantity(read);
  };
  const optional = (key: string, field: QuantityField): Quantity | null =>
    section.entries.has(key) ? required(key, field) : null;
  return { required, optional, missing };
}

function readChamber(
  section: GivenSection<'chamber'>,
  enginePath: string,
  report: Report,
  settled: SettledInput | null,
): Chamber | null {
  refuseOtherKeys(section.entries, Object.keys(chamberFields), 'the chamber', report);
  const { required } = sectionReader(section, enginePath, 'chamber', report, settled);
  const pressure = required('pressure', chamberFields.pressure);
  const efficiency = required('efficiency', chamberFields.efficiency);
  const contractionRatio = required('contractionRatio', chamberFields.contractionRatio);
  const characteristicLength = required('characteristicLength', chamberFields.characteristicLength);
  const convergingAngle = required('convergingAngle', chamberFields.convergingAngle);
  const at = section.entries.get('pressureAt');
  const pressureAt =
    at === undefined ? chamberFields.pressureAt.byDefault : choiceAt(at, chamberFields.pressureAt, report);
  if (pressure === null || efficiency === null || contractionRatio === null) return null;
  if (characteristicLength === null || convergingAngle === null || pressureAt === null) return null;
  return { pressure, pressureAt, efficiency, contractionRatio, characteristicLength, convergingAngle };
}

function readNozzle(
  section: GivenSection<keyof typeof nozzleForms>,
  enginePath: string,
  report: Report,
  settled: SettledInput | null,
): Nozzle | null {
  const { form: kind } = section;
  refuseOtherKeys(
    section.entries,
    ['kind', ...Object.keys(nozzleForms[kind])],
    `a nozzle of the kind ${kind}`,
    report,
  );
  const { required, optional } = sectionReader(section, enginePath, 'nozzle', report, settled);
  const areaRatio = required('areaRatio', nozzleForms[kind].areaRatio);
  if (kind === 'cone') {
    const halfAngle = required('halfAngle', nozzleForms.cone.halfAngle);
    return areaRatio === null || halfAngle === null ? null : { kind, areaRatio, halfAngle };
  }
  if (kind === 'bell') {
    const length = required('length', nozzleForms.bell.length);
    const throatAngle = optional('throatAngle', nozzleForms.bell.throatAngle);
    const lipAngle = optional('lipAngle', nozzleForms.bell.lipAngle);
    return areaRatio === null || length === null ? null : { kind, areaRatio, length, throatAngle, lipAngle };
  }
  if (kind === 'idealBell') return readIdealBell(section, areaRatio, optional, report);
  if (kind === 'plug') return readPlug(section, areaRatio, { required, optional }, report);
  if (isChanging(kind)) {
    return readChangingNozzle(kind, section.entries, { required, optional }, report);
  }
  return areaRatio === null ? null : { kind, areaRatio };
}

function readIdealBell(
  section: GivenSection<keyof typeof nozzleForms>,
  areaRatio: Quantity | null,
  optional: ReadQuantities['optional'],
  report: Report,
): Nozzle | null {
  const length = optional('length', nozzleForms.idealBell.length);
  const designMach = optional('designMach', nozzleForms.idealBell.designMach);
  const machAt = section.entries.get('designMach');
  if (section.entries.has('length') && machAt !== undefined) {
    report.problem(
      {
        code: 'nozzle-two-ways',
        what: 'Both length and designMach of an ideal bell are given.',
        why: 'Where the contour is cut fixes the Mach number for which it is made.',
        mend: 'Keep one of them, or neither for the whole contour.',
      },
      machAt.path,
      keyOffset(machAt),
    );
    return null;
  }
  return areaRatio === null ? null : { kind: 'idealBell', areaRatio, length, designMach };
}

type ReadQuantities = Pick<ReturnType<typeof sectionReader>, 'required' | 'optional'>;

function readPlug(
  section: GivenSection<keyof typeof nozzleForms>,
  areaRatio: Quantity | null,
  { required, optional }: ReadQuantities,
  report: Report,
): Nozzle | null {
  const fields = nozzleForms.plug;
  const formAt = section.entries.get('form');
  const form = formAt === undefined ? fields.form.byDefault : choiceAt(formAt, fields.form, report);
  const shapeAt = section.entries.get('moduleShape');
  const moduleShape =
    shapeAt === undefined ? fields.moduleShape.byDefault : choiceAt(shapeAt, fields.moduleShape, report);
  const kept = required('kept', fields.kept);
  const innerMach = optional('innerMach', fields.innerMach);
  const aspectRatio = optional('aspectRatio', fields.aspectRatio);
  const modules = optional('modules', fields.modules);
  const machOne = optional('machOne', fields.machOne);
  const broken = (key: string, value: unknown): boolean => section.entries.has(key) && value === null;
  if (areaRatio === null || form === null || moduleShape === null || kept === null) return null;
  if (broken('innerMach', innerMach) || broken('aspectRatio', aspectRatio)) return null;
  if (broken('modules', modules) || broken('machOne', machOne)) return null;
  if (form === 'annular' && section.entries.has('aspectRatio')) {
    return refuse('aspectRatio', 'An annular plug has no aspect ratio.', 'Delete it, or write form: linear.');
  }
  if (modules === null && section.entries.has('moduleShape')) {
    return refuse('moduleShape', 'moduleShape is given without modules.', 'Add modules: 24, or delete it.');
  }
  if (modules !== null && !Number.isInteger(modules.value)) {
    return refuse(
      'modules',
      `${modules.text} modules are no whole number.`,
      'Write a whole number, e.g. 24.',
    );
  }
  return { kind: 'plug', form, areaRatio, kept, innerMach, aspectRatio, modules, moduleShape, machOne };

  function refuse(key: string, what: string, mend: string): null {
    const at = section.entries.get(key)!;
    report.problem({ code: 'plug-keys-at-odds', what, mend }, at.path, keyOffset(at));
    return null;
  }
}

function readSize(
  section: GivenSection<keyof typeof sizeForms>,
  id: string,
  enginePath: string,
  context: EngineContext,
  settled: SettledInput | null,
): Size | null {
  const { report } = context;
  const { form, entries } = section;
  refuseOtherKeys(entries, Object.keys(sizeForms[form]), `a size by ${form}`, report);
  const { required, missing } = sectionReader(section, enginePath, 'size', report, settled);
  const at = entries.get('at');
  const ambient = at === undefined ? null : ambientAt(at, altitudeRange, ambientPressureRange, report);
  if (form === 'throat' || form === 'exit') {
    const diameter = required(form, form === 'throat' ? sizeForms.throat.throat : sizeForms.exit.exit);
    return diameter === null ? null : { by: form, diameter };
  }
  const placeMend = 'Add at: vacuum, sea level, an altitude such as 5 km, or a pressure such as 0.5 bar.';
  if (form === 'thrust') {
    const thrust = required('thrust', sizeForms.thrust.thrust);
    if (at === undefined) missing('at', placeMend);
    return thrust === null || ambient === null ? null : { by: 'thrust', thrust, at: ambient };
  }
  const what = choiceAt(entries.get('same')!, sizeForms.same.same, report);
  const asAt = entries.get('as');
  if (asAt === undefined) {
    missing('as', `Name the other engine, e.g. as: ${context.engineIds.find((e) => e !== id) ?? 'bell'}.`);
  }
  const as = asAt === undefined ? null : engineNameAt(asAt, context);
  if (as === id) {
    report.problem(
      {
        code: 'size-of-itself',
        what: `The engine ${quote(id)} takes its size from itself.`,
        mend: 'Name another engine, or give a size of its own.',
      },
      asAt!.path,
      offsetAt(asAt!),
    );
    return null;
  }
  if (what === 'thrust' && at === undefined) missing('at', placeMend);
  if (what !== null && what !== 'thrust' && at !== undefined) {
    report.problem(
      {
        code: 'key-unknown',
        what: `“at” has no meaning beside same: ${what}; a ${what} is the same everywhere.`,
        mend: 'Delete it.',
      },
      at.path,
      keyOffset(at),
    );
    return null;
  }
  if (what === null || as === null) return null;
  if (what !== 'thrust') return { by: 'same', what, as };
  return ambient === null ? null : { by: 'same', what, as, at: ambient };
}

/** Id of an engine of this study; null with a problem where there is none of that name. */
export function engineNameAt(cursor: Cursor, context: EngineContext): string | null {
  const { engineIds, report } = context;
  const mend = `Engines of this study: ${listNames(engineIds)}.`;
  const text = textAt(cursor, 'the id of an engine', mend, report)?.trim();
  if (text === undefined) return null;
  if (engineIds.includes(text)) return text;
  const near = nearestName(text, engineIds);
  report.problem(
    {
      code: 'engine-unknown',
      what: `${quote(text)} is not an engine of this study.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}${mend}`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function readPropellants(
  section: GivenSection<keyof typeof propellantForms>,
  enginePath: string,
  context: EngineContext,
): Propellants | null {
  const { report } = context;
  const { form, entries } = section;
  const words = {
    burnt: 'propellants burnt together',
    mixed: 'a mixture',
    heated: 'a heated gas',
    perfect: 'a perfect gas',
  } as const;
  refuseOtherKeys(entries, Object.keys(propellantForms[form]), words[form], report);
  const { required, missing } = sectionReader(section, enginePath, 'propellants', report);
  const pantry = (role: Pantry['role']): Pantry => ({
    custom: context.custom,
    book: context.propellantBook,
    noun: 'propellant',
    role,
  });
  if (form === 'perfect') {
    const gamma = required('gamma', propellantForms.perfect.gamma);
    const molarMass = required('molarMass', propellantForms.perfect.molarMass);
    const temperature = required('temperature', propellantForms.perfect.temperature);
    if (gamma === null || molarMass === null || temperature === null) return null;
    return { kind: 'perfect', gamma, molarMass, temperature };
  }
  if (form === 'heated') {
    const at = entries.get('gas');
    const gases: Pantry = { custom: new Map(), book: context.gasBook, noun: 'gas', role: null };
    const parts =
      at === undefined
        ? missing('gas', 'Add it, e.g. gas: hydrogen.')
        : ingredientsAt(at, propellantForms.heated.gas, gases, report);
    const temperature = required('temperature', propellantForms.heated.temperature);
    return parts === null || temperature === null ? null : { kind: 'heated', parts, temperature };
  }
  if (form === 'mixed') {
    const parts = ingredientsAt(entries.get('mixture')!, propellantForms.mixed.mixture, pantry(null), report);
    return parts === null ? null : { kind: 'mixed', parts };
  }
  const side = (key: 'oxidiser' | 'fuel', role: Pantry['role']) => {
    const at = entries.get(key);
    if (at === undefined)
      return missing(key, `Add it, e.g. ${key}: ${key === 'fuel' ? 'methane' : 'oxygen'}.`);
    return ingredientsAt(at, propellantForms.burnt[key], pantry(role), report);
  };
  const oxidiser = side('oxidiser', 'oxidizer');
  const fuel = side('fuel', 'fuel');
  const second = entries.get('equivalenceRatio');
  if (second !== undefined && entries.has('ratio')) {
    report.problem(
      {
        code: 'propellants-two-ways',
        what: `Both ratio and equivalenceRatio are given in ${quote(section.cursor.path)}.`,
        mend: 'Keep one; the other follows from it.',
      },
      second.path,
      keyOffset(second),
    );
    return null;
  }
  const by = second === undefined ? 'ratio' : 'equivalenceRatio';
  const ratio = required(by, propellantForms.burnt[by]);
  if (oxidiser === null || fuel === null || ratio === null) return null;
  return {
    kind: 'burnt',
    oxidiser,
    fuel,
    mixture: by === 'ratio' ? { by: 'massRatio', ratio } : { by: 'equivalenceRatio', ratio },
  };
}

function readChemistry(cursor: Cursor | null, report: Report): Chemistry | null {
  if (cursor === null) return { kind: 'shifting' };
  if (!isMap(cursor.node)) {
    const kind = choiceAt(
      cursor,
      { is: 'choice', options: chemistryWords, meaning: 'Whether the composition follows the expansion.' },
      report,
    );
    return kind === null ? null : { kind };
  }
  const mend = 'Write { frozenFrom: { areaRatio: 3 } } or { frozenFrom: { pressure: 5 bar } }.';
  const entries = entriesAt(cursor, 'how the composition behaves', mend, report);
  if (entries === null) return null;
  refuseOtherKeys(entries, ['frozenFrom'], 'the chemistry', report);
  const from = entries.get('frozenFrom');
  if (from === undefined) {
    if (entries.size === 0) {
      report.problem(
        { code: 'key-missing', what: `${quote(cursor.path)} is empty.`, mend },
        cursor.path,
        keyOffset(cursor),
      );
    }
    return null;
  }
  const points = entriesAt(from, 'a point of the expansion', mend, report);
  if (points === null) return null;
  refuseOtherKeys(points, Object.keys(frozenFromFields), 'frozenFrom', report);
  const areaRatioAt = points.get('areaRatio');
  const pressureAt = points.get('pressure');
  if ((areaRatioAt === undefined) === (pressureAt === undefined)) {
    report.problem(
      {
        code: areaRatioAt === undefined ? 'key-missing' : 'chemistry-two-ways',
        what: `${quote(from.path)} needs one of areaRatio and pressure${areaRatioAt === undefined ? '' : ', not both'}.`,
        mend,
      },
      from.path,
      keyOffset(from),
    );
    return null;
  }
  if (areaRatioAt !== undefined) {
    const areaRatio = fieldQuantityAt(areaRatioAt, frozenFromFields.areaRatio, report);
    return areaRatio === null ? null : { kind: 'frozenFrom', areaRatio: plainQuantity(areaRatio) };
  }
  const pressure = fieldQuantityAt(pressureAt!, frozenFromFields.pressure, report);
  return pressure === null ? null : { kind: 'frozenFrom', pressure: plainQuantity(pressure) };
}

/** A section that must be there; a missing one is a problem of the engine. */
function present<Form extends string>(
  section: Section<Form>,
  name: string,
  cursor: Cursor,
  example: string,
  report: Report,
): GivenSection<Form> | null {
  if (section === BROKEN) return null;
  if (section !== null) return section;
  report.problem(
    {
      code: 'key-missing',
      what: `The engine ${quote(cursor.path)} has no ${name}.`,
      mend: `Add ${name}: ${example}.`,
    },
    `${cursor.path}.${name}`,
    keyOffset(cursor),
  );
  return null;
}

/** What could not be read has been told once: engines that are like this one do not say what is missing again. */
function told<Form extends string>(section: Section<Form>, read: boolean): Section<Form> {
  if (section === null) return BROKEN;
  return section === BROKEN || read ? section : { ...section, silent: true };
}

/** Ideal where nothing burns or no losses are wanted; else, where the study says nothing, the usual efficiency. */
function withUsualEfficiency(chamber: Chamber, burns: boolean, losses: EngineInput['losses']): Chamber {
  const { efficiency } = chamber;
  if (!efficiency.byDefault || (burns && losses === 'default')) return chamber;
  return { ...chamber, efficiency: { ...efficiency, value: 1, text: '100 %' } };
}

function burnsIn(propellants: Propellants): boolean {
  return propellants.kind === 'burnt' || propellants.kind === 'mixed';
}

function warnOfDefaults(
  entries: Entries,
  engine: EngineInput,
  base: EngineInput | null,
  cursor: Cursor,
  report: Report,
): void {
  const toldOfBase = base?.losses === 'default';
  // Heated and perfect gases do not burn: nothing is left unburnt.
  const settled = engine.published?.solveFor?.input === 'efficiency';
  if (
    burnsIn(engine.propellants) &&
    !settled &&
    engine.chamber.efficiency.byDefault &&
    engine.losses === 'default' &&
    !toldOfBase
  ) {
    const chamber = entries.get('chamber');
    report.warning(
      {
        code: 'efficiency-not-stated',
        what: `No combustion efficiency is stated for ${quote(engine.id)}, so the usual ${engine.chamber.efficiency.text} is taken.`,
        why: 'Chambers differ: 98 to 99.5 % where development is long, less in small ones.',
        mend: 'Add efficiency to the chamber, with its ±, or 100 % if ideal is meant.',
      },
      engine.chamber.efficiency.path,
      keyOffset(chamber ?? cursor),
    );
  }
  const chemistry = entries.get('chemistry');
  if (engine.propellants.kind === 'perfect' && chemistry !== undefined) {
    report.warning(
      {
        code: 'chemistry-without-effect',
        what: `${quote(chemistry.path)} has no effect on a perfect gas.`,
        mend: 'Delete it.',
      },
      chemistry.path,
      keyOffset(chemistry),
    );
  }
}

/** A default has its ± as well: engines that inherit the kind of the cycle share it as one input. */
function engineOfDefaults(section: GivenSection<string>, path: string): string {
  return section.entries.get('kind')?.path.replace(/\.cycle\.kind$/, '') ?? path;
}

/** Read the engine `id`; `base` is the draft of the engine it is like, `broken` that there should have been one. */
export function readEngine(
  id: string,
  cursor: Cursor,
  entries: Entries,
  base: EngineDraft | 'broken' | null,
  like: string | null,
  context: EngineContext,
): EngineDraft {
  const { report } = context;
  refuseOtherKeys(entries, engineKeys, 'an engine', report);
  const inherited = base === 'broken' ? brokenSections : (base?.sections ?? noSections);
  const written = gatherSections(entries, inherited, report);
  const draft = readPublished(entries.get('published'), context.sourceIds, report);
  const published = draft && publishedOf(draft, written);
  const settled = draft?.solveFor?.input ?? leftByBase(id, base, written, cursor, report);
  const gathered = withRoomFor(settled, written, cursor);
  const path = cursor.path;
  const propellantsGiven = present(
    gathered.propellants,
    'propellants',
    cursor,
    '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 }',
    report,
  );
  const chamberGiven = present(gathered.chamber, 'chamber', cursor, '{ pressure: 100 bar }', report);
  const nozzleGiven = present(gathered.nozzle, 'nozzle', cursor, '{ kind: bell, areaRatio: 25 }', report);
  const sizeGiven = present(gathered.size, 'size', cursor, '{ throat: 210 mm }', report);
  const propellants = propellantsGiven && readPropellants(propellantsGiven, path, context);
  const chamber = chamberGiven && readChamber(chamberGiven, path, report, settled);
  const nozzle = nozzleGiven && readNozzle(nozzleGiven, path, report, settled);
  const size = sizeGiven && readSize(sizeGiven, id, path, context, settled);
  const chemistry = readChemistry(gathered.chemistry, report);
  const losses = gathered.losses === null ? 'default' : choiceAt(gathered.losses, lossesField, report);
  const cooling =
    gathered.cooling === null || gathered.cooling === BROKEN
      ? null
      : readCooling(gathered.cooling, sectionReader(gathered.cooling, path, 'cooling', report), report);
  const { cycle: cycleGiven } = gathered;
  const cycle =
    cycleGiven === null || cycleGiven === BROKEN
      ? null
      : readCycle(
          cycleGiven,
          sectionReader(cycleGiven, engineOfDefaults(cycleGiven, path), 'cycle', report),
          report,
        );
  const nameAt = entries.get('name');
  const name = nameAt === undefined ? id : textAt(nameAt, 'a name', 'Write a name, e.g. Alder B.', report);
  const sections: EngineSections = {
    ...gathered,
    propellants: told(gathered.propellants, propellants !== null),
    chamber: told(gathered.chamber, chamber !== null),
    nozzle: told(gathered.nozzle, nozzle !== null),
    size: told(gathered.size, size !== null),
    cooling: gathered.cooling,
    cycle: cycleGiven === null || cycle !== null ? cycleGiven : told(cycleGiven, false),
  };
  if (propellants === null || chamber === null || nozzle === null || size === null)
    return { sections, engine: null };
  if (chemistry === null || losses === null || name === null) return { sections, engine: null };
  if (cooling === null && gathered.cooling !== null) return { sections, engine: null };
  if (cycle === null && cycleGiven !== null) return { sections, engine: null };
  const engine: EngineInput = {
    id,
    name: name.trim(),
    like,
    propellants,
    chemistry,
    chamber: withUsualEfficiency(chamber, burnsIn(propellants), losses),
    nozzle,
    size,
    losses,
    cooling,
    cycle,
    published,
  };
  warnOfDefaults(entries, engine, base === 'broken' ? null : (base?.engine ?? null), cursor, report);
  return { sections, engine };
}
