import { useLayoutEffect, useRef } from 'preact/hooks';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { nodesToSvg } from '../../../telling/scene/svg.ts';

interface LayerProps {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly SceneNode[];
}

/**
 * A layer of a drawing. Each part of it is written by itself and put into the page only where its text has changed:
 * while something is dragged most of a drawing stays as it is. The scene writer escapes every word of the study.
 */
export function Layer({ name, width, height, nodes }: LayerProps) {
  const place = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    if (place.current !== null) showParts(place.current, partsOf(nodes), name);
  }, [nodes]);
  return <svg ref={place} class={name} width={width} height={height} aria-hidden="true" />;
}

interface Part {
  readonly node: SceneNode;
  /** Of the group that it was in; the style sheet speaks of it. */ readonly group: string;
}

/** Groups that only hold others together are opened. */
function partsOf(nodes: readonly SceneNode[], group = ''): readonly Part[] {
  return nodes.flatMap((node) =>
    node.kind === 'group' && node.clip === undefined && node.blur === undefined && node.opacity === undefined
      ? partsOf(node.children, `${group} ${node.name ?? ''}`.trim())
      : [{ node, group }],
  );
}

/** The text of a node does not change; what names clips and patterns does, by the place of the part. */
const texts = new WeakMap<SceneNode, { readonly prefix: string; readonly text: string }>();

function textOf(node: SceneNode, prefix: string): string {
  const known = texts.get(node);
  if (known?.prefix === prefix) return known.text;
  const text = nodesToSvg([node], 'light', { colours: 'variables', idPrefix: prefix });
  texts.set(node, { prefix, text });
  return text;
}

/** What a slot shows: its node, and its text where that was written whole. */
const shown = new WeakMap<Element, SceneNode>();
const written = new WeakMap<Element, string>();

function showParts(layer: SVGSVGElement, parts: readonly Part[], name: string): void {
  while (layer.childElementCount > parts.length) layer.lastElementChild?.remove();
  parts.forEach(({ node, group }, i) => {
    const slot = layer.children[i] ?? layer.appendChild(document.createElementNS(layer.namespaceURI, 'g'));
    const before = shown.get(slot);
    if (before === node) return;
    if (slot.getAttribute('class') !== group) slot.setAttribute('class', group);
    if (!movedAlone(slot, before, node)) {
      const text = textOf(node, `${name}${i}`);
      if (written.get(slot) !== text) slot.innerHTML = text;
      written.set(slot, text);
    } else written.delete(slot);
    shown.set(slot, node);
  });
}

/** A line or an area that only has another course keeps its element: reading markup anew takes longer. */
function movedAlone(slot: Element, before: SceneNode | undefined, now: SceneNode): boolean {
  if (before?.kind !== 'path' || now.kind !== 'path' || now.ring !== undefined) return false;
  const { d: _, ...was } = before;
  const { d, ...is } = now;
  const path = slot.lastElementChild;
  if (path?.tagName !== 'path' || JSON.stringify(was) !== JSON.stringify(is)) return false;
  path.setAttribute('d', d);
  return true;
}
