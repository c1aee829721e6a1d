/** The vehicles of a study: each its own sections over those of the vehicle it is like, read into SI. */

import {
  type Cursor,
  type Entries,
  entriesAt,
  keyOffset,
  offsetAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import { ENGINE_ID } from './form.ts';
import type { VehicleInput } from './model.ts';
import { nearestName } from './nearest.ts';
import { idFits } from './prose.ts';
import type { EngineContext } from './readEngine.ts';
import { readVehicle } from './readVehicle.ts';
import { listNames, quote } from './report.ts';
import { vehicleForms, vehicleKeys } from './vehicleForm.ts';
import type { WrittenVehicle } from './vehicleSections.ts';

const MEND =
  'Write each as booster: { first: { engine: bell, count: 9, propellant: 240 t, dry: 18 t }, drag: { area: 10 m2 }, orbit: { altitude: 200 km } }.';
const MOST_VEHICLES = 20;

export function readVehicles(cursor: Cursor | undefined, context: EngineContext): readonly VehicleInput[] {
  if (cursor === undefined) return [];
  const { report, engineIds } = context;
  const found = entriesAt(cursor, 'a map of vehicles', MEND, report) ?? new Map<string, Cursor>();
  if (found.size > MOST_VEHICLES) {
    report.problem(
      {
        code: 'too-many-vehicles',
        what: `The study has ${found.size} vehicles; up to ${MOST_VEHICLES} are read.`,
        mend: 'Split it into several studies.',
      },
      cursor.path,
      keyOffset(cursor),
    );
    return [];
  }
  const maps = new Map<string, Entries>();
  for (const [id, at] of found) {
    const words = 'Use a letter, then letters, digits and underscores, up to 40 in all: booster, upperB.';
    if (!idFits(id, ENGINE_ID, at, 'a vehicle', words, report)) continue;
    if (engineIds.includes(id)) {
      report.problem(
        {
          code: 'id-twice',
          what: `${quote(id)} names an engine already.`,
          why: 'A sentence could not tell the two apart.',
          mend: 'Give the vehicle an id of its own.',
        },
        at.path,
        keyOffset(at),
      );
      continue;
    }
    const entries = entriesAt(at, 'the inputs of a vehicle', MEND, report);
    if (entries === null) continue;
    refuseOtherKeys(entries, vehicleKeys, 'a vehicle', report);
    maps.set(id, entries);
  }
  return [...maps].flatMap(([id, entries]) => {
    const chain = chainOf(id, maps, context);
    if (chain === null) return [];
    const written = chain.reduceRight<WrittenVehicle | null>(
      (base, each) => over(base, maps.get(each)!, context),
      null,
    );
    const like = chain[1] ?? null;
    const read = readVehicle(id, found.get(id)!, written!, { like, name: entries.get('name') }, context);
    return read === null ? [] : [read];
  });
}

/** The vehicle, the one that it is like, and so on; null with a problem. */
function chainOf(
  id: string,
  maps: ReadonlyMap<string, Entries>,
  { report }: EngineContext,
): readonly string[] | null {
  const chain = [id];
  for (;;) {
    const at = maps.get(chain.at(-1)!)!.get('like');
    if (at === undefined) return chain;
    const name = textAt(
      at,
      'the id of a vehicle',
      `Vehicles of this study: ${listNames(maps.keys())}.`,
      report,
    )?.trim();
    if (name === undefined) return null;
    if (!maps.has(name)) {
      const near = nearestName(name, maps.keys());
      report.problem(
        {
          code: 'vehicle-unknown',
          what: `${quote(name)} is not a vehicle of this study.`,
          mend: `${near === null ? '' : `Did you mean ${near}? `}Vehicles of this study: ${listNames(maps.keys())}.`,
        },
        at.path,
        offsetAt(at),
      );
      return null;
    }
    if (chain.includes(name)) {
      report.problem(
        {
          code: 'like-circle',
          what: `The vehicles ${chain.join(', ')} are like each other in a circle.`,
          mend: 'Give one of them inputs of its own instead of like.',
        },
        at.path,
        offsetAt(at),
      );
      return null;
    }
    chain.push(name);
  }
}

/** Keys of which one drives out the others. */
const INSTEAD: readonly (readonly [string, readonly string[]])[] = [
  ['engine', ['specificImpulse', 'thrust']],
  ['specificImpulse', ['engine']],
  ['thrust', ['engine']],
];

/** Sections merged key by key; an orbit drives out a payload, and the other way round. */
function over(base: WrittenVehicle | null, entries: Entries, { report }: EngineContext): WrittenVehicle {
  const sections = new Map(base?.sections ?? []);
  const cursors = new Map(base?.cursors ?? []);
  for (const section of Object.keys(vehicleForms)) {
    const at = entries.get(section);
    if (at === undefined) continue;
    const own = entriesAt(at, 'a map of keys', MEND, report);
    if (own === null) continue;
    const merged = new Map(sections.get(section) ?? []);
    for (const [key, others] of INSTEAD) if (own.has(key)) for (const other of others) merged.delete(other);
    for (const [key, value] of own) merged.set(key, value);
    sections.set(section, merged);
    cursors.set(section, at);
  }
  let payload = entries.get('payload') ?? base?.payload ?? null;
  if (entries.has('payload') && !entries.has('orbit')) sections.delete('orbit');
  if (entries.has('orbit') && !entries.has('payload')) payload = null;
  return { sections, cursors, payload, held: entries.get('held') ?? base?.held ?? null };
}
