// Done times: how fast a cook is forecast, and how often it is done inside the band that was said. `node tests/bench/food.mjs`; FOOD_COOKS=400
// FOOD_NIGHTS=12 for a long run. The true pieces differ in every trait, lie in air that is not what was forecast, and are probed off the core by a probe with
// noise; they share the model with the forecast, so a real piece will be forecast worse. The seeds tuned nothing.
import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chanceDoneBy, cookingTime, cutByCode, doneByFrac, forecastAll, forecastDone, learnFrom, lessonOf, nothingLearned, SPREAD, STARTING_CUTS, truePiece } from '@stokehold/domain/food';
import { epochS, later, randomStream, seedFrom } from '@stokehold/domain/quantity';

const ON = epochS(1_800_000_000);
const HOUR = 3600;
const { airLean: _ofTheForecastAlone, ...DIFFERS } = SPREAD;
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const mean = (values) => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
const valueOf = (result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
};
/** Milliseconds of this process's own work, and by the clock, median of some runs. */
function timed(work, runs = 9) {
  const own = [];
  const clock = [];
  for (let i = 0; i < runs; i++) {
    const [cpu, from] = [process.cpuUsage(), performance.now()];
    work();
    clock.push(performance.now() - from);
    const used = process.cpuUsage(cpu);
    own.push((used.user + used.system) / 1000);
  }
  return { ownMs: Number(median(own).toFixed(1)), clockMs: Number(median(clock).toFixed(1)) };
}
const steady = (tempC, sdK = 3) => ({ from: ON, stepS: HOUR, tempC: [tempC], sdK: [sdK] });
const readingsOf = (piece, until, random, noiseK = 0.4) => piece.readings.filter(({ at }) => at <= until).map(({ at, tempC }) => ({ at, tempC: tempC + noiseK * random.normal() }));

function speed() {
  const rows = [];
  for (const code of ['brisket', 'pork-shoulder', 'pork-spareribs', 'turkey', 'sausage']) {
    const cut = cutByCode(code);
    const cook = { cut, pieceKg: cut.usualKg, onAt: ON, air: steady(121), seed: 1 };
    const piece = truePiece(cook, { pace: 0.05 }, 600);
    const half = later(ON, (piece.doneAt - ON) / 2);
    const read = { ...cook, readings: piece.readings.filter(({ at }) => at <= half) };
    for (let i = 0; i < 4; i++) forecastDone(read, half);
    rows.push({ what: `${code}, 200 members`, ...timed(() => forecastDone(cook, ON)), readings: 0 });
    rows.push({ what: `${code}, half way, probe every 10 min`, ...timed(() => forecastDone(read, half)), readings: read.readings.length });
  }
  const brisket = cutByCode('brisket');
  const long = { cut: brisket, pieceKg: 6.3, onAt: ON, air: steady(121), seed: 1 };
  const half = later(ON, 5 * HOUR);
  const [before, now] = [-1200, 0].map((s) => ({ cook: { ...long, readings: truePiece(long, {}, 1200).readings.filter(({ at }) => at <= half + s) }, at: later(half, s) }));
  const [{ carried }] = forecastAll({ cooks: [{ cook: before.cook }], now: before.at });
  rows.push({ what: 'brisket after 5 h, gone on from the look 20 min before', ...timed(() => forecastAll({ cooks: [{ cook: now.cook, carried }], now: now.at })), readings: now.cook.readings.length });
  rows.push({ what: 'planner: cooking time, 40 members', ...timed(() => cookingTime({ cut: brisket, pieceKg: 6.3, airTempC: 121, seed: 1 })), readings: 0 });
  const forty = Array.from({ length: 40 }, (_, i) => {
    const cut = STARTING_CUTS[i % STARTING_CUTS.length];
    const cook = { cut, pieceKg: cut.usualKg, onAt: ON, air: steady(118 + (i % 5) * 2), seed: i };
    const piece = truePiece(cook, {}, 900);
    const now = later(ON, (piece.doneAt - ON) / 2);
    return { cook: { ...cook, readings: piece.readings.filter(({ at }) => at <= now) }, now };
  });
  rows.push({ what: '40 cooks of 12 pits, all forecast again', ...timed(() => forty.forEach(({ cook, now }) => forecastDone(cook, now)), 3), readings: forty.reduce((sum, { cook }) => sum + cook.readings.length, 0) });
  console.log('\nSpeed (own: this process\'s own work; clock: also what else the machine does)');
  console.table(rows);
}

/** One simulated cook: what is forecast from, and when it is really done. */
function drawCook(seed, code) {
  const random = randomStream(seedFrom('food bench', code, seed));
  const cut = cutByCode(code);
  const pieceKg = cut.usualKg * (0.85 + 0.3 * random.next());
  const saidC = 116 + 12 * random.next();
  // The fire wanders: a slow walk round what was said, a slump now and then.
  let wanderK = 3 * random.normal();
  const slumpH = random.next() < 0.25 ? 2 + 6 * random.next() : -1;
  const tempC = Array.from({ length: 36 * 6 }, (_, i) => {
    wanderK = 0.92 * wanderK + 1.2 * random.normal();
    return saidC + wanderK - (slumpH >= 0 && i / 6 >= slumpH && i / 6 < slumpH + 1 ? 15 : 0);
  });
  const traits = Object.fromEntries(Object.entries(DIFFERS).map(([trait, sd]) => [trait, sd * random.normal()]));
  const trueAir = { from: ON, stepS: 600, tempC };
  const piece = truePiece({ cut, pieceKg, onAt: ON, air: trueAir, seed: 1 }, traits, 600);
  /** At a time the air until then is measured and the rest is what was said. */
  const at = (now) => ({
    cut, pieceKg, onAt: ON, seed, members: 200,
    air: { from: ON, stepS: 600, tempC: tempC.map((value, i) => (ON + i * 600 <= now ? value : saidC)), sdK: tempC.map((_, i) => (ON + i * 600 <= now ? 1.5 : 3.5)) },
    readings: readingsOf(piece, now, random),
  });
  return { at, doneAt: piece.doneAt, piece, target: cut.done.coreTempC };
}

/** Where a straight line through the last hour of readings says it is done. */
function straightLine(readings, now, target) {
  const last = readings.at(-1);
  const before = readings.findLast(({ at }) => last && at <= last.at - HOUR) ?? readings[0];
  if (!last || !before || last.at === before.at || target === undefined) return undefined;
  const perS = (last.tempC - before.tempC) / (last.at - before.at);
  return perS > 0 ? now + (target - last.tempC) / perS : undefined;
}

/** Of all looks at all cuts together, with the standard error of so many independent cooks. */
function pooled(looks, cooks) {
  const share = (of) => `${Math.round(100 * mean(looks.map((look) => Number(look[of]))))} % +-${Math.round(100 * Math.sqrt((of === 'in80' ? 0.16 : 0.0475) / cooks))}`;
  console.log(`\nAll ${looks.length} looks at ${cooks} cooks: inside p10 to p90 ${share('in80')}, later than p95 ${share('late')}`);
}

function calibration(cooks) {
  const looks = [];
  let drawnCooks = 0;
  for (const code of ['brisket', 'pork-shoulder', 'turkey']) {
    const rows = [];
    const drawn = Array.from({ length: cooks }, (_, i) => drawCook(70_000 + i, code)).filter(({ doneAt }) => doneAt !== undefined);
    for (const share of [0, 0.25, 0.5, 0.65, 0.8, 0.9]) {
      const seen = drawn.map(({ at, doneAt, target }) => {
        const now = later(ON, share * (doneAt - ON));
        const cook = at(now);
        const done = valueOf(forecastDone(cook, now));
        const [p10, p50, p90, p95] = [0.1, 0.5, 0.9, 0.95].map((frac) => doneByFrac(done, frac) ?? Infinity);
        const line = straightLine(cook.readings, now, target);
        return { in80: doneAt >= p10 && doneAt <= p90, late: doneAt > p95, chance: chanceDoneBy(done, doneAt), errorMin: (p50 - doneAt) / 60, lineMin: line === undefined ? undefined : Math.min(1440, Math.abs(line - doneAt) / 60), widthH: (p90 - p10) / HOUR };
      });
      looks.push(...seen);
      rows.push({
        'share of the cook gone': share, 'inside p10 to p90 %': Math.round(100 * mean(seen.map(({ in80 }) => Number(in80)))), 'later than p95 %': Math.round(100 * mean(seen.map(({ late }) => Number(late)))),
        'mean chance said': Number(mean(seen.map(({ chance }) => chance)).toFixed(2)), 'middle off, min (median)': Math.round(median(seen.map(({ errorMin }) => Math.abs(errorMin)))), 'bias min': Math.round(mean(seen.map(({ errorMin }) => errorMin))),
        'band h': Number(median(seen.map(({ widthH }) => widthH)).toFixed(1)), 'straight line off, min (median)': share === 0 ? '' : Math.round(median(seen.map(({ lineMin }) => lineMin ?? 1440))),
      });
    }
    drawnCooks += drawn.length;
    console.log(`\n${code}: ${drawn.length} simulated cooks; 80 % should lie inside p10 to p90, 5 % later than p95`);
    console.table(rows);
  }
  pooled(looks, drawnCooks);
}

/** A cut that runs slow in this yard: the first forecast of the nth cook against the truth. */
function learning() {
  const rows = [];
  let learned = { cut: nothingLearned(), pit: nothingLearned() };
  for (let n = 0; n <= 10; n++) {
    const drawn = Array.from({ length: 12 }, (_, i) => {
      const random = randomStream(seedFrom('learning', n, i));
      const cook = { cut: cutByCode('brisket'), pieceKg: 6.3, onAt: ON, air: steady(121), seed: 100 * n + i, members: 100, learned };
      return { cook, piece: truePiece(cook, { pace: 0.12 + 0.055 * random.normal(), wet: 0.15 + 0.12 * random.normal(), thick: 0.03 * random.normal(), draught: 0.2 * random.normal() }, 900) };
    });
    const errors = drawn.map(({ cook, piece }) => (doneByFrac(valueOf(forecastDone(cook, ON)), 0.5) - piece.doneAt) / 60);
    if ([0, 1, 2, 4, 6, 10].includes(n)) rows.push({ 'cooks finished': n, 'first forecast: bias min': Math.round(mean(errors)), 'off, min (mean)': Math.round(mean(errors.map(Math.abs))) });
    const { cook, piece } = drawn[0];
    learned = learnFrom(learned, valueOf(lessonOf({ ...cook, readings: piece.readings.filter(({ at }) => at <= piece.doneAt) }, piece.doneAt)));
  }
  console.log('\nLearning: briskets that run slow and wet in this yard, forecast before anything is read');
  console.table(rows);
}

/** One practice night in a process of its own. */
function practiceNight(seed) {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--no-warnings', fileURLToPath(new URL('../../apps/api/dist/practice/headless.js', import.meta.url)), '--file', fileURLToPath(new URL('../../infra/sample/brackwater.json', import.meta.url)), '--seed', String(seed)], { encoding: 'utf8', maxBuffer: 1e8 });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout).cooks;
}

/** Practice nights through the real commands: done times as the screens said them, every half hour, against the true ones. */
function practiceNights(nights) {
  const told = Array.from({ length: nights }, (_, i) => practiceNight(201 + i)).flat();
  const rows = [1, 2, 3].map((third) => {
    const own = told.filter((one) => one.third === third);
    const looks = own.reduce((sum, one) => sum + one.looks, 0);
    const cooks = own.reduce((sum, one) => sum + one.cooks, 0);
    const share = (of) => Math.round((100 * own.reduce((sum, one) => sum + one[of] * one.looks, 0)) / looks);
    return {
      'third of the cook': third, cooks, looks, 'inside p10 to p90 %': `${share('insideFrac')} +-${Math.round(100 * Math.sqrt(0.16 / cooks))}`, 'later than p95 %': `${share('afterP95Frac')} +-${Math.round(100 * Math.sqrt(0.0475 / cooks))}`,
      'band h': median(own.map(({ bandHours }) => bandHours)), 'middle off, min': median(own.map(({ offMinutes }) => offMinutes)),
    };
  });
  console.log(`\n${nights} practice nights: 80 % should lie inside p10 to p90, 5 % later than p95`);
  console.table(rows);
}

export function run() {
  speed();
  calibration(Number(process.env.FOOD_COOKS ?? 80));
  learning();
  practiceNights(Number(process.env.FOOD_NIGHTS ?? 2));
}
if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) run();
