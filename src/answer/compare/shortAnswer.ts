/** The short answer: what the numbers of this study say, in plain English, and no more than they say. */

import { attempt } from '../../numerics/problem.ts';
import { figuresAt, figuresAtAltitude } from '../conditions.ts';
import { engineFiguresAt } from '../cycle/cycleFigures.ts';
import type { Comparison, ShortAnswer } from '../model.ts';
import type { EngineSolution } from '../solution.ts';
import { fullFrom } from './crossings.ts';
import { listed, spokenAltitude, spokenSeconds, spokenShare } from './speech.ts';

/** Differences below this share are not worth a word: the models are not that good. */
const WORTH_SAYING = 5e-4;

/** Two engines as the short answer sees them. */
interface Pair {
  readonly base: EngineSolution;
  readonly other: EngineSolution;
  readonly pad: Lead | null;
  readonly vacuum: Lead | null;
  readonly crossings: readonly number[];
}

/** By how much one engine leads the other in specific impulse. */
interface Lead {
  /** [s] other minus base */ readonly seconds: number;
  readonly share: number;
}

export function shortAnswerOf(
  base: EngineSolution,
  other: EngineSolution,
  crossings: Comparison['crossings'],
): ShortAnswer {
  const pair: Pair = {
    base,
    other,
    pad: leadBetween(padImpulse(base), padImpulse(other)),
    vacuum: leadBetween(vacuumImpulse(base), vacuumImpulse(other)),
    crossings,
  };
  const bound = boundOf(pair);
  const answer = bound !== null ? againstBound(pair, bound) : withoutBound(pair);
  const text = `${answer.text.replace(/\.$/, '')}${ifItStayed(pair)}.`;
  const whole = wholeLead(pair);
  if (whole === null) return { ...answer, text };
  const alike = pair.pad !== null && pair.vacuum !== null && isNothing(pair.pad) && isNothing(pair.vacuum);
  return {
    verdict: alike ? 'Alike in the chamber, not as whole engines' : answer.verdict,
    text: `${text} That is of the thrust chambers; with what their cycles dump, ${ahead(whole, pair)} gives ${amount(whole)} more in vacuum.`,
  };
}

/** Lead of the whole engines in vacuum, where both say how they are pumped and one dumps something worth a word. */
function wholeLead({ base, other, vacuum }: Pair): Lead | null {
  if (base.input.cycle === null || other.input.cycle === null || vacuum === null) return null;
  const impulses = attempt(() =>
    [base, other].map((engine) => engineFiguresAt(engine, 0, null).specificImpulse),
  );
  if (!impulses.ok) return null;
  const lead = leadBetween(impulses.value[0]!, impulses.value[1]!);
  if (lead === null || isNothing(lead)) return null;
  return Math.abs(lead.share - vacuum.share) < WORTH_SAYING ? null : lead;
}

function withoutBound(pair: Pair): ShortAnswer {
  const { crossings } = pair;
  if (pair.pad === null) return withoutPad(pair);
  if (pair.vacuum === null) return withoutVacuum(pair);
  if (isNothing(pair.pad) && isNothing(pair.vacuum) && crossings.length === 0) return noDifference(pair);
  return crossings.length === 0
    ? oneLeads(pair.pad, pair.vacuum, pair)
    : leadChanges(pair.pad, pair.vacuum, pair);
}

/** What a number at the pad supposes where gas would let go of a wall there. */
function ifItStayed({ base, other, pad }: Pair): string {
  if (pad === null) return '';
  const who = [base, other].filter(
    (engine) => figuresAtAltitude(engine, 0).at.flow.state === 'separated' && padImpulse(engine) !== null,
  );
  const held = who.filter(({ nozzle }) => nozzle.spec.kind === 'ideal');
  const free = who.filter(({ nozzle }) => nozzle.spec.kind !== 'ideal');
  const words: string[] = [];
  if (held.length > 0) {
    words.push(
      `the number of ${namesOf(held)} at the pad supposes gas that stays on a wall it would let go of`,
    );
  }
  if (free.length > 0) {
    const from = listed(free.map(fromWhereFull).filter((text) => text !== ''));
    words.push(
      `at the pad the gas lets go of the wall of ${namesOf(free)}, which makes its number there the less sure${from === '' ? '' : `, and ${from}`}`,
    );
  }
  return words.map((text) => `; ${text}`).join('');
}

function namesOf(engines: readonly EngineSolution[]): string {
  return listed(engines.map((engine) => engine.input.name));
}

function padImpulse(engine: EngineSolution): number | null {
  return figuresAtAltitude(engine, 0).figures.specificImpulse;
}

function vacuumImpulse(engine: EngineSolution): number | null {
  return figuresAt(engine, 0, null).figures.specificImpulse;
}

function leadBetween(base: number | null, other: number | null): Lead | null {
  if (base === null || other === null) return null;
  return { seconds: other - base, share: (other - base) / Math.abs(base) };
}

function isNothing(lead: Lead): boolean {
  return Math.abs(lead.share) < WORTH_SAYING;
}

/** `12 s (4 %)` */
function amount(lead: Lead): string {
  return `${spokenSeconds(lead.seconds)} (${spokenShare(lead.share)})`;
}

function names(pair: Pair): { readonly base: string; readonly other: string } {
  return { base: pair.base.input.name, other: pair.other.input.name };
}

function ahead(lead: Lead, pair: Pair): string {
  return lead.seconds > 0 ? names(pair).other : names(pair).base;
}

function behind(lead: Lead, pair: Pair): string {
  return lead.seconds > 0 ? names(pair).base : names(pair).other;
}

function noDifference(pair: Pair): ShortAnswer {
  const { base, other } = names(pair);
  const pad = padImpulse(pair.base) as number;
  const vacuum = vacuumImpulse(pair.base) as number;
  return {
    verdict: 'No difference per kilogram of propellant',
    text: `${base} and ${other} have the same specific impulse from the pad (${spokenSeconds(pad)}) to vacuum (${spokenSeconds(vacuum)}).`,
  };
}

function oneLeads(pad: Lead, vacuum: Lead, pair: Pair): ShortAnswer {
  if (isNothing(pad)) {
    const leader = ahead(vacuum, pair);
    return {
      verdict: `${leader}, but not at the pad`,
      text: `Per kilogram of propellant the two are even at the pad; in vacuum ${leader} gives ${amount(vacuum)} more specific impulse.`,
    };
  }
  const leader = ahead(pad, pair);
  if (isNothing(vacuum)) {
    return {
      verdict: `${leader}, but not in vacuum`,
      text: `Per kilogram of propellant ${leader} gives ${amount(pad)} more specific impulse than ${behind(pad, pair)} at the pad; in vacuum the two are even.`,
    };
  }
  return {
    verdict: `${leader}, from the pad to vacuum`,
    text: `Per kilogram of propellant ${leader} gives more than ${behind(pad, pair)} all the way: ${amount(pad)} more specific impulse at the pad and ${amount(vacuum)} in vacuum.`,
  };
}

function leadChanges(pad: Lead, vacuum: Lead, pair: Pair): ShortAnswer {
  const low = ahead(pad, pair);
  const high = ahead(vacuum, pair);
  if (pair.crossings.length === 1 && low !== high) {
    const tie = spokenAltitude(pair.crossings[0] as number);
    return {
      verdict: `${low} below ${tie}, ${high} above`,
      text: `Per kilogram of propellant ${low} leads up to ${tie}, ${high} above it. At the pad ${low} has ${amount(pad)} more specific impulse, in vacuum ${high} has ${amount(vacuum)} more.`,
    };
  }
  const ties = listed(pair.crossings.map(spokenAltitude));
  return {
    verdict: `The lead changes at ${ties}`,
    text: `At the pad ${low} has ${amount(pad)} more specific impulse, in vacuum ${high} has ${amount(vacuum)} more; the two tie at ${ties}.`,
  };
}

/** The engines whose gas has left the wall at the pad, or that have no number there for another reason. */
function withoutPad(pair: Pair): ShortAnswer {
  const without = [pair.base, pair.other].filter((engine) => padImpulse(engine) === null);
  const who = listed(without.map((engine) => engine.input.name));
  const why = without.every((engine) => figuresAtAltitude(engine, 0).at.flow.state === 'separated')
    ? `the gas would let go of the wall of ${who}`
    : `${who} ${without.length > 1 ? 'have' : 'has'} no number that can be defended`;
  const from = listed(without.map(fromWhereFull).filter((words) => words !== ''));
  const first = `At the pad ${why}${from === '' ? '' : `; ${from}`}.`;
  const lead = pair.vacuum;
  if (lead === null || isNothing(lead)) {
    return {
      verdict: lead === null ? 'No number that can be compared' : 'Even in vacuum; no comparison at the pad',
      text: lead === null ? first : `${first} In vacuum the two are even per kilogram of propellant.`,
    };
  }
  const leader = ahead(lead, pair);
  const inVacuum = `${leader} gives ${amount(lead)} more specific impulse than ${behind(lead, pair)}`;
  const [tie] = pair.crossings;
  if (pair.crossings.length === 1 && tie !== undefined) {
    return {
      verdict: `${leader} above ${spokenAltitude(tie)}; no comparison at the pad`,
      text: `${first} The two tie at ${spokenAltitude(tie)}, and in vacuum ${inVacuum}.`,
    };
  }
  return {
    verdict: `${leader} in vacuum; no comparison at the pad`,
    text: `${first} In vacuum ${inVacuum}.`,
  };
}

function fromWhereFull(engine: EngineSolution): string {
  const altitude = fullFrom(engine);
  if (altitude === null || altitude === 0) return '';
  return `${engine.input.name} flows full from ${spokenAltitude(altitude)} up`;
}

function withoutVacuum(pair: Pair): ShortAnswer {
  const pad = pair.pad as Lead;
  if (isNothing(pad)) {
    return {
      verdict: 'Even at the pad; no comparison in vacuum',
      text: 'At the pad the two are even per kilogram of propellant; in vacuum one of them has no number.',
    };
  }
  return {
    verdict: `${ahead(pad, pair)} at the pad; no comparison in vacuum`,
    text: `At the pad ${ahead(pad, pair)} gives ${amount(pad)} more specific impulse than ${behind(pad, pair)}; in vacuum one of them has no number.`,
  };
}

/** The engine of the pair that stands for a bound, if exactly one does. */
function boundOf(pair: Pair): EngineSolution | null {
  const isBound = (engine: EngineSolution): boolean => engine.nozzle.spec.kind === 'adapting';
  if (isBound(pair.base) === isBound(pair.other)) return null;
  return isBound(pair.base) ? pair.base : pair.other;
}

/** A bound leads by *at most* so much: no real nozzle that adapts to the air can do better. */
function againstBound(pair: Pair, bound: EngineSolution): ShortAnswer {
  const real = bound === pair.base ? pair.other : pair.base;
  const name = real.input.name;
  const pad = leadBetween(padImpulse(real), padImpulse(bound));
  const vacuum = leadBetween(vacuumImpulse(real), vacuumImpulse(bound));
  if (pad === null || vacuum === null) {
    const from = fromWhereFull(real);
    return {
      verdict: `The gain at the pad has no number`,
      text: `At the pad the gas would let go of the wall of ${name}${from === '' ? '' : `; ${from}`}. ${inVacuumAtMost(vacuum, name)}`,
    };
  }
  if (isNothing(pad) && isNothing(vacuum)) {
    return {
      verdict: 'Nothing to gain by adapting to the air',
      text: `Even a nozzle that always matched the air would give no more specific impulse than ${name}, at the pad or in vacuum.`,
    };
  }
  return {
    verdict: `At most ${gain(pad)} more at the pad, ${gain(vacuum)} in vacuum`,
    text: `A nozzle that always matched the air could give at most ${gainInFull(pad)} specific impulse than ${name} at the pad, and ${vacuumGainInFull(vacuum)} in vacuum. A real one gives less than this bound.`,
  };
}

function gain(lead: Lead): string {
  if (isNothing(lead)) return 'nothing';
  return lead.seconds > 0 ? spokenShare(lead.share) : `${spokenShare(lead.share)} less`;
}

function gainInFull(lead: Lead): string {
  if (isNothing(lead)) return 'no more';
  return lead.seconds > 0 ? `${amount(lead)} more` : `${amount(lead)} less`;
}

function vacuumGainInFull(lead: Lead): string {
  if (isNothing(lead)) return 'nothing more';
  return lead.seconds > 0 ? `${amount(lead)} more` : `would lose ${amount(lead)}`;
}

function inVacuumAtMost(vacuum: Lead | null, name: string): string {
  if (vacuum === null) return '';
  if (isNothing(vacuum)) {
    return `In vacuum a nozzle that always matched the air would give no more specific impulse than ${name}.`;
  }
  return `In vacuum a nozzle that always matched the air would give ${vacuum.seconds > 0 ? 'at most ' : ''}${gainInFull(vacuum)} specific impulse than ${name}.`;
}

/** About one engine, when a study has no second one to compare. */
export function shortAnswerAbout(engine: EngineSolution): ShortAnswer {
  const name = engine.input.name;
  const pad = padImpulse(engine);
  const vacuum = vacuumImpulse(engine);
  if (vacuum === null) return { verdict: `${name}: no number`, text: `${name} has no number in vacuum.` };
  const atMost = engine.nozzle.spec.kind === 'adapting' ? 'at most ' : '';
  const first = `${name} gives ${atMost}${spokenSeconds(vacuum)} of specific impulse in vacuum`;
  if (pad === null) {
    const from = fromWhereFull(engine);
    return {
      verdict: `${atMost}${spokenSeconds(vacuum)} in vacuum, no number at the pad`.replace(/^a/, 'A'),
      text: `${first}. At the pad the gas would let go of its wall${from === '' ? '' : `; ${from}`}.`,
    };
  }
  return {
    verdict: `${atMost}${spokenSeconds(pad)} at the pad, ${spokenSeconds(vacuum)} in vacuum`.replace(
      /^a/,
      'A',
    ),
    text: `${first} and ${spokenSeconds(pad)} at the pad, where the air takes ${spokenShare(1 - pad / vacuum)} of it.`,
  };
}
