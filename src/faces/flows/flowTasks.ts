/** In which order the fields of a climb are computed: what is looked at first. */

// The page needs the places alone, not what computes their fields.
import type { Fineness } from '../../answer/flow/model.ts';
import { CLIMB, flowPlaceAt } from '../../answer/flow/places.ts';
import { HIGHEST_ALTITUDE } from '../../physics/air/index.ts';

export const LEVELS: readonly Fineness[] = ['coarse', 'normal'];

/** A place of an engine, and how fine its field is so far. */
export interface FlowTask {
  readonly engine: string;
  /** In the climb. */ readonly place: number;
  /** Levels done; all: it is ready, or cannot be. */ level: number;
}

export interface Looked {
  /** [m] where one looks; null: vacuum. */ readonly altitude: number | null;
  /** That place alone, with those that it begins from; absent: the whole climb. */ readonly only?: 'here';
}

export function flowTasks(engines: readonly string[]): readonly FlowTask[] {
  return engines.flatMap((engine) => CLIMB.map((_, place): FlowTask => ({ engine, place, level: 0 })));
}

/** First the place that is looked at made fine as soon as it is there, then all coarse by falling pressure, then fine from there outwards. */
export function nextTask(tasks: readonly FlowTask[], looked: Looked): FlowTask | null {
  const here = placeAt(looked.altitude);
  const open = tasks.filter((task) => task.level < levelsOf(task, here, looked));
  const away = ({ place }: FlowTask): number => Math.abs(place - here);
  const least = (some: readonly FlowTask[], by: (task: FlowTask) => number): FlowTask | null =>
    some.reduce<FlowTask | null>((best, task) => (best === null || by(task) < by(best) ? task : best), null);
  return (
    open.find((task) => task.level > 0 && task.place === here) ??
    least(
      open.filter(({ level }) => level === 0),
      ({ place }) => place,
    ) ??
    least(open, away)
  );
}

/** Fields done, and all that are asked for. */
export function progressOf(
  tasks: readonly FlowTask[],
  looked: Looked,
): { readonly done: number; readonly of: number } {
  const here = placeAt(looked.altitude);
  let [done, of] = [0, 0];
  for (const task of tasks) {
    const levels = levelsOf(task, here, looked);
    of += levels;
    done += Math.min(levels, task.level);
  }
  return { done, of };
}

function levelsOf({ place }: FlowTask, here: number, { only }: Looked): number {
  if (only === undefined || place === here) return LEVELS.length;
  return place < here ? 1 : 0;
}

/** The nearest place of the climb in ln p. @param altitude [m]; null: vacuum */
export function placeAt(altitude: number | null): number {
  const last = CLIMB.length - 1;
  if (altitude === null) return last;
  const { ambientPressure } = flowPlaceAt(Math.min(altitude, HIGHEST_ALTITUDE));
  let best = 0;
  for (let k = 1; k < last; k++) if (apart(k, ambientPressure) < apart(best, ambientPressure)) best = k;
  return best;
}

const apart = (place: number, pressure: number): number =>
  Math.abs(Math.log(CLIMB[place]!.ambientPressure / pressure));
