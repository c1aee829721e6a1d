import type { ComponentChildren } from 'preact';
import { mapFindings, sweepFindings } from '../../../answer/sweeps/findings.ts';
import { TRIAL } from '../state/ownSweeps.ts';
import {
  cancelSweep,
  chosenSweep,
  found,
  isMapTried,
  keepSweep,
  mapOwner,
  mapOwners,
  needsPlace,
  ownOnes,
  progress,
  shownSweep,
  sweepable,
  sweepProblem,
  type TriedPlace,
  triedChoices,
  triedInput,
  triedOwner,
  triedPlace,
  triedPlaces,
  triedQuantity,
  triedSecond,
} from '../state/sweepTrial.ts';
import { isMap, SweepChart } from './SweepChart.tsx';

/** A place to try: any quantity of the engines shown, against any input. */
export function Sweeps() {
  const sweep = found.value;
  const problem = sweepProblem.value;
  const own = ownOnes.value;
  const isOwn = shownSweep.value !== null;
  return (
    <div class="sweeps">
      <h2 class="unseen">Sweeps</h2>
      {own.length > 0 && (
        <Choice
          label="Show"
          value={shownSweep.value ?? TRIAL}
          choose={(key) => {
            chosenSweep.value = key;
          }}
        >
          <option value={TRIAL}>one to try out</option>
          {own.map(({ key, words }) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </Choice>
      )}
      {!isOwn && <Trial />}
      <Progress />
      {problem !== null && (
        <p class="fault">
          {problem.what} {problem.mend}
        </p>
      )}
      {sweep !== null && (
        <>
          <SweepChart found={sweep} />
          <ul class="findings">
            {(isMap(sweep) ? mapFindings(sweep) : sweepFindings(sweep)).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          {sweep.held.short !== '' && <p class="hint">{sweep.held.short}</p>}
          {!isOwn && (
            <p class="actions">
              <button type="button" class="plain-button" onClick={() => void keepSweep().catch(reportError)}>
                Keep in the study
              </button>
            </p>
          )}
        </>
      )}
    </div>
  );
}

/** What is followed, where, and against what. */
function Trial() {
  return (
    <>
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
      <Choice
        label="and"
        value={triedSecond.value}
        choose={(name) => {
          triedSecond.value = name;
        }}
      >
        <option value="">nothing else</option>
        {triedChoices.value
          .filter(({ name }) => name !== triedInput.value)
          .map(({ name, label }) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
      </Choice>
      {isMapTried.value && (
        <Choice
          label="of"
          value={mapOwner.value}
          choose={(key) => {
            triedOwner.value = key;
          }}
        >
          {mapOwners.value.map(({ key, label }) => (
            <option key={key} value={key}>
              {label}
            </option>
          ))}
        </Choice>
      )}
    </>
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
