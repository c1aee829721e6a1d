/** What may be published of an engine: the names, the kinds of value, and whether a place belongs to it. */
import type { AmbientField, ChoiceField, Fields, QuantityField, Range, TextField } from './form.ts';
import type { Ambient, SettledInput } from './model.ts';
import type { QuantityKind } from './unitTable.ts';

export interface PublishedKind {
  /** Name in the catalogue, without its place. */ readonly quantity: string;
  readonly kinds: readonly QuantityKind[];
  /** True where the value belongs to a place: vacuum, sea level, an altitude, an outside pressure. */
  readonly placed: boolean;
  readonly example: string;
}

const kind = (
  quantity: string,
  kinds: QuantityKind | readonly QuantityKind[],
  example: string,
  placed = false,
): PublishedKind => ({ quantity, kinds: typeof kinds === 'string' ? [kinds] : kinds, placed, example });

/** By the plain name; the name in the catalogue is read too. */
export const publishedKinds: Readonly<Record<string, PublishedKind>> = {
  thrust: kind('thrust', 'force', '800 kN', true),
  specificImpulse: kind('specificImpulse', ['time', 'speed'], '331 s', true),
  thrustCoefficient: kind('thrustCoefficient', 'number', '1.83', true),
  massFlow: kind('massFlow', 'massFlow', '235 kg/s'),
  chamberPressure: kind('chamber.pressure', 'pressure', '100 bar'),
  chamberTemperature: kind('chamber.temperature', 'temperature', '3550 K'),
  molarMass: kind('chamber.molarMass', 'molarMass', '22.1 g/mol'),
  bulkDensity: kind('chamber.bulkDensity', 'density', '830 kg/m³'),
  mixtureRatio: kind('propellants.ratio', 'number', '3.5'),
  characteristicVelocity: kind('characteristicVelocity', 'speed', '1790 m/s'),
  efficiency: kind('chamber.efficiency', 'share', '97.5 %'),
  areaRatio: kind('areaRatio', 'number', '25'),
  throatDiameter: kind('throat.diameter', 'length', '236 mm'),
  throatArea: kind('throat.area', 'area', '438 cm²'),
  throatPressure: kind('throat.pressure', 'pressure', '57 bar'),
  throatTemperature: kind('throat.temperature', 'temperature', '3370 K'),
  exitDiameter: kind('exit.diameter', 'length', '1.18 m'),
  exitArea: kind('exit.area', 'area', '1.09 m²'),
  exitPressure: kind('exit.pressure', 'pressure', '0.4 bar'),
  exitTemperature: kind('exit.temperature', 'temperature', '1900 K'),
  exitMach: kind('exit.mach', 'number', '3.6'),
  nozzleLength: kind('contour.nozzleLength', 'length', '1.4 m'),
  totalLength: kind('contour.totalLength', 'length', '1.9 m'),
  chamberLength: kind('contour.chamberLength', 'length', '0.5 m'),
};

export interface NamedKind {
  readonly name: string;
  readonly kind: PublishedKind;
  /** The place that the name itself states: `vacuum.thrust`. */ readonly place:
    | Ambient['kind']
    | 'sea level'
    | null;
}

const byCatalogueName = new Map(
  Object.entries(publishedKinds).map(([name, known]) => [known.quantity, { name, kind: known }]),
);

/** The kind of a plain name or of a name in the catalogue, `vacuum.` and `seaLevel.` in front included. */
export function publishedKindOf(name: string): NamedKind | null {
  const plain = Object.hasOwn(publishedKinds, name) ? publishedKinds[name] : undefined;
  if (plain !== undefined) return { name, kind: plain, place: null };
  const known = byCatalogueName.get(name);
  if (known !== undefined) return { ...known, place: null };
  const [, prefix, rest = ''] = /^(vacuum|seaLevel)\.(.+)$/.exec(name) ?? [];
  const placed = byCatalogueName.get(rest);
  if (prefix === undefined || placed === undefined || !placed.kind.placed) return null;
  return { ...placed, place: prefix === 'vacuum' ? 'vacuum' : 'sea level' };
}

/** Every name that is read, for messages and for the nearest one. */
export const publishedNames: readonly string[] = Object.keys(publishedKinds);

export const publishedRange: Range = { above: 0, words: 'more than 0' };

export const publishedFields = {
  quantity: {
    is: 'choice',
    options: publishedNames,
    meaning:
      'What is published. The name in the catalogue is read too: `chamber.pressure`, `vacuum.thrust`, `seaLevel.specificImpulse`.',
  } satisfies ChoiceField,
  value: {
    is: 'quantity',
    kinds: [],
    range: publishedRange,
    example: '800 ± 5 kN',
    meaning:
      'The figure as published, with its unit, and its ± where one is given. A specific impulse may be in seconds or as a speed (m/s, N·s/kg), which is divided by standard gravity.',
  } satisfies QuantityField,
  at: {
    is: 'ambient',
    example: 'vacuum',
    meaning:
      'Where the figure holds: needed for thrust, specific impulse and thrust coefficient, and not allowed beside what is the same everywhere.',
  } satisfies AmbientField,
  source: {
    is: 'text',
    example: 'data-sheet',
    meaning: 'Where it was published: a key of the study’s `sources`, or the citation in words.',
  } satisfies TextField,
} as const satisfies Fields;

export const publishedRowKeys = Object.keys(publishedFields);

export const solveForField = {
  is: 'choice',
  options: ['areaRatio', 'chamberPressure', 'throatDiameter', 'massFlow', 'efficiency'],
  meaning:
    'The one input that the rows shall settle. Where the engine does not state it, the engine takes what is found; where it does, the two are set side by side.',
} as const satisfies ChoiceField & { readonly options: readonly SettledInput[] };

/** Where in an engine an input that may be settled stands, and with what the search begins. */
export const settledAt: Readonly<
  Record<
    SettledInput,
    {
      readonly section: 'nozzle' | 'chamber' | 'size';
      readonly key: string;
      readonly start: string;
    }
  >
> = {
  areaRatio: { section: 'nozzle', key: 'areaRatio', start: '10' },
  chamberPressure: { section: 'chamber', key: 'pressure', start: '50 bar' },
  throatDiameter: { section: 'size', key: 'throat', start: '100 mm' },
  massFlow: { section: 'size', key: 'throat', start: '100 mm' },
  efficiency: { section: 'chamber', key: 'efficiency', start: '100 %' },
};

export const SETTLED_TEXT = 'from the rows';
