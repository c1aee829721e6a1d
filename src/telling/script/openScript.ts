/** A script in its study: read, and worked out once; quick to render again where its numbers are told. */

import type { Crew } from '../../answer/asked/crew.ts';
import { type ToldNumbers, tellNumbers } from '../../answer/numbers/index.ts';
import type { DrawOptions } from '../../answer/spread/index.ts';
import type { Study } from '../../study/model.ts';
import { readScript, type ScriptRead } from '../../study/script/index.ts';
import { expressionsOf } from './resolveScript.ts';

/** Everything that a line of a script may say with a verdict. */
export const sayable = ({ sentences, facts, analogies }: Study): readonly string[] =>
  [...sentences, ...facts, ...analogies].map(({ id }) => id);

export const readScriptOf = (text: string, study: Study, file?: string): ScriptRead =>
  readScript(text, { ...(file !== undefined && { file }), sentences: sayable(study) });

/** @throws what the drawing throws */
export const tellScript = (
  study: Study,
  { script }: ScriptRead,
  crew: Crew,
  options: DrawOptions = {},
): Promise<ToldNumbers> => tellNumbers(study, expressionsOf(script), crew, options);
