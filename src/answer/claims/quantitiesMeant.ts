/** Which quantities a sentence may mean, likeliest first: by how they are called, and by the units that stand there. */

import { needsOf } from '../asked/askProblem.ts';
import { type CatalogueEntry, catalogue, findQuantity } from '../catalogue.ts';
import { exponentsOf, sameDimension } from '../expression/dimensions.ts';
import type { Exponents } from '../expression/model.ts';
import type { ProposedQuantity } from './model.ts';

/** How people say it besides the labels of the catalogue; in the order of the words below. Our choice of words. */
const SAID: readonly (readonly [RegExp, string])[] = [
  [
    /\bspecific impulse\b|\bisp\b|\b(?:more|less|most|least) efficient\b|\bas efficient as\b|\bfuel economy\b/i,
    'specificImpulse',
  ],
  [/\bthrust\b|\bpush(?:es|ed)?\b|\bstrong(?:er|est)\b|\bas strong as\b|\bforce of the engine\b/i, 'thrust'],
  [
    /\bexhaust (?:speed|velocity|gas(?:es)? (?:is|are|leaves?|leave))\b|\bgas(?:es)? leaves?\b|\bshoots? out\b|\bexit (?:speed|velocity)\b|\bfast(?:er|est) (?:exhaust|jet|gas)\b|\b(?:exhaust|jet) (?:\w+ ){0,5}fast(?:er|est)\b/i,
    'exit.velocity',
  ],
  [/(?:\b\w+ ){0,3}\bmach\b|\bspeed of sound\b|\bfaster than sound\b|\bsupersonic\b/i, 'exit.mach'],
  [/\bexit pressure\b|\bpressure at the (?:exit|lip|mouth)\b/i, 'exit.pressure'],
  [
    /\bchamber pressure\b|\bpressure in(?:side)? (?:the|its) chamber\b|\bchamber (?:runs|works) at\b/i,
    'chamber.pressure',
  ],
  [
    /\bflame\b|\bchamber temperature\b|\bcombustion temperature\b|\bburns? at\b|\bhot(?:ter|test)\b|\bas hot as\b|\bcool(?:er|est)\b/i,
    'chamber.temperature',
  ],
  [/\bexit temperature\b|\btemperature at the (?:exit|lip|mouth)\b/i, 'exit.temperature'],
  [
    /\bmass flow\b|\b(?:burns?|swallows?|drinks?|uses?|gulps?) (?:\S+ ){0,6}(?:a|per|every|each) second\b/i,
    'massFlow',
  ],
  [/\barea ratio\b|\bexpansion ratio\b/i, 'areaRatio'],
  [/\bthroat (?:diameter|is \S+ (?:\S+ )?(?:across|wide))\b|\bdiameter of the throat\b/i, 'throat.diameter'],
  [
    /\bexit diameter\b|\bmouth\b|\bwid(?:er|est)\b|\bas wide as\b|\bdiameter of the (?:exit|bell)\b/i,
    'exit.diameter',
  ],
  // Not “as long as the air is thin”, nor a burn that lasts.
  [
    /\b(?:twice|half|times|just) as (?:long|short) as\b|\b(?:longer|shorter) (?:than|nozzle|bell|cone|plug)\b|\b(?:long|short)est (?:nozzle|bell|cone|plug|of)\b/i,
    'contour.nozzleLength',
  ],
  [
    /\bmolar mass\b|\bmolecular (?:mass|weight)\b|\blight(?:er|est) (?:gas|exhaust|molecules)\b/i,
    'chamber.molarMass',
  ],
  [/\bcharacteristic velocity\b|\bc-?star\b|\bc\*/i, 'characteristicVelocity'],
  [/\bthrust coefficient\b/i, 'thrustCoefficient'],
  [
    /\bair pressure\b|\bpressure of the air\b|\batmospheric pressure\b|\bair (?:outside |around )?(?:at|of) [\d.]+\s?(?:m?bar|[hk]?Pa|psi|atm)\b/i,
    'air.pressure',
  ],
  [/\bmatched (?:altitude|at)\b|\bperfectly expanded at\b/i, 'matched.altitude'],
];

/** Named by nothing but a unit. */
const USUAL: readonly string[] = [
  'specificImpulse',
  'thrust',
  'chamber.pressure',
  'exit.velocity',
  'chamber.temperature',
  'massFlow',
];

const MOST = 3;
const [BY_WORDS, BY_LABEL, BY_UNIT] = [3, 2, 1];

/** By its words, not by the unit alone. */
export const isNamed = ({ score }: ProposedQuantity): boolean => score >= BY_LABEL;

/** @param units dimensions that the value may have; empty: any */
export function quantitiesMeant(say: string, units: readonly Exponents[]): readonly ProposedQuantity[] {
  const found = new Map<string, ProposedQuantity>();
  const add = (entry: CatalogueEntry, score: number, because: string): void => {
    if (!isAsked(entry) || !fits(entry, units)) return;
    const before = found.get(entry.name)?.score ?? 0;
    if (score > before) found.set(entry.name, { quantity: entry.name, label: entry.label, because, score });
  };
  for (const [pattern, name] of SAID) {
    const words = pattern.exec(say)?.[0];
    const entry = findQuantity(name);
    if (words !== undefined && entry !== undefined) add(entry, BY_WORDS + words.length / 100, `“${words}”`);
  }
  const plain = ` ${say.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;
  for (const entry of catalogue) {
    const name = namesOf(entry).find((one) => plain.includes(` ${one} `));
    if (name !== undefined) add(entry, BY_LABEL + name.length / 100, `“${name}”`);
  }
  if (units.length > 0 && found.size === 0) {
    for (const name of USUAL) add(findQuantity(name)!, BY_UNIT, 'the unit alone');
  }
  return [...found.values()].sort((a, b) => b.score - a.score).slice(0, MOST);
}

/** Of one engine or the air, at a place that can be proposed; a vehicle is asked by hand. */
function isAsked(entry: CatalogueEntry): boolean {
  const { station } = needsOf(entry);
  const { place, notAsked, part } = entry;
  return (
    notAsked === undefined &&
    part?.needed !== true &&
    station === null &&
    place !== 'comparison' &&
    place !== 'vehicle'
  );
}

function fits({ dimension }: CatalogueEntry, units: readonly Exponents[]): boolean {
  const own = exponentsOf(dimension);
  return own !== null && (units.length === 0 || units.some((unit) => sameDimension(unit, own)));
}

/** One common word alone names nothing. */
const namesOf = ({ label, aliases }: CatalogueEntry): readonly string[] =>
  [label, ...(aliases ?? []).map((one) => one.replace(/([A-Z])/g, ' $1'))]
    .map((one) => one.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' '))
    .filter((one) => one.includes(' '));
