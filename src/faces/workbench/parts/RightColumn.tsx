import { computed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { CAUTION } from '../../../answer/caution.ts';
import { shownEngines } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import { openCard, type Panel, panel } from '../state/view.ts';
import { Card } from './Card.tsx';
import { Inputs } from './Inputs.tsx';
import { Models } from './Models.tsx';
import { PressureKey } from './PressureKey.tsx';
import { anyPublished, Published } from './Published.tsx';
import { Sentences } from './Sentences.tsx';
import { Sweeps } from './Sweeps.tsx';
import { Vehicles } from './Vehicles.tsx';
import { VerdictStrip } from './VerdictStrip.tsx';
import { Worth } from './Worth.tsx';

const panels: readonly { readonly id: Panel; readonly label: string }[] = [
  { id: 'inputs', label: 'Inputs' },
  { id: 'sentences', label: 'Sentences' },
  { id: 'sweeps', label: 'Sweeps' },
  { id: 'vehicles', label: 'Vehicles' },
  { id: 'worth', label: 'Worth' },
  { id: 'models', label: 'Models' },
  { id: 'published', label: 'Published' },
];

/** What has nothing to show is not there: published figures, vehicles, a pair. */
const panelsThere = computed(() =>
  panels.filter(({ id }) => {
    if (id === 'published') return anyPublished(shownEngines.value);
    const study = solved.value?.study;
    if (id === 'worth') return (study?.engines.length ?? 0) > 1 || (study?.needs.length ?? 0) > 0;
    return id !== 'vehicles' || (solved.value?.answer.vehicles.length ?? 0) > 0;
  }),
);
const shownPanel = computed(() =>
  panelsThere.value.some(({ id }) => id === panel.value) ? panel.value : 'inputs',
);

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
        <PressureKey />
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
        {shown === 'sweeps' && <Sweeps />}
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
