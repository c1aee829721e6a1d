/** Two readers of captions by others, with the few types that the tests need: they bring none that resolve here. */

import { createRequire } from 'node:module';

export interface ReadNode {
  readonly type: string;
  readonly value?: string;
  readonly children?: readonly ReadNode[];
}

export interface ReadCue {
  readonly startTime: number;
  readonly endTime: number;
  readonly text: string;
  readonly tree: { readonly children: readonly ReadNode[] };
}

export interface Read {
  readonly cues: readonly ReadCue[];
  readonly errors: readonly unknown[];
}

const need = createRequire(import.meta.url);

/** By the parser that the authors of the standard keep. */
export function readStrictly(text: string, kind: 'captions' | 'chapters'): Read {
  const { WebVTTParser } = need('webvtt-parser') as {
    WebVTTParser: new (entities: unknown) => { parse(text: string, kind: string): Read };
  };
  return new WebVTTParser(need('webvtt-parser/html-entities.json')).parse(text, kind);
}

/** By a reader that players use. */
export async function readAsPlayer(text: string, type: 'vtt' | 'srt'): Promise<Read> {
  const { parseText } = (await import('media-captions')) as unknown as {
    readonly parseText: (text: string, options: object) => Promise<Read>;
  };
  return parseText(text, { type, strict: true, errors: true });
}

export const textOf = ({ type, value, children }: ReadNode): string =>
  type === 'text' ? (value ?? '') : (children ?? []).map(textOf).join('');
