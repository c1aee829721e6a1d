import { CAUTION } from '../../../answer/caution.ts';
import { type Sweep, sweep, sweepRequestOf } from '../../../answer/sweeps/index.ts';
import type { Study, SweepInput } from '../../../study/model.ts';
import { sweepCsv } from '../../../telling/sweepTable.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { namedOf, pointsFrom, sweptFrom } from '../sweepFlags.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { sweepText } from '../text/sweepText.ts';
import { wrapped } from '../text/wrap.ts';

export interface SweepFlags {
  readonly id?: string;
  readonly of?: readonly string[];
  readonly over?: string;
  readonly from?: string;
  readonly to?: string;
  readonly steps?: string;
  readonly engine?: readonly string[];
  readonly points?: string;
  readonly json?: true;
  readonly csv?: true;
}

const PROGRESS_STEP = 8;

const names = { over: '--over', from: '--from', to: '--to', steps: '--steps' };

export async function sweepCommand(
  given: string,
  flags: SweepFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const { study } = await openStudy(given, openDataShelf(), terminal);
  const wanted = wantedSweeps(study, flags, terminal);
  const crew = await threadCrew(study);
  const found = await dismissing(crew, async () => {
    const sweeps: Sweep[] = [];
    for (const input of wanted) {
      const onProgress = (done: number, most: number): void => {
        if (done % PROGRESS_STEP === 0) sayIfSlow(terminal, `${input.id}: ${done} of about ${most} points …`);
      };
      sweeps.push(await sweep(study, crew, sweepRequestOf(study, input), { onProgress }));
    }
    return sweeps;
  });
  terminal.out(printed(found, flags, terminal.width));
  const empty = found.some(({ curves }) => curves.some(({ course }) => course === 'has no value'));
  return empty ? EXIT.incomplete : EXIT.answered;
}

/** The one that the options ask for, else those of the study. */
function wantedSweeps(study: Study, flags: SweepFlags, terminal: Terminal): readonly SweepInput[] {
  const { of, over, from, to, steps, engine, points, id } = flags;
  if (of === undefined && over === undefined) return namedOf(study.sweeps, id, 'sweep');
  const range = sweptFrom({ over, from, to, steps }, names, (line) => terminal.err(line));
  return [
    {
      id: id ?? 'sweep',
      title: null,
      of: of ?? [],
      range,
      engines: engine ?? null,
      points: pointsFrom(points, 'sweep'),
      path: '--of',
    },
  ];
}

function printed(sweeps: readonly Sweep[], { json, csv }: SweepFlags, width: number): string {
  if (json) return JSON.stringify({ format: 'plumeline sweeps 1', caution: CAUTION, sweeps }, null, 2);
  if (csv) return sweeps.map(sweepCsv).join('\r\n').trimEnd();
  return [...sweeps.map((found) => sweepText(found, width)), wrapped(CAUTION, width)].join('\n\n');
}
