import { localCrew } from '../../../answer/asked/localCrew.ts';
import { CAUTION } from '../../../answer/caution.ts';
import { gatherMaterials } from '../../../answer/materials.ts';
import type { DataShelf } from '../../../answer/shelf.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { type Sweep, sweep, sweepRequestOf } from '../../../answer/sweeps/index.ts';
import type { Study } from '../../../study/model.ts';
import {
  type ClipRequest,
  clipOf,
  movementOf,
  type NamedClip,
  namedClips,
} from '../../../telling/clips/index.ts';
import { flowOfClip } from '../../../telling/figures/flowsWanted.ts';
import { openDataShelf } from '../../disk/data.ts';
import { wantedFlows } from '../../disk/wantedFlows.ts';
import type { WrittenClip } from '../../film/filmModel.ts';
import { writeClip } from '../../film/writeClip.ts';
import { type ClipFlags, outFrom, requestFrom, timingFrom } from '../clipFlags.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { interruptible } from '../interruptible.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { padEnd, wrapped } from '../text/wrap.ts';
import { programVersion } from '../version.ts';

export async function clipCommand(given: string, flags: ClipFlags, terminal: Terminal): Promise<ExitStatus> {
  const asked =
    flags.list === true
      ? null
      : { timing: timingFrom(flags), request: requestFrom(flags), out: outFrom(flags) };
  const shelf = openDataShelf();
  const { study } = await openStudy(given, shelf, terminal);
  const solved = await solveStudyLive(study, shelf, {
    version: programVersion(),
    onEngine: (name, which, count) => sayIfSlow(terminal, `Solving ${name} (${which} of ${count}) …`),
  });
  const ids = study.sweeps.map(({ id }) => id);
  const clips = namedClips(solved.answer, ids);
  if (asked === null) return listed(clips, terminal);
  const { timing, out } = asked;
  const wanted = meant(asked.request, clips);
  const swept = await sweptFor(study, shelf, wanted.figure);
  const materials = wanted.kind === 'throttle' ? await gatherMaterials(study.engines, shelf) : null;
  const flow = flowOfClip(solved.answer, wanted);
  const flows =
    flow === null
      ? []
      : await wantedFlows(solved, [flow], {
          onField: (name, done, of) => sayIfSlow(terminal, `The whole flow of ${name}: ${done} of ${of} …`),
        });
  const request = { ...wanted, flows, ...(materials !== null && { anew: { study, materials } }) };
  const clip = clipOf(movementOf(solved, swept, ids, request), timing);
  const written = await interruptible((signal) =>
    writeClip(clip, out, { signal, onProgress: progressTo(terminal) }),
  );
  if (written === null) {
    terminal.err('Stopped. Nothing was written.');
    return EXIT.incomplete;
  }
  for (const note of written.notes) terminal.err(wrapped(note, terminal.width));
  terminal.out(
    [
      writtenText(written, clip.rate.name),
      ...clip.notes.map((note) => wrapped(note, terminal.width)),
      wrapped(CAUTION, terminal.width),
    ].join('\n\n'),
  );
  return written.notes.length === 0 ? EXIT.answered : EXIT.incomplete;
}

/** By the names that a script and a package have for them. */
function listed(clips: readonly NamedClip[], terminal: Terminal): ExitStatus {
  const width = Math.max(0, ...clips.map(({ name }) => name.length));
  for (const { name, about } of clips) terminal.out(`${padEnd(name, width)}  ${about}`);
  return EXIT.answered;
}

/** A clip by its name says itself how it moves. */
function meant(request: ClipRequest, clips: readonly NamedClip[]): ClipRequest {
  const known = clips.find(({ name }) => name === request.figure);
  return known === undefined ? request : { ...request, ...known.asked };
}

/** The one sweep that is wanted, on one thread, so that the work has one order. */
async function sweptFor(study: Study, shelf: DataShelf, figure: string): Promise<readonly Sweep[]> {
  const input = study.sweeps.find(({ id }) => figure === `sweep-${id}`);
  if (input === undefined) return [];
  const crew = await localCrew(study, shelf);
  return [await sweep(study, crew, sweepRequestOf(study, input))];
}

const FORMS = { h264: 'H.264 in MP4', vp9: 'VP9 in WebM', frames: 'numbered pictures' } as const;

function writtenText({ path, form, frames, flashes }: WrittenClip, rate: string): string {
  const most =
    flashes.mostFlashes === 0
      ? 'no flashes'
      : `at most ${flashes.mostFlashes} ${flashes.mostFlashes === 1 ? 'flash' : 'flashes'} in any second (limit 3)`;
  return `${path}: ${frames} frames, ${rate} a second, ${FORMS[form]}; ${most}.`;
}

/** A line at every tenth. */
function progressTo(terminal: Terminal): (done: number, of: number) => void {
  let told = 0;
  return (done, of) => {
    const tenth = Math.floor((10 * done) / of);
    if (tenth <= told || done >= of) return;
    told = tenth;
    terminal.err(`Frame ${done} of ${of} …`);
  };
}
