import { useEffect } from 'preact/hooks';
import type { CutPanel } from '../../../telling/figures/cutPanel.ts';
import type { Box } from '../../../telling/scene/box.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import { paintedTheme, pixelRatio } from '../state/painting.ts';
import { airPressure } from '../state/shown.ts';
import { FlowLayer } from './FlowLayer.tsx';
import { FlowSaid } from './FlowSaid.tsx';
import { flowLines, flowShown, markNow } from './flows.ts';
import { paint, picturesThere } from './painter.ts';
import { type Look, nearestFirst, paintOf, shownFlow } from './shownFlows.ts';

interface FlowOverProps {
  readonly panel: CutPanel;
  /** By engine, see `fieldsOnScreen`. */ readonly fields: ReadonlyMap<string, readonly ListedFlow[]>;
  readonly names: Readonly<Record<string, string>>;
  /** The part of the drawing that is seen [px]. */ readonly seen: Box;
}

/** The nearest computed field over each engine, and which it is; what is not painted yet is asked for, the nearest first. */
export function FlowOver({ panel, fields, names, seen }: FlowOverProps) {
  const look: Look = {
    shown: flowShown.value,
    theme: paintedTheme.value,
    ratio: pixelRatio.value,
    streamlines: flowLines.value,
  };
  const ambient = airPressure.value;
  const placed = [...fields].flatMap(([id, own]) => {
    const place = panel.places[id];
    return place === undefined ? [] : [{ id, own, place }];
  });
  useEffect(() => {
    const all = placed.flatMap(({ own, place }) =>
      nearestFirst(own, ambient).map((field, rank) => ({ rank, field, place })),
    );
    all.sort((a, b) => a.rank - b.rank);
    paint(all.map(({ field, place }) => paintOf(field, place, panel.scale, look)));
  });
  const shown = placed.flatMap(({ id, own, place }) => {
    const flow =
      picturesThere.value === 0 ? null : shownFlow(markNow.value, own, ambient, place, panel.scale, look);
    return flow === null ? [] : [{ id, flow }];
  });
  return (
    <>
      <FlowLayer shown={shown.map(({ flow }) => flow)} seen={seen} />
      {shown.map(({ id, flow }) => (
        <FlowSaid key={id} name={names[id] ?? ''} shown={flow} />
      ))}
    </>
  );
}
