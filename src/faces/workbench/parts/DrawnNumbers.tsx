import { findQuantity } from '../../../answer/catalogue.ts';
import { textWidth } from '../../../telling/look/measureText.ts';
import type { SceneNode, TextNode } from '../../../telling/scene/scene.ts';
import type { ShownEngine } from '../state/pair.ts';
import { conditionHere, placeHere } from './ledgerWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

interface DrawnNumbersProps {
  /** What is drawn; the group of an engine is named by its style. */ readonly nodes: readonly SceneNode[];
  readonly engines: readonly ShownEngine[];
}

/** Over each drawn word that tells a number lies a button of the same size, so that it too tells where it comes from. */
export function DrawnNumbers({ nodes, engines }: DrawnNumbersProps) {
  return (
    <>
      {tellingIn(nodes, null).map(({ node, group }) => {
        const engine = engines.find(({ style }) => group?.startsWith(`engine-${style.order}`) === true);
        if (engine === undefined || engine.standing !== undefined || !engine.result.ok) return null;
        const width = textWidth(node.text, node.size, node.weight) + 8;
        const height = Math.max(LEAST, 1.18 * node.size);
        return (
          <div
            key={`${engine.id} ${node.tells}`}
            class="over-words"
            style={{
              left: `${leftOf(node, width)}px`,
              top: `${node.y - 0.34 * node.size - 0.5 * height}px`,
              width: `${width}px`,
              height: `${height}px`,
            }}
          >
            <TracedNumber
              quantity={node.tells}
              engine={engine.id}
              shown={node.text}
              condition={conditionHere()}
              label={`${engine.input.name}, ${findQuantity(node.tells)?.label ?? node.tells}, in the drawing`}
              expression={`${engine.id}.${node.tells}${placeHere()}`}
            >
              <span class="unseen">{node.text}</span>
            </TracedNumber>
          </div>
        );
      })}
    </>
  );
}

/** A control is no smaller [px]. */
const LEAST = 24;

interface Telling {
  readonly node: TextNode & { readonly tells: string };
  readonly group: string | null;
}

/** One line of each number: of several the first. */
function tellingIn(nodes: readonly SceneNode[], group: string | null): readonly Telling[] {
  const seen = new Set<string>();
  return nodes.flatMap((node): readonly Telling[] => {
    if (node.kind === 'group') return tellingIn(node.children, node.name ?? group);
    if (node.kind !== 'text' || node.tells === undefined || seen.has(node.tells)) return [];
    seen.add(node.tells);
    return [{ node: { ...node, tells: node.tells }, group }];
  });
}

function leftOf({ x, anchor }: TextNode, width: number): number {
  if (anchor === 'start') return x - 4;
  return anchor === 'end' ? x - width + 4 : x - width / 2;
}
