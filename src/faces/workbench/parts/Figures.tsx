import { useEffect } from 'preact/hooks';
import { capital } from '../../../study/capital.ts';
import { figures, loadFigures, openFigure, weighForFigures } from '../state/figures.ts';
import { solved } from '../state/studyStore.ts';

/** Every figure of the study by what it shows; each opens over the page, to be looked at and saved. */
export function Figures() {
  const study = solved.value;
  useEffect(() => {
    loadFigures().catch(reportError);
    weighForFigures().catch(reportError);
  }, [study]);
  const all = figures.value;
  return (
    <div class="figures">
      <h2 class="unseen">Figures</h2>
      {all.length === 0 && <p class="hint working">Being made ready …</p>}
      <ul>
        {all.map(({ name, about }) => (
          <li key={name}>
            <button
              type="button"
              class="figure-name"
              onClick={() => {
                openFigure.value = name;
              }}
            >
              {capital(about)}
            </button>
          </li>
        ))}
      </ul>
      <p class="hint">
        Sweeps, maps and needs are drawn where they are asked. plumeline draw makes each in any size,
        plumeline pack all of them.
      </p>
    </div>
  );
}
