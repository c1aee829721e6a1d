/** The blocks of a script in order: scenes by their headings, lines by their paragraphs, what is shown by block quotes. */

import type { SyntaxNode, Tree } from '@lezer/common';
import { nearestName } from '../nearest.ts';
import { quote, type Report } from '../report.ts';
import { type Attributes, LINE_KEYS, readAttributes, SCENE_KEYS } from './attributes.ts';
import { childrenOf } from './markdown.ts';
import type { Piece, ScriptLine, Shown } from './model.ts';
import { insideOf, wordsOf } from './pieces.ts';

/** A line whose id and references are not settled yet. */
export interface LineDraft extends Pick<ScriptLine, 'pieces' | 'from' | 'to'> {
  readonly attributes: Attributes;
}

export interface SceneDraft {
  readonly name: string;
  readonly attributes: Attributes;
  readonly lines: LineDraft[];
  readonly shown: (Omit<Shown, 'at'> & { /** Place among the lines. */ readonly line: number })[];
  readonly from: number;
  to: number;
}

export interface Blocks {
  readonly title: string;
  readonly scenes: readonly SceneDraft[];
}

/** Lines before the first heading of a scene. */
const OPENING = 'Opening';
const HEADING = /^(?:ATX|Setext)Heading([1-6])$/;
const SILENT: ReadonlySet<string> = new Set(['CommentBlock', 'HorizontalRule']);

/** @param figures names of what can be drawn; null: not known here */
export function blocksOf(
  tree: Tree,
  text: string,
  figures: readonly string[] | null,
  report: Report,
): Blocks {
  let title: string | null = null;
  const scenes: SceneDraft[] = [];
  const newScene = (name: string, attributes: Attributes, from: number, to: number): SceneDraft => {
    const scene: SceneDraft = { name, attributes, lines: [], shown: [], from, to };
    scenes.push(scene);
    return scene;
  };
  const current = (at: number): SceneDraft => scenes.at(-1) ?? newScene(OPENING, {}, at, at);

  for (const block of childrenOf(tree.topNode)) {
    const level = HEADING.exec(block.name)?.[1];
    if (level !== undefined) {
      const { pieces, attributes } = insideOf(block, text, report);
      const name = wordsOf(pieces, text).trim();
      if (level === '1') {
        if (title !== null)
          tellOdd(block, 'title-twice', 'The script has a title already.', 'Write ## for a scene.', report);
        title ??= name;
      } else if (level === '2') {
        const own =
          attributes === null ? {} : readAttributes(attributes.raw, attributes.from, SCENE_KEYS, report);
        newScene(name, own, block.from, block.to);
      } else {
        tellOdd(
          block,
          'heading-too-deep',
          `${quote(name)} is a heading below a scene; there is none in a script.`,
          'Write ## for a scene, or <!-- --> round a note to yourself.',
          report,
        );
      }
      continue;
    }
    if (SILENT.has(block.name)) continue;
    const scene = current(block.from);
    scene.to = block.to;
    if (block.name === 'Paragraph') addLine(scene, block, text, report);
    else if (block.name === 'Blockquote') addShown(scene, block, text, figures, report);
    else {
      tellOdd(
        block,
        'block-not-said',
        `This is ${ODD.get(block.name) ?? 'a block'}, which is neither said nor shown; it is left out.`,
        'Write what is said in paragraphs, what is shown in block quotes (>), notes to yourself in <!-- -->.',
        report,
      );
    }
  }
  return { title: title ?? '', scenes };
}

const ODD: ReadonlyMap<string, string> = new Map([
  ['BulletList', 'a list'],
  ['OrderedList', 'a list'],
  ['FencedCode', 'a block of code'],
  ['CodeBlock', 'a block of code: it begins with four spaces'],
  ['HTMLBlock', 'a block of HTML'],
  ['LinkReference', 'the address of a link'],
  ['ProcessingInstructionBlock', 'an instruction to a program'],
]);

function tellOdd(block: SyntaxNode, code: string, what: string, mend: string, report: Report): void {
  report.problem({ code, what, mend }, '', block.from);
}

function addLine(scene: SceneDraft, block: SyntaxNode, text: string, report: Report): void {
  const { pieces, attributes } = insideOf(block, text, report);
  const own = attributes === null ? {} : readAttributes(attributes.raw, attributes.from, LINE_KEYS, report);
  if (pieces.length === 0) {
    if (attributes !== null) {
      tellOdd(
        block,
        'line-empty',
        'These braces stand at the end of no words.',
        'Put them at the end of the paragraph that they belong to.',
        report,
      );
    }
    return;
  }
  scene.lines.push({ pieces, attributes: own, from: block.from, to: block.to });
}

/** Deeper quotes and anything else in it say nothing. */
function addShown(
  scene: SceneDraft,
  block: SyntaxNode,
  text: string,
  figures: readonly string[] | null,
  report: Report,
): void {
  for (const child of childrenOf(block)) {
    if (child.name !== 'Paragraph') continue;
    tellRunningOn(child, text, report);
    const { pieces } = insideOf(child, text, report);
    const words = wordsOf(pieces, text);
    if (words === '') continue;
    const figure = figureIn(pieces, figures, child.from, report);
    scene.shown.push({
      ...(figure !== null && { figure }),
      words,
      line: scene.lines.length,
      from: child.from,
      to: child.to,
    });
  }
}

/** Markdown takes a line without > right behind a quote for a part of it: it would not be said. */
function tellRunningOn({ from, to }: SyntaxNode, text: string, report: Report): void {
  const [, ...rest] = text.slice(from, to).split('\n');
  let at = to - rest.join('\n').length;
  for (const line of rest) {
    if (!/^\s*>/.test(line)) {
      report.problem(
        {
          code: 'shown-runs-on',
          what: `${quote(line)} stands right behind a block quote, so it counts as shown, not as said.`,
          mend: 'Put an empty line before it, or > where it belongs to what is shown.',
        },
        '',
        at,
      );
    }
    at += line.length + 1;
  }
}

const FIGURE_NAME = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)+(?=$|[\s,.;:])/;

function figureIn(
  pieces: readonly Piece[],
  figures: readonly string[] | null,
  at: number,
  report: Report,
): string | null {
  const [first] = pieces;
  if (first?.kind !== 'words') return null;
  const word = FIGURE_NAME.exec(first.text)?.[0] ?? null;
  const plain = first.text.split(/[\s,.;:]/, 1)[0]!;
  if (figures === null) return word;
  if (figures.includes(plain)) return plain;
  const near = word === null ? null : nearestName(word, figures);
  if (word === null || near === null) return null;
  report.problem(
    { code: 'figure-unknown', what: `There is no figure ${quote(word)}.`, mend: `Did you mean ${near}?` },
    '',
    at,
  );
  return null;
}
