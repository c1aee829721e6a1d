import { clock } from '../../../telling/script/clock.ts';
import type { AnswerLine, ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';
import { ScriptNumber } from './ScriptNumber.tsx';

/** The script as it reads now: numbers in place, what is shown, and what is to be looked at behind each line. */
export function ScriptScenes({ answer }: { readonly answer: ScriptAnswer }) {
  return (
    <>
      {answer.scenes.map(({ id, name, start, seconds, shown, lines }) => (
        <section key={id} class="scene">
          <h3>
            {name} <span class="hint">{`${clock(start)}, ${Math.round(seconds)} s`}</span>
          </h3>
          {lines.map((line) => (
            <div key={line.id} class="script-line">
              {shown
                .filter(({ at }) => at === line.id)
                .map(({ words }) => (
                  <p key={words} class="shown-words">
                    <span class="unseen">Shown: </span>
                    {words}
                  </p>
                ))}
              <Said line={line} />
              <Flags answer={answer} line={line.id} />
            </div>
          ))}
        </section>
      ))}
      {answer.cut !== null && <LeftOut answer={answer} />}
      {answer.problems.length > 0 && (
        <p class="fault">{`${answer.problems.length} places of the text cannot be read; they are told where it is written.`}</p>
      )}
    </>
  );
}

function Said({ line }: { readonly line: AnswerLine }) {
  return (
    <p>
      {line.parts.map((part, i) => {
        if (typeof part === 'string') return part;
        return <ScriptNumber key={i} number={line.numbers[part]!} />;
      })}
    </p>
  );
}

function Flags({ answer, line }: { readonly answer: ScriptAnswer; readonly line: string }) {
  const flags = answer.flags.filter((flag) => flag.line === line);
  if (flags.length === 0) return null;
  return (
    <ul class="script-flags">
      {flags.map(({ kind, fails, words }) => (
        <li key={`${kind} ${words}`} class={fails ? 'fault' : ''}>
          <b>{fails ? 'Not so: ' : 'Look: '}</b>
          {words}
        </li>
      ))}
    </ul>
  );
}

/** Lines that the cut leaves out, with why. */
function LeftOut({ answer }: { readonly answer: ScriptAnswer }) {
  const left = answer.cut?.lines.filter(({ kept }) => !kept) ?? [];
  if (left.length === 0) return null;
  return (
    <section>
      <h3>Left out</h3>
      <ul>
        {left.map(({ id, because }) => (
          <li key={id}>{`${id}: ${because}`}</li>
        ))}
      </ul>
    </section>
  );
}
