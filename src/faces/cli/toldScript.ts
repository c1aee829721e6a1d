/** The script beside a study, read, its numbers worked out: what cuts, captions and slips begin with. */

import { attempt } from '../../numerics/problem.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import type { Script } from '../../study/script/model.ts';
import { proposeCut } from '../../telling/cut/proposeCut.ts';
import { numbersTold, readScriptOf, tellScript } from '../../telling/script/index.ts';
import type { NumbersTold } from '../../telling/time/model.ts';
import { dismissing, threadCrew } from '../crew/threadCrew.ts';
import { openDataShelf } from '../disk/data.ts';
import { readScriptText } from '../disk/scriptFile.ts';
import { BadInput } from './badInput.ts';
import { openStudy } from './openStudy.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';

export interface ToldScript {
  readonly script: Script;
  readonly numbers: NumbersTold;
  /** As its owner wrote it. */ readonly text: string;
  /** Expressions without a value. */ readonly missing: readonly string[];
}

/** @throws BadInput where there is none, or some of it cannot be read */
export async function toldScript(given: string, terminal: Terminal): Promise<ToldScript> {
  const { study, folder } = await openStudy(given, openDataShelf(), terminal);
  const text = await readScriptText(folder);
  if (text === null) throw noScript(folder);
  const read = readScriptOf(text, study, SCRIPT_FILE);
  if (read.problems.length > 0) throw new BadInput(read.problems);
  const crew = await threadCrew(study);
  const told = await dismissing(crew, () =>
    tellScript(study, read, crew, {
      onProvisional: () => sayIfSlow(terminal, 'Working out the numbers …'),
    }),
  );
  const missing = [...told].flatMap(([expression, { value }]) => (value === null ? [expression] : []));
  return { script: read.script, numbers: numbersTold(told, read.script.units), text, missing };
}

export const noScript = (folder: string): BadInput =>
  new BadInput([
    {
      code: 'script-missing',
      what: `There is no ${SCRIPT_FILE} in ${folder}.`,
      mend: 'Write one: what is said in paragraphs, scenes under ## headings (docs/script.md).',
    },
  ]);

/** The whole, or the cut of that name. @throws BadInput where the script asks for none of that name, or it cannot be made */
export function cutNamed({ script, numbers }: ToldScript, name: string | undefined): Script {
  if (name === undefined) return script;
  const wish = script.cuts.find((cut) => cut.name === name);
  if (wish === undefined) throw noCut(name, script);
  const cut = attempt(() => proposeCut(script, numbers, wish));
  if (!cut.ok) throw new BadInput([cut.problem]);
  return cut.value.script;
}

export function noCut(name: string, { cuts }: Script): BadInput {
  const names = cuts.map((cut) => cut.name).join(', ');
  return new BadInput([
    {
      code: 'cut-unknown',
      what: `“${name}” is neither a length nor a cut of the script.`,
      mend: `Write a length with its unit, like "40 s"${names === '' ? '' : `, or one of ${names}`}.`,
    },
  ]);
}
