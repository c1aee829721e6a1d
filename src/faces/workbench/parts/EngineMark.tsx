import { ENGINE_STYLES } from '../../../telling/look/engineStyles.ts';

/** The line sample with its marker: the only legend there is. */
export function EngineMark({ order }: { readonly order: 1 | 2 }) {
  const style = ENGINE_STYLES[order - 1];
  const dash = style?.dash.map((share) => share * 2.4).join(' ');
  return (
    <svg class="engine-mark" width="28" height="14" aria-hidden="true">
      <path
        d="M0 7H28"
        class={`stroke-${order}`}
        stroke-width="2.4"
        {...(dash ? { 'stroke-dasharray': dash } : {})}
      />
      {order === 1 ? (
        <circle cx="14" cy="7" r="4.4" class={`fill-${order}`} />
      ) : (
        <path d="M14 1.3l5.7 5.7-5.7 5.7-5.7-5.7z" class={`fill-${order}`} />
      )}
    </svg>
  );
}
