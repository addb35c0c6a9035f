import { clamp, type EpochS, randomStream, requireRange, seedFrom } from '../quantity/index.js';
import { usualDryKgPerS } from '../wood/index.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { GRADE_FRAC } from './grades.js';
import { type LaidPiece, putPiece } from './lay.js';
import { MEMBER_NUMBERS, pieceAt, THIRDS } from './layout.js';
import type { PitLearned } from './learned.js';
import { drawMultipliers, uncertainPiece } from './noise.js';
import type { FireParameters } from './parameters.js';
import type { BedGrade, PitShape } from './pit.js';
import { parametersOf, REFERENCE_SHAPE } from './pit-shape.js';
import { EMBERS_K, GLOWING_K, putStart } from './start.js';

/** How a fire stands when the night's book is opened. */
export type FireState = 'cold' | 'embers' | BedGrade;

/** Split that burns about 45 minutes in the reference pit: 0.092 m by 0.40 m. Source: our fit, inside common practice (3 to 4 in). */
const STANDARD_THICKNESS_M = 0.092;
const STANDARD_LENGTH_M = 0.4;
/** Dry wood of the splits that the parameters were fitted with, kg/m3: oak, [FPL-GTR-190] ch. 4. */
const STANDARD_KG_PER_M3 = 650;
/** Thin pieces laid at lighting in the reference pit, and in any. Source: common practice, no source. */
const LIGHTING_PIECES = 4;
const FEWEST_LIGHTING = 2;
const MOST_LIGHTING = 6;

/** Thickness and length of the split that suits this firebox: as long beside its width as in the reference pit, and as much heat beside its bed. */
export function standardSplitM(shape: PitShape): { readonly thicknessM: number; readonly lengthM: number } {
  const width = shape.fireboxDiameterM / REFERENCE_SHAPE.fireboxDiameterM;
  const wall = Math.sqrt(
    (shape.chamberLengthM * shape.chamberDiameterM) / (REFERENCE_SHAPE.chamberLengthM * REFERENCE_SHAPE.chamberDiameterM) / width,
  );
  return { thicknessM: STANDARD_THICKNESS_M * wall, lengthM: STANDARD_LENGTH_M * width };
}

/** That split as the fire feels it, thinner or thicker by `size`. */
export function standardPiece(shape: PitShape, size = 1): LaidPiece {
  const { thicknessM, lengthM } = standardSplitM(shape);
  const t = thicknessM * size;
  return { dryKg: 0.78 * t * t * lengthM * STANDARD_KG_PER_M3, halfThicknessM: t / 2, moisture: 0.12, dryKgPerM3: STANDARD_KG_PER_M3 };
}
/** Thickness of a thin piece beside the standard split. Source: our fit. */
export const THIN = 0.078 / 0.092;

/** Steel that lighting has to warm, J/K. */
const steelJPerK = ({ shellHeatJPerK, innerHeatJPerK, fireboxHeatJPerK }: FireParameters) => THIRDS * (shellHeatJPerK + innerHeatJPerK) + fireboxHeatJPerK;

/** Thin pieces to light a pit of this shape with: as much heat beside its steel as four in the reference pit. Source: heat balance; four: common practice, no source. */
export function lightingPieces(shape: PitShape): number {
  const steel = steelJPerK(parametersOf(shape)) / steelJPerK(parametersOf(REFERENCE_SHAPE));
  const wood = standardPiece(shape).dryKg / standardPiece(REFERENCE_SHAPE).dryKg;
  return clamp(Math.round((LIGHTING_PIECES * steel) / wood), FEWEST_LIGHTING, MOST_LIGHTING);
}

/** Bed of the start, as a share of the reference bed, and its temperature. Embers 0.06 kg of 0.5. Source: our fit. */
const startOf = (state: FireState) =>
  state === 'cold' ? { frac: 0.12, bedK: EMBERS_K } : state === 'embers' ? { frac: 0.3, bedK: 800 } : { frac: 0.85 * GRADE_FRAC[state], bedK: GLOWING_K };

/**
 * The first belief of a night: a cold pit being lit (a handful of embers under thin pieces), embers to build on, or a
 * fire that burns already with its bed graded and one split on it of which nothing is known.
 *
 * @param start.chamberTempC  what the gauges show; without it ambient for a cold pit, 60 °C over embers, 121 °C else
 * @param start.seed          whole number: the same seed draws the same members
 * @throws OutOfRangeError for a shape or temperature that cannot be
 */
export function kindle(start: {
  readonly shape: PitShape;
  readonly at: EpochS;
  readonly state: FireState;
  readonly chamberTempC?: number;
  readonly ambientTempC: number;
  readonly seed: number;
  /** What earlier nights taught of this pit; without it the pit is as set up. */
  readonly learned?: PitLearned;
}): FireBelief {
  const { shape, state } = start;
  const p = parametersOf(shape);
  requireRange('ambient temperature (°C)', start.ambientTempC, -50, 60);
  const chamberTempC = start.chamberTempC ?? (state === 'cold' ? start.ambientTempC : state === 'embers' ? 60 : 121);
  requireRange('chamber temperature (°C)', chamberTempC, -50, 350);
  const random = randomStream(seedFrom(start.seed, 'kindle'));
  const members = new Float64Array(MEMBERS * MEMBER_NUMBERS);
  const pieces = state === 'cold' ? lightingPieces(shape) : state === 'embers' ? 0 : 1;
  for (let m = 0; m < MEMBERS; m++) kindleMember(p, members, memberAt(m));
  return {
    at: start.at,
    shape,
    seed: start.seed,
    position: 'door',
    ungraded: state === 'cold' || state === 'embers',
    pieces,
    dryKgPerS: usualDryKgPerS({ lengthM: shape.chamberLengthM, diameterM: shape.chamberDiameterM }),
    members,
    past: new Float64Array(0),
  };

  function kindleMember(pit: FireParameters, x: Float64Array, member: number): void {
    const { frac, bedK } = startOf(state);
    const warm = chamberTempC > start.ambientTempC + 10;
    putStart(x, member, {
      bedKg: pit.bedKg * frac * Math.exp(0.3 * random.normal()),
      bedK: bedK + 25 * random.normal(),
      ambientK: start.ambientTempC + 273.15,
      chamberK: chamberTempC + 273.15 + (warm ? 4 * random.normal() : 0),
    });
    drawMultipliers(x, member, random, start.learned);
    const thin = standardPiece(shape, THIN);
    if (state === 'cold') for (let i = 0; i < pieces; i++) putPiece(x, pieceAt(member, i), uncertainPiece(thin, random));
    if (state === 'cold' || state === 'embers') return;
    const burntFrac = 0.1 + 0.75 * random.next();
    putPiece(x, pieceAt(member, 0), { ...uncertainPiece(standardPiece(shape), random), burntFrac, heatedFrac: Math.min(1, 0.5 + burntFrac) });
  }
}
