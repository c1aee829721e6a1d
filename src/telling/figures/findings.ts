/** The finding a figure shows, as one sentence; what it compares; and the foot that says how it was made. */

import type { EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { capital } from '../../study/capital.ts';
import { formatAltitude, formatLength, formatPressure, formatShare } from '../numbers/formatNumber.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { adapts, type DrawnEngine } from './drawnEngines.ts';
import type { Altitude, FigureOptions } from './options.ts';

/** Differences below this share are called the same: the models are not that good. */
const WORTH_SAYING = 5e-4;

const sentence = (text: string): string => (/[.!?…]$/.test(text) ? text : `${text}.`);

/** Specific impulse: the short answer's own verdict; against a bound with the bound's name, for it stands alone here. */
export function impulseFinding(answer: StudyAnswer): string {
  const { verdict } = answer.shortAnswer;
  const pair = pairOf(answer);
  if (!pair || adapts(pair.base) === adapts(pair.other)) return sentence(verdict);
  const bound = adapts(pair.base) ? pair.base : pair.other;
  return sentence(`${bound.name}: ${verdict.charAt(0).toLowerCase()}${verdict.slice(1)}`);
}

/** Thrust: who pushes harder low down and in vacuum. */
export function thrustFinding(answer: StudyAnswer): string {
  const pair = pairOf(answer);
  if (!pair) {
    const [engine] = Object.values(answer.engines);
    return engine ? loneThrust(engine) : '';
  }
  const { base, other } = pair;
  const low = leadOf(base, other, base.seaLevel.thrust, other.seaLevel.thrust);
  const high = leadOf(base, other, base.vacuum.thrust, other.vacuum.thrust);
  if (low && high)
    return low.name === high.name && low.name !== null
      ? `${low.words} at sea level, ${high.share} in vacuum.`
      : `${capital(low.words)} at sea level, ${high.words} in vacuum.`;
  if (high) return `${capital(high.words)} in vacuum; ${withoutSeaLevel([base, other])}.`;
  return `Thrust of ${base.name} and ${other.name} from the pad to vacuum.`;
}

/** What keeps the thrust at sea level from having a number. */
function withoutSeaLevel(engines: readonly EngineAnswer[]): string {
  const who = engines.filter((engine) => engine.seaLevel.thrust === null);
  const names = who.map((engine) => engine.name).join(' and ');
  const separated = who.every((engine) => seaLevelRow(engine)?.flow.state === 'separated');
  return separated
    ? `at sea level the gas leaves the wall of ${names}`
    : `at sea level ${names} ${who.length > 1 ? 'have' : 'has'} no thrust that can be defended`;
}

function seaLevelRow(engine: EngineAnswer) {
  return engine.altitudes.find((row) => row.altitude === 0);
}

function loneThrust(engine: EngineAnswer): string {
  const { seaLevel, vacuum } = engine;
  if (seaLevel.thrust === null || vacuum.thrust === null)
    return `At sea level the gas would leave the wall of ${engine.name}.`;
  return `${engine.name} gains ${formatShare(vacuum.thrust / seaLevel.thrust - 1)} of thrust from the pad to vacuum.`;
}

interface ThrustLead {
  /** Null where neither leads. */ readonly name: string | null;
  /** `3.8 %` */ readonly share: string;
  readonly words: string;
}

function leadOf(
  base: EngineAnswer,
  other: EngineAnswer,
  a: number | null,
  b: number | null,
): ThrustLead | null {
  if (a === null || b === null) return null;
  if (Math.abs(b - a) < WORTH_SAYING * Math.abs(a))
    return { name: null, share: '', words: 'the two push alike' };
  const [leader, behind] = b > a ? [other, base] : [base, other];
  const share = formatShare(Math.abs(b - a) / Math.abs(b > a ? a : b));
  const atMost = adapts(leader) && !adapts(behind) ? 'at most ' : '';
  return { name: leader.name, share, words: `${leader.name} pushes ${atMost}${share} harder` };
}

/** Who stands where against the air at an altitude. */
export function cutFinding(
  engines: readonly DrawnEngine[],
  altitude: Altitude,
  options: FigureOptions,
): string {
  if (altitude === 'vacuum') return inVacuum(engines);
  const ambient = ambientAt(altitude);
  const parts = engines.map(({ engine }) => {
    const row = conditionAt(rowsOf(engine, options), ambient);
    return againstAir(engine, row.exitPressure, ambient, row.flow.state);
  });
  return `${whereWords(altitude)} ${parts.join('; ')}.`;
}

function inVacuum(engines: readonly DrawnEngine[]): string {
  const [first, ...rest] = engines.map(({ engine }) => ({
    name: engine.name,
    pressure: formatPressure(engine.exit.pressure),
  }));
  if (!first) return '';
  const more = rest.map(({ name, pressure }) => `, ${name}’s at ${pressure}`);
  return `In vacuum ${first.name}’s gas leaves at ${first.pressure}${more.join('')}.`;
}

function againstAir({ name, models }: EngineAnswer, exit: number, ambient: number, state: string): string {
  if (state === 'unchoked') return `the flow through ${name} is not choked`;
  if (state === 'separated') return `the gas leaves ${name}’s wall`;
  const ratio = exit / ambient;
  if (Math.abs(ratio - 1) < 0.03)
    return models.includes('nozzle-plug')
      ? `${name}’s jet ends at the air’s pressure, as a plug’s does`
      : `${name}’s exit matches the air`;
  if (ratio > 1) return `${name}’s gas leaves at ${timesWords(ratio)} the air’s pressure`;
  return `${name}’s gas leaves at ${ratio > 0.095 ? `${formatShare(ratio)} of` : 'a small part of'} the air’s pressure`;
}

const timesWords = (ratio: number): string =>
  ratio < 10 ? `${(Math.round(10 * ratio) / 10).toString()} times` : `${Math.round(ratio)} times`;

/** `At sea level`, `At 12 km`, `In vacuum` */
export function whereWords(altitude: Altitude): string {
  if (altitude === 'vacuum') return 'In vacuum';
  return altitude === 0 ? 'At sea level' : `At ${formatAltitude(altitude)}`;
}

/** Pressure on the wall at the lip, flowing full [Pa]. */
export function lipPressure(engine: DrawnEngine['engine']): number {
  return engine.wall.at(-1)?.pressure ?? engine.exit.pressure;
}

/** On a plug that the air reaches the pressure rises again towards the cut. */
function leastOnWall(engine: DrawnEngine['engine']): number {
  if (engine.contour.plug === undefined) return lipPressure(engine);
  return Math.min(...engine.wall.map(({ pressure }) => pressure));
}

/** How much of the chamber's pressure is left on the wall at the lip. */
export function wallFinding(engines: readonly DrawnEngine[]): string {
  const [first, ...rest] = engines.map(({ engine }) => ({
    name: engine.name,
    pressure: formatPressure(leastOnWall(engine)),
  }));
  if (!first) return '';
  const more = rest.map(({ name, pressure }) => `, ${name}’s to ${pressure}`);
  return `On the wall ${first.name}’s gas falls to ${first.pressure}${more.join('')}.`;
}

/** Who is larger. */
export function sizeFinding(engines: readonly DrawnEngine[]): string {
  const [a, b] = engines;
  if (!a) return '';
  if (!b) return `${a.engine.name} is ${formatLength(a.engine.exit.diameter)} wide at the lip.`;
  const share = b.engine.exit.diameter / a.engine.exit.diameter - 1;
  if (Math.abs(share) < WORTH_SAYING)
    return `${a.engine.name} and ${b.engine.name} are equally wide at the lip.`;
  const [wide, narrow, part] =
    share > 0 ? [b, a, share] : [a, b, a.engine.exit.diameter / b.engine.exit.diameter - 1];
  return part >= 1
    ? `${wide.engine.name} is ${timesWords(part + 1)} as wide at the lip as ${narrow.engine.name}.`
    : `${wide.engine.name} is ${formatShare(part)} wider at the lip than ${narrow.engine.name}.`;
}

/** What the comparison holds equal, as a clause; empty when nothing is compared. */
export function heldEqualWords(answer: StudyAnswer): string {
  const held = answer.comparison?.heldEqual ?? [];
  return held.length === 0 ? '' : `Held equal: ${held.join(', ')}.`;
}

/** Method pages that every figure rests on or that say nothing of what is seen; the page lists them all. */
const EVERYWHERE: readonly string[] = [
  'air',
  'boundary-layer',
  'delivered',
  'gas-expansion',
  'gas-transport',
  'nozzle-size',
  'plume',
];

/** Condition, models and what is not drawn, for the foot of a figure; `without`: models this figure shows nothing of, beside those of heat. */
export function footOf(
  answer: StudyAnswer,
  engines: readonly DrawnEngine[],
  leftOut: readonly string[],
  more: readonly string[] = [],
  without: readonly string[] = [],
): string[] {
  const models = [...new Set(engines.flatMap(({ engine }) => engine.models))].filter(
    (name) => !EVERYWHERE.includes(name) && !name.startsWith('heat-') && !without.includes(name),
  );
  const bounds = engines.filter(({ engine }) => adapts(engine)).map(({ engine }) => engine.name);
  const failed = Object.keys(answer.failed);
  return [
    ...more,
    ...(bounds.length > 0 ? [`${bounds.join(', ')}: a bound no real nozzle reaches.`] : []),
    ...(leftOut.length > 0 ? [`Not drawn: ${leftOut.join(', ')}.`] : []),
    ...(failed.length > 0 ? [`Could not be computed: ${failed.join(', ')}.`] : []),
    ...(without.includes('air') ? [] : ['Air: U.S. Standard Atmosphere 1976.']),
    more.some((note) => note.startsWith('Faint band')) ? 'Other spread not drawn.' : 'Spread not drawn.',
    ...(models.length > 0 ? [`Models: ${models.join(', ')}.`] : []),
  ].filter((note) => note !== '');
}

function pairOf(answer: StudyAnswer): { readonly base: EngineAnswer; readonly other: EngineAnswer } | null {
  if (!answer.comparison) return null;
  const base = answer.engines[answer.comparison.base];
  const other = answer.engines[answer.comparison.other];
  return base && other ? { base, other } : null;
}
