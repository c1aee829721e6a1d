/** A test for what a claim probably means. It is proposed only if it compiles; what it takes for granted is told. */

import type { Study } from '../../study/model.ts';
import { needsOf } from '../asked/askProblem.ts';
import { type CatalogueEntry, quantity } from '../catalogue.ts';
import { exponentsOf, sameDimension } from '../expression/dimensions.ts';
import { compileTest, scopeOf } from '../expression/index.ts';
import type { NumberInProse } from '../sentences/numbersInWords.ts';
import type { Claim } from './model.ts';
import { enginesSaid, placesSaid, type Signs, valuesSaid } from './signs.ts';

export type Proposal = Pick<Claim, 'test' | 'assumed' | 'whyNot'>;

const none = (whyNot: string): Proposal => ({ test: null, assumed: [], whyNot });

export function proposeTest(
  claim: Pick<Claim, 'say' | 'kind' | 'quantities' | 'engines'>,
  signs: Signs,
  study: Pick<Study, 'engines' | 'vehicles'> | null,
): Proposal {
  if (study === null) return none('No study is named whose engines could be asked.');
  if (signs.denies === 'unclear' && claim.kind !== 'number') {
    return none(DENIES);
  }
  const [likeliest] = claim.quantities;
  if (likeliest === undefined) return none('No quantity of the catalogue is recognised in it.');
  const draft = new Draft(claim, signs, study, quantity(likeliest.quantity));
  const written = draft.written();
  if ('why' in written) return none(written.why);
  const compiled = compileTest(written.test, scopeOf(study));
  if (!compiled.ok) return none(`The test that suggests itself cannot be used: ${compiled.problem.what}`);
  return { test: written.test, assumed: draft.assumed, whyNot: null };
}

type Written = { readonly test: string } | { readonly why: string };

const OVER_ALL = 'for every z from pad to vacuum: ';
const DENIES = 'The sentence denies something; what must hold is to be written by hand.';
const DENYING = /\b(?:not|never|no|cannot|hardly)\b|n[’']t\b/i;
/** What a denied relation to a number becomes. */
const BOUNDS: ReadonlySet<string> = new Set(['is at most', 'is at least', 'is less than']);
const SOMEWHERE = 'for some z from pad to vacuum: ';

/** The test that holds where this one does not. */
function turned(test: string): string {
  const parts = / (>|<) /.exec(test);
  const single = parts !== null && !test.includes(' and ');
  if (single) return test.replace(parts[0], parts[1] === '>' ? ' <= ' : ' >= ');
  return `not (${test})`;
}

class Draft {
  readonly assumed: string[] = [];
  /** The relation to a number has the denial in it. */ #turnedAlready = false;
  readonly #say: string;
  readonly #claim: Pick<Claim, 'kind' | 'engines'>;
  readonly #signs: Signs;
  readonly #ids: readonly string[];
  readonly #engines: Study['engines'];
  readonly #entry: CatalogueEntry;
  readonly #places: readonly string[];

  constructor(
    claim: Pick<Claim, 'say' | 'kind' | 'engines'>,
    signs: Signs,
    { engines }: Pick<Study, 'engines'>,
    entry: CatalogueEntry,
  ) {
    this.#say = claim.say;
    this.#claim = claim;
    this.#signs = signs;
    this.#engines = engines;
    this.#ids = engines.map(({ id }) => id);
    this.#entry = entry;
    this.#places = placesSaid(claim.say).map(({ written }) => written);
  }

  written(): Written {
    if (this.#entry.place === 'air') return this.#number('air');
    const pair = this.#itAgainst();
    if (pair !== null) return this.#pair(this.#side(pair.it), this.#side(pair.other));
    const one = this.#claim.engines[0] ?? (this.#ids.length === 1 ? this.#ids[0]! : null);
    if (one === null) return { why: 'It does not say which engine of the study is meant.' };
    if (this.#claim.engines.length === 0) this.assumed.push(`meant is ${one}, the only engine`);
    const { direction, superlative } = this.#signs;
    if (superlative !== null) return this.#superlative(one, superlative);
    if (direction === null) return this.#number(one);
    const [, other] = this.#claim.engines;
    if (other !== undefined) return this.#pair(this.#side(one), this.#side(other));
    const [here, there] = this.#places;
    if (this.#needsPlace() && here !== undefined && there !== undefined) {
      return this.#pair(this.#told(one, here), this.#told(one, there));
    }
    if (this.#value() !== null && direction !== 'times') return this.#number(one);
    return { why: 'It does not say with which engine of the study, or which place, it is compared.' };
  }

  /** “it gets more than the short one”: of two engines, the one that is not named behind “than”. */
  #itAgainst(): { readonly it: string; readonly other: string } | null {
    const than = this.#say.search(/\bthan\b/i);
    const [other, second] = this.#claim.engines;
    if (than < 0 || other === undefined || second !== undefined || this.#engines.length !== 2) return null;
    const isBehind = enginesSaid(this.#say.slice(than), this.#engines).includes(other);
    const isBefore = enginesSaid(this.#say.slice(0, than), this.#engines).includes(other);
    const it = this.#engines.find(({ id }) => id !== other)?.id;
    if (!isBehind || isBefore || it === undefined) return null;
    this.#assume(`compared is ${it}, the only other engine`);
    return { it, other };
  }

  #needsPlace(): boolean {
    return needsOf(this.#entry).ambient;
  }

  #told(engine: string, place: string | null): string {
    const name = this.#entry.place === 'air' ? this.#entry.name : `${engine}.${this.#entry.name}`;
    return place === null ? name : `${name}(${place})`;
  }

  /** At the place that is named; where it is always, at every place. */
  #side(engine: string): string {
    if (!this.#needsPlace()) return this.#told(engine, null);
    if (this.#claim.kind === 'absolute') return this.#told(engine, 'z');
    const [place] = this.#places;
    if (place === undefined) this.#assume('in vacuum, for it names no surroundings');
    return this.#told(engine, place ?? 'vacuum');
  }

  #assume(text: string): void {
    if (!this.assumed.includes(text)) this.assumed.push(text);
  }

  #ranged(test: string): Written {
    const { denies } = this.#signs;
    if (denies === 'always') {
      if (!test.includes('(z)'))
        return { why: 'It is not always so, but of what it does not hang on is not said.' };
      this.#assume('“not always” is taken as: somewhere on the way from the pad to vacuum it is not so');
      return { test: `${SOMEWHERE}${turned(test)}` };
    }
    if (denies === 'it' && !this.#turnedAlready) {
      this.#assume('it is denied, so the test is of the opposite');
      return this.#overAll(turned(test));
    }
    return this.#overAll(test);
  }

  #overAll(test: string): Written {
    return { test: test.includes('(z)') ? `${OVER_ALL}${test}` : test };
  }

  #pair(one: string, other: string): Written {
    const { direction } = this.#signs;
    const share = valuesSaid(this.#say).find((number) => number.share);
    if (direction === 'same') return this.#ranged(`${one} is about ${other}`);
    if (direction === 'times') {
      if (share === undefined) return { why: 'It does not say how many times.' };
      return this.#ranged(`${one} is about ${plainNumber(share.value)} * ${other}`);
    }
    const sign = direction === '<' ? -1 : 1;
    if (share !== undefined && !share.times) {
      this.#assume('the share is meant roughly, within 5 % of the whole');
      return this.#ranged(`${one} is about ${plainNumber(1 + sign * share.value)} * ${other}`);
    }
    const amount = this.#value();
    if (amount !== null) {
      const [more, less] = sign > 0 ? [one, other] : [other, one];
      return this.#ranged(`${more} - ${less} is roughly ${this.#literal(amount)}`);
    }
    return this.#ranged(`${one} ${direction ?? '>'} ${other}`);
  }

  #superlative(one: string, sign: '>' | '<'): Written {
    const others = this.#ids.filter((id) => id !== one);
    if (others.length === 0) return { why: 'It claims the most of all, but the study has no other engine.' };
    this.#assume('of the engines of this study alone');
    const sides = others.map((other) => `${this.#side(one)} ${sign} ${this.#side(other)}`);
    return this.#ranged(sides.join(' and '));
  }

  #number(one: string): Written {
    const value = this.#value();
    if (value === null)
      return { why: 'No number in it has the unit of the quantity, and nothing is compared.' };
    const relation = this.#relation(value);
    if (this.#turnedAlready && !BOUNDS.has(relation)) return { why: DENIES };
    return this.#ranged(`${this.#side(one)} ${relation} ${this.#literal(value)}`);
  }

  /** A number of the quantity's dimension. */
  #value(): NumberInProse | null {
    const own = exponentsOf(this.#entry.dimension);
    return (
      valuesSaid(this.#say).find(({ dimension }) => own !== null && sameDimension(dimension, own)) ?? null
    );
  }

  #relation({ text }: NumberInProse): string {
    const before = this.#say.slice(0, Math.max(0, this.#say.indexOf(text)));
    this.#turnedAlready = DENYING.test(before.replace(/^.*[,;:]/s, ''));
    if (/(?:\b(?:never|not|cannot)|n[’']t)\s+(?:\w+\s+)?reach(?:es)?\s+(?:\w+\s+)?$/i.test(before))
      return 'is less than';
    if (/\b(?:never|not|no)\s+(?:\w+\s+){0,2}?(?:more|above|over|exceeds?)(?:\s+than)?\s+$/i.test(before))
      return 'is at most';
    if (/\b(?:never|not|no)\s+(?:\w+\s+){0,2}?(?:less|below|under)(?:\s+than)?\s+$/i.test(before))
      return 'is at least';
    if (/\b(?:more than|over|above|exceed(?:s|ing)?|higher than|greater than)\s+$/i.test(before))
      return 'is more than';
    if (/\b(?:less than|under|below|lower than)\s+$/i.test(before)) return 'is less than';
    if (/\bat least\s+$/i.test(before)) return 'is at least';
    if (/\b(?:at most|up to)\s+$/i.test(before)) return 'is at most';
    return 'is about';
  }

  #literal({ value }: NumberInProse): string {
    const { symbol, perSI } = this.#entry.unit;
    return `${plainNumber(value * perSI)} ${symbol}`.trim();
  }
}

const plainNumber = (value: number): string => String(Number(value.toPrecision(6)));
