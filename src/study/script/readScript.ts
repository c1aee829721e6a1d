/** The text of `script.md` to its meaning. Never throws: what cannot be read is a problem with its place, the rest is read. */

import { nearestName } from '../nearest.ts';
import { listNames, quote, type Report } from '../report.ts';
import type { Named } from './attributes.ts';
import { readFrontMatter } from './frontMatter.ts';
import { parseMarkdown } from './markdown.ts';
import type { Scene, ScriptLine, ScriptRead } from './model.ts';
import { blocksOf, type LineDraft, type SceneDraft } from './scenes.ts';
import { scriptSource } from './source.ts';

export interface ReadScriptOptions {
  /** Name of the file, for messages. */ readonly file?: string;
  /** Ids of the study's sentences, facts and analogies; absent: any is taken. */ readonly sentences?: readonly string[];
  /** Names of figures and clips; absent: taken as written. */ readonly figures?: readonly string[];
}

export const SCRIPT_FILE = 'script.md';
const MOST_SCENES = 500;
const MOST_LINES = 5000;
const MOST_NUMBERS = 2000;

export function readScript(
  given: string,
  { file = SCRIPT_FILE, sentences, figures }: ReadScriptOptions = {},
): ScriptRead {
  const source = scriptSource(given, file);
  const { text, report } = source;
  const { end, problems, named, ...head } = readFrontMatter(source, file);
  const body = text.slice(0, end).replace(/[^\n]/g, ' ') + text.slice(end);
  const { title, scenes: drafts } = blocksOf(parseMarkdown(body), body, figures ?? null, report);
  const scenes = settled(withinLimits(drafts, report), report);
  tellUnknown(scenes, drafts, named, sentences ?? null, report);
  return { script: { title, ...head, scenes }, problems: [...problems, ...report.problems] };
}

/** More than anybody says is left out, and told. */
function withinLimits(drafts: readonly SceneDraft[], report: Report): readonly SceneDraft[] {
  let [lines, numbers] = [0, 0];
  const tell = (what: string, at: number): void =>
    report.problem(
      {
        code: 'script-too-long',
        what: `${what}; the rest is left out.`,
        mend: 'Split the script into several studies.',
      },
      '',
      at,
    );
  const extra = drafts[MOST_SCENES];
  if (extra !== undefined) tell(`There are more than ${MOST_SCENES} scenes`, extra.from);
  return drafts.slice(0, MOST_SCENES).map((draft) => ({
    ...draft,
    lines: draft.lines.filter(({ pieces, from }) => {
      lines += 1;
      numbers += pieces.filter(({ kind }) => kind === 'number').length;
      if (lines === MOST_LINES + 1) tell(`There are more than ${MOST_LINES} lines`, from);
      const isTooMuch = numbers > MOST_NUMBERS;
      if (isTooMuch) tell(`There are more than ${MOST_NUMBERS} live numbers`, from);
      return lines <= MOST_LINES && !isTooMuch;
    }),
  }));
}

/** Every scene and line with an id of its own. */
function settled(drafts: readonly SceneDraft[], report: Report): readonly Scene[] {
  const taken = new Set<string>();
  const given = (id: string | undefined, at: number): string | null => {
    if (id === undefined) return null;
    if (!taken.has(id)) {
      taken.add(id);
      return id;
    }
    report.problem(
      {
        code: 'id-twice',
        what: `The id ${quote(id)} stands twice in the script.`,
        mend: 'Give each line and scene an id of its own.',
      },
      '',
      at,
    );
    return null;
  };
  const made = (id: string): string => {
    let free = id;
    for (let i = 2; taken.has(free); i++) free = `${id}-${i}`;
    taken.add(free);
    return free;
  };
  // Given ids first: a made one gives way.
  const sceneIds = drafts.map(({ attributes, from }) => given(attributes.id, from));
  const lineIds = drafts.map(({ lines }) => lines.map(({ attributes, from }) => given(attributes.id, from)));
  return drafts.map((draft, i): Scene => {
    const id = sceneIds[i] ?? made(slugOf(draft.name));
    const lines = draft.lines.map((line, k) => lineOf(line, lineIds[i]![k] ?? made(`${id}.${k + 1}`)));
    return {
      id,
      name: draft.name,
      weight: draft.attributes.weight ?? 0,
      relies: idsOf(draft.attributes.relies),
      lines,
      shown: draft.shown.flatMap(({ line, ...shown }) => {
        const at = lines[Math.min(line, lines.length - 1)]?.id;
        if (at !== undefined) return [{ ...shown, at }];
        report.problem(
          {
            code: 'shown-without-line',
            what: `${quote(shown.words)} is shown in a scene in which nothing is said; it is left out.`,
            mend: 'Put it before the line that it begins with.',
          },
          '',
          shown.from,
        );
        return [];
      }),
      from: draft.from,
      to: draft.to,
    };
  });
}

function lineOf({ pieces, attributes, from, to }: LineDraft, id: string): ScriptLine {
  const { weight = 1, relies, says, pause = 0 } = attributes;
  return { id, pieces, weight, relies: idsOf(relies), ...(says && { says: says.id }), pause, from, to };
}

const idsOf = (named: readonly Named[] | undefined): readonly string[] => [
  ...new Set((named ?? []).map(({ id }) => id)),
];

/** `The pad, again` becomes `the-pad-again`. */
function slugOf(name: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return words.slice(0, 40).replace(/-+$/, '') || 'scene';
}

function tellUnknown(
  scenes: readonly Scene[],
  drafts: readonly SceneDraft[],
  named: readonly Named[],
  sentences: readonly string[] | null,
  report: Report,
): void {
  const ids = scenes.flatMap(({ id, lines }) => [id, ...lines.map((line) => line.id)]);
  const all = new Set(ids);
  const relied = drafts.flatMap(({ attributes, lines }) => [
    ...(attributes.relies ?? []),
    ...lines.flatMap((line) => line.attributes.relies ?? []),
  ]);
  for (const { id, at } of [...relied, ...named]) {
    if (all.has(id)) continue;
    const near = nearestName(id, ids);
    report.problem(
      {
        code: 'line-unknown',
        what: `There is no line or scene ${quote(id)} in the script.`,
        mend: near === null ? `There are ${listNames(ids, 12)}.` : `Did you mean ${near}?`,
      },
      '',
      at,
    );
  }
  if (sentences === null) return;
  for (const { attributes } of drafts.flatMap(({ lines }) => lines)) {
    const { says } = attributes;
    if (says === undefined || sentences.includes(says.id)) continue;
    const near = nearestName(says.id, sentences);
    report.problem(
      {
        code: 'sentence-unknown',
        what: `The study has no sentence ${quote(says.id)}.`,
        mend: near === null ? `Its sentences are ${listNames(sentences, 12)}.` : `Did you mean ${near}?`,
      },
      '',
      says.at,
    );
  }
}
