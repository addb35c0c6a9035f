// How well the fire is forecast and how well the advice holds the band, on simulated nights whose pits differ from the model in 28
// parameters and two exponents. `node tests/bench/fire-skill.mjs`; FIRE_NIGHTS=60 for a long run. Truth and model share code and
// shape: a real pit will be forecast worse. The seeds here were not used to tune anything.
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { advance, advise, dueOf, estimateOf, forecast, kindle, piecesOf, REFERENCE_SHAPE, seeCheck, seeReadings, stepTruth, gradeOf } from '@stokehold/domain/fire';
import { epochS, later, randomStream } from '@stokehold/domain/quantity';
import { AIR, BAND, NIGHT_MIN, nightOf, runNight, toF, WARM_UP_MIN } from './fire-night.mjs';

const FIRST_SEED = 50_000;
const LEADS_MIN = [15, 30, 60];
const mean = (values) => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
const rms = (values) => Math.sqrt(mean(values.map((value) => value * value)));
const table = (title, rows) => {
  console.log(`\n${title}`);
  console.table(rows);
};

/** Forecasts without further action against what the same pit does when nobody touches it, and with the crew's coming actions known. */
function skill(nights, sensors) {
  const errors = { noAction: {}, known: {}, persistNo: {}, persistKnown: {}, trendNo: {} };
  for (const kind of Object.keys(errors)) for (const lead of LEADS_MIN) errors[kind][lead] = [];
  const covered = Object.fromEntries(LEADS_MIN.map((lead) => [lead, []]));
  const leave = { model: [], trend: [] };
  const late = [];
  for (let n = 0; n < nights; n++) {
    const night = nightOf(FIRST_SEED + n, 'hard');
    const minutes = [];
    runNight(night, 'ruleB', {
      sensors, believe: true,
      onMinute: (minute, belief, seen, around, truth, did) => minutes.push({ minute, belief, seen, around, truth, did, tempC: seen.chamberTempC }),
    });
    let lastLookMin = 0;
    for (const { minute, belief, around, truth, tempC, did } of minutes) {
      if (did) lastLookMin = minute;
      if (minute < WARM_UP_MIN + 60 || minute % 15 !== 7 || minute + 90 > NIGHT_MIN + WARM_UP_MIN) continue;
      const alone = [tempC];
      let fork = truth;
      for (let i = 1; i <= 120; i++) {
        fork = stepTruth(fork, { ...around, foodLoadFrac: night.foodFrac, to: later(fork.at, 60) });
        alone.push(gradeOf(fork).chamberTempC);
        if (gradeOf(fork).bedKg < 0.12) alone.bedAt ??= i;
      }
      const fan = forecast(belief, { ...around, band: BAND, horizonS: 5400, stepS: 900 });
      const trendC = (tempC - minutes[minute - 15].tempC) / 15;
      for (const lead of LEADS_MIN) {
        errors.noAction[lead].push(1.8 * (fan.chamberTempC.p50[lead / 15] - alone[lead]));
        errors.persistNo[lead].push(1.8 * (tempC - alone[lead]));
        errors.trendNo[lead].push(1.8 * (tempC + trendC * lead - alone[lead]));
        errors.persistKnown[lead].push(1.8 * (tempC - minutes[minute + lead].tempC));
        covered[lead].push(alone[lead] >= fan.chamberTempC.p10[lead / 15] && alone[lead] <= fan.chamberTempC.p90[lead / 15] ? 1 : 0);
      }
      let ahead = belief;
      for (let i = 0; i < 60; i++) {
        const step = minutes[minute + i];
        if (step.did) ahead = seeCheck(ahead, { on: step.did, position: 'door' });
        ahead = advance(ahead, { ...step.around, to: later(ahead.at, 60) });
        if (LEADS_MIN.includes(i + 1)) errors.known[i + 1].push(1.8 * (estimateOf(ahead).chamberTempC.p50 - minutes[minute + i + 1].tempC));
      }
      const inBand = (t) => t >= BAND.lowC && t <= BAND.highC;
      if (inBand(tempC)) {
        const capped = (index) => Math.min(90, index < 0 ? 90 : index);
        const really = capped(alone.findIndex((t) => !inBand(t)));
        leave.model.push(Math.abs(Math.min(90, (fan.leavesBandAfterS ?? 5400) / 60) - really));
        leave.trend.push(Math.abs(capped(alone.findIndex((_, i) => !inBand(tempC + trendC * i))) - really));
      }
      const trouble = Math.min(alone.findIndex((t) => t < BAND.lowC - 8.33) === -1 ? 999 : alone.findIndex((t) => t < BAND.lowC - 8.33), alone.bedAt ?? 999);
      const { latestSafeAt } = dueOf(belief, { ...around, band: BAND, lastLookAt: later(belief.at, (lastLookMin - minute) * 60 - 1) });
      if (trouble > 0) late.push((latestSafeAt - belief.at) / 60 > trouble ? 1 : 0);
    }
  }
  const row = (kind) => Object.fromEntries(LEADS_MIN.map((lead) => [`${lead} min`, rms(errors[kind][lead]).toFixed(1)]));
  table(`Forecast of the chamber's middle, ${sensors}, ${nights} hard nights, ${errors.known[15].length} origins: RMSE in °F`, {
    'model, no action': row('noAction'), 'persistence, no action': row('persistNo'), 'trend of 15 min, no action': row('trendNo'),
    'model, known actions': row('known'), 'persistence, known actions': row('persistKnown'),
    '80 % interval covers': Object.fromEntries(LEADS_MIN.map((lead) => [`${lead} min`, mean(covered[lead]).toFixed(2)])),
  });
  table('Time until the band is left, mean absolute error in min; latest safe that came too late', {
    model: { minutes: mean(leave.model).toFixed(1), origins: leave.model.length }, trend: { minutes: mean(leave.trend).toFixed(1), origins: leave.trend.length },
    'latest safe too late': { minutes: `${(100 * mean(late)).toFixed(1)} %`, origins: late.length },
  });
}

/** Advice against the pencil rules on the same nights. */
function closedLoop(nights, kind) {
  const policies = [['advice', 'probes'], ['advice', 'hand'], ['ruleA', 'hand'], ['ruleB', 'hand'], ['ruleC', 'hand'], ['ruleC35', 'hand'], ['ruleC40', 'hand']];
  const runs = {};
  const rows = {};
  for (const [policy, sensors] of policies) {
    const name = policy === 'advice' ? `advice, ${sensors}` : policy;
    const results = Array.from({ length: nights }, (_, n) => runNight(nightOf(FIRST_SEED + n, kind), policy, { sensors }));
    runs[name] = results;
    rows[name] = {
      'in band %': (100 * mean(results.map((r) => r.inBand / r.minutes))).toFixed(1), 'within 15 °F %': (100 * mean(results.map((r) => r.within15 / r.minutes))).toFixed(1),
      '°F-min out': mean(results.map((r) => r.outFMin)).toFixed(0), checks: mean(results.map((r) => r.checks)).toFixed(1),
      splits: mean(results.map((r) => r.splits)).toFixed(1), 'kg dry': mean(results.map((r) => r.dryKg)).toFixed(1),
      'beds lost': results.filter((r) => r.bedLost).length, 'lowest bed kg': Math.min(...results.map((r) => r.lowestBedKg)).toFixed(2),
    };
  }
  table(`A night of 12 h, ${kind}, mean of ${nights}`, rows);
  for (const rule of ['ruleB', 'ruleC', 'ruleC35', 'ruleC40']) {
    const differences = runs['advice, probes'].map((r, i) => r.outFMin - runs[rule][i].outFMin);
    const [low, high] = bootstrap(differences);
    const percent = (100 * mean(differences)) / mean(runs[rule].map((r) => r.outFMin));
    console.log(`advice with probes against ${rule}: ${mean(differences).toFixed(0)} °F-min (${percent.toFixed(0)} %), 95 % interval ${low.toFixed(0)} to ${high.toFixed(0)}`);
  }
}

function bootstrap(values) {
  const random = randomStream(1);
  const means = Array.from({ length: 2000 }, () => mean(values.map(() => values[random.below(values.length)]))).sort((a, b) => a - b);
  return [means[50], means[1949]];
}

function speed() {
  const around = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: AIR, foodLoadFrac: 0.6 };
  const wood = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: 0.12, onCart: 20 };
  let belief = kindle({ shape: REFERENCE_SHAPE, at: epochS(0), state: 'full', chamberTempC: 124, ambientTempC: 15, seed: 1 });
  belief = seeCheck(belief, { bed: 'full', left: 'some', fireEndTempC: 125, stackEndTempC: 123, on: { pieces: piecesOf('one', wood), raked: true }, position: 'door' });
  const jobs = {
    'advance 60 s and readings': () => seeReadings(advance(belief, { ...around, to: later(belief.at, 60) }), { fireEndTempC: 124, stackEndTempC: 123 }),
    'forecast 90 min': () => forecast(belief, { ...around, band: BAND, horizonS: 5400, stepS: 300 }),
    'due and latest safe': () => dueOf(belief, { ...around, band: BAND, lastLookAt: belief.at }),
    'advice, quick': () => advise(belief, { ...around, band: BAND, wood, effort: 'quick', seed: 1 }),
    'advice, full': () => advise(belief, { ...around, band: BAND, wood, seed: 1 }),
  };
  const rows = {};
  for (const [name, job] of Object.entries(jobs)) {
    for (let i = 0; i < 10; i++) job();
    const times = Array.from({ length: 60 }, () => {
      const from = performance.now();
      job();
      return performance.now() - from;
    }).sort((a, b) => a - b);
    rows[name] = { 'median ms': times[30].toFixed(2), 'p95 ms': times[57].toFixed(2) };
  }
  table('One pit, one core', rows);
}

/** Prints the tables; FIRE_NIGHTS nights of each kind, 20 unless said. */
export async function run() {
  const nights = Number(process.env.FIRE_NIGHTS ?? 20);
  speed();
  skill(nights, 'probes');
  skill(Math.max(1, Math.round(nights / 2)), 'hand');
  closedLoop(nights, 'hard');
  closedLoop(nights, 'calm');
  console.log(`\n(band ${toF(BAND.lowC).toFixed(0)} to ${toF(BAND.highC).toFixed(0)} °F; nobody measured a real pit for these figures)`);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
