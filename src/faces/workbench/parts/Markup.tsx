import { useLayoutEffect, useRef } from 'preact/hooks';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { nodesToSvg } from '../../../telling/scene/svg.ts';

/** A part of a drawing as the text of an SVG, in the colours of the theme. */
export function toMarkup(nodes: readonly SceneNode[], prefix: string): string {
  return nodesToSvg(nodes, 'light', { colours: 'variables', idPrefix: prefix });
}

interface MarkupProps {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Made by the scene writer, which escapes every word of the study. */ readonly markup: string;
}

/** A layer of the drawing, touched only when its markup changes. */
export function Markup({ name, width, height, markup }: MarkupProps) {
  const place = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    if (place.current !== null) place.current.innerHTML = markup;
  }, [markup]);
  return <svg ref={place} class={name} width={width} height={height} aria-hidden="true" />;
}
