/**
 * The sections of an engine (propellants, chamber, nozzle, size) before they are read: which form they take, and
 * what an engine gets from the one it is like.
 *
 * Rule of inheritance: a section that is not given is taken whole. A section that is given in the same form is
 * merged key by key. A section given in another form (another kind of nozzle, a size by another key, other
 * propellants) starts afresh.
 */
import { isScalar } from 'yaml';
import { type Cursor, describeFound, type Entries, entriesAt, keyOffset, offsetAt } from './cursor.ts';
import type { CycleKind } from './cycleForm.ts';
import { nozzleForms, type propellantForms, type sizeForms } from './form.ts';
import type { EngineInput } from './model.ts';
import { nearestName } from './nearest.ts';
import { listNames, quote, type Report } from './report.ts';

export interface GivenSection<Form extends string> {
  readonly form: Form;
  /** Own keys over inherited ones. */ readonly entries: Entries;
  /** The section as written in this engine, or in the engine it comes from. */ readonly cursor: Cursor;
  /** True where an inherited key had a problem that has been told: what is missing then is not told again. */
  readonly silent: boolean;
}

/** A section without a readable form; that has been reported, and what depends on it is left out silently. */
export const BROKEN = Symbol('reported');
export type Section<Form extends string> = GivenSection<Form> | typeof BROKEN | null;

export interface EngineSections {
  readonly propellants: Section<keyof typeof propellantForms>;
  readonly chamber: Section<'chamber'>;
  readonly nozzle: Section<keyof typeof nozzleForms>;
  readonly size: Section<keyof typeof sizeForms>;
  readonly cooling: Section<'cooling'>;
  readonly cycle: Section<CycleKind>;
  /** Single values: the cursor, own or inherited. */
  readonly chemistry: Cursor | null;
  readonly losses: Cursor | null;
}

/** An engine as far as it could be read. */
export interface EngineDraft {
  readonly sections: EngineSections;
  readonly engine: EngineInput | null;
}

export type FormOf<Form extends string> = (
  entries: Entries,
  inherited: Form | null,
  cursor: Cursor,
  report: Report,
) => Form | null;

/**
 * The section `cursor` (null: not given) over the one that is inherited.
 * `replaces`: pairs of keys of which one of the two drives out the other.
 */
export function mergeSection<Form extends string>(
  cursor: Cursor | null,
  inherited: Section<Form>,
  expected: string,
  mend: string,
  formOf: FormOf<Form>,
  report: Report,
  replaces: readonly (readonly [string, string])[] = [],
  spell: (entries: Entries, report: Report) => Entries = (entries) => entries,
): Section<Form> {
  if (cursor === null) return inherited;
  const written = entriesAt(cursor, expected, mend, report);
  if (written === null) return BROKEN;
  const entries = spell(written, report);
  const base = inherited === BROKEN ? null : inherited;
  const form = formOf(entries, base?.form ?? null, cursor, report);
  if (form === null) return BROKEN;
  if (base === null || base.form !== form) return { form, entries, cursor, silent: inherited === BROKEN };
  const merged = new Map(base.entries);
  for (const [one, other] of replaces) {
    if (entries.has(one)) merged.delete(other);
    if (entries.has(other)) merged.delete(one);
  }
  for (const [key, value] of entries) merged.set(key, value);
  return { form, entries: merged, cursor, silent: base.silent };
}

type NozzleKind = keyof typeof nozzleForms;
const nozzleKinds = Object.keys(nozzleForms) as NozzleKind[];

/** What else the trade calls a kind of nozzle, in lower case. */
const OTHER_NAMES: ReadonlyMap<string, NozzleKind> = new Map([
  ['aerospike', 'plug'],
  ['spike', 'plug'],
  ['conical', 'cone'],
  ['parabola', 'bell'],
  ['parabolic', 'bell'],
  ['e-d', 'expansionDeflection'],
]);

/** The kind of nozzle as written under `kind`, or the inherited one. */
export const nozzleFormOf =
  (baseBroken: boolean): FormOf<NozzleKind> =>
  (entries, inherited, cursor, report) => {
    const at = entries.get('kind');
    if (at === undefined) {
      if (inherited === null && !baseBroken) {
        report.problem(
          {
            code: 'key-missing',
            what: `${quote(cursor.path)} has no kind.`,
            mend: `Give kind as ${listNames(nozzleKinds)}.`,
          },
          `${cursor.path}.kind`,
          keyOffset(cursor),
        );
      }
      return inherited;
    }
    const word = isScalar(at.node) ? String(at.node.value).trim() : null;
    const kind = nozzleKinds.find((k) => k === word);
    if (kind !== undefined) return kind;
    const near =
      word === null ? null : (OTHER_NAMES.get(word.toLowerCase()) ?? nearestName(word, nozzleKinds));
    report.problem(
      {
        code: 'word-unknown',
        what: `${describeFound(at)} is not a known kind of nozzle.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}Allowed here: ${listNames(nozzleKinds)}.`,
      },
      at.path,
      offsetAt(at),
    );
    return null;
  };

const sizeLeads = ['throat', 'exit', 'thrust', 'same'] as const satisfies readonly (keyof typeof sizeForms)[];
type SizeForm = (typeof sizeLeads)[number];

/** Which of the four keys that lead a size is there. */
export const sizeFormOf =
  (baseBroken: boolean): FormOf<SizeForm> =>
  (entries, inherited, cursor, report) => {
    const leads = [...entries.keys()].flatMap((key) => sizeLeads.find((lead) => lead === key) ?? []);
    if (leads.length === 1) return leads[0]!;
    if (leads.length > 1) {
      const second = entries.get(leads[1]!)!;
      report.problem(
        {
          code: 'size-two-ways',
          what: `${quote(cursor.path)} is given in ${leads.length} ways: ${leads.join(', ')}.`,
          mend: 'Keep one; the others follow from it.',
        },
        second.path,
        keyOffset(second),
      );
      return null;
    }
    if (inherited === null && !baseBroken) {
      report.problem(
        {
          code: 'key-missing',
          what: `${quote(cursor.path)} has none of ${listNames(sizeLeads)}.`,
          mend: 'Write { throat: 210 mm }, { exit: 1.2 m }, { thrust: 800 kN, at: vacuum } or { same: throat, as: … }.',
        },
        cursor.path,
        keyOffset(cursor),
      );
    }
    return inherited;
  };

type PropellantForm = keyof typeof propellantForms;

const propellantLeads: Readonly<Record<string, PropellantForm>> = {
  oxidiser: 'burnt',
  fuel: 'burnt',
  ratio: 'burnt',
  equivalenceRatio: 'burnt',
  mixture: 'mixed',
  gas: 'heated',
  gamma: 'perfect',
  molarMass: 'perfect',
};

/** Which form of propellants the keys belong to; `temperature` alone belongs to the inherited one. */
export const propellantFormOf =
  (baseBroken: boolean): FormOf<PropellantForm> =>
  (entries, inherited, cursor, report) => {
    let form: PropellantForm | null = null;
    let first = '';
    for (const [key, at] of entries) {
      const belongs = propellantLeads[key];
      if (belongs === undefined || belongs === form) continue;
      if (form !== null) {
        report.problem(
          {
            code: 'propellants-two-ways',
            what: `${quote(first)} and ${quote(key)} do not go together in ${quote(cursor.path)}.`,
            mend: `Write one form: oxidiser, fuel and ratio; mixture; gas and temperature; or gamma, molarMass and temperature.`,
          },
          at.path,
          keyOffset(at),
        );
        return null;
      }
      form = belongs;
      first = key;
    }
    if (form === null && inherited === null && !baseBroken) {
      report.problem(
        {
          code: 'key-missing',
          what: `${quote(cursor.path)} names no propellants.`,
          mend: 'Write { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, { mixture: { AP: 68 %, Al: 18 %, HTPB: 14 % } }, { gas: hydrogen, temperature: 2700 K } or { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }.',
        },
        cursor.path,
        keyOffset(cursor),
      );
    }
    return form ?? inherited;
  };

/** The chamber has one form only. */
export const chamberFormOf: FormOf<'chamber'> = () => 'chamber';

/** Cooling has one form only. */
export const coolingFormOf: FormOf<'cooling'> = () => 'cooling';

/** `oxidizer` is another spelling of `oxidiser`. */
export function spellOxidiser(entries: Entries, report: Report): Entries {
  const other = entries.get('oxidizer');
  if (other === undefined) return entries;
  if (entries.has('oxidiser')) {
    report.problem(
      { code: 'key-twice', what: 'Both oxidiser and oxidizer are given.', mend: 'Keep one of the two.' },
      other.path,
      keyOffset(other),
    );
  }
  const spelt = new Map(entries);
  spelt.delete('oxidizer');
  if (!spelt.has('oxidiser')) spelt.set('oxidiser', other);
  return spelt;
}
