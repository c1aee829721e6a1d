import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { FigureKind } from '../../../telling/figures/kind.ts';
import type { FigureFormat } from '../../../telling/look/formats.ts';
import type { Theme } from '../../../telling/look/tokens.ts';
import type { Scene } from '../../../telling/scene/scene.ts';
import { nodesToSvg, sceneToSvg } from '../../../telling/scene/svg.ts';
import {
  figureFormat,
  figureFormats,
  figures,
  loadFigures,
  openFigure,
  unsettledWords,
} from '../state/figures.ts';
import { saveText } from '../state/saveText.ts';
import { studyName } from '../state/studyStore.ts';
import { theme } from '../state/view.ts';
import { CopyButton } from './CopyButton.tsx';

/** One figure over the page, the same picture as in a file. */
export function FigureView() {
  return openFigure.value === null ? null : <Opened name={openFigure.value} />;
}

function Opened({ name }: { readonly name: string }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => dialog.current?.showModal(), []);
  useEffect(() => void loadFigures().catch(reportError), []);
  const kind = figures.value.find((one) => one.name === name);
  const format = figureFormat.value;
  const scene = useMemo(
    () => kind?.draw({ size: format, theme: themeOf(format) }) ?? null,
    [kind, format, theme.value],
  );
  return (
    <dialog
      ref={dialog}
      class="figure-view"
      aria-label="Figure"
      onClose={() => {
        openFigure.value = null;
      }}
    >
      <p class="actions">
        <Formats />
        {kind !== undefined && scene !== null && <Saving kind={kind} scene={scene} />}
        <button type="button" class="plain-button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </p>
      {scene === null ? (
        <p>{kind === undefined ? 'Being made ready …' : `The study has nothing to draw in ${kind.about}.`}</p>
      ) : (
        <Drawn scene={scene} />
      )}
    </dialog>
  );
}

function Formats() {
  return (
    <label>
      Shape{' '}
      <select
        value={figureFormat.value}
        onChange={(event) => {
          figureFormat.value = event.currentTarget.value as FigureFormat;
        }}
      >
        {figureFormats.map((format) => (
          <option key={format} value={format}>
            {format === 'print' ? 'for paper' : format.replace(':', ' to ')}
          </option>
        ))}
      </select>
    </label>
  );
}

function Saving({ kind, scene }: { readonly kind: FigureKind; readonly scene: Scene }) {
  const name = `${studyName.value}-${kind.name}`;
  const unsettled = unsettledWords.value;
  if (unsettled !== null) return <span role="status">{unsettled} It can be saved after that.</span>;
  return (
    <>
      <button
        type="button"
        class="plain-button"
        onClick={() => saveText(`${name}.svg`, sceneToSvg(scene), 'image/svg+xml')}
      >
        Save the picture
      </button>
      <button
        type="button"
        class="plain-button"
        onClick={() =>
          saveText(`${name}.csv`, kind.csv({ size: figureFormat.value, theme: scene.theme }), 'text/csv')
        }
      >
        Save its numbers
      </button>
      <CopyButton text={`${scene.title}\n\n${scene.description}`} what="the picture in words" />
    </>
  );
}

function Drawn({ scene }: { readonly scene: Scene }) {
  const place = useRef<SVGSVGElement>(null);
  // Made by the scene writer, which escapes every word of the study.
  const markup = useMemo(
    () => nodesToSvg(scene.children, scene.theme, { colours: 'fixed', idPrefix: 'fig' }),
    [scene],
  );
  useLayoutEffect(() => {
    if (place.current !== null) place.current.innerHTML = markup;
  }, [markup]);
  return (
    <svg
      ref={place}
      class={`figure-drawn on-${scene.theme}`}
      viewBox={`0 0 ${scene.width} ${scene.height}`}
      role="img"
      aria-label={`${scene.title} ${scene.description}`}
    />
  );
}

const themeOf = (format: FigureFormat): Theme => (format === 'print' ? 'print' : theme.value);
