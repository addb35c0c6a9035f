// Rounds: generated nights by seed, each plan through the checker; quality by iterations, with the bound and the gap.
// SEEDS=3 shortens it. Times are the caller's clock around the planner: on a shared machine read the CPU time, and both by the pace.
import { pathToFileURL } from 'node:url';
import { afterIterations, whileWaited } from '@stokehold/scheduling/search';
import { checkRounds, dispatchRounds, generatedNight, loadOf, planRounds, planYards, promisesOf, repairRounds, worthRepair } from '@stokehold/scheduling/rounds';
import { fourHoursIn, loadFrac, median, minutes, nightOfSeed, NIGHTS, p95, paceMs, SEEDS, seeds, timed } from './rounds-nights.mjs';

const BUDGETS = [0, 6000, 20_000];
/** Long searches, for a few seeds only. */
const LONG = 100_000;
const LONG_SEEDS = seeds.slice(0, 3);
const PROMISE_SLIP_S = 300;

/** One night at one budget over the seeds; 0 iterations is dispatch alone. */
function nightRow(night, iterations, over = seeds) {
  const runs = over.map((seed) => {
    const problem = nightOfSeed(night, seed);
    const { value, wallMs, cpuMs } = timed(() => (iterations === 0 ? dispatchRounds(problem) : planRounds(problem, { seed, stop: afterIterations(iterations) }).plan));
    const { levels, bound } = value;
    const spreadMin = (levels.uneven / 1e6) * ((problem.until - problem.from) / 60);
    return { ...levels, gap: levels.lateWeightedS - bound.lateWeightedS, bound: bound.lateWeightedS, wallMs, cpuMs, spreadMin, violations: checkRounds(problem, value).length, load: loadFrac(problem, value) };
  });
  const of = (key) => runs.map((run) => run[key]);
  return {
    night: night.name, iterations, 'wall ms p95': Math.round(p95(of('wallMs'))), 'CPU ms p95': Math.round(p95(of('cpuMs'))), load: Number(median(of('load')).toFixed(2)),
    'unsafe most': Math.max(...of('unsafeChecks')), 'unplaced p95': p95(of('unplaced')), 'past latest min p95': minutes(p95(of('pastLatestS'))),
    'late w.min median': minutes(median(of('lateWeightedS'))), 'bound median': minutes(median(of('bound'))), 'gap median': minutes(median(of('gap'))), 'gap p95': minutes(p95(of('gap'))), 'at the bound': of('gap').filter((gap) => gap === 0).length,
    'largest - smallest min p95': Math.round(p95(of('spreadMin'))), 'walk min median': Math.round(median(of('walkS')) / 60), violations: of('violations').reduce((sum, count) => sum + count, 0),
  };
}

const REPAIRS = [
  { what: 'nothing happened', facts: {} },
  { what: 'a job overruns 20 min', facts: { overrunS: 1200 } },
  { what: 'one person gone', facts: { gone: true } },
];

/** By iterations, and as the house does while somebody waits. */
const RULES = [
  { iterations: '300', rule: () => afterIterations(300) },
  { iterations: '1500', rule: () => afterIterations(1500) },
  { iterations: '400, to 6000 while unsafe', rule: () => whileWaited(400, 6000) },
];

/** One disturbance at one budget, over the seeds. */
function repairRow(night, { what, facts }, { iterations, rule }, bases) {
  const runs = bases.map(({ seed, problem, plan }) => {
    const now = fourHoursIn(problem, plan, facts);
    const { value, wallMs, cpuMs } = timed(() => repairRounds(now, plan, { seed, stop: rule() }));
    const promised = { ...now, promises: promisesOf(plan, now.from) };
    const others = value.changes.filter(({ code }) => code.includes('other-person'));
    const slipped = value.changes.filter(({ code, startBefore, startAfter }) => code === 'moved' && Math.abs(startAfter - startBefore) > PROMISE_SLIP_S);
    const orphans = facts.gone ? promised.promises.filter(({ personIds, startsAt }) => personIds.includes(now.people[0].id) && startsAt > now.from + 900).length : 0;
    return { ...value.plan.levels, made: value.iterations, wallMs, cpuMs, orphans, moved: others.length + slipped.length - Math.min(orphans, others.length), worth: worthRepair(now, plan).worth, violations: checkRounds(promised, value.plan).length };
  });
  const of = (key) => runs.map((run) => run[key]);
  return {
    night: night.name, what, iterations, 'made median': median(of('made')), 'worth it': `${of('worth').filter(Boolean).length} of ${runs.length}`, 'wall ms p95': Math.round(p95(of('wallMs'))), 'CPU ms p95': Math.round(p95(of('cpuMs'))),
    'unsafe p95': p95(of('unsafeChecks')), 'unsafe most': Math.max(...of('unsafeChecks')), 'unplaced p95': p95(of('unplaced')), 'late w.min median': minutes(median(of('lateWeightedS'))),
    'orphaned median': median(of('orphans')), 'other promises moved median': median(of('moved')), 'p95': p95(of('moved')), violations: of('violations').reduce((sum, count) => sum + count, 0),
  };
}

function repairRows(night) {
  const bases = seeds.map((seed) => {
    const problem = nightOfSeed(night, seed);
    return { seed, problem, plan: planRounds(problem, { seed, stop: afterIterations(3000) }).plan };
  });
  return REPAIRS.flatMap((repair) => RULES.map((rule) => repairRow(night, repair, rule, bases)));
}

function manyYards() {
  const yards = Array.from({ length: 30 }, (_, i) => ({ yardId: `yard-${String(i + 1).padStart(2, '0')}`, problem: generatedNight({ pits: 10, people: 3, seed: i + 1, gapFactor: 1.25 }) }));
  const overload = yards.reduce((all, { problem }) => all + loadOf(problem).filter(({ fails, skill }) => fails && !skill).length, 0);
  return [0, 30_000, 60_000].map((iterations) => {
    const { value, wallMs, cpuMs } = timed(() => planYards(yards, { seed: 1, iterations }));
    const sum = (of) => value.reduce((all, { result }) => all + of(result.plan.levels), 0);
    const violations = value.reduce((all, { result }, i) => all + checkRounds(yards[i].problem, result.plan).length, 0);
    return {
      what: '30 yards, 300 pits, 90 people', iterations, 'wall s': Math.round(wallMs / 100) / 10, 'CPU s': Math.round(cpuMs / 100) / 10, unsafe: sum(({ unsafeChecks }) => unsafeChecks), unplaced: sum(({ unplaced }) => unplaced),
      'past latest min': minutes(sum(({ pastLatestS }) => pastLatestS)), 'late weighted min': minutes(sum(({ lateWeightedS }) => lateWeightedS)), 'hours over load 1': overload, violations, 'memory MiB': Math.round(process.memoryUsage().rss / 2 ** 20),
    };
  });
}

/** Prints the nights, the repairs and the many yards. */
export async function run() {
  planRounds(generatedNight({ pits: 6, people: 3, seed: 99 }), { seed: 1, stop: afterIterations(2000) });
  console.log(`Pace of this core: ${paceMs()} ms for 100 million steps (about 100 ms on a quiet one)`);
  console.log(`Nights of 12 hours, ${SEEDS} seeds; iterations 0 is dispatch, mended where a fire would be unsafe. Lateness in weighted minutes, gap above the proven bound`);
  console.table(NIGHTS.flatMap((night) => BUDGETS.map((iterations) => nightRow(night, iterations))));
  console.log(`Long searches, ${LONG_SEEDS.length} seeds`);
  console.table(NIGHTS.slice(1).map((night) => nightRow(night, LONG, LONG_SEEDS)));
  console.log(`Repairs four hours in, after a plan of 3000 iterations, ${SEEDS} seeds; every later assignment was promised; orphaned ones are not among the moved`);
  console.table(NIGHTS.slice(0, 3).flatMap(repairRows));
  console.log('Many yards on one core, worst first');
  console.table(manyYards());
  console.log(`Pace at the end: ${paceMs()} ms`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
