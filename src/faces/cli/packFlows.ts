/** The whole flows that a package shows. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { USUAL_PACKAGE } from '../../study/packageForm.ts';
import { namedClips } from '../../telling/clips/index.ts';
import { flowsShown } from '../../telling/handover/flowsShown.ts';
import { mediaSlots } from '../../telling/handover/mediaSlots.ts';
import { type ScriptParts, timedCuts } from '../../telling/handover/timedCuts.ts';
import { wantedFlows } from '../disk/wantedFlows.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';

/** Whole flows that are shown; what cannot be computed is told, and not there. */
export async function packFlows(
  study: Study,
  solved: SolvedStudy,
  script: ScriptParts | null,
  terminal: Terminal,
  signal: AbortSignal,
): Promise<{ readonly flows: readonly FlowField[]; readonly flowFigures: readonly string[] }> {
  const slots = script === null ? [] : mediaSlots(timedCuts(script).cuts);
  const clips = namedClips(
    solved.answer,
    study.sweeps.map(({ id }) => id),
  );
  const { wanted, figures } = flowsShown(solved.answer, slots, clips, (study.package ?? USUAL_PACKAGE).clips);
  const flows: FlowField[] = [];
  for (const flow of wanted) {
    try {
      const found = await wantedFlows(solved, [flow], {
        signal,
        onField: (name, done, of) => sayIfSlow(terminal, `The whole flow of ${name}: ${done} of ${of} …`),
      });
      flows.push(...found.filter((field) => !flows.some((known) => isSame(field, known))));
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      terminal.err(`${error.problem.what} ${error.problem.mend}`);
    }
  }
  return { flows, flowFigures: figures };
}

const isSame = (a: FlowField, b: FlowField): boolean =>
  a.engine === b.engine && a.ambientPressure === b.ambientPressure;
