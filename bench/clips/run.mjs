/**
 * Times the writing of films at 1920 × 1080: drawing, counting flashes, encoding, all of it; writes its section of
 * bench/RESULTS.md. The targets on two cores: 30 frames a second filled (MP4), 15 with alpha (WebM).
 *
 *   node bench/clips/run.mjs [--no-write]
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const load = (path) => import(`${root}dist/${path}`);
const { solveStudyLive } = await load('answer/solve.js');
const { openDataShelf } = await load('faces/disk/data.js');
const { openFilmPage } = await load('faces/film/filmPage.js');
const { writeFilm } = await load('faces/film/writeFilm.js');
const { knownNames } = await load('study/names.js');
const { readStudy } = await load('study/index.js');
const { clipOf, frameRateOf, movementOf, USUAL_TIMING } = await load('telling/clips/index.js');

const ROUNDS = 3;
const SECONDS = 4;

/** [ms] of this process and, where the system tells, of the browser below it. */
function processorTime() {
  const { user, system } = process.cpuUsage();
  let total = (user + system) / 1000;
  if (type() !== 'Linux') return null;
  const below = new Map();
  for (const pid of readdirSync('/proc')) {
    if (!/^\d+$/.test(pid)) continue;
    try {
      const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
      const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
      const own = { pid, time: 10 * (Number(fields[11]) + Number(fields[12])) };
      below.set(fields[1], [...(below.get(fields[1]) ?? []), own]);
    } catch {
      // It has ended meanwhile.
    }
  }
  const walk = (pid) => {
    for (const child of below.get(pid) ?? []) {
      total += child.time;
      walk(child.pid);
    }
  };
  walk(String(process.pid));
  return total;
}

const shelf = openDataShelf();
const text = readFileSync(join(root, 'examples', 'alder-booster', 'study.yaml'), 'utf8');
const read = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
const solved = await solveStudyLive(read.study, shelf);
const place = mkdtempSync(join(tmpdir(), 'plumeline-bench-'));
const opened = await openFilmPage();
const begun = loadavg()[0];
const lines = [];
try {
  for (const [figure, words] of [
    ['cut', 'two engines cut open, climbing'],
    ['specific-impulse', 'curves, the altitude moving up'],
  ])
    for (const [codec, transparent, form, target] of [
      ['h264', false, 'MP4, H.264', 30],
      ['vp9', true, 'WebM, VP9 with alpha', 15],
    ]) {
      const frames = [];
      const processor = [];
      for (let round = 0; round < ROUNDS; round++) {
        const request = { figure, size: '16:9', theme: 'light', transparent, from: 0, to: 'vacuum', at: 0 };
        const timing = { ...USUAL_TIMING, rate: frameRateOf('25'), seconds: SECONDS };
        const clip = clipOf(movementOf(solved, [], [], request), timing);
        const [start, spent] = [performance.now(), processorTime()];
        await writeFilm(opened, clip, codec, join(place, `a.${codec === 'h264' ? 'mp4' : 'webm'}`));
        frames.push((1000 * clip.frames) / (performance.now() - start));
        if (spent !== null) processor.push((processorTime() - spent) / clip.frames);
      }
      const best = Math.max(...frames).toFixed(1);
      const least = processor.length === 0 ? '–' : Math.min(...processor).toFixed(0);
      lines.push(`| ${words} | ${form} | ${best} | ${target} | ${least} |`);
      console.log(lines.at(-1));
    }
} finally {
  await opened.close();
  rmSync(place, { recursive: true, force: true });
}
const ended = loadavg()[0];
const section = `1920 × 1080, ${25 * SECONDS} frames, the best of ${ROUNDS} rounds; everything is in it: rows and plumes at every altitude, drawing,
counting flashes, encoding, writing. Node ${process.versions.node}, ${cpus().length} cores (${cpus()[0]?.model.trim()}), Chromium without a graphics processor.
While it ran, ${begun.toFixed(1)} to ${ended.toFixed(1)} processes wanted a core (one or two of them its own): above the number of cores, others took their
share, and the last column says what a frame costs; two cores have 2000 ms of it a second.

| film | form | frames/s | target | processor, ms a frame |
| --- | --- | --- | --- | --- |
${lines.join('\n')}
`;
if (!process.argv.includes('--no-write')) writeSection('Clips', section);
