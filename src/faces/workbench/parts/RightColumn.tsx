import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { CAUTION } from '../../../answer/caution.ts';
import { panelsThere, shownPanel } from '../state/panels.ts';
import { solved } from '../state/studyStore.ts';
import { openCard, panel } from '../state/view.ts';
import { Card } from './Card.tsx';
import { Figures } from './Figures.tsx';
import { Inputs } from './Inputs.tsx';
import { Models } from './Models.tsx';
import { Published } from './Published.tsx';
import { Script } from './Script.tsx';
import { Sentences } from './Sentences.tsx';
import { Sweeps } from './Sweeps.tsx';
import { TintKey } from './TintKey.tsx';
import { Vehicles } from './Vehicles.tsx';
import { VerdictStrip } from './VerdictStrip.tsx';
import { Worth } from './Worth.tsx';

/** Inputs, sentences and models; or the card of one number, with a way back. */
export function RightColumn() {
  const mayDraw = useSignal(false);
  const there = solved.value !== null;
  // The drawing first: with both in one go the first picture would hold the page up.
  useEffect(() => {
    if (!there) return;
    const timer = setTimeout(() => {
      mayDraw.value = true;
    });
    return () => clearTimeout(timer);
  }, [there]);
  if (!there || !mayDraw.value) return <aside aria-label="Study" />;
  return (
    <aside aria-label="Study">
      <div class="column">
        <div class="column-body">{openCard.value !== null ? <Card card={openCard.value} /> : <Panels />}</div>
        {(openCard.value !== null || shownPanel.value !== 'sentences') && <VerdictStrip />}
        <TintKey />
        <p class="caution whole">{CAUTION}</p>
      </div>
    </aside>
  );
}

function Panels() {
  const shown = shownPanel.value;
  return (
    <>
      <div class="tabs" role="tablist" aria-label="Study">
        {panelsThere.value.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            role="tab"
            id={`tab-${id}`}
            aria-selected={id === shown}
            aria-controls="panel"
            tabIndex={id === shown ? 0 : -1}
            onClick={() => {
              panel.value = id;
            }}
            onKeyDown={moveByArrows}
          >
            {label}
          </button>
        ))}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a panel that scrolls must be reachable by keyboard */}
      <div id="panel" role="tabpanel" tabIndex={0} aria-labelledby={`tab-${shown}`}>
        {shown === 'inputs' && <Inputs />}
        {shown === 'sentences' && <Sentences />}
        {shown === 'script' && <Script />}
        {shown === 'sweeps' && <Sweeps />}
        {shown === 'figures' && <Figures />}
        {shown === 'vehicles' && <Vehicles />}
        {shown === 'worth' && <Worth />}
        {shown === 'models' && <Models />}
        {shown === 'published' && <Published />}
      </div>
    </>
  );
}

/** Arrow keys go from tab to tab, as a list of tabs is expected to do. */
function moveByArrows(event: KeyboardEvent): void {
  const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
  if (step === 0) return;
  event.preventDefault();
  const there = panelsThere.value;
  const here = there.findIndex(({ id }) => id === shownPanel.value);
  const next = there[(here + step + there.length) % there.length];
  if (next === undefined) return;
  panel.value = next.id;
  document.getElementById(`tab-${next.id}`)?.focus();
}
