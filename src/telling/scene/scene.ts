/**
 * A drawing as plain data. Colours are roles, not values: the same scene is drawn in either theme,
 * with fixed colours in a file or with CSS variables in a page. Units are pixels, y runs down.
 */

import type { FieldTint } from '../look/flowRamps.ts';
import type { Weight } from '../look/measureText.ts';
import type { ColourToken, Theme } from '../look/tokens.ts';

/** A colour of the look, a step of a ramp (0 is the paper), or nothing. */
export type Paint = ColourToken | `${FieldTint}-${number}` | 'none';

/** A fill that is not flat. */
export type Fill =
  | Paint
  /** Parallel lines; angle in degrees clockwise from upright. */
  | {
      readonly pattern: 'hatch';
      readonly colour: Paint;
      readonly angle: number;
      readonly gap: number;
      readonly width: number;
      readonly opacity: number;
    }
  | { readonly pattern: 'dots'; readonly colour: Paint; readonly gap: number; readonly radius: number };

interface Stroked {
  readonly stroke?: Paint;
  readonly strokeWidth?: number;
  readonly strokeOpacity?: number;
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
  readonly join?: 'miter' | 'round';
}

interface Filled {
  readonly fill?: Fill;
  readonly fillOpacity?: number;
}

/** What a line is drawn with: a canvas has it. */
export interface Tracer {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
}

export interface PathNode extends Stroked, Filled {
  readonly kind: 'path';
  readonly d: string;
  /** The same course without its text, for the many pieces of a field that moves. */
  readonly trace?: (tracer: Tracer) => void;
  /** Draws the same line in paper underneath, this much wider in all; keeps marks apart from the wash. */
  readonly ring?: number;
}

export interface RectNode extends Stroked, Filled {
  readonly kind: 'rect';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface CircleNode extends Stroked, Filled {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** One line of text. `x`, `y`: where the base line starts, has its middle or ends, as `anchor` says. */
export interface TextNode {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly weight: Weight;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly fill: ColourToken;
  /** Paper stroke under the letters, for text on the wash or over lines. */ readonly halo?: boolean;
  /** Name in the catalogue of the number that it tells. */ readonly tells?: string;
}

export interface GroupNode {
  readonly kind: 'group';
  /** What the group is, written as a class: `axis`, `engine-1 curve`, `cursor`. */ readonly name?: string;
  /** Outline to which the children are clipped. */ readonly clip?: string;
  readonly opacity?: number;
  /** Gaussian blur of the whole group, for the air, which has no edge: its deviation and the area it may fill. */
  readonly blur?: {
    readonly deviation: number;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly children: readonly SceneNode[];
}

export type SceneNode = PathNode | RectNode | CircleNode | TextNode | GroupNode;

export interface Scene {
  readonly width: number;
  readonly height: number;
  /** First line for screen readers. */ readonly title: string;
  /** What the picture shows, for those who cannot see it. */ readonly description: string;
  readonly theme: Theme;
  readonly transparent: boolean;
  readonly children: readonly SceneNode[];
}

export const group = (name: string, children: readonly SceneNode[]): GroupNode => ({
  kind: 'group',
  name,
  children,
});

/** All text nodes of a scene, in drawing order. */
export function textsOf(nodes: readonly SceneNode[]): TextNode[] {
  return nodes.flatMap((node) =>
    node.kind === 'group' ? textsOf(node.children) : node.kind === 'text' ? [node] : [],
  );
}
