/** How the script stands, and what keeps it from being written: the same where it is read and where it is written. */

import { clock } from '../../../telling/script/clock.ts';
import type { ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';
import { scriptConflict, scriptTrouble, scriptWorking, settleScript } from '../state/scriptStore.ts';

export function ScriptStanding({ answer }: { readonly answer: ScriptAnswer }) {
  const failing = answer.flags.filter(({ fails }) => fails).length;
  const looks = answer.flags.length - failing;
  return (
    <>
      {`${clock(answer.seconds)}, ${answer.words} words; ${failing === 0 ? 'nothing that is said fails' : `${failing} not to be said so`}, ${looks} to look at`}
      {scriptWorking.value && ' …'}
    </>
  );
}

export function ScriptConflict() {
  if (scriptConflict.value === null) return null;
  return (
    <div role="alert" class="fault">
      <p>The script was changed elsewhere while you wrote here.</p>
      <p class="actions">
        <button type="button" class="plain-button" onClick={() => void settleScript(true)}>
          Keep mine
        </button>
        <button type="button" class="plain-button" onClick={() => void settleScript(false)}>
          Take theirs
        </button>
      </p>
    </div>
  );
}

export function ScriptTrouble() {
  const problem = scriptTrouble.value;
  return problem === null ? null : <p role="alert" class="fault">{`${problem.what} ${problem.mend}`}</p>;
}
