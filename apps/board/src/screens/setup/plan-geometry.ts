import type { PitSettings, YardSettings } from '@stokehold/domain/contract';

// The yard plan in metres from its top left corner; up on the screen is the heading the plan's top edge looks to.

export interface Place {
  readonly xM: number;
  readonly yM: number;
}
type Plan = Pick<YardSettings, 'planWidthM' | 'planHeightM' | 'planTopDeg'>;

/** How far a pit is turned on the screen, degrees clockwise, if it is drawn with its firebox up. */
export const turnOf = (pit: Pick<PitSettings, 'fireEndHeadingDeg'>, plan: Pick<Plan, 'planTopDeg'>): number =>
  (((pit.fireEndHeadingDeg - plan.planTopDeg) % 360) + 360) % 360;

const tenth = (metres: number) => Math.round(metres * 10) / 10;
/** The nearest place on the plan, to a tenth of a metre. */
export const onPlan = ({ xM, yM }: Place, plan: Plan): Place => ({
  xM: tenth(Math.min(plan.planWidthM, Math.max(0, xM))),
  yM: tenth(Math.min(plan.planHeightM, Math.max(0, yM))),
});

const STEP_M = 0.5;
const FINE_STEP_M = 0.1;
const KEYS: Readonly<Record<string, Place>> = {
  ArrowLeft: { xM: -1, yM: 0 }, ArrowRight: { xM: 1, yM: 0 }, ArrowUp: { xM: 0, yM: -1 }, ArrowDown: { xM: 0, yM: 1 },
};
/** Where an arrow key moves something: half a metre, a tenth with the shift key; undefined for any other key. */
export function stepped(place: Place, key: string, fine: boolean, plan: Plan): Place | undefined {
  const way = KEYS[key];
  if (!way) return undefined;
  const step = fine ? FINE_STEP_M : STEP_M;
  return onPlan({ xM: place.xM + way.xM * step, yM: place.yM + way.yM * step }, plan);
}

const NAME_M = 0.85;
const NAME_LEAST_PX = 14;
/** How large names stand on a plan of this width drawn so wide: as large as its drawings ask, and never too small to read. */
export const nameM = (planWidthM: number, shownPx: number): number => Math.max(NAME_M, (NAME_LEAST_PX * planWidthM) / Math.max(shownPx, 1));

export interface Footprint {
  readonly firebox: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly chamber: Footprint['firebox'];
  readonly stack: { readonly x: number; readonly y: number; readonly r: number };
}
/** A pit from above around its middle, firebox up; metres. */
export function footprint(pit: Pick<PitSettings, 'chamberLengthM' | 'chamberDiameterM' | 'fireboxLengthM' | 'fireboxDiameterM' | 'stackDiameterM'>): Footprint {
  const long = pit.chamberLengthM + pit.fireboxLengthM;
  const top = -long / 2;
  return {
    firebox: { x: -pit.fireboxDiameterM / 2, y: top, width: pit.fireboxDiameterM, height: pit.fireboxLengthM },
    chamber: { x: -pit.chamberDiameterM / 2, y: top + pit.fireboxLengthM, width: pit.chamberDiameterM, height: pit.chamberLengthM },
    stack: { x: 0, y: top + long - pit.stackDiameterM, r: Math.max(0.12, pit.stackDiameterM / 2) },
  };
}

/** How far a turned pit reaches below its middle on the screen, metres. */
export function reachBelow(pit: Parameters<typeof footprint>[0], turnDeg: number): number {
  const turn = (turnDeg * Math.PI) / 180;
  const long = pit.chamberLengthM + pit.fireboxLengthM;
  const wide = Math.max(pit.chamberDiameterM, pit.fireboxDiameterM);
  return (Math.abs(Math.cos(turn)) * long + Math.abs(Math.sin(turn)) * wide) / 2;
}
