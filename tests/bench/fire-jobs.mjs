// Nights of the fire's bench as jobs for threads: each night is one, drawn from its own seed, so that any number of threads gives the same figures.
import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { advance, dueOf, estimateOf, forecast, gradeOf, seeCheck, stepTruth } from '@stokehold/domain/fire';
import { later } from '@stokehold/domain/quantity';
import { BAND, NIGHT_MIN, nightOf, runNight, WARM_UP_MIN } from './fire-night.mjs';

export const LEADS_MIN = [15, 30, 60];
export const perLead = (make) => Object.fromEntries(LEADS_MIN.map((lead) => [lead, make(lead)]));
const inBand = (tempC) => tempC >= BAND.lowC && tempC <= BAND.highC;
const capped = (index) => Math.min(90, index < 0 ? 90 : index);

/** What the pit does for two hours if nobody touches it: temperatures by the minute, and when its bed is nearly out. */
function leftAlone({ truth, around, tempC }, night) {
  const alone = [tempC];
  let fork = truth;
  for (let i = 1; i <= 120; i++) {
    fork = stepTruth(fork, { ...around, foodLoadFrac: night.foodFrac, to: later(fork.at, 60) });
    const seen = gradeOf(fork);
    alone.push(seen.chamberTempC);
    if (seen.bedKg < 0.12) alone.bedAt ??= i;
  }
  return alone;
}

/** The belief rolled ahead with what the crew then really did, against the pit. */
function knownActions(from, minutes, errors) {
  let ahead = from.belief;
  for (let i = 0; i < 60; i++) {
    const step = minutes[from.minute + i];
    if (step.did) ahead = seeCheck(ahead, { ...step.did, position: 'door' });
    ahead = advance(ahead, { ...minutes[from.minute + i + 1].around, to: later(ahead.at, 60) });
    if (LEADS_MIN.includes(i + 1)) errors.known[i + 1].push(1.8 * (estimateOf(ahead).chamberTempC.p50 - minutes[from.minute + i + 1].tempC));
  }
}

function score(from, minutes, night, got, lastLookMin) {
  const { minute, belief, around, tempC } = from;
  const alone = leftAlone(from, night);
  const fan = forecast(belief, { ...around, band: BAND, horizonS: 5400, stepS: 900 });
  const trendC = (tempC - minutes[minute - 15].tempC) / 15;
  for (const lead of LEADS_MIN) {
    const step = lead / 15;
    got.noAction[lead].push(1.8 * (fan.chamberTempC.p50[step] - alone[lead]));
    got.persistNo[lead].push(1.8 * (tempC - alone[lead]));
    got.trendNo[lead].push(1.8 * (tempC + trendC * lead - alone[lead]));
    got.persistKnown[lead].push(1.8 * (tempC - minutes[minute + lead].tempC));
    got.trendKnown[lead].push(1.8 * (tempC + trendC * lead - minutes[minute + lead].tempC));
    got.covered[lead].push(alone[lead] >= fan.chamberTempC.p10[step] && alone[lead] <= fan.chamberTempC.p90[step] ? 1 : 0);
  }
  knownActions(from, minutes, got);
  if (inBand(tempC)) {
    const really = capped(alone.findIndex((t) => !inBand(t)));
    got.leave.push(Math.abs(Math.min(90, (fan.leavesBandAfterS ?? 5400) / 60) - really));
    got.leaveTrend.push(Math.abs(capped(alone.findIndex((_, i) => !inBand(tempC + trendC * i))) - really));
  }
  const cold = alone.findIndex((t) => t < BAND.lowC - 8.33);
  const trouble = Math.min(cold === -1 ? 999 : cold, alone.bedAt ?? 999);
  const { latestSafeAt } = dueOf(belief, { ...around, band: BAND, lastLookAt: later(belief.at, (lastLookMin - minute) * 60 - 1) });
  if (trouble > 0) got.late.push((latestSafeAt - belief.at) / 60 > trouble ? 1 : 0);
}

const KINDS = ['noAction', 'known', 'persistNo', 'persistKnown', 'trendNo', 'trendKnown', 'covered'];

/** One hard night kept by rule B, forecast from twice an hour. */
function skillOfNight({ seed, sensors }) {
  const got = { ...Object.fromEntries(KINDS.map((kind) => [kind, perLead(() => [])])), leave: [], leaveTrend: [], late: [] };
  const night = nightOf(seed, 'hard');
  const minutes = [];
  runNight(night, 'ruleB', { sensors, believe: true, onMinute: (told) => minutes.push({ ...told, tempC: told.seen.chamberTempC }) });
  let lastLookMin = 0;
  for (const from of minutes) {
    if (from.did) lastLookMin = from.minute;
    if (from.minute < WARM_UP_MIN + 60 || from.minute % 30 !== 7 || from.minute + 90 > NIGHT_MIN + WARM_UP_MIN) continue;
    score(from, minutes, night, got, lastLookMin);
  }
  return got;
}

/** Twenty-nine percent of water for five hours of a night, said to be dry, or said as a meter read it. */
export const isWetMinute = (minute) => minute >= 300 && minute < 600;
const WET = { moistureAt: (minute) => (isWetMinute(minute) ? 0.29 : 0.13) };
const LOTS = { unsaid: WET, said: { ...WET, saidAt: (minute) => (isWetMinute(minute) ? 0.26 : 0.13) } };

const JOBS = {
  skill: skillOfNight,
  night: ({ seed, kind, crew, lot, ...how }) => runNight({ ...nightOf(seed, kind), ...LOTS[lot] }, crew, how),
};

/** Carries out jobs `[name, input]` side by side. @returns what each came to, in their order */
export async function inThreads(asked) {
  const results = new Array(asked.length);
  let next = 0;
  const thread = () =>
    new Promise((resolve, reject) => {
      const worker = new Worker(new URL(import.meta.url));
      const send = () => (next < asked.length ? worker.postMessage({ at: next, job: asked[next++] }) : resolve(worker.terminate()));
      worker.on('error', reject);
      worker.on('message', ({ at, result }) => {
        results[at] = result;
        send();
      });
      send();
    });
  await Promise.all(Array.from({ length: Math.min(asked.length, availableParallelism()) }, thread));
  return results;
}

if (!isMainThread) parentPort?.on('message', ({ at, job: [name, input] }) => parentPort.postMessage({ at, result: JOBS[name](input) }));
