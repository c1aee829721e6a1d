import type { Problem } from '../../../numerics/problem.ts';
import { enginesOnScreen } from '../state/pair.ts';
import { askFiner, finerWork, hasProcessor } from './finer.ts';
import { finerAsked } from './finerFields.ts';
import { flowAsked, flowLines, flowList, flowsHere, flowView, showFlows, stopFlows } from './flows.ts';

const views = [
  { view: 'density', words: 'Density' },
  { view: 'density gradient', words: 'Density change' },
] as const;

/** Whether whole flows are shown; while they are computed how far it is, with a way to stop it. */
export function FlowChoice() {
  const { work, without } = flowList.value;
  const isShown = flowAsked.value;
  const there = flowsHere.value;
  const lacking = enginesOnScreen.value.flatMap(({ id, input: { name } }) => {
    const problem = without[id];
    return problem === undefined ? [] : [{ id, words: saidOf(name, problem) }];
  });
  return (
    <fieldset class="tint-choice flow-choice">
      <legend class="unseen">The whole flow, computed without friction</legend>
      <button type="button" aria-pressed={isShown} onClick={() => showFlows(!isShown)}>
        Whole flow
      </button>
      {isShown &&
        there.size > 0 &&
        views.map(({ view, words }) => (
          <button
            key={view}
            type="button"
            aria-pressed={flowView.value === view}
            onClick={() => {
              flowView.value = flowView.value === view ? null : view;
            }}
          >
            {words}
          </button>
        ))}
      {isShown && there.size > 0 && (
        <button
          type="button"
          aria-pressed={flowLines.value}
          onClick={() => {
            flowLines.value = !flowLines.value;
          }}
        >
          Streamlines
        </button>
      )}
      {isShown && there.size > 0 && hasProcessor.value && <FinerChoice />}
      {isShown && work.is === 'working' && (
        <span class="flow-work" role="status">
          <progress aria-label="The whole flows" max={work.of} value={work.done} />
          {there.size === 0 ? 'the first field …' : `${work.done} of ${work.of} fields`}
          <button type="button" onClick={() => void stopFlows()}>
            Stop
          </button>
        </span>
      )}
      {isShown && work.is === 'failed' && <span role="alert">{work.problem.what}</span>}
      {isShown &&
        lacking.map(({ id, words }) => (
          <span key={id} class="flow-without">
            {words}
          </span>
        ))}
    </fieldset>
  );
}

/** Where the machine has a graphics processor to compute on. */
function FinerChoice() {
  const work = finerWork.value;
  return (
    <>
      <button type="button" aria-pressed={finerAsked.value} onClick={() => askFiner(!finerAsked.value)}>
        Finer here
      </button>
      {work === 'working' && <span role="status">computing finer …</span>}
      {typeof work === 'object' && <span role="alert">{`${work.what} ${work.mend}`}</span>}
    </>
  );
}

/** Some problems name their engine, others only what is wrong. */
const saidOf = (name: string, { what }: Problem): string =>
  what.includes(name) ? what : `${name} has no whole flow. ${what}`;
