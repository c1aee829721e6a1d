import { flowInFigure, flowIsFinal, flowIsGone, flowToCome } from './flowFigure.ts';
import { flowFigureOf, flowList, goOnWithFlows, stopFlows } from './flows.ts';

/** How far the whole flow of an open figure is, with a way to stop it and to go on; nothing once it is there. */
export function FlowFigureWork() {
  const { work, without } = flowList.value;
  const problem = without[flowFigureOf.value ?? ''] ?? (work.is === 'failed' ? work.problem : undefined);
  const isThere = flowInFigure.value !== null;
  if (problem !== undefined && !isThere)
    return (
      <p role="alert">
        {problem.what} {problem.mend}
      </p>
    );
  if (flowIsGone.value)
    return (
      <p role="alert">
        The field of this place is listed, but its cells are not there any more. Reload the page: it is
        computed anew.
      </p>
    );
  if (flowToCome.value)
    return (
      <p class="flow-work" role="status">
        {isThere ? 'A nearer or finer field is being computed.' : 'The whole flow is being computed.'}
        <progress
          aria-label="The whole flow"
          {...(work.is === 'working' && { max: work.of, value: work.done })}
        />
        <button type="button" class="plain-button" onClick={() => void stopFlows()}>
          Stop
        </button>
      </p>
    );
  if (flowIsFinal.value) return null;
  return (
    <p class="flow-work" role="status">
      {isThere
        ? 'This is the nearest field that there is.'
        : 'The whole flow of this engine has not been computed here.'}
      <button type="button" class="plain-button" onClick={goOnWithFlows}>
        {isThere ? 'Go on' : 'Compute it'}
      </button>
    </p>
  );
}
