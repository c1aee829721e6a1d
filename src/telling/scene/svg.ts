/** A scene written as SVG. The same scene and options give the same bytes. */

import { textWidth } from '../look/measureText.ts';
import { FONT_STACK, SUBSET_FAMILY } from '../look/themeCss.ts';
import type { Theme } from '../look/tokens.ts';
import { fixedColour } from './paint.ts';
import { short } from './pathData.ts';
import { escapeMarkup } from './safeText.ts';
import type { Fill, GroupNode, Paint, Scene, SceneNode, TextNode } from './scene.ts';

/** A font as base64 of its file. */
export interface EmbeddedFont {
  readonly weight: 400 | 600 | 700;
  /** What every program reads, or what browsers read and is less than half as long. */ readonly form:
    | 'truetype'
    | 'woff';
  readonly base64: string;
}

export interface SvgOptions {
  /**
   * `fixed`: colours of the scene's theme, for files. `variables`: `var(--ink)` and so on, for a page that holds
   * the declarations of `themeCss`.
   */
  readonly colours?: 'fixed' | 'variables';
  /** Fonts to carry inside; without them the reader's machine must have the family or falls back. */
  readonly fonts?: readonly EmbeddedFont[];
  /** Writes the width of every line of text: a machine without the family squeezes its own letters into it. */
  readonly steadyWidths?: boolean;
  /** Put before every id, to keep several drawings apart on one page. Letters, digits and hyphens. */
  readonly idPrefix?: string;
  /** Leave out to scale with the page: then only the view box is written. */
  readonly fixedSize?: boolean;
}

export function sceneToSvg(scene: Scene, options: SvgOptions = {}): string {
  const writer = new SvgWriter(scene.theme, options.colours ?? 'fixed', options.idPrefix ?? 'p', {
    steadyWidths: options.steadyWidths ?? false,
  });
  const body = writer.nodes(scene.children);
  const prefix = options.idPrefix ?? 'p';
  const size =
    options.fixedSize === false ? '' : ` width="${short(scene.width)}" height="${short(scene.height)}"`;
  const background = scene.transparent
    ? ''
    : `<rect width="${short(scene.width)}" height="${short(scene.height)}" fill="${writer.paint('paper')}"/>`;
  const defs = writer.definitions();
  const fonts = fontFaces(options.fonts ?? []);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(scene.width)} ${short(scene.height)}"${size} ` +
    `role="img" aria-labelledby="${prefix}-t ${prefix}-d" font-family="${FONT_STACK}" ` +
    'style="font-variant-numeric:tabular-nums lining-nums">' +
    `<title id="${prefix}-t">${escapeMarkup(scene.title)}</title>` +
    `<desc id="${prefix}-d">${escapeMarkup(scene.description)}</desc>` +
    (defs === '' && fonts === '' ? '' : `<defs>${fonts}${defs}</defs>`) +
    `${background}${body}</svg>`
  );
}

/** The drawing of a few nodes, without the outer element; for pages that update part of a figure. */
export function nodesToSvg(
  nodes: readonly SceneNode[],
  theme: Theme,
  options: Pick<SvgOptions, 'colours' | 'idPrefix'> = {},
): string {
  const writer = new SvgWriter(theme, options.colours ?? 'variables', options.idPrefix ?? 'n');
  const body = writer.nodes(nodes);
  const defs = writer.definitions();
  return defs === '' ? body : `<defs>${defs}</defs>${body}`;
}

function fontFaces(fonts: readonly EmbeddedFont[]): string {
  if (fonts.length === 0) return '';
  return `<style>${fonts.map(fontFace).join('')}</style>`;
}

/** The CSS rule that brings one embedded font into a page or drawing. */
export function fontFace(font: EmbeddedFont): string {
  return (
    `@font-face{font-family:'${SUBSET_FAMILY}';font-weight:${font.weight};` +
    `src:url(data:font/${font.form === 'woff' ? 'woff' : 'ttf'};base64,${font.base64}) format('${font.form}');}`
  );
}

const blurFilter = ({ deviation, x, y, width, height }: NonNullable<GroupNode['blur']>): string =>
  `<filter id="@" filterUnits="userSpaceOnUse" x="${short(x)}" y="${short(y)}" width="${short(width)}" ` +
  `height="${short(height)}" color-interpolation-filters="sRGB"><feGaussianBlur stdDeviation="${short(deviation)}"/></filter>`;

/** Writes nodes and collects what they define once (patterns, gradients, clips). */
class SvgWriter {
  private readonly theme: Theme;
  private readonly colours: 'fixed' | 'variables';
  private readonly prefix: string;
  private readonly defined = new Map<string, string>();

  private readonly steadyWidths: boolean;

  constructor(
    theme: Theme,
    colours: 'fixed' | 'variables',
    prefix: string,
    { steadyWidths }: { readonly steadyWidths: boolean } = { steadyWidths: false },
  ) {
    this.steadyWidths = steadyWidths;
    this.theme = theme;
    this.colours = colours;
    this.prefix = prefix;
  }

  paint(paint: Paint): string {
    if (paint === 'none') return 'none';
    if (this.colours === 'variables') return `var(--${paint})`;
    return fixedColour(paint, this.theme);
  }

  definitions(): string {
    return [...this.defined.entries()].map(([body, id]) => body.replace('@', id)).join('');
  }

  nodes(nodes: readonly SceneNode[]): string {
    let out = '';
    for (const node of nodes) out += this.node(node);
    return out;
  }

  private node(node: SceneNode): string {
    switch (node.kind) {
      case 'group':
        return (
          `<g${node.name ? ` class="${escapeMarkup(node.name)}"` : ''}` +
          `${node.clip ? ` clip-path="url(#${this.define(`<clipPath id="@"><path d="${node.clip}"/></clipPath>`)})"` : ''}` +
          `${node.blur === undefined ? '' : ` filter="url(#${this.define(blurFilter(node.blur))})"`}` +
          `${node.opacity === undefined ? '' : ` opacity="${short(node.opacity)}"`}>${this.nodes(node.children)}</g>`
        );
      case 'path': {
        const drawn = `<path d="${node.d}"${this.filled(node)}${this.stroked(node)}/>`;
        if (node.ring === undefined) return drawn;
        const wide = (node.stroke ? (node.strokeWidth ?? 1) : 0) + node.ring;
        return `<path d="${node.d}" fill="none" stroke="${this.paint('paper')}" stroke-width="${short(wide)}" stroke-linejoin="round"/>${drawn}`;
      }
      case 'rect':
        return `<rect x="${short(node.x)}" y="${short(node.y)}" width="${short(node.width)}" height="${short(node.height)}"${this.filled(node)}${this.stroked(node)}/>`;
      case 'circle':
        return `<circle cx="${short(node.x)}" cy="${short(node.y)}" r="${short(node.radius)}"${this.filled(node)}${this.stroked(node)}/>`;
      case 'text':
        return this.text(node);
    }
  }

  private text(node: TextNode): string {
    const anchor = node.anchor === 'start' ? '' : ` text-anchor="${node.anchor}"`;
    const weight = node.weight === 400 ? '' : ` font-weight="${node.weight}"`;
    const place = `x="${short(node.x)}" y="${short(node.y)}" font-size="${short(node.size)}"${weight}${anchor}`;
    const words = escapeMarkup(node.text);
    const width = this.steadyWidths
      ? ` textLength="${short(textWidth(node.text, node.size, node.weight))}" lengthAdjust="spacingAndGlyphs"`
      : '';
    const halo = node.halo
      ? ` stroke="${this.paint('paper')}" stroke-opacity="0.86" stroke-width="${short(0.22 * node.size)}" stroke-linejoin="round" paint-order="stroke"`
      : '';
    return `<text ${place}${width} fill="${this.paint(node.fill)}"${halo}>${words}</text>`;
  }

  private filled(node: { fill?: Fill; fillOpacity?: number }): string {
    const fill = ` fill="${this.fill(node.fill ?? 'none')}"`;
    return node.fillOpacity === undefined ? fill : `${fill} fill-opacity="${short(node.fillOpacity)}"`;
  }

  private stroked(node: {
    stroke?: Paint;
    strokeWidth?: number;
    strokeOpacity?: number;
    dash?: readonly number[];
    cap?: string;
    join?: string;
  }): string {
    if (node.stroke === undefined) return '';
    return (
      ` stroke="${this.paint(node.stroke)}" stroke-width="${short(node.strokeWidth ?? 1)}"` +
      (node.strokeOpacity === undefined ? '' : ` stroke-opacity="${short(node.strokeOpacity)}"`) +
      (node.dash && node.dash.length > 0 ? ` stroke-dasharray="${node.dash.map(short).join(' ')}"` : '') +
      (node.cap ? ` stroke-linecap="${node.cap}"` : '') +
      (node.join ? ` stroke-linejoin="${node.join}"` : '')
    );
  }

  private fill(fill: Fill): string {
    if (typeof fill === 'string') return this.paint(fill);
    const colour = this.paint(fill.colour);
    switch (fill.pattern) {
      case 'hatch':
        return `url(#${this.define(
          `<pattern id="@" width="${short(fill.gap)}" height="${short(fill.gap)}" patternUnits="userSpaceOnUse" patternTransform="rotate(${short(fill.angle)})"><path d="M0 0V${short(fill.gap)}" stroke="${colour}" stroke-width="${short(2 * fill.width)}" stroke-opacity="${short(fill.opacity)}"/></pattern>`,
        )})`;
      case 'dots':
        return `url(#${this.define(
          `<pattern id="@" width="${short(fill.gap)}" height="${short(fill.gap)}" patternUnits="userSpaceOnUse"><circle cx="${short(fill.gap / 2)}" cy="${short(fill.gap / 2)}" r="${short(fill.radius)}" fill="${colour}"/></pattern>`,
        )})`;
    }
  }

  private define(body: string): string {
    const known = this.defined.get(body);
    if (known) return known;
    const id = `${this.prefix}-${this.defined.size + 1}`;
    this.defined.set(body, id);
    return id;
  }
}
