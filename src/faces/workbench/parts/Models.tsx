import { changeWords } from '../../../answer/changeWords.ts';
import { shownEngines } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import { Cooling } from './Cooling.tsx';
import { Cycle } from './Cycle.tsx';
import { EngineMark } from './EngineMark.tsx';
import { Losses } from './Losses.tsx';

/** Which models made the numbers, and what they leave out. */
export function Models() {
  const answer = solved.value?.answer;
  if (answer === undefined) return null;
  return (
    <div class="models">
      {shownEngines.value.map((engine) => {
        const { id, style, input, result } = engine;
        return (
          <section key={id}>
            <h2 class={`text-${style.order}`}>
              <EngineMark style={style} /> {input.name}
            </h2>
            {result.ok ? (
              <>
                <p>
                  {result.answer.propellants}; {result.answer.chemistry}.
                </p>
                {result.answer.change !== undefined && <p>{changeWords(result.answer.change)}</p>}
                <Losses budget={result.answer.losses} engine={engine} />
                <Cycle answer={result.answer} engine={engine} />
                <Cooling answer={result.answer} engine={engine} />
                <h3>Models</h3>
                <ul>
                  {result.answer.models.map((model) => (
                    <li key={model}>{model}</li>
                  ))}
                </ul>
                <h3>Left out</h3>
                <ul>
                  {result.answer.omitted.map((words) => (
                    <li key={words}>{words}</li>
                  ))}
                </ul>
              </>
            ) : (
              <p>
                {result.problem.what} {result.problem.mend}
              </p>
            )}
          </section>
        );
      })}
      {answer.notModelled.length > 0 && (
        <section>
          <h2>Not computed by this version</h2>
          <ul>
            {answer.notModelled.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
      {answer.hazards.length > 0 && (
        <section>
          <h2>Propellants named here</h2>
          <ul>
            {answer.hazards.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
