/** A script, timed, as a timeline for the edit: pictures on one track, the voice with its sentences on the other. */

import type { Scene, Shown } from '../../study/script/model.ts';
import { type Media, type PictureSlot, pictureSlots } from '../handover/mediaSlots.ts';
import { plainText } from '../scene/safeText.ts';
import type { ResolvedScene, ResolvedScript } from '../script/model.ts';
import type { TimedLine, TimedScene, TimedScript } from '../time/model.ts';
import { clip, gap, type MarkerColour, marker, timeline, track } from './otio.ts';

export interface TimelineParts {
  readonly name: string;
  readonly caution: string;
  readonly resolved: ResolvedScript;
  readonly timed: TimedScript;
  /** What stands for a thing shown in a scene, relative to the timeline; null: the package has nothing. */
  readonly mediaOf: (scene: string, shown: Shown) => Media | null;
  /** Verdict on a sentence by its id, as people read it. */ readonly verdicts: ReadonlyMap<string, string>;
}

type Json = Readonly<Record<string, unknown>>;

export function scriptTimeline(parts: TimelineParts): string {
  const { name, caution, resolved, timed } = parts;
  const scenes = timed.scenes.flatMap((scene) => {
    const told = resolved.scenes.find((one) => one.scene.id === scene.id);
    return told === undefined || scene.lines.length === 0 ? [] : [{ scene, told }];
  });
  const slots = scenes.flatMap(({ scene, told }) =>
    pictureSlots(scene, told.scene).map((slot) => ({ scene: told.scene, slot })),
  );
  const voice = scenes.map(({ scene, told }) => voiceOf(scene, told, parts));
  const title = plainText(name);
  const whole = timeline(title, { caution, title: plainText(resolved.script.title) }, [
    ...pictureTracks(slots, parts),
    track('Voice', 'Audio', voice),
  ]);
  return `${JSON.stringify(whole, null, 2)}\n`;
}

interface SceneSlot {
  readonly scene: Scene;
  readonly slot: PictureSlot;
}

/** From the line of each thing shown to the next thing or to the end of the scene; what is shown at once lies on tracks above. */
function pictureTracks(slots: readonly SceneSlot[], { mediaOf }: TimelineParts): readonly Json[] {
  const rows = slots.map(({ scene, slot: { shown, seconds } }) => {
    const found = shown.flatMap((one) => {
      const media = mediaOf(scene.id, one);
      return media === null ? [] : [{ media, shown: [one] }];
    });
    const [first = null, ...above] = found;
    return { scene, seconds, cells: [{ media: first?.media ?? null, shown }, ...above] };
  });
  const tracks = Math.max(1, ...rows.map(({ cells }) => cells.length));
  return Array.from({ length: tracks }, (_, k) => {
    const clips = rows.map(({ scene, seconds, cells }) => {
      const cell = cells[k];
      if (cell === undefined) return gap(seconds);
      return clip({
        name: plainText(`${scene.id}: ${cell.shown.map(wordsOf).join('; ') || scene.name}`),
        seconds,
        media: cell.media,
        markers: [],
        metadata: { scene: scene.id, shown: cell.shown.map(({ words }) => plainText(words)) },
      });
    });
    return track(k === 0 ? 'Pictures' : `Pictures ${k + 1}`, 'Video', clips);
  });
}

const wordsOf = ({ figure, words }: Shown): string => figure ?? words;

/** The recording that is still to be made, a marker on each line. */
function voiceOf(timed: TimedScene, { scene, lines }: ResolvedScene, { verdicts }: TimelineParts): Json {
  const markers = timed.lines.map((line) => {
    const resolved = lines.find((one) => one.line.id === line.id);
    return lineMarker(line, timed.start, resolved?.text ?? '', resolved?.line.says ?? null, verdicts);
  });
  return clip({
    name: plainText(`${scene.id}: ${scene.name}`),
    seconds: timed.seconds,
    media: null,
    markers,
    metadata: { scene: scene.id, pace: timed.pace },
  });
}

function lineMarker(
  { id, start, seconds }: TimedLine,
  from: number,
  text: string,
  says: string | null,
  verdicts: TimelineParts['verdicts'],
): Json {
  const verdict = says === null ? null : (verdicts.get(says) ?? null);
  return marker({
    name: plainText(verdict === null ? id : `${id}: ${verdict}`),
    comment: plainText(text),
    colour: COLOURS[verdict ?? ''] ?? 'WHITE',
    start: start - from,
    seconds,
    metadata: { line: id, says, verdict },
  });
}

/** Told in words as well: the colour is never alone. */
const COLOURS: Readonly<Record<string, MarkerColour>> = {
  'safe to say': 'GREEN',
  'say with care': 'YELLOW',
  'don’t say': 'RED',
  'can’t tell': 'ORANGE',
  reported: 'CYAN',
};
