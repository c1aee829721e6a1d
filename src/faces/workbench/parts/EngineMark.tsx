import { dashOf, marker } from '../../../telling/figures/marks.ts';
import type { EngineStyle } from '../../../telling/look/engineStyles.ts';

/** The line sample with its marker: the only legend there is. */
export function EngineMark({ style }: { readonly style: EngineStyle }) {
  const dash = dashOf(style, 2.4).join(' ');
  return (
    <svg class="engine-mark" width="28" height="14" aria-hidden="true">
      <path
        d="M0 7H28"
        class={`stroke-${style.order}`}
        stroke-width="2.4"
        {...(dash === '' ? {} : { 'stroke-dasharray': dash })}
      />
      <Marker style={style} x={14} y={7} />
    </svg>
  );
}

/** The engine's sign alone. */
export function Marker({
  style,
  x,
  y,
}: {
  readonly style: EngineStyle;
  readonly x: number;
  readonly y: number;
}) {
  const node = marker(style, x, y, 4.3);
  return node.kind === 'path' ? <path d={node.d} class={`fill-${style.order}`} /> : null;
}
