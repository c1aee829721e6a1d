/**
 * The form of a study: every key, what it holds, its range and its default. The reader, the published JSON
 * Schema and the reference in docs/study-file.md all follow this table.
 */
import type { QuantityKind } from './unitTable.ts';

/** Version of the file form that this program writes. */
export const STUDY_FORMAT = 1;

/** Bounds in SI; `words` is the same range for people. */
export interface Range {
  readonly above?: number;
  readonly from?: number;
  readonly upTo?: number;
  readonly below?: number;
  readonly words: string;
}

export interface QuantityField {
  readonly is: 'quantity';
  readonly kinds: readonly QuantityKind[];
  readonly range: Range;
  /** Text that stands for the key when it is absent. */ readonly byDefault?: string;
  readonly optional?: true;
  readonly example: string;
  readonly meaning: string;
}

export interface ChoiceField {
  readonly is: 'choice';
  readonly options: readonly string[];
  readonly byDefault?: string;
  readonly meaning: string;
}

/** Ambient: `vacuum`, `sea level`, an altitude or a pressure. */
export interface AmbientField {
  readonly is: 'ambient';
  readonly optional?: true;
  readonly example: string;
  readonly meaning: string;
}

/** Ingredients: a name, or names with their shares by mass. */
export interface IngredientsField {
  readonly is: 'ingredients';
  readonly example: string;
  readonly meaning: string;
}

export interface EngineField {
  readonly is: 'engine';
  readonly meaning: string;
}

export interface TextField {
  readonly is: 'text';
  readonly optional?: true;
  readonly example: string;
  readonly meaning: string;
}

export type Field = QuantityField | ChoiceField | AmbientField | IngredientsField | EngineField | TextField;
export type Fields = Readonly<Record<string, Field>>;

export const quantity = (
  kinds: QuantityKind | readonly QuantityKind[],
  range: Range,
  example: string,
  meaning: string,
  rest: { readonly byDefault?: string; readonly optional?: true } = {},
): QuantityField => ({
  is: 'quantity',
  kinds: typeof kinds === 'string' ? [kinds] : kinds,
  range,
  example,
  meaning,
  ...rest,
});

export const degrees = (angle: number): number => (angle * Math.PI) / 180;
export const positive = (words: string): Range => ({ above: 0, words });

/** Area ratios beyond this are outside any nozzle the models were made for. Common practice, no source. */
const areaRatioRange: Range = { above: 1, upTo: 1000, words: 'more than 1 and up to 1000' };
const anglesRange: Range = { above: 0, below: degrees(90), words: 'between 0° and 90°' };
export const altitudeRange: Range = { from: -5000, upTo: 1_000_000, words: '−5 km to 1000 km' };
export const ambientPressureRange: Range = { from: 0, words: '0 Pa or more' };
export const shareRange: Range = { above: 0, upTo: 1, words: 'more than 0 % and up to 100 %' };

const areaRatio = quantity('number', areaRatioRange, '25', 'Exit area divided by throat area, ε = A_e/A_t.');

const bellLength = (meaning: string): QuantityField =>
  quantity('share', { from: 0.6, upTo: 1, words: '60 % to 100 %' }, '80 %', meaning, { byDefault: '80 %' });
const ofReferenceCone = 'as a share of the 15° cone of the same throat and area ratio';
const switchAt = (what: string): AmbientField => ({
  is: 'ambient',
  optional: true,
  example: '12 km',
  meaning: `Where ${what}: an altitude or a pressure. Absent: the best place, where both positions push alike or the larger one begins to flow full.`,
});

/** The nozzle, by `kind`. */
export const nozzleForms = {
  ideal: { areaRatio },
  cone: {
    areaRatio,
    halfAngle: quantity(
      'angle',
      { above: 0, below: degrees(45), words: 'between 0° and 45°' },
      '15 deg',
      'Half-angle of the cone.',
      { byDefault: '15 deg' },
    ),
  },
  bell: {
    areaRatio,
    length: quantity(
      'share',
      { from: 0.6, upTo: 1, words: '60 % to 100 %' },
      '80 %',
      'Length from throat to lip as a share of the 15° cone of the same throat and area ratio.',
      { byDefault: '80 %' },
    ),
    throatAngle: quantity(
      'angle',
      anglesRange,
      '33 deg',
      'Wall angle where the parabola begins, just behind the throat. Absent: that of the greatest vacuum thrust.',
      { optional: true },
    ),
    lipAngle: quantity(
      'angle',
      { from: 0, below: degrees(90), words: '0° or more and less than 90°' },
      '8 deg',
      'Wall angle at the lip. Absent: that of the greatest vacuum thrust.',
      { optional: true },
    ),
  },
  idealBell: {
    areaRatio,
    length: quantity(
      'share',
      { from: 0.4, upTo: 2, words: '40 % to 200 %' },
      '80 %',
      `Length from throat to lip, ${ofReferenceCone}: where the contour is cut. Absent: whole, unless designMach is given.`,
      { optional: true },
    ),
    designMach: quantity(
      'number',
      { above: 1, upTo: 12, words: 'more than 1 and up to 12' },
      '4.5',
      'Instead of `length`: Mach number for which the whole contour is made; it is cut at the area ratio.',
      { optional: true },
    ),
  },
  adapting: { areaRatio },
  extendableSkirt: {
    areaRatio,
    shortAreaRatio: quantity(
      'number',
      areaRatioRange,
      '20',
      'Area ratio where the wall is cut: that of the bell while its skirt is drawn up.',
    ),
    length: bellLength(`Length from throat to lip with the skirt out, ${ofReferenceCone}.`),
    throatAngle: quantity(
      'angle',
      anglesRange,
      '33 deg',
      'Wall angle just behind the throat. Absent: as for a bell.',
      {
        optional: true,
      },
    ),
    lipAngle: quantity(
      'angle',
      { from: 0, below: degrees(90), words: '0° or more and less than 90°' },
      '8 deg',
      'Wall angle at the lip of the skirt. Absent: as for a bell.',
      { optional: true },
    ),
    switchAt: switchAt('the skirt slides out'),
  },
  insert: {
    areaRatio,
    insertAreaRatio: quantity(
      'number',
      areaRatioRange,
      '15',
      'Area ratio of the insert, the small bell that stands inside on the same throat.',
    ),
    length: bellLength(`Length of the bell from throat to lip, ${ofReferenceCone}.`),
    insertLength: bellLength(`Length of the insert, ${ofReferenceCone}.`),
    switchAt: switchAt('the insert drops away'),
  },
  expansionDeflection: {
    areaRatio,
    pintleAreaRatio: quantity(
      'number',
      { from: 0.2, upTo: 100, words: '0.2 to 100' },
      '2',
      'Area of the pintle at the throat divided by the area of the annular throat round it.',
      { byDefault: '2' },
    ),
    length: quantity(
      'share',
      { from: 0.3, upTo: 1.2, words: '30 % to 120 %' },
      '60 %',
      `Length from throat to lip, ${ofReferenceCone}.`,
      { byDefault: '60 %' },
    ),
    throatAngle: quantity(
      'angle',
      { from: degrees(30), upTo: degrees(75), words: '30° to 75°' },
      '60 deg',
      'Angle at which the gas leaves the throat outwards, and at which the outer wall begins.',
      { byDefault: '60 deg' },
    ),
    lipAngle: quantity(
      'angle',
      { from: 0, below: degrees(45), words: '0° or more and less than 45°' },
      '8 deg',
      'Angle of the outer wall at the lip.',
      { byDefault: '8 deg' },
    ),
  },
  dualBell: {
    areaRatio,
    baseAreaRatio: quantity(
      'number',
      areaRatioRange,
      '20',
      'Area ratio at the inflection, where the wall turns outwards: that of the base, the first bell.',
    ),
    baseLength: bellLength(`Length of the base, ${ofReferenceCone}.`),
    throatAngle: quantity(
      'angle',
      anglesRange,
      '33 deg',
      'Wall angle just behind the throat. Absent: as for a bell of the base’s area ratio.',
      { optional: true },
    ),
    baseLipAngle: quantity(
      'angle',
      { from: 0, below: degrees(90), words: '0° or more and less than 90°' },
      '9 deg',
      'Wall angle at the end of the base. Absent: as for a bell of the base’s area ratio.',
      { optional: true },
    ),
    extensionLength: quantity(
      'share',
      { from: 0.5, upTo: 1.2, words: '50 % to 120 %' },
      '80 %',
      'Length of the extension as a share of the 15° cone from the radius of the base to that of the lip; it fixes the turn of the wall at the inflection.',
      { byDefault: '80 %' },
    ),
    inflectionAngle: quantity(
      'angle',
      { above: 0, below: degrees(60), words: 'between 0° and 60°' },
      '15 deg',
      'Instead of `extensionLength`: the angle by which the wall turns outwards at the inflection; it fixes the length.',
      { optional: true },
    ),
    pressureRise: quantity(
      'share',
      { from: 0, upTo: 1, words: '0 % to 100 %' },
      '20 %',
      'How much the wall pressure rises along the extension when it flows full, from behind the inflection to the lip.',
      { byDefault: '0 %' },
    ),
  },
  plug: {
    form: {
      is: 'choice',
      options: ['annular', 'linear'],
      byDefault: 'annular',
      meaning: 'A ring round a body of revolution, or two rows on either side of a wedge.',
    },
    areaRatio: quantity(
      'number',
      areaRatioRange,
      '60',
      'Area inside the lip, base included, divided by throat area.',
    ),
    kept: quantity(
      'share',
      { from: 0, upTo: 1, words: '0 % to 100 %' },
      '30 %',
      'Share of the whole plug’s length that is kept, from where the fan at the lip first meets the plug; 100 % ends in a point.',
      { byDefault: '30 %' },
    ),
    innerMach: quantity(
      'number',
      { from: 1, upTo: 20, words: '1 to 20' },
      '2.2',
      'Mach number that the gas has reached at the lip, inside the cowl; 1: all expansion is outside. Absent: so much that the lip turns the flow by 60°, or 1 where it would turn it by less.',
      { optional: true },
    ),
    aspectRatio: quantity(
      'number',
      { from: 0.1, upTo: 100, words: '0.1 to 100' },
      '2',
      'Linear only: width divided by height from lip to lip. Absent: 2.',
      { optional: true },
    ),
    modules: quantity(
      'number',
      { from: 2, upTo: 1000, words: '2 to 1000, a whole number' },
      '24',
      'Number of small nozzles in place of one throat all round. Absent: one throat.',
      { optional: true },
    ),
    moduleShape: {
      is: 'choice',
      options: ['rectangular', 'round'],
      byDefault: 'rectangular',
      meaning: 'Exit of each of the modules.',
    },
    machOne: quantity(
      'length',
      { above: 0, upTo: 80_000, words: 'more than 0 km and up to 80 km' },
      '9 km',
      'Altitude at which the vehicle passes the speed of sound; its slipstream then lowers the air’s pressure on the plug. Absent: at rest everywhere, as on a test stand.',
      { optional: true },
    ),
  },
} as const satisfies Record<string, Fields>;

export const nozzleMeaning: Readonly<Record<keyof typeof nozzleForms, string>> = {
  ideal: 'One-dimensional flow without losses; it has no wall of its own.',
  cone: 'A straight cone.',
  bell: 'A thrust-optimised parabola with the published wall angles.',
  idealBell:
    'The contour that turns the flow parallel to the axis, shaped by characteristics, whole or cut at the area ratio.',
  adapting:
    'The bound that no altitude-compensating nozzle can beat: its exit pressure matches the ambient up to its area ratio. It has no wall of its own.',
  extendableSkirt:
    'A bell whose rear part, the skirt, is drawn up round the front part at first and slides out on the way.',
  insert: 'A bell in which a smaller one stands at first and drops away on the way.',
  expansionDeflection:
    'An annular throat round a pintle, turned outwards: the gas expands round the pintle’s edge and is turned back along an outer wall. Behind the pintle the wake is open to the air, or closed in thin air.',
  dualBell:
    'A bell whose wall turns outwards into a second one, the extension: in dense air the gas leaves the wall there, in thin air it follows it to the lip. Shaped by characteristics.',
  plug: 'A plug (aerospike): the gas expands along a central body, free to the air on its outer side. Shaped by characteristics, whole or cut.',
};

const diameter = (meaning: string): QuantityField =>
  quantity('length', positive('more than 0 m'), '210 mm', meaning);
const at = (meaning: string): AmbientField => ({ is: 'ambient', example: 'vacuum', meaning });

/** The size, by the key that gives it. */
export const sizeForms = {
  throat: { throat: diameter('Diameter of the throat.') },
  exit: { exit: diameter('Diameter of the exit.') },
  thrust: {
    thrust: quantity('force', positive('more than 0 N'), '800 kN', 'Thrust at the stated place.'),
    at: at('Where the engine gives that thrust. Never assumed.'),
  },
  same: {
    same: {
      is: 'choice',
      options: ['throat', 'exit', 'thrust'],
      meaning: 'What this engine shares with the engine named in `as`.',
    },
    as: { is: 'engine', meaning: 'Id of the other engine.' },
    at: at('With `same: thrust`: where the two thrusts are equal. Not used otherwise.'),
  },
} as const satisfies Record<string, Fields>;

export const sizeMeaning: Readonly<Record<keyof typeof sizeForms, string>> = {
  throat: 'By the diameter of the throat.',
  exit: 'By the diameter of the exit.',
  thrust: 'By a thrust at a stated place.',
  same: 'Taken from another engine of the study.',
};

const blend = (example: string, meaning: string): IngredientsField => ({
  is: 'ingredients',
  example,
  meaning,
});
const gasTemperature = (meaning: string): QuantityField =>
  quantity('temperature', positive('more than 0 K'), '2700 K', meaning);

/** The propellants, by the keys that are there. */
export const propellantForms = {
  burnt: {
    oxidiser: blend('oxygen', 'What the fuel burns with. The spelling `oxidizer` is read too.'),
    fuel: blend('{ ethanol: 75 %, water: 25 % }', 'What is burnt.'),
    ratio: quantity(
      'number',
      positive('more than 0'),
      '3.5 ± 0.05',
      'Mixture ratio: mass flow of oxidiser divided by mass flow of fuel.',
    ),
    equivalenceRatio: quantity(
      'number',
      positive('more than 0'),
      '1.1',
      'Instead of `ratio`: fuel per oxidiser divided by what burns completely; above 1 is fuel-rich.',
    ),
  },
  mixed: {
    mixture: blend(
      '{ AP: 68 %, Al: 18 %, HTPB: 14 % }',
      'Shares by mass of one mixture: a solid propellant, or a liquid that burns or decomposes alone.',
    ),
  },
  heated: {
    gas: blend('hydrogen', 'A gas that is heated instead of burnt.'),
    temperature: gasTemperature('Temperature to which it is brought.'),
  },
  perfect: {
    gamma: quantity(
      'number',
      { above: 1, upTo: 1.67, words: 'more than 1 and up to 1.67' },
      '1.2',
      'Ratio of specific heats γ = cp/cv.',
    ),
    molarMass: quantity(
      'molarMass',
      { from: 0.0005, upTo: 1, words: '0.5 g/mol to 1000 g/mol' },
      '22 g/mol',
      'Molar mass.',
    ),
    temperature: gasTemperature('Temperature in the chamber.'),
  },
} as const satisfies Record<string, Fields>;

export const propellantMeaning: Readonly<Record<keyof typeof propellantForms, string>> = {
  burnt: 'An oxidiser and a fuel, burnt together.',
  mixed: 'One mixture by shares of mass.',
  heated: 'A gas heated instead of burnt.',
  perfect: 'A calorically perfect gas, for teaching and checks.',
};

/** Defaults of the chamber are common practice, no source: they size the picture and the chamber, not the thrust. */
export const chamberFields = {
  pressure: quantity(
    'pressure',
    positive('more than 0 Pa'),
    '100 bar',
    'Stagnation pressure of the chamber, absolute.',
  ),
  pressureAt: {
    is: 'choice',
    options: ['nozzle', 'injector'],
    byDefault: 'nozzle',
    meaning:
      'Where that pressure is meant: at the inlet of the nozzle, or at the injector face, from which the loss of burning in a duct of finite contraction is then taken off.',
  },
  efficiency: quantity(
    'share',
    { above: 0, upTo: 1, words: 'more than 0 % and up to 100 %' },
    '97.5 ± 1 %',
    'Share of the ideal characteristic velocity that the combustion reaches. Absent: 98.75 %, the middle of a published band, with a warning; 100 % with losses: none and where nothing burns.',
    { byDefault: '98.75 %' },
  ),
  contractionRatio: quantity(
    'number',
    { above: 1, upTo: 100, words: 'more than 1 and up to 100' },
    '3',
    'Chamber area divided by throat area. Where the default does not suit a very wide or narrow throat, the one usual for it, 8 d^−0.6 + 1.25 with d in cm, is drawn, and said.',
    { byDefault: '3' },
  ),
  characteristicLength: quantity(
    'length',
    positive('more than 0 m'),
    '1 m',
    'Characteristic length L*: chamber volume divided by throat area. Where the default is too short for a wide throat, a longer one is drawn, and said.',
    { byDefault: '1 m' },
  ),
  convergingAngle: quantity('angle', anglesRange, '30 deg', 'Half-angle of the converging cone.', {
    byDefault: '30 deg',
  }),
} as const satisfies Fields;

export const lossesField = {
  is: 'choice',
  options: ['default', 'none'],
  byDefault: 'default',
  meaning:
    'Whether thrust and specific impulse have the losses of the nozzle taken off: flow not along the axis, friction on the wall, slow chemistry, drops that lag. A stated efficiency of the combustion counts either way; none stated is 100 % with losses: none.',
} as const satisfies ChoiceField;

/** Forms of `chemistry`. */
export const chemistryWords = ['shifting', 'frozen'] as const;
export const frozenFromFields = {
  areaRatio: quantity(
    'number',
    { from: 1, upTo: 1000, words: '1 to 1000' },
    '3',
    'Area ratio behind the throat up to which the composition follows.',
  ),
  pressure: quantity(
    'pressure',
    positive('more than 0 Pa'),
    '5 bar',
    'Static pressure down to which the composition follows.',
  ),
} as const satisfies Fields;

/** An ingredient described in the study itself. */
export const ingredientFields = {
  formula: {
    is: 'text',
    example: 'C10H18',
    meaning: 'Chemical formula; fractional subscripts and brackets are read: CH1.95, (NH4)ClO4.',
  },
  enthalpy: quantity(
    ['energyPerMass', 'energyPerMole'],
    { words: 'any' },
    '-50 kJ/mol',
    'Enthalpy as fed, elements in their reference state at 298.15 K and 1 bar being zero; per mass, or per mole of the formula.',
  ),
  temperature: quantity('temperature', positive('more than 0 K'), '298.15 K', 'Temperature as fed.'),
  density: quantity('density', positive('more than 0 kg/m³'), '870 kg/m³', 'Density as stored.', {
    optional: true,
  }),
} as const satisfies Fields;

export const topKeys = [
  'plumeline',
  'question',
  'engines',
  'vehicles',
  'compare',
  'altitudes',
  'ambients',
  'ingredients',
  'sentences',
  'facts',
  'analogies',
  'sweeps',
  'maps',
  'needs',
  'measured',
  'package',
  'sources',
] as const;
export const engineKeys = [
  'name',
  'like',
  'propellants',
  'chemistry',
  'chamber',
  'nozzle',
  'size',
  'losses',
  'cooling',
  'cycle',
  'published',
] as const;
export const compareKeys = ['base', 'other'] as const;
export const sentenceKeys = ['id', 'say', 'said', 'holds', 'sources'] as const;
export const factKeys = ['id', 'say', 'value', 'at', 'sources', 'disagree'] as const;
export const disagreeKeys = ['values', 'chosen', 'because'] as const;
export const analogyKeys = [
  'id',
  'say',
  'said',
  'stands',
  'legs',
  'holdsFor',
  'breaksWhere',
  'sources',
] as const;
export const standsKeys = ['this', 'for', 'relation'] as const;
export const legKeys = ['say', 'main', 'holds', 'as'] as const;
export const courseKeys = ['of', 'over', 'from', 'to', 'goes'] as const;
export const breakKeys = ['say', 'when'] as const;
export const sourceKeys = ['title', 'author', 'year', 'where'] as const;

/** Ids of engines and ingredients take part in plain algebra, so they are words without dashes or spaces. */
export const ENGINE_ID = /^[A-Za-z][A-Za-z0-9_]{0,39}$/;
/** Ids of sentences, sources and ingredients. */
export const PLAIN_ID = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}$/;
/** Words with a meaning of their own in a sentence's test, and names that every JavaScript object already has. */
export const reservedIds: ReadonlySet<string> = new Set([
  'and',
  'or',
  'not',
  'true',
  'false',
  'vacuum',
  ...Object.getOwnPropertyNames(Object.prototype),
]);
