import { useEffect } from 'preact/hooks';
import { capital } from '../../../study/capital.ts';
import { figuresNamed, flowFigures, loadFigures, openFigure, weighForFigures } from '../state/figures.ts';
import { solved } from '../state/studyStore.ts';

/** Every figure of the study by what it shows; each opens over the page, to be looked at and saved. */
export function Figures() {
  const study = solved.value;
  useEffect(() => {
    loadFigures().catch(reportError);
    weighForFigures().catch(reportError);
  }, [study]);
  const flows = flowFigures.value;
  const others = figuresNamed.value.slice(0, figuresNamed.value.length - flows.length);
  return (
    <div class="figures">
      <h2 class="unseen">Figures</h2>
      {others.length === 0 && <p class="hint working">Being made ready …</p>}
      <Names of={others} />
      {flows.length > 0 && (
        <>
          <h3>The whole flow, at the altitude on the scale</h3>
          <p class="hint">
            Computed when one is opened, if it has not been before; that takes seconds to minutes.
          </p>
          <Names of={flows} />
        </>
      )}
      <p class="hint">
        Sweeps, maps and needs are drawn where they are asked. plumeline draw makes each in any size,
        plumeline pack all of them.
      </p>
    </div>
  );
}

function Names({ of }: { readonly of: readonly { readonly name: string; readonly about: string }[] }) {
  return (
    <ul>
      {of.map(({ name, about }) => (
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
  );
}
