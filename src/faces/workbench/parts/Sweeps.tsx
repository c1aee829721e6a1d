import type { ComponentChildren } from 'preact';
import {
  cancelSweep,
  found,
  needsPlace,
  progress,
  sweepable,
  sweepProblem,
  type TriedPlace,
  triedChoices,
  triedInput,
  triedPlace,
  triedPlaces,
  triedQuantity,
} from '../state/sweepTrial.ts';
import { SweepChart } from './SweepChart.tsx';
import { sweepWords } from './sweepWords.ts';

/** A place to try: any quantity of the engines shown, against any input. */
export function Sweeps() {
  const sweep = found.value;
  const problem = sweepProblem.value;
  return (
    <div class="sweeps">
      <h2 class="unseen">Sweeps</h2>
      <Choice
        label="Follow"
        value={triedQuantity.value}
        choose={(name) => {
          triedQuantity.value = name;
        }}
      >
        {sweepable.map(({ name, label }) => (
          <option key={name} value={name}>
            {label}
          </option>
        ))}
      </Choice>
      {needsPlace.value && (
        <Choice
          label="at"
          value={triedPlace.value}
          choose={(place) => {
            triedPlace.value = place as TriedPlace;
          }}
        >
          {triedPlaces.map((place) => (
            <option key={place} value={place}>
              {place}
            </option>
          ))}
        </Choice>
      )}
      <Choice
        label="against"
        value={triedInput.value}
        choose={(name) => {
          triedInput.value = name;
        }}
      >
        {triedChoices.value.map(({ name, label }) => (
          <option key={name} value={name}>
            {label}
          </option>
        ))}
      </Choice>
      <Progress />
      {problem !== null && (
        <p class="fault">
          {problem.what} {problem.mend}
        </p>
      )}
      {sweep !== null && (
        <>
          <SweepChart sweep={sweep} />
          <ul class="findings">
            {sweepWords(sweep).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          {sweep.held.short !== '' && <p class="hint">{sweep.held.short}</p>}
        </>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (value: string) => void;
  readonly children: ComponentChildren;
}

function Choice({ label, value, choose, children }: ChoiceProps) {
  return (
    <label class="sweep-choice">
      <span>{label}</span>
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {children}
      </select>
    </label>
  );
}

/** How far it has come, with a way to stop. */
function Progress() {
  const so = progress.value;
  return (
    <p class="sweep-progress" role="status">
      {so !== null && (
        <>
          {`${so.done} of at most ${so.most} points `}
          <button type="button" class="plain-button" onClick={cancelSweep}>
            Stop
          </button>
        </>
      )}
    </p>
  );
}
