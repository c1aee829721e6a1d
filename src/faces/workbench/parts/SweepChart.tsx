import { useLayoutEffect, useRef } from 'preact/hooks';
import { mapHeadline, sweepHeadline } from '../../../answer/sweeps/findings.ts';
import type { SweepMap } from '../../../answer/sweeps/model.ts';
import { mapPanel } from '../../../telling/figures/mapPanel.ts';
import { sweepPanels } from '../../../telling/figures/sweepPanel.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { nodesToSvg } from '../../../telling/scene/svg.ts';
import { shownEngines } from '../state/pair.ts';
import type { SweptFound } from '../workshop/deskMessages.ts';

const size = { width: 328, height: 300 };
const box = { x: 2, y: 0, width: size.width - 6, height: size.height };
const style = { type: SCREEN_TYPE, line: SCREEN_LINES };

export function isMap(found: SweptFound): found is SweepMap {
  return 'levels' in found;
}

/** The same picture as the figure's, at the size of the page: curves of a sweep, or lines of a map. */
export function SweepChart({ found }: { readonly found: SweptFound }) {
  const place = useRef<SVGSVGElement>(null);
  const styles = Object.fromEntries(shownEngines.value.map(({ id, style: own }) => [id, own]));
  const nodes = isMap(found)
    ? mapPanel(found, box, style, styles)
    : sweepPanels(found, box, style, { styles });
  // Made by the scene writer, which escapes every word of the study.
  const markup = nodesToSvg(nodes, 'light', { colours: 'variables', idPrefix: 'sweep' });
  useLayoutEffect(() => {
    if (place.current !== null) place.current.innerHTML = markup;
  }, [markup]);
  return (
    <svg
      ref={place}
      class={found.provisional ? 'sweep-chart provisional' : 'sweep-chart'}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={isMap(found) ? mapHeadline(found) : sweepHeadline(found)}
    />
  );
}
