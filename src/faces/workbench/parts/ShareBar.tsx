/** From 0 to 100 per cent, with a tick at the half; what it says stands in words beside it. */
export function ShareBar({ share }: { readonly share: number }) {
  return (
    <svg
      class="share-bar"
      width="100%"
      height="8"
      viewBox="0 0 100 8"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path class="whole" d="M0 4H100" vector-effect="non-scaling-stroke" />
      <path class="whole" d="M50 1V7" vector-effect="non-scaling-stroke" />
      {share > 0 && (
        <path class="part" d={`M0 4H${(100 * share).toFixed(2)}`} vector-effect="non-scaling-stroke" />
      )}
    </svg>
  );
}
