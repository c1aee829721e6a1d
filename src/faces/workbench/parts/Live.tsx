/** The live answer: one number or one verdict over the whole screen, for answering while the camera runs. */

import { useEffect } from 'preact/hooks';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import { climbing, toggleClimb } from '../state/climb.ts';
import { openFind } from '../state/find/findBox.ts';
import { liveAsk } from '../state/live.ts';
import { closeLive, liveRoute } from '../state/liveRoute.ts';
import { heldEqual } from '../state/pair.ts';
import { outdated, solved, tried } from '../state/studyStore.ts';
import { endTrial } from '../state/studyTrial.ts';
import { theme, toggleTheme } from '../state/view.ts';
import { Faults } from './Faults.tsx';
import { LivePicture } from './LivePicture.tsx';
import { LiveTrial } from './LiveTrial.tsx';
import { LiveNumberWords, LiveSentenceWords } from './LiveWords.tsx';

export function Live() {
  const isOverlay = liveRoute.value?.overlay === true;
  useEffect(() => {
    document.documentElement.dataset.live = isOverlay ? 'overlay' : 'whole';
    document.addEventListener('keydown', leaveByKey);
    return () => {
      delete document.documentElement.dataset.live;
      document.removeEventListener('keydown', leaveByKey);
      // What was tried live stays there.
      endTrial().catch(reportError);
    };
  }, [isOverlay]);
  const sentence = liveRoute.value?.sentence ?? null;
  const only = sentence === null && liveAsk.value?.against === null ? liveAsk.value.of : null;
  return (
    <>
      <main class={outdated.value ? 'live outdated' : 'live'}>
        <div class="live-words">
          <h1>{solved.value?.answer.question ?? 'Plumeline'}</h1>
          {sentence === null ? <LiveNumberWords /> : <LiveSentenceWords id={sentence} />}
          <Faults />
        </div>
        {solved.value !== null && <LivePicture only={only} />}
        <div class="live-foot">
          {tried.value !== null && <p class="live-tried">Tried here, not in the study: {tried.value}</p>}
          {heldEqual.value !== '' && liveAsk.value?.against != null && <p>Held equal: {heldEqual.value}.</p>}
          <p>Computed from the study’s inputs. {CAUTION_SHORT}</p>
        </div>
      </main>
      <nav class="live-tools" aria-label="Live answer">
        <button type="button" onClick={closeLive}>
          Back
        </button>
        <button type="button" onClick={openFind}>
          Find
        </button>
        <button type="button" onClick={toggleClimb} aria-pressed={climbing.value}>
          {climbing.value ? 'Stop' : 'Climb'}
        </button>
        <LiveTrial />
        <button type="button" onClick={toggleTheme}>
          {theme.value === 'dark' ? 'Light' : 'Dark'}
        </button>
      </nav>
    </>
  );
}

function leaveByKey(event: KeyboardEvent): void {
  if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]') !== null)
    return;
  const field = event.target;
  if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) {
    field.blur();
    return;
  }
  closeLive();
}
