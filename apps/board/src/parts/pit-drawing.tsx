import type { CutShape as Shape, PitSettings } from '@stokehold/domain/contract';
import { coalsPath } from './coals.js';
import { CutShape } from './cut-shape.js';
import { layOutZone } from './lay-out-zone.js';

export interface LiesInZone {
  readonly zone: number;
  readonly shape: Shape;
  readonly pieces: number;
}

interface PitDrawingProps {
  readonly pit: Pick<PitSettings, 'fireEnd' | 'zones'>;
  readonly lies: readonly LiesInZone[];
  /** The estimated bed as a part of a full one; null where nothing is known. */
  readonly bedFrac: number | null;
  readonly lit: boolean;
  /** Said to a screen reader; without it the drawing is silent. */
  readonly title?: string;
}

const WIDTH = 392;
const HEIGHT = 132;
const CHAMBER = { x: 104, y: 30, width: 284, height: 72 };
const FIREBOX = { x: 4, y: 60, width: 98, height: 68 };
const ZONE_INSET = 16;

function Zones({ pit, lies }: Pick<PitDrawingProps, 'pit' | 'lies'>) {
  const total = pit.zones.reduce((sum, zone) => sum + zone.lengthM, 0);
  const inner = CHAMBER.width - 2 * ZONE_INSET;
  let x = CHAMBER.x + ZONE_INSET;
  return pit.zones.map((zone, n) => {
    const width = (inner * zone.lengthM) / total;
    const left = x;
    x += width;
    const here = lies.filter((lying) => lying.zone === n && lying.pieces > 0);
    const share = (width - 8) / Math.max(1, here.length);
    return (
      <g key={n}>
        {n > 0 && <path d={`M${left} ${CHAMBER.y + 8}v${CHAMBER.height - 16}`} stroke="var(--line)" strokeWidth="2" />}
        {here.map((lying, at) =>
          layOutZone(lying.pieces, { x: left + 4 + at * share, y: CHAMBER.y + 8, width: share, height: CHAMBER.height - 16 }).map((spot, i) => (
            <CutShape key={`${at}-${i}`} shape={lying.shape} {...spot} />
          )),
        )}
      </g>
    );
  });
}

/** A pit from its side, its fire end where it stands in the yard, with its coals and with what lies in each zone. */
export function PitDrawing({ pit, lies, bedFrac, lit, title }: PitDrawingProps) {
  const steel = { fill: 'var(--ground)', stroke: 'currentColor', strokeWidth: 3.5 };
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" height="100%" role={title ? 'img' : undefined} aria-label={title} aria-hidden={!title}>
      <g transform={pit.fireEnd === 'right' ? `translate(${WIDTH} 0) scale(-1 1)` : undefined}>
        <path d={`M${CHAMBER.x + CHAMBER.width - 24} ${CHAMBER.y + 4}V3`} stroke="currentColor" strokeWidth="16" />
        <rect {...CHAMBER} rx={CHAMBER.height / 2} {...steel} />
        <rect {...FIREBOX} rx="8" {...steel} strokeDasharray={lit ? undefined : '9 7'} />
        {lit && bedFrac !== null && <path d={coalsPath(bedFrac, FIREBOX.x + 12, FIREBOX.y + FIREBOX.height - 7, FIREBOX.width - 24, 38)} fill="var(--wood)" />}
        {lit && bedFrac === null && <path d={`M${FIREBOX.x + 24} 96h${FIREBOX.width - 48}`} stroke="currentColor" strokeWidth="5" strokeDasharray="10 9" />}
        <Zones pit={pit} lies={lies} />
      </g>
    </svg>
  );
}
