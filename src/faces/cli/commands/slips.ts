import { CAUTION } from '../../../answer/caution.ts';
import { passagesIn } from '../../../answer/claims/index.ts';
import { chaptersToList } from '../../../telling/captions/files.ts';
import { makeChapters } from '../../../telling/captions/makeChapters.ts';
import { readFilm } from '../../../telling/film/readFilm.ts';
import { BadInput } from '../badInput.ts';
import { formatOf, readClaimsFile } from '../claimsFile.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import type { Terminal } from '../terminal.ts';
import { slipsText } from '../text/slipsText.ts';
import { cutNamed, toldScript } from '../toldScript.ts';

export interface SlipsFlags {
  readonly cut?: string;
  readonly json?: true;
}

export async function slipsCommand(
  given: string,
  file: string,
  { cut, json }: SlipsFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const format = formatOf(file);
  if (format === 'text') throw noCaptions(file);
  const passages = passagesIn(await readClaimsFile(file), format);
  const told = await toldScript(given, terminal);
  const film = readFilm(cutNamed(told, cut), told.numbers, passages);
  const scenes = film.scenes.flatMap(({ start, end, ...scene }) =>
    start === null || end === null ? [] : [{ ...scene, start, end }],
  );
  const { chapters, notes } = makeChapters([...scenes].sort((a, b) => a.start - b.start));
  terminal.out(
    json
      ? JSON.stringify({ format: 'plumeline slips 1', caution: CAUTION, ...film, chapters }, null, 2)
      : slipsText(film, chaptersToList(chapters), CAUTION, terminal.width),
  );
  for (const note of notes) terminal.err(note);
  for (const expression of told.missing)
    terminal.err(`No value for ${expression}: nothing to hold the film against.`);
  return film.slips.length + told.missing.length > 0 ? EXIT.incomplete : EXIT.answered;
}

const noCaptions = (file: string): BadInput =>
  new BadInput([
    {
      code: 'captions-form',
      what: `${file} is neither WebVTT (.vtt) nor SubRip (.srt).`,
      mend: 'Give the captions of the finished film in one of these forms: their times are needed.',
    },
  ]);
