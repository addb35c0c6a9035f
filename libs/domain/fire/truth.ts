import { type EpochS, later, type RandomStream, randomStream, requireRange, seedFrom } from '../quantity/index.js';
import { chamberK } from './chamber-temp.js';
import { newFlows, setStep, stepInputsOf } from './flows.js';
import { bedLost, freshestLifeFrac, glowingKg, gradeBed, gradeLeft, lifeSum, piecesBurning } from './grades.js';
import { lightingPieces, standardPiece, THIN } from './kindle.js';
import { type LaidPiece, makeRoom, putPiece, rake } from './lay.js';
import { BED_KG, GAUGE_K, LOG_AIR, LOG_BURN, MEMBER_NUMBERS, pieceAt, THIRDS } from './layout.js';
import type { FireParameters } from './parameters.js';
import { type BedGrade, type FirePosition, isRaked, MOST_PIECES_LAID, type PitShape, type SplitLeft, type Surroundings, type WoodOn } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { zonesOf } from './estimate.js';
import { laidPieceOf } from './see.js';
import { EMBERS_K, putStart } from './start.js';
import { stepFire } from './step.js';

/** A simulated pit with parameters of its own: the truth of a practice night and of the bench. It knows nothing of any belief. */
export interface PitTruth {
  readonly at: EpochS;
  readonly shape: PitShape;
  readonly parameters: FireParameters;
  readonly seed: number;
  readonly spread: number;
  readonly position: FirePosition;
  readonly pieces: number;
  /** One row, see layout.ts. */
  readonly state: Float64Array;
}
/** What a person at that pit sees and its gauges show, and what only the simulation knows. */
export interface TruthSeen {
  readonly bed: BedGrade;
  readonly left: SplitLeft;
  readonly fireEndTempC: number;
  readonly stackEndTempC: number;
  readonly zoneTempC: readonly number[];
  readonly chamberTempC: number;
  readonly bedKg: number;
  readonly glowingBedKg: number;
  readonly splitLifeFrac: number;
  readonly splitLifeSum: number;
  readonly splitsBurning: number;
  readonly bedLost: boolean;
}

/** Parameters that differ from pit to pit; the rest are physics or geometry. */
const OWN = [
  'charFrac', 'burnRateFactor', 'heatUpS', 'fallS', 'attachedBurnS', 'bedViewFrac', 'flameWPerM2', 'neighbourWPerM2', 'bedAreaM2',
  'bedBurnKgPerS', 'bedFilmWPerM2K', 'bedHeatJPerK', 'fireboxAreaM2', 'fireboxHeatJPerK', 'fireboxFilmWPerM2K', 'flameRadiantFrac',
  'orifice', 'windInFrac', 'windBackFrac', 'shellHeatJPerK', 'shellFilmWPerM2K', 'outsideFilmWPerM2K', 'innerWPerK', 'innerHeatJPerK',
  'foodWPerK', 'foodHeatJPerK', 'mixingWPerK',
] as const satisfies readonly (keyof FireParameters)[];
/** Other exponents than the model's: bed 0.75 for two thirds, air 0.6 for one half. */
const OWN_EXPONENTS = { bedExponent: 0.75, airExponent: 0.6 } as const;
/** Heat of wood and char is known better than the rest. */
const WOOD_HEAT_SHARE = 0.25;
/** A flame flickers: burning and air of one minute differ from the next by so much. Source: our fit. */
const FLICKER = 0.06;
const SPREAD = 0.2;
const TRUE_STEP_S = 60;

/**
 * A cold pit, lit: embers under thin pieces, every fitted parameter off by up to `spread` either way.
 *
 * @param start.random  draws the pit's own parameters and its flicker
 * @param start.spread  0 to 0.5; 0.2 unless said; 0 is a pit that is exactly as the model thinks
 */
export function igniteTruth(start: {
  readonly shape: PitShape;
  readonly at: EpochS;
  readonly ambientTempC: number;
  readonly random: RandomStream;
  readonly spread?: number;
}): PitTruth {
  const { shape, random } = start;
  const spread = start.spread ?? SPREAD;
  requireRange('spread', spread, 0, 0.5);
  requireRange('ambient temperature (°C)', start.ambientTempC, -50, 60);
  const parameters = ownParameters(parametersOf(shape), spread, random);
  const state = new Float64Array(MEMBER_NUMBERS);
  const ambientK = start.ambientTempC + 273.15;
  putStart(state, 0, { bedKg: 0.12 * parameters.bedKg, bedK: EMBERS_K, ambientK, chamberK: ambientK });
  const seed = random.below(2 ** 31);
  const pieces = lightingPieces(shape);
  for (let i = 0; i < pieces; i++) putPiece(state, pieceAt(0, i), ownPiece(standardPiece(shape, THIN), random, spread));
  return { at: start.at, shape, parameters, seed, spread, position: 'door', pieces, state };
}

function ownParameters(p: FireParameters, spread: number, random: RandomStream): FireParameters {
  const off = () => 1 + spread * (2 * random.next() - 1);
  const own = Object.fromEntries(OWN.map((name) => [name, p[name] * off()]));
  const heat = () => 1 + WOOD_HEAT_SHARE * spread * (2 * random.next() - 1);
  return { ...p, ...own, woodHeatJPerKg: p.woodHeatJPerKg * heat(), charHeatJPerKg: p.charHeatJPerKg * heat(), ...(spread > 0 ? OWN_EXPONENTS : {}) };
}

/** No two splits are alike: mass within a tenth or so, thickness within a twentieth. */
const ownPiece = (piece: LaidPiece, random: RandomStream, spread: number): LaidPiece => ({
  ...piece,
  dryKg: piece.dryKg * (1 + 0.5 * spread * clampedNormal(random)),
  halfThicknessM: piece.halfThicknessM * (1 + 0.25 * spread * clampedNormal(random)),
});
const clampedNormal = (random: RandomStream) => Math.max(-2, Math.min(2, random.normal()));

/**
 * The pit some time later; wood that is laid on lies there from the start of the span. Chance comes from the pit's own seed
 * and the instant: the same night, the same flicker.
 *
 * @param on  rake and up to 6 pieces, with their real moisture
 * @throws OutOfRangeError for a span backwards in time, or wood, weather, air or load that cannot be
 */
export function stepTruth(
  truth: PitTruth,
  span: Surroundings & { readonly to: EpochS },
  on?: WoodOn & { readonly position?: FirePosition },
): PitTruth {
  requireRange('span (s)', span.to - truth.at, 0, 7 * 86_400);
  const { parameters: p, spread } = truth;
  const x = truth.state.slice();
  const position = on?.position ?? truth.position;
  let pieces = truth.pieces;
  if (on && isRaked(on)) rake(x, 0, pieces);
  requireRange('pieces laid on', on?.pieces.length ?? 0, 0, MOST_PIECES_LAID);
  const laying = randomStream(seedFrom(truth.seed, 'laid', truth.at));
  for (const piece of on?.pieces ?? []) {
    const place = makeRoom(p, x, 1, pieces);
    putPiece(x, pieceAt(0, place), ownPiece(laidPieceOf(piece), laying, spread));
    pieces = place + 1;
  }
  const inputs = stepInputsOf(p, span, position, TRUE_STEP_S);
  const flows = newFlows();
  const gustiness = Math.max(0, (span.weather.gustMPerS ?? span.weather.windMPerS) - span.weather.windMPerS) / 20;
  let at = truth.at;
  while (at < span.to) {
    setStep(p, inputs, Math.min(TRUE_STEP_S, span.to - at));
    const random = randomStream(seedFrom(truth.seed, 'minute', at));
    const flicker = spread > 0 ? 1 : 0;
    x[LOG_BURN] = flicker * FLICKER * random.normal();
    x[LOG_AIR] = flicker * (FLICKER + gustiness) * random.normal();
    stepFire(p, x, 0, pieces, inputs, flows);
    at = later(at, inputs.stepS);
  }
  return { ...truth, at, position, pieces, state: x };
}

/** What is to be seen at that pit now, without any error of seeing. */
export function gradeOf(truth: PitTruth): TruthSeen {
  const { state: x, pieces, shape } = truth;
  const p = parametersOf(shape);
  const glowing = glowingKg(x, 0, pieces);
  const life = freshestLifeFrac(x, 0, pieces);
  const gaugesC = Array.from({ length: THIRDS }, (_, third) => x[GAUGE_K + third]! - 273.15);
  return {
    bed: gradeBed(p, glowing),
    left: gradeLeft(life),
    fireEndTempC: gaugesC[0]!,
    stackEndTempC: gaugesC[2]!,
    zoneTempC: zonesOf(gaugesC, shape.zones),
    chamberTempC: chamberK(x, 0) - 273.15,
    bedKg: x[BED_KG]!,
    glowingBedKg: glowing,
    splitLifeFrac: life,
    splitLifeSum: lifeSum(x, 0, pieces, standardPiece(shape).dryKg),
    splitsBurning: piecesBurning(x, 0, pieces),
    bedLost: bedLost(p, x, 0),
  };
}
