// One simulated night at one pit: weather, wood and errors of seeing of its own, and a crew that follows a policy.
import {
  advance, advise, gradeOf, igniteTruth, kindle, pencilRule, piecesOf, REFERENCE_SHAPE, ruleA, ruleB, seeCheck,
  seeReadings, stepTruth,
} from '@stokehold/domain/fire';
import { epochS, later, randomStream, seedFrom } from '@stokehold/domain/quantity';

/** 250 to 260 °F. */
export const BAND = { lowC: (250 - 32) / 1.8, highC: (260 - 32) / 1.8 };
export const toF = (tempC) => tempC * 1.8 + 32;
const HOUR_MIN = 60;
const NIGHT_MIN = 12 * HOUR_MIN;
/** The night proper begins when the fire has been brought up: that first part is the same for every policy and is not scored. */
const WARM_UP_MIN = 3 * HOUR_MIN;

/** Weather, wood and errors of a night. Hard: wind bursts, rain, a wet lot said to be dry, another food load than thought. Calm: a known pit. */
export function nightOf(seed, kind) {
  const random = randomStream(seedFrom('night', kind, seed));
  const hard = kind === 'hard';
  const bursts = hard ? [0, 1].map(() => ({ from: 180 + 720 * random.next(), long: 20 + 30 * random.next(), wind: 4 + 4 * random.next(), angle: Math.PI * random.next() })) : [];
  const rainFrom = hard && random.next() < 0.35 ? 180 + 500 * random.next() : Infinity;
  const wetFrom = hard && random.next() < 0.3 ? 180 + 300 * random.next() : Infinity;
  const wetMoisture = 0.22 + 0.08 * random.next();
  return {
    seed, hard,
    spread: hard ? 0.2 : 0,
    windAngle: Math.PI * random.next(),
    wind: hard ? 0.5 + 2.5 * random.next() : 1,
    ambientTempC: hard ? 5 + 18 * random.next() : 15,
    bursts, rainFrom, rainFrac: 0.3 + 0.5 * random.next(),
    moistureAt: (minute) => (minute >= wetFrom && minute < wetFrom + 180 ? wetMoisture : 0.13),
    foodFrac: hard ? 0.3 + 0.6 * random.next() : 0.6,
    probeBiasC: hard ? [1.5 * random.normal(), 1.5 * random.normal()] : [0, 0],
    probeNoiseC: hard ? 0.6 : 0.2,
    random,
  };
}

function weatherAt(night, minute) {
  const burst = night.bursts.find(({ from, long }) => minute >= from && minute < from + long);
  const windMPerS = burst ? burst.wind : night.wind;
  return {
    windMPerS, gustMPerS: windMPerS * (night.hard ? 1.5 : 1), fromFireEndRad: burst ? burst.angle : night.windAngle,
    ambientTempC: night.ambientTempC, rainFrac: minute >= night.rainFrom && minute < night.rainFrom + 120 ? night.rainFrac : 0,
  };
}

const AIR = { doorGapM: 0.0254, damperFrac: 1 };
const STANDARD = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: 0.13 };

/** How a crew decides: what to lay, and after how many minutes to look again. */
export const POLICIES = {
  advice: (see) => {
    const advice = advise(see.belief, { ...see.around, band: BAND, wood: { ...STANDARD, onCart: 99 }, effort: see.effort ?? 'full', seed: 7 });
    return { action: advice.action, waitMin: advice.lookAgainS / 60 };
  },
  ruleA: (see) => ({ action: ruleA(see), waitMin: 30 }),
  ruleB: (see) => ({ action: ruleB({ ...see, band: BAND }), waitMin: 30 }),
  ruleC: (see) => ({ action: pencilRule({ splitLifeSum: see.splitLifeSum, chamberTempC: see.chamberTempC, band: BAND }), waitMin: 30 }),
  ruleC40: (see) => ({ action: pencilRule({ splitLifeSum: see.splitLifeSum, chamberTempC: see.chamberTempC, band: BAND }), waitMin: 40 }),
  ruleC35: (see) => ({ action: pencilRule({ splitLifeSum: see.splitLifeSum, chamberTempC: see.chamberTempC, band: BAND }), waitMin: 35 }),
};

/**
 * Runs a night. `sensors`: 'probes' (every two minutes) or 'hand' (read at checks). `believe`: also keep a belief when the policy
 * needs none. `onMinute(minute, belief, truth)` watches.
 */
export function runNight(night, policy, { sensors = 'probes', believe = false, onMinute, effort } = {}) {
  const shape = REFERENCE_SHAPE;
  const random = randomStream(seedFrom('crew', night.seed));
  const start = epochS(1_800_000_000);
  const keep = believe || policy === 'advice';
  let truth = igniteTruth({ shape, at: start, ambientTempC: night.ambientTempC, random: randomStream(seedFrom('pit', night.seed)), spread: night.spread });
  let belief = kindle({ shape, at: start, state: 'cold', ambientTempC: night.ambientTempC, seed: night.seed });
  const result = { minutes: 0, inBand: 0, within15: 0, outFMin: 0, checks: 0, splits: 0, dryKg: 0, bedLost: false, lowestBedKg: Infinity, temps: [], checkMinutes: [] };
  let nextCheck = 20;
  let on;
  for (let minute = 0; minute < NIGHT_MIN + WARM_UP_MIN; minute++) {
    const weather = weatherAt(night, minute);
    const believed = { weather: { ...weather, rainFrac: weather.rainFrac }, air: AIR, foodLoadFrac: minute < WARM_UP_MIN ? 0.3 : 0.6 };
    const seen = gradeOf(truth);
    const ends = [seen.fireEndTempC, seen.stackEndTempC].map((tempC, i) => tempC + night.probeBiasC[i] + night.probeNoiseC * random.normal());
    if (keep && sensors === 'probes' && minute % 2 === 0) belief = seeReadings(belief, { fireEndTempC: ends[0], stackEndTempC: ends[1] }).belief;
    const before = { belief, truth };
    if (minute >= WARM_UP_MIN) score(result, seen);
    on = undefined;
    if (minute >= nextCheck) {
      const scored = minute >= WARM_UP_MIN;
      const shown = { bed: seen.bed, left: seen.left, fireEndTempC: ends[0], stackEndTempC: ends[1] };
      const looked = keep ? seeCheck(belief, { ...shown, on: { pieces: [], raked: false }, position: 'door' }) : belief;
      const see = { ...shown, belief: looked, around: believed, chamberTempC: 0.5 * (ends[0] + ends[1]), splitLifeSum: seen.splitLifeSum, effort };
      const { action, waitMin } = scored ? POLICIES[policy](see) : POLICIES.ruleC(see);
      const laid = piecesOf(action, STANDARD).map((piece) => ({ ...piece, thicknessM: piece.thicknessM * (night.hard ? 1 + 0.04 * Math.max(-2, Math.min(2, random.normal())) : 1) }));
      if (keep) belief = seeCheck(looked, { on: { pieces: piecesOf(action, STANDARD), raked: true }, position: 'door' });
      on = { raked: true, pieces: laid.map((piece) => ({ ...piece, moisture: night.moistureAt(minute) })) };
      const late = night.hard ? Math.max(0, Math.round(2 + 3 * random.normal())) : 0;
      nextCheck = minute + Math.round(waitMin) + late;
      if (scored) {
        result.checks++;
        result.checkMinutes.push(minute);
        result.splits += laid.length;
        result.dryKg += laid.reduce((sum, piece) => sum + 0.78 * piece.thicknessM ** 2 * piece.lengthM * 665, 0);
      }
    }
    onMinute?.(minute, before.belief, seen, believed, before.truth, on && { raked: true, pieces: on.pieces.map((piece) => ({ ...piece, thicknessM: STANDARD.thicknessM, moisture: STANDARD.moisture })) });
    const to = later(truth.at, 60);
    truth = stepTruth(truth, { weather, air: AIR, foodLoadFrac: minute < WARM_UP_MIN ? 0.3 : night.foodFrac, to }, on);
    if (keep) belief = advance(belief, { ...believed, to });
  }
  return result;
}

function score(result, seen) {
  const tempF = toF(seen.chamberTempC);
  const outF = Math.max(0, 250 - tempF, tempF - 260);
  result.minutes++;
  result.outFMin += outF;
  if (outF === 0) result.inBand++;
  if (Math.abs(tempF - 255) <= 15) result.within15++;
  if (seen.bedLost) result.bedLost = true;
  result.lowestBedKg = Math.min(result.lowestBedKg, seen.bedKg);
  result.temps.push(seen.chamberTempC);
}

export { WARM_UP_MIN, NIGHT_MIN, AIR };
