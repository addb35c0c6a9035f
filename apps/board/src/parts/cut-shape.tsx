import type { CutShape as Shape } from '@stokehold/domain/contract';

interface CutShapeProps {
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const RIBS = [0.08, 0.36, 0.64, 0.92];

/** One piece as a silhouette, the same on every screen; drawn inside an svg, in its `--food` colour. */
export function CutShape({ shape, x, y, width: w, height: h }: CutShapeProps) {
  switch (shape) {
    case 'slab':
      return <rect x={x} y={y + h * 0.18} width={w} height={h * 0.64} rx={Math.min(w, h * 0.64) * 0.42} fill="var(--food)" />;
    case 'round':
      return <ellipse cx={x + w / 2} cy={y + h / 2} rx={Math.min(w, h * 1.3) * 0.47} ry={h * 0.44} fill="var(--food)" />;
    case 'ribs':
      return (
        <g stroke="var(--food)" strokeWidth={Math.max(1.5, w * 0.15)} strokeLinecap="round">
          {RIBS.map((at) => (
            <path key={at} d={`M${x + at * w} ${y + h * 0.14}V${y + h * 0.86}`} />
          ))}
        </g>
      );
    case 'bird':
      return (
        <path
          d={`M${x} ${y + h * 0.84}Q${x + w * 0.06} ${y + h * 0.12} ${x + w * 0.52} ${y + h * 0.12}Q${x + w * 0.9} ${y + h * 0.14} ${x + w} ${y + h * 0.84}Z`}
          fill="var(--food)"
        />
      );
    case 'link':
      return (
        <path
          d={`M${x + w * 0.1} ${y + h * 0.28}Q${x + w * 0.5} ${y + h * 0.98} ${x + w * 0.9} ${y + h * 0.28}`}
          fill="none"
          stroke="var(--food)"
          strokeWidth={h * 0.3}
          strokeLinecap="round"
        />
      );
  }
}
