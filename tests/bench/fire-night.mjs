// One simulated night at one pit: weather, wood and errors of seeing of its own, and a crew that follows a policy.
import {
  advance, advise, airOf, dueOf, gradeOf, heldDue, igniteTruth, kindle, needInSplits, pencilRule, piecesOf, REFERENCE_SHAPE, ruleA, ruleB,
  seeCheck, seeReadings, stepTruth, USUAL_AIR_SET,
} from '@stokehold/domain/fire';
import { epochS, later, randomStream, seedFrom } from '@stokehold/domain/quantity';

/** 250 to 260 °F. */
export const BAND = { lowC: (250 - 32) / 1.8, highC: (260 - 32) / 1.8 };
export const toF = (tempC) => tempC * 1.8 + 32;
const HOUR_MIN = 60;
export const NIGHT_MIN = 12 * HOUR_MIN;
/** The night proper begins when the fire has been brought up: that first part is the same for every policy and is not scored. */
export const WARM_UP_MIN = 3 * HOUR_MIN;
const PROBE_EVERY_MIN = 2;
const OUTLOOK_EVERY_MIN = 6;

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

export function weatherAt(night, minute) {
  const burst = night.bursts.find(({ from, long }) => minute >= from && minute < from + long);
  const windMPerS = burst ? burst.wind : night.wind;
  return {
    windMPerS, gustMPerS: windMPerS * (night.hard ? 1.5 : 1), fromFireEndRad: burst ? burst.angle : night.windAngle,
    ambientTempC: night.ambientTempC, rainFrac: minute >= night.rainFrom && minute < night.rainFrom + 120 ? night.rainFrac : 0,
  };
}

export const AIR = airOf(USUAL_AIR_SET);
export const STANDARD = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: 0.13 };

const usual = (action) => ({ action, air: USUAL_AIR_SET });
const byC = (see) => pencilRule({ splitLifeSum: see.splitLifeSum, chamberTempC: see.chamberTempC, band: BAND });
/** A pencil with all that the advice may use: finer pieces, the door to a finger on a hot fire, a screen against the wind, the gauges from afar. */
/** The pencil's constant is meant for this pace; whoever comes sooner lays less. */
const USUAL_PACE_MIN = 33;
const FINE = [['rake', 0], ['offcut', 0.4], ['one-thin', 0.72], ['two-offcuts', 0.8], ['one', 1], ['one-thick', 1.33], ['two-thin', 1.44], ['two', 2]];
function pencilWithAir(see) {
  const aboveF = toF(see.chamberTempC) - 255;
  const want = needInSplits(see.splitLifeSum, -aboveF / 1.8) + 0.65 * (see.sinceMin / USUAL_PACE_MIN - 1);
  const [action] = FINE.reduce((best, one) => (Math.abs(one[1] - want) < Math.abs(best[1] - want) ? one : best));
  const along = see.around.weather.windMPerS * Math.cos(see.around.weather.fromFireEndRad);
  return { action, air: { door: aboveF > 6 ? 'one-finger' : 'usual', damper: 'open', screen: along >= 3 } };
}

/** How a crew decides: what to lay and how to leave the air, and after how many minutes to look again. `calls`: the gauges may call it sooner. */
export const POLICIES = {
  advice: { decide: (see) => {
    const made = advise(see.belief, { ...see.around, band: BAND, wood: { ...see.wood, onCart: 99, offcuts: 20 }, effort: see.effort ?? 'full', seed: 7 });
    return { action: made.action, air: made.air?.set ?? see.air, waitMin: made.lookAgainS / 60, made };
  } },
  ruleA: { decide: (see) => ({ ...usual(ruleA(see)), waitMin: 30 }) },
  ruleB: { decide: (see) => ({ ...usual(ruleB({ ...see, band: BAND })), waitMin: 30 }) },
  ruleC: { decide: (see) => ({ ...usual(byC(see)), waitMin: 30 }) },
  ruleC35: { decide: (see) => ({ ...usual(byC(see)), waitMin: 35 }) },
  ruleC40: { decide: (see) => ({ ...usual(byC(see)), waitMin: 40 }) },
  'ruleC35 with air': { decide: (see) => ({ ...pencilWithAir(see), waitMin: 35 }) },
  'ruleC40 with air called': { decide: (see) => ({ ...pencilWithAir(see), waitMin: 40 }), calls: true },
  'ruleB40 called': { decide: (see) => ({ ...usual(ruleB({ ...see, band: BAND })), waitMin: 40 }), calls: true },
};
/** Gauges call a pencil crew: so far out of the band, and so long after the last look. */
const CALLS_OUT_F = 4;
const CALLS_AFTER_MIN = 15;

/**
 * Runs a night. `sensors`: 'probes' (every two minutes) or 'hand' (read at checks). `believe`: also keep a belief when the policy
 * needs none. `onMinute(told)` watches. `restMin`: never back sooner; `paceMin`: back after so long whatever is decided. The advice's crew comes when the fire is due, as a yard shows it.
 */
export function runNight(night, policyName, { sensors = 'probes', believe = false, onMinute, effort, late = night.hard, restMin = 0, paceMin } = {}) {
  const shape = REFERENCE_SHAPE;
  const policy = POLICIES[policyName];
  const random = randomStream(seedFrom('crew', night.seed));
  const start = epochS(1_800_000_000);
  const byAdvice = policyName === 'advice';
  const keep = believe || byAdvice;
  let truth = igniteTruth({ shape, at: start, ambientTempC: night.ambientTempC, random: randomStream(seedFrom('pit', night.seed)), spread: night.spread });
  let belief = kindle({ shape, at: start, state: 'cold', ambientTempC: night.ambientTempC, seed: night.seed });
  const result = { minutes: 0, inBand: 0, within15: 0, outFMin: 0, checks: 0, splits: 0, dryKg: 0, bedLost: false, lowestBedKg: Infinity, temps: [], checkMinutes: [], airs: {} };
  let air = USUAL_AIR_SET;
  let lastLook = 0;
  let due;
  let lookAgain = 20;
  let lateness = 0;
  let on;
  for (let minute = 0; minute < NIGHT_MIN + WARM_UP_MIN; minute++) {
    const scored = minute >= WARM_UP_MIN;
    const weather = weatherAt(night, minute);
    const around = { weather, air: airOf(air), foodLoadFrac: minute < WARM_UP_MIN ? 0.3 : 0.6 };
    const seen = gradeOf(truth);
    const ends = [seen.fireEndTempC, seen.stackEndTempC].map((tempC, i) => tempC + night.probeBiasC[i] + night.probeNoiseC * random.normal());
    const gaugeC = 0.5 * (ends[0] + ends[1]);
    if (keep && sensors === 'probes' && minute % PROBE_EVERY_MIN === 0) belief = seeReadings(belief, { fireEndTempC: ends[0], stackEndTempC: ends[1] }).belief;
    if (scored) score(result, seen);
    if (byAdvice && minute % OUTLOOK_EVERY_MIN === 0) {
      const fresh = dueOf(belief, { ...around, band: BAND, lastLookAt: later(start, lastLook * 60), lookAgainAt: later(start, lookAgain * 60) });
      due = due ? heldDue(due, fresh, belief.at) : fresh;
    }
    const calls = policy.calls && sensors === 'probes' && minute - lastLook >= CALLS_AFTER_MIN && Math.abs(toF(gaugeC) - 255) > 5 + CALLS_OUT_F;
    const dueMin = byAdvice && scored && due ? Math.max((due.dueAt - start) / 60, lastLook + restMin) : calls && scored ? Math.min(minute, lookAgain) : lookAgain;
    const told = { minute, belief, seen, around, truth, did: undefined };
    on = undefined;
    if (minute >= dueMin + lateness) {
      const shown = { bed: seen.bed, left: seen.left, fireEndTempC: ends[0], stackEndTempC: ends[1] };
      const looked = keep ? seeCheck(belief, { ...shown, on: { pieces: [], raked: false }, position: 'door' }) : belief;
      const see = { ...shown, belief: looked, around, air, chamberTempC: gaugeC, splitLifeSum: seen.splitLifeSum, effort, sinceMin: minute - lastLook, wood: { ...STANDARD, moisture: night.saidAt?.(minute) ?? STANDARD.moisture } };
      const decided = scored ? policy.decide(see) : POLICIES.ruleC.decide(see);
      const thick = () => (night.hard ? 1 + 0.04 * Math.max(-2, Math.min(2, random.normal())) : 1);
      const said = piecesOf(decided.action, see.wood);
      const laid = said.map((piece) => ({ ...piece, thicknessM: piece.thicknessM * thick(), moisture: night.moistureAt(minute) }));
      air = decided.air;
      const did = { on: { pieces: said, raked: true }, air };
      told.did = did;
      if (keep) belief = seeCheck(looked, { ...did, position: 'door' });
      on = { raked: true, pieces: laid };
      lastLook = minute;
      lookAgain = minute + Math.round(scored && paceMin ? paceMin : decided.waitMin);
      lateness = late ? Math.max(0, Math.round(2 + 3 * random.normal())) : 0;
      due = byAdvice ? dueOf(belief, { ...around, air: airOf(air), band: BAND, lastLookAt: belief.at, lookAgainAt: later(start, lookAgain * 60) }) : undefined;
      if (scored) count(result, minute, laid, air);
    }
    onMinute?.(told);
    const to = later(truth.at, 60);
    const now = { ...around, air: airOf(air), to };
    truth = stepTruth(truth, { ...now, foodLoadFrac: minute < WARM_UP_MIN ? 0.3 : night.foodFrac }, on);
    if (keep) belief = advance(belief, now);
  }
  return result;
}

function count(result, minute, laid, air) {
  result.checks++;
  result.checkMinutes.push(minute);
  result.splits += laid.length;
  result.dryKg += laid.reduce((sum, piece) => sum + 0.78 * piece.thicknessM ** 2 * piece.lengthM * 665, 0);
  const named = `${air.door}${air.damper === 'open' ? '' : `/${air.damper}`}${air.screen ? '/screen' : ''}`;
  result.airs[named] = (result.airs[named] ?? 0) + 1;
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
