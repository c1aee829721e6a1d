import { useId } from 'preact/hooks';
import type { CatalogueEntry } from '../../../answer/catalogue.ts';
import { sweepable, sweepableInFlight } from '../state/followed.ts';
import { solved } from '../state/studyStore.ts';
import type { TypedEnds } from '../state/sweepEnds.ts';
import {
  chooseInput,
  ends,
  follow,
  followedVehicle,
  isMapTried,
  mapOwner,
  mapOwners,
  needsPlace,
  offeredChoices,
  shownInput,
  triedOwner,
  triedPlace,
  triedPlaces,
  triedQuantity,
  triedSecond,
  triedVehicle,
  typeEnd,
} from '../state/sweepTrial.ts';
import { Choice } from './Choice.tsx';

/** What is followed, where, and against what, from where to where. */
export function SweepTried() {
  const vehicles = solved.value?.study.vehicles ?? [];
  const isFlight = followedVehicle.value !== null;
  return (
    <>
      <Choice label="Follow" value={triedQuantity.value} choose={follow}>
        {vehicles.length === 0 ? (
          options(sweepable)
        ) : (
          <>
            <optgroup label="Engines">{options(sweepable)}</optgroup>
            <optgroup label="Flight">{options(sweepableInFlight)}</optgroup>
          </>
        )}
      </Choice>
      {isFlight && vehicles.length > 1 && (
        <Choice
          label="of"
          value={followedVehicle.value?.id ?? ''}
          choose={(id) => {
            triedVehicle.value = id;
          }}
        >
          {vehicles.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choice>
      )}
      {needsPlace.value && (
        <Choice
          label="at"
          value={triedPlace.value}
          choose={(place) => {
            triedPlace.value = place;
          }}
        >
          {triedPlaces.value.map((place) => (
            <option key={place} value={place}>
              {place}
            </option>
          ))}
        </Choice>
      )}
      <Choice label="against" value={shownInput.value} choose={chooseInput}>
        {offeredChoices.value.map(({ name, label }) => (
          <option key={name} value={name}>
            {label}
          </option>
        ))}
      </Choice>
      <Between />
      {!isFlight && <Second />}
    </>
  );
}

const options = (entries: readonly CatalogueEntry[]) =>
  entries.map(({ name, label }) => (
    <option key={name} value={name}>
      {label}
    </option>
  ));

/** Both ends, in any unit; which stands first does not matter. */
function Between() {
  const between = ends.value;
  const id = useId();
  if (between === null) return null;
  const { from, to, words, isFault } = between;
  const field = (end: keyof TypedEnds, label: string, text: string) => (
    <input
      type="text"
      class="field"
      autocomplete="off"
      spellcheck={false}
      aria-label={label}
      aria-invalid={isFault}
      {...(words === null ? {} : { 'aria-describedby': id })}
      value={text}
      onChange={(event) => typeEnd(end, event.currentTarget.value)}
    />
  );
  return (
    <>
      <p class="sweep-choice">
        <span>from</span>
        <span class="sweep-ends">
          {field('from', 'Sweep from', from)} to {field('to', 'Sweep to', to)}
        </span>
      </p>
      {words !== null && (
        <p class={isFault ? 'fault' : 'hint'} id={id} role="status">
          {words}
        </p>
      )}
    </>
  );
}

/** A second input makes a map of it. */
function Second() {
  return (
    <>
      <Choice
        label="and"
        value={triedSecond.value}
        choose={(name) => {
          triedSecond.value = name;
        }}
      >
        <option value="">nothing else</option>
        {offeredChoices.value
          .filter(({ name }) => name !== shownInput.value)
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
