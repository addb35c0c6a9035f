import { newFlows, stepInputsOf } from '../../libs/domain/fire/flows.js';
import { freshestLifeFrac, glowingKg } from '../../libs/domain/fire/grades.js';
import { type LaidPiece, makeRoom, putPiece, rake } from '../../libs/domain/fire/lay.js';
import { BED_K, BED_KG, GAUGE_K, MEMBER_NUMBERS, PIECE_KG, pieceAt } from '../../libs/domain/fire/layout.js';
import { type FireParameters, REFERENCE_PIT } from '../../libs/domain/fire/parameters.js';
import type { FirePosition, Weather } from '../../libs/domain/fire/pit.js';
import { putStart, type Start } from '../../libs/domain/fire/start.js';
import { stepFire, storedJ } from '../../libs/domain/fire/step.js';

/** The split that the parameters were fitted with. */
export const SPLIT: LaidPiece = { dryKg: 1.72, halfThicknessM: 0.046, moisture: 0.12, dryKgPerM3: 650 };
export const THIN_SPLIT: LaidPiece = { ...SPLIT, dryKg: 1.72 * 0.72, halfThicknessM: 0.039 };
const HOT: Start = { bedKg: 0.5, bedK: 900, ambientK: 288.15, chamberK: 397 };
const toF = (kelvin: number) => (kelvin - 273.15) * 1.8 + 32;

/** One fire of the model, fed by hand. 15 °C, wind 1.5 m/s across the pit, food at 0.6 unless said. */
export function oneFire(
  ask: {
    readonly weather?: Partial<Weather>; readonly position?: FirePosition; readonly foodLoadFrac?: number; readonly stepS?: number;
    readonly start?: Start; readonly p?: FireParameters; readonly doorGapM?: number; readonly screened?: boolean;
  } = {},
) {
  const p = ask.p ?? REFERENCE_PIT;
  const stepS = ask.stepS ?? 60;
  const foodLoadFrac = ask.foodLoadFrac ?? 0.6;
  const weather = { windMPerS: 1.5, fromFireEndRad: Math.PI / 2, ambientTempC: 15, rainFrac: 0, ...ask.weather };
  const inputsWith = (doorGapM: number) =>
    stepInputsOf(p, { weather, air: { doorGapM, damperFrac: 1, ...(ask.screened && { screened: true }) }, foodLoadFrac }, ask.position ?? 'door', stepS);
  let inputs = inputsWith(ask.doorGapM ?? 0.0254);
  const x = new Float64Array(MEMBER_NUMBERS);
  const flows = newFlows();
  putStart(x, 0, ask.start ?? HOT);
  let pieces = 0;
  const fire = {
    x, flows,
    lay(piece: LaidPiece = SPLIT) {
      pieces = makeRoom(p, x, 1, pieces);
      putPiece(x, pieceAt(0, pieces), piece);
      pieces++;
    },
    rake: () => rake(x, 0, pieces),
    /** Leaves the door at another gap, m. */
    air(doorGapM: number) {
      inputs = inputsWith(doorGapM);
    },
    run(minutes: number, each?: () => void) {
      for (let s = 0; s < minutes * 60; s += stepS) {
        stepFire(p, x, 0, pieces, inputs, flows);
        each?.();
      }
    },
    /** Fed one split every `everyMin`, raked before each. */
    feed(splits: number, everyMin: number, piece = SPLIT, each?: () => void) {
      for (let i = 0; i < splits; i++) {
        fire.rake();
        fire.lay(piece);
        fire.run(everyMin, each);
      }
    },
    tempF: () => 0.5 * (toF(x[GAUGE_K]!) + toF(x[GAUGE_K + 2]!)),
    endsF: () => ({ fireEnd: toF(x[GAUGE_K]!), stackEnd: toF(x[GAUGE_K + 2]!) }),
    bedF: () => toF(x[BED_K]!),
    bedKg: () => x[BED_KG]!,
    glowingKg: () => glowingKg(x, 0, pieces),
    freshestLife: () => freshestLifeFrac(x, 0, pieces),
    lastPieceGone: () => !(x[pieceAt(0, pieces - 1) + PIECE_KG]! > 0),
    storedJ: () => storedJ(p, x, 0, pieces, weather.ambientTempC + 273.15, foodLoadFrac),
    leftJ: () => flows.shellJ + flows.fireboxJ + flows.stackJ + flows.vapourJ + flows.unburntJ,
  };
  return fire;
}
