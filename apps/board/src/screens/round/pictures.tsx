import { coalsPath } from '../../parts/coals.js';
import type { Put } from './draft.js';

const BED_FRAC = { low: 0.28, fair: 0.62, full: 1 } as const;

/** The coal bed as high as it is called. */
export function BedPicture({ bed }: { readonly bed: keyof typeof BED_FRAC }) {
  return (
    <svg width="76" height="42" viewBox="0 0 76 42" aria-hidden="true">
      <path d="M2 40h72" stroke="var(--mark)" strokeWidth="3" />
      <path d={coalsPath(BED_FRAC[bed], 8, 39, 60, 38)} fill="var(--wood)" />
    </svg>
  );
}

const THIRDS = { coals: 0, some: 1, most: 3 } as const;

/** How many thirds of the split are left. */
export function LeftPicture({ left }: { readonly left: keyof typeof THIRDS }) {
  return (
    <svg width="84" height="30" viewBox="0 0 84 30" aria-hidden="true">
      {[0, 1, 2].map((n) => (
        <rect key={n} x={n * 29} y="3" width="25" height="24" rx="4" stroke="var(--mark)" strokeWidth="2" fill={n < THIRDS[left] ? 'var(--wood)' : 'var(--ground)'} />
      ))}
    </svg>
  );
}

function Split({ y }: { readonly y: number }) {
  return (
    <g transform={`translate(0 ${y})`}>
      <path d="M8 3h60q9 8 0 18H8q-9 -9 0 -18z" fill="var(--wood)" />
      <path d="M68 3q9 8 0 18q-8 -9 0 -18z" fill="var(--wood-end)" />
    </g>
  );
}

/** The rake, one split, or two. */
export function PutPicture({ put }: { readonly put: Put }) {
  return (
    <svg width="84" height="50" viewBox="0 0 84 50" aria-hidden="true">
      {put === 'rake' && <path d="M12 44 58 14M50 4l18 20M50 4l-5 4M59 14l-5 4M68 24l-5 4" stroke="var(--text)" strokeWidth="4.5" fill="none" strokeLinecap="round" />}
      {put === 'one' && <Split y={14} />}
      {put === 'two' && (
        <>
          <Split y={2} />
          <Split y={25} />
        </>
      )}
    </svg>
  );
}
