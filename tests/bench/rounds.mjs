// Rounds: generated nights by seed, each plan through the checker; quality by iterations, with the bound and the gap.
// Times are the caller's clock around the planner: read them as rough on a shared machine.
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { afterIterations } from '@stokehold/scheduling/search';
import { checkRounds, dispatchRounds, generatedNight, loadOf, planRounds, promisesOf, repairRounds, worthRepair } from '@stokehold/scheduling/rounds';

const NIGHTS = [
  { name: '6 pits x 3', pits: 6, people: 3, gapFactor: 1 },
  { name: '12 x 4, gaps 25 % longer', pits: 12, people: 4, gapFactor: 1.25 },
  { name: '12 x 5', pits: 12, people: 5, gapFactor: 1 },
  { name: '12 x 4, nominal gaps', pits: 12, people: 4, gapFactor: 1 },
];
const SEEDS = [1, 2, 3];
const BUDGETS = [500, 4000];

const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
const minutes = (seconds) => Math.round(seconds / 6) / 10;
const timed = (work) => {
  const from = performance.now();
  const value = work();
  return { value, ms: performance.now() - from };
};

function loadFrac(problem, plan) {
  const work = plan.assignments.filter(({ work: { kind } }) => kind !== 'break').reduce((sum, { startsAt, endsAt, personIds }) => sum + (endsAt - startsAt) * personIds.length, 0);
  const there = problem.people.reduce((sum, { startsAt, endsAt, breaks }) => sum + endsAt - startsAt - breaks.reduce((all, { lengthS }) => all + lengthS, 0), 0);
  return (work + plan.levels.walkS) / there;
}

/** Median over the seeds of one night at one budget; 0 iterations is dispatch alone. */
function row(night, iterations) {
  const runs = SEEDS.map((seed) => {
    const problem = generatedNight({ ...night, seed });
    const { value, ms } = timed(() => (iterations === 0 ? dispatchRounds(problem) : planRounds(problem, { seed, stop: afterIterations(iterations) }).plan));
    return { ...value.levels, bound: value.bound.lateWeightedS, ms, violations: checkRounds(problem, value).length, load: loadFrac(problem, value) };
  });
  const of = (key) => median(runs.map((run) => run[key]));
  return {
    night: night.name, iterations, ms: Math.round(of('ms')), load: Number(of('load').toFixed(2)), unsafe: of('unsafeChecks'), unplaced: of('unplaced'), 'past latest min': minutes(of('pastLatestS')),
    'late weighted min': minutes(of('lateWeightedS')), 'bound min': minutes(of('bound')), 'gap min': minutes(median(runs.map((run) => run.lateWeightedS - run.bound))),
    'uneven %': Math.round(of('uneven') / 1000) / 10, 'walk min': minutes(of('walkS')), violations: runs.reduce((sum, run) => sum + run.violations, 0),
  };
}

/** The night as it stands four hours in: what is done is gone, what is under way is frozen, everybody where they are. */
function fourHoursIn(problem, plan, { overrunS = 0, gone = false }) {
  const from = problem.from + 4 * 3600;
  const done = plan.assignments.filter(({ endsAt }) => endsAt <= from);
  const keyOf = ({ work }) => (work.kind === 'task' ? work.taskId : undefined);
  const begun = plan.assignments.filter(({ work, startsAt, endsAt }) => work.kind !== 'break' && startsAt < from && endsAt > from);
  const overrun = begun.find(({ personIds }) => personIds.length === 1);
  const lastPlace = (id, home) => {
    const last = plan.assignments.filter(({ work, personIds, startsAt }) => work.kind !== 'break' && personIds.includes(id) && startsAt < from).at(-1);
    if (!last) return home;
    return last.work.kind === 'check' ? problem.pits.find((pit) => pit.id === last.work.pitId).place : problem.tasks.find((task) => task.id === last.work.taskId).place;
  };
  return {
    ...problem,
    from,
    tasks: problem.tasks.filter((task) => !done.some((one) => keyOf(one) === task.id)),
    pits: problem.pits.map((pit) => {
      const last = done.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id).at(-1);
      if (!last) return pit;
      const at = last.startsAt;
      return { ...pit, firstNth: last.work.nth + 1, first: { earliestAt: at + pit.gap.earliestS, dueAt: at + pit.gap.dueS, latestSafeAt: at + pit.gap.latestSafeS } };
    }),
    frozen: begun.map((one) => ({ work: one.work, personIds: one.personIds, startsAt: one.startsAt, endsAt: one.endsAt + (one === overrun ? overrunS : 0) })),
    people: problem.people.map((person, i) => ({
      ...person, freeFrom: from, atPlace: lastPlace(person.id, person.atPlace),
      breaks: person.breaks.map((rest) => {
        const taken = plan.assignments.find(({ work }) => work.kind === 'break' && work.breakId === rest.id);
        return taken && taken.startsAt < from ? { ...rest, startedAt: taken.startsAt } : rest;
      }),
      ...(gone && i === 0 ? { absent: [{ from: from + 900, until: person.endsAt }] } : {}),
    })),
  };
}

function repairs(night) {
  const problem = generatedNight({ ...night, seed: 1 });
  const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(3000) });
  return [
    { what: 'nothing happened', facts: {} },
    { what: 'a job overruns 20 min', facts: { overrunS: 1200 } },
    { what: 'one person gone', facts: { gone: true } },
  ].flatMap(({ what, facts }) => {
    const now = fourHoursIn(problem, plan, facts);
    const worth = worthRepair(now, plan);
    return [100, 1000].map((iterations) => {
      const { value, ms } = timed(() => repairRounds(now, plan, { seed: 1, stop: afterIterations(iterations) }));
      const promised = { ...now, promises: promisesOf(plan, now.from) };
      return {
        night: night.name, what, worth: worth.because, iterations, ms: Math.round(ms), unsafe: value.plan.levels.unsafeChecks, unplaced: value.plan.levels.unplaced,
        'late weighted min': minutes(value.plan.levels.lateWeightedS), 'other person': value.changes.filter(({ code }) => code.includes('other-person')).length, moved: value.changes.filter(({ code }) => code === 'moved').length,
        violations: checkRounds(promised, value.plan).length,
      };
    });
  });
}

function manyYards() {
  const yards = Array.from({ length: 30 }, (_, seed) => generatedNight({ pits: 10, people: 3, seed: seed + 1, gapFactor: 1.25 }));
  return [0, 200].map((iterations) => {
    const { value, ms } = timed(() => yards.map((problem) => (iterations === 0 ? dispatchRounds(problem) : planRounds(problem, { seed: 1, stop: afterIterations(iterations) }).plan)));
    const sum = (of) => value.reduce((all, { levels }) => all + of(levels), 0);
    return {
      what: '30 yards, 300 pits, 90 people', iterations, 'wall s': Math.round(ms / 100) / 10, unsafe: sum(({ unsafeChecks }) => unsafeChecks), unplaced: sum(({ unplaced }) => unplaced), 'late weighted min': minutes(sum(({ lateWeightedS }) => lateWeightedS)),
      'hours over load 1': yards.reduce((all, problem) => all + loadOf(problem).filter(({ fails, skill }) => fails && !skill).length, 0),
    };
  });
}

/** Prints the nights, the repairs and the many yards. */
export async function run() {
  planRounds(generatedNight({ pits: 6, people: 3, seed: 99 }), { seed: 1, stop: afterIterations(300) });
  console.log('Nights of 12 hours, median of 3 seeds; iterations 0 is dispatch alone');
  console.table(NIGHTS.flatMap((night) => [0, ...BUDGETS].map((iterations) => row(night, iterations))));
  console.log('Repairs four hours in, after a plan of 3000 iterations');
  console.table(NIGHTS.slice(0, 3).flatMap(repairs));
  console.log('Many yards on one core');
  console.table(manyYards());
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
