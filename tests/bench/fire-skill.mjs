// How well the fire is forecast and how well the advice holds the band, on simulated nights whose pits differ from the model in 28
// parameters and two exponents. `node tests/bench/fire-skill.mjs`; NIGHTS=60 for the run that the figures are stated from. Truth and
// model share code and shape: a real pit will be forecast worse. The seeds here were not used to tune anything.
import { pathToFileURL } from 'node:url';
import { randomStream } from '@stokehold/domain/quantity';
import { speed } from './fire-speed.mjs';
import { inThreads, isWetMinute, LEADS_MIN, perLead } from './fire-jobs.mjs';
import { BAND, toF, WARM_UP_MIN } from './fire-night.mjs';

const FIRST_SEED = 50_000;
const mean = (values) => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
const rms = (values) => Math.sqrt(mean(values.map((value) => value * value)));
const table = (title, rows) => {
  console.log(`\n${title}`);
  console.table(rows);
};
const seeds = (nights) => Array.from({ length: nights }, (_, n) => FIRST_SEED + n);

/** Forecasts without further action against what the same pit does when nobody touches it, and with the crew's coming actions known. */
async function skill(nights, sensors) {
  const each = await inThreads(seeds(nights).map((seed) => ['skill', { seed, sensors }]));
  const all = (kind, lead) => each.flatMap((night) => night[kind][lead]);
  const rmsOf = (kind, lead) => rms(all(kind, lead));
  const row = (kind) => Object.fromEntries(LEADS_MIN.map((lead) => [`${lead} min`, rmsOf(kind, lead).toFixed(1)]));
  table(`Forecast of the chamber's middle, ${sensors}, ${nights} hard nights, ${all('known', 15).length} origins: RMSE in °F`, {
    'model, no action': row('noAction'), 'persistence, no action': row('persistNo'), 'trend of 15 min, no action': row('trendNo'),
    'model, known actions': row('known'), 'persistence, known actions': row('persistKnown'), 'trend of 15 min, known actions': row('trendKnown'),
    '80 % interval covers': Object.fromEntries(LEADS_MIN.map((lead) => [`${lead} min`, mean(all('covered', lead)).toFixed(2)])),
  });
  const flat = (kind) => mean(each.flatMap((night) => night[kind]));
  return {
    known: perLead((lead) => rmsOf('known', lead)), toPersist: perLead((lead) => rmsOf('known', lead) / rmsOf('persistKnown', lead)),
    noAction: perLead((lead) => rmsOf('noAction', lead) / rmsOf('persistNo', lead)), toTrend: perLead((lead) => rmsOf('noAction', lead) / rmsOf('trendNo', lead)),
    covered: perLead((lead) => mean(all('covered', lead))),
    leave: flat('leave'), leaveTrend: flat('leaveTrend'), late: flat('late'),
  };
}

const CREWS = [
  ['advice', 'probes'], ['advice', 'hand'], ['ruleA', 'hand'], ['ruleB', 'hand'], ['ruleC', 'hand'], ['ruleC35', 'hand'], ['ruleC40', 'hand'],
  ['ruleC35 with air', 'hand'], ['ruleC40 with air called', 'probes'], ['ruleB40 called', 'probes'],
];

/** Advice against the pencil rules on the same nights; each rule also with the advice's finer pieces, door and calls of the gauges. */
async function closedLoop(nights, kind, crews) {
  const runs = {};
  const rows = {};
  const all = await inThreads(crews.flatMap(([crew, sensors]) => seeds(nights).map((seed) => ['night', { seed, kind, crew, sensors }])));
  for (const [nth, [crew, sensors]] of crews.entries()) {
    const name = `${crew}, ${sensors}`;
    const results = all.slice(nth * nights, (nth + 1) * nights);
    runs[name] = results;
    const over = (value, digits = 1) => mean(results.map(value)).toFixed(digits);
    rows[name] = {
      'in band %': over((r) => (100 * r.inBand) / r.minutes), 'within 15 °F %': over((r) => (100 * r.within15) / r.minutes), '°F-min out': over((r) => r.outFMin, 0),
      checks: over((r) => r.checks), pieces: over((r) => r.splits), 'kg dry': over((r) => r.dryKg), 'beds lost': results.filter((r) => r.bedLost).length,
      'lowest bed kg': Math.min(...results.map((r) => r.lowestBedKg)).toFixed(2),
    };
  }
  table(`A night of 12 h, ${kind}, mean of ${nights}`, rows);
  return runs;
}

function against(runs, crew) {
  const [mine, other] = [runs['advice, probes'], runs[crew]];
  const differences = mine.map((r, i) => r.outFMin - other[i].outFMin);
  const [low, high] = bootstrap(differences);
  const percent = (100 * mean(differences)) / mean(other.map((r) => r.outFMin));
  console.log(`advice with probes against ${crew}: ${mean(differences).toFixed(0)} °F-min (${percent.toFixed(0)} %), 95 % interval ${low.toFixed(0)} to ${high.toFixed(0)}`);
  return { percent, high };
}

function bootstrap(values) {
  const random = randomStream(1);
  const means = Array.from({ length: 2000 }, () => mean(values.map(() => values[random.below(values.length)]))).sort((a, b) => a - b);
  return [means[50], means[1949]];
}

/** What more or fewer walks buy: the same nights with the advice's walks held apart, beside the pencil's pace. */
async function curve(nights, kind) {
  const ways = [
    ...[0, 20, 25, 30, 35, 40].map((restMin) => [`advice, never back within ${restMin} min`, { crew: 'advice', sensors: 'probes', restMin }]),
    ...[22, 30, 35, 40, 50].map((paceMin) => [`pencil with air, every ${paceMin} min`, { crew: 'ruleC35 with air', sensors: 'hand', paceMin }]),
  ];
  const all = await inThreads(ways.flatMap(([, how]) => seeds(nights).map((seed) => ['night', { seed, kind, ...how }])));
  const rows = {};
  for (const [nth, [name]] of ways.entries()) {
    const results = all.slice(nth * nights, (nth + 1) * nights);
    rows[name] = { checks: mean(results.map((r) => r.checks)).toFixed(1), 'in band %': (100 * mean(results.map((r) => r.inBand / r.minutes))).toFixed(1), '°F-min out': mean(results.map((r) => r.outFMin)).toFixed(0) };
  }
  table(`Checks against minutes in the band, ${nights} ${kind} nights`, rows);
}

/** Twenty-nine percent of water for five hours of a calm night: dry, said to be dry, and said as a meter read it, 26 %. */
async function wetLot(nights) {
  const lots = [['dry'], ['wet, said to be dry', 'unsaid'], ['wet, said so', 'said']];
  const all = await inThreads(lots.flatMap(([, lot]) => seeds(nights).map((seed) => ['night', { seed, kind: 'calm', crew: 'advice', sensors: 'probes', lot }])));
  const rows = {};
  const told = lots.map(([name], nth) => {
    const results = all.slice(nth * nights, (nth + 1) * nights);
    const spell = results.map((r) => r.temps.slice(300 - WARM_UP_MIN, 600 - WARM_UP_MIN).map(toF));
    const [meanF, gapMin] = [mean(spell.map(mean)), 300 / mean(results.map((r) => r.checkMinutes.filter(isWetMinute).length))];
    rows[name] = { 'mean °F over the spell': meanF.toFixed(1), 'in band %': (100 * mean(spell.map((temps) => mean(temps.map((t) => (t >= 250 && t <= 260 ? 1 : 0)))))).toFixed(0), 'minutes between looks': gapMin.toFixed(0) };
    return { meanF, gapMin };
  });
  table(`A wet lot, ${nights} calm nights`, rows);
  const [dry, , said] = told;
  return { offF: said.meanF - dry.meanF, shorterFrac: 1 - said.gapMin / dry.gapMin };
}

/** The figures that the project is held to: must reach, stretch, reached. */
function targets({ probes, hand, hard, calm, against30, against35, wet, cpu }) {
  const f = (value, digits = 1) => value.toFixed(digits);
  const leads = (values, digits = 1) => LEADS_MIN.map((lead) => f(values[lead], digits)).join(' / ');
  const of = (runs, value) => mean(runs.map(value));
  const mine = hard['advice, probes'];
  const rows = [
    ['RMSE known actions 15/30/60, probes, °F', '9 / 13 / 15.5', '7.5 / 10.5 / 12.5', leads(probes.known)],
    ['the same over persistence', '0.6', '', leads(probes.toPersist, 2)],
    ['RMSE no action over persistence, 30/60', '0.4 / 0.25', '', `${f(probes.noAction[30], 2)} / ${f(probes.noAction[60], 2)}`],
    ['the same over the trend of 15 min, 15/30/60', 'below 1', '', leads(probes.toTrend, 2)],
    ['RMSE known actions 15 min, hand, °F', '13', '', f(hand.known[15])],
    ['80 % interval covers, probes', '.74-.87', '.77-.83', leads(probes.covered, 2)],
    ['80 % interval covers, hand', '.74-.87', '.77-.83', leads(hand.covered, 2)],
    ['time to leave the band, min: probes, hand, trend', '7, 10', '5', `${f(probes.leave)}, ${f(hand.leave)}, ${f(probes.leaveTrend)}`],
    ['latest safe too late', '8 %', '5 %', `${f(100 * probes.late)} %`],
    ['°F-min against rule B', '-40 %', '-50 %', `${f(against30.percent, 0)} %`],
    ['°F-min against rule C at 35 min; interval below 0', '-10 %', '-25 %', `${f(against35.percent, 0)} %; ${against35.high < 0 ? 'yes' : 'no'}`],
    ['checks against the 30-min rules', '-10 %', '-15 %', `${f(100 * (of(mine, (r) => r.checks) / of(hard['ruleB, hand'], (r) => r.checks) - 1), 0)} %`],
    ['wood against rule C', '+3 %', '', `${f(100 * (of(mine, (r) => r.dryKg) / of(hard['ruleC, hand'], (r) => r.dryKg) - 1))} %`],
    ['beds lost; lowest bed, kg', '0; 0.12', '', `${mine.filter((r) => r.bedLost).length}; ${f(Math.min(...mine.map((r) => r.lowestBedKg)), 2)}`],
    ['minutes in the 10 °F band, hard; calm', '55 %; 75 %', '', `${f(of(mine, (r) => (100 * r.inBand) / r.minutes))} %; ${f(of(calm['advice, probes'], (r) => (100 * r.inBand) / r.minutes))} %`],
    ['checks in the 12 h scored, hard; calm', '21', '', `${f(of(mine, (r) => r.checks))}; ${f(of(calm['advice, probes'], (r) => r.checks))}`],
    ['wet lot said so: mean off dry, °F; looks closer by', '3; 20 %', '', `${f(wet.offF)}; ${f(100 * wet.shorterFrac, 0)} %`],
    ['100 updates / 100 forecasts / one decision p95, ms', '40 / 600 / 150', '15 / 250 / 80', `${f(100 * cpu.updateMs, 0)} / ${f(100 * cpu.forecastMs, 0)} / ${f(cpu.decisionP95Ms, 0)}`],
  ];
  table('Held to', Object.fromEntries(rows.map(([figure, must, stretch, reached]) => [figure, { must, stretch, reached }])));
}

/** Prints the tables; NIGHTS nights of each kind, 60 unless said: under a quarter of an hour on two cores. */
export async function run() {
  const nights = Number(process.env.NIGHTS ?? 60);
  const part = (share) => Math.max(1, Math.round(nights * share));
  const cpu = speed(table);
  const probes = await skill(nights, 'probes');
  const hand = await skill(part(1 / 2), 'hand');
  const hard = await closedLoop(nights, 'hard', CREWS);
  const against30 = against(hard, 'ruleB, hand');
  for (const crew of ['ruleC, hand', 'ruleC40, hand', 'ruleC35 with air, hand', 'ruleC40 with air called, probes']) against(hard, crew);
  const against35 = against(hard, 'ruleC35, hand');
  const calm = await closedLoop(part(1 / 3), 'calm', [CREWS[0], CREWS[1], CREWS[3], CREWS[5], CREWS[8]]);
  const wet = await wetLot(part(1 / 6));
  await curve(part(1 / 4), 'hard');
  await curve(part(1 / 6), 'calm');
  targets({ probes, hand, hard, calm, against30, against35, wet, cpu });
  console.log(`\n(band ${toF(BAND.lowC).toFixed(0)} to ${toF(BAND.highC).toFixed(0)} °F; nobody measured a real pit for these figures)`);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
