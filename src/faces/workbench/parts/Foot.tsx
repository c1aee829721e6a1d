import { CAUTION } from '../../../answer/caution.ts';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import { climbChoices, climbing, climbSeconds, toggleClimb } from '../state/climb.ts';
import { heldEqual } from '../state/pair.ts';
import { airHere, altitudeText } from '../state/shown.ts';
import { solved } from '../state/studyStore.ts';
import { FilmButton } from './FilmButton.tsx';

/** Play, read-outs, what is held equal, and the caution; always in sight. */
export function Foot() {
  return (
    <footer>
      {solved.value !== null && (
        <div class="controls">
          <button type="button" class="play" onClick={toggleClimb} aria-pressed={climbing.value}>
            <svg width="12" height="12" aria-hidden="true">
              <path
                class="ink-fill"
                d={climbing.value ? 'M1 0h3.5v12h-3.5zM7.5 0H11v12H7.5z' : 'M1 0l11 6-11 6z'}
              />
            </svg>
            {climbing.value ? 'Stop' : 'Climb'}
          </button>
          <label class="choice">
            <span>in</span>
            <select
              aria-label="Seconds from pad to vacuum"
              value={climbSeconds.value}
              onChange={(event) => {
                climbSeconds.value = Number(event.currentTarget.value);
              }}
            >
              {climbChoices.map((seconds) => (
                <option key={seconds} value={seconds}>
                  {seconds} s
                </option>
              ))}
            </select>
          </label>
          <FilmButton />
          <span class="readout altitude">
            <span class="word">Altitude </span>
            <b>{altitudeText}</b>
          </span>
          <span class="readout air">
            <span class="word">Air </span>
            <b>{airHere}</b>
          </span>
          {heldEqual.value !== '' && (
            <span class="held">
              Held equal: <b>{heldEqual}</b>
            </span>
          )}
        </div>
      )}
      <p class="caution">
        <span class="full">{CAUTION}</span>
        <span class="short">{CAUTION_SHORT}</span>
      </p>
    </footer>
  );
}
