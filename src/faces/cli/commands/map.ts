import { CAUTION } from '../../../answer/caution.ts';
import { mapRequestOf, type SweepMap, sweepMap } from '../../../answer/sweeps/index.ts';
import type { MapInput, Study } from '../../../study/model.ts';
import { mapCsv } from '../../../telling/sweepTable.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { bad, namedOf, pointsFrom, sweptFrom } from '../sweepFlags.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { mapText } from '../text/sweepText.ts';
import { wrapped } from '../text/wrap.ts';

export interface MapFlags {
  readonly id?: string;
  readonly of?: string;
  readonly across?: string;
  readonly acrossFrom?: string;
  readonly acrossTo?: string;
  readonly up?: string;
  readonly upFrom?: string;
  readonly upTo?: string;
  readonly engine?: readonly string[];
  readonly points?: string;
  readonly json?: true;
  readonly csv?: true;
}

export async function mapCommand(given: string, flags: MapFlags, terminal: Terminal): Promise<ExitStatus> {
  const { study } = await openStudy(given, openDataShelf(), terminal);
  const wanted = wantedMaps(study, flags, terminal);
  const crew = await threadCrew(study);
  const found = await dismissing(crew, async () => {
    const maps: SweepMap[] = [];
    for (const input of wanted) {
      const onProgress = (done: number, most: number): void => {
        if (done % PROGRESS_STEP === 0) sayIfSlow(terminal, `${input.id}: ${done} of about ${most} points …`);
      };
      maps.push(await sweepMap(study, crew, mapRequestOf(study, input), { onProgress }));
    }
    return maps;
  });
  terminal.out(printed(found, flags, terminal.width));
  return found.some(({ values }) => values.every((value) => value === null))
    ? EXIT.incomplete
    : EXIT.answered;
}

const PROGRESS_STEP = 25;

function wantedMaps(study: Study, flags: MapFlags, terminal: Terminal): readonly MapInput[] {
  const { of, across, acrossFrom, acrossTo, up, upFrom, upTo, engine, points, id } = flags;
  if (of === undefined && across === undefined && up === undefined) return namedOf(study.maps, id, 'map');
  if (of === undefined) {
    throw bad(
      'map-of-missing',
      '--of is missing.',
      'Say what to follow: --of "bell.specificImpulse(vacuum)".',
    );
  }
  const side = (key: 'across' | 'up', over?: string, from?: string, to?: string) =>
    sweptFrom(
      { over, from, to, steps: undefined },
      { over: `--${key}`, from: `--${key}-from`, to: `--${key}-to`, steps: '' },
      (line) => terminal.err(line),
    );
  return [
    {
      id: id ?? 'map',
      title: null,
      of,
      across: side('across', across, acrossFrom, acrossTo),
      up: side('up', up, upFrom, upTo),
      engines: engine ?? null,
      points: pointsFrom(points, 'map'),
      path: '--of',
    },
  ];
}

function printed(maps: readonly SweepMap[], { json, csv }: MapFlags, width: number): string {
  if (json) return JSON.stringify({ format: 'plumeline maps 1', caution: CAUTION, maps }, null, 2);
  if (csv) return maps.map(mapCsv).join('\r\n').trimEnd();
  return [...maps.map((found) => mapText(found, width)), wrapped(CAUTION, width)].join('\n\n');
}
