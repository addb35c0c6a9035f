/** Where the wind blows, turned as the yard plan is turned: up on the screen is the plan's top edge. */
export function WindArrow({ fromDeg, planTopDeg, size }: { readonly fromDeg: number; readonly planTopDeg: number; readonly size: number }) {
  return (
    <svg viewBox="-32 -32 64 64" width={size} height={size} aria-hidden="true">
      <path d="M0 -28 15 20 0 10 -15 20Z" fill="currentColor" transform={`rotate(${(fromDeg + 180 - planTopDeg + 720) % 360})`} />
    </svg>
  );
}
