import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { FigureKind } from '../../../telling/figures/kind.ts';
import type { FigureOptions } from '../../../telling/figures/options.ts';
import type { FigureFormat } from '../../../telling/look/formats.ts';
import type { Theme } from '../../../telling/look/tokens.ts';
import type { Scene } from '../../../telling/scene/scene.ts';
import { nodesToSvg, sceneToSvg } from '../../../telling/scene/svg.ts';
import { FlowFigureWork } from '../flow/FlowFigureWork.tsx';
import { altitudeNow, flowFigureOf, goOnWithFlows } from '../flow/flows.ts';
import {
  figureFormat,
  figureFormats,
  figures,
  flowFigures,
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
  const flow = flowFigures.value.find((one) => one.name === name);
  useFlowOf(flow?.engine ?? null);
  const kind = figures.value.find((one) => one.name === name);
  const options = useOptions(flow !== undefined);
  const scene = useMemo(() => kind?.draw(options) ?? null, [kind, options]);
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
        {kind !== undefined && scene !== null && <Saving kind={kind} scene={scene} options={options} />}
        <button type="button" class="plain-button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </p>
      {flow !== undefined && <FlowFigureWork />}
      {scene !== null && <Drawn scene={scene} />}
      {scene === null && flow === undefined && (
        <p>{kind === undefined ? 'Being made ready …' : `The study has nothing to draw in ${kind.about}.`}</p>
      )}
    </dialog>
  );
}

/** While the figure is open the whole flow of its engine is wanted. */
function useFlowOf(engine: string | null): void {
  useEffect(() => {
    flowFigureOf.value = engine;
    if (engine !== null) goOnWithFlows();
    return () => {
      flowFigureOf.value = null;
    };
  }, [engine]);
}

/** Whole flows are drawn where the scale stands, all others as in files. */
function useOptions(isFlow: boolean): FigureOptions {
  const format = figureFormat.value;
  const looks = themeOf(format);
  const here = isFlow ? (altitudeNow() ?? 'vacuum') : undefined;
  return useMemo(
    () => ({ size: format, theme: looks, ...(here !== undefined && { altitude: here }) }),
    [format, looks, here],
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

interface SavingProps {
  readonly kind: FigureKind;
  readonly scene: Scene;
  readonly options: FigureOptions;
}

function Saving({ kind, scene, options }: SavingProps) {
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
        onClick={() => saveText(`${name}.csv`, kind.csv(options), 'text/csv')}
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
