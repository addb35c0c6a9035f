import { carryFire } from '@stokehold/domain/fire';
import { afterPit, forecastAll, lessonsOf, whatIfInShort } from '@stokehold/domain/food';
import { type NightWanted, planNight, supposed, type Supposition } from '@stokehold/scheduling/night';
import { planLoading } from '@stokehold/scheduling/loading';
import { planPull, type PullBefore, type PullProblem, repullWood, type Repull } from '@stokehold/scheduling/wood-pull';
import { afterIterations, whicheverFirst, withinMs } from '@stokehold/scheduling/search';
import { type AnswerOptions, type RoundPlan, type RoundProblem, whatIf, whyNot, whyPerson, type Work } from '@stokehold/scheduling/rounds';

/** A search that found no end by then is cut off; its record shows that it made fewer iterations than it was given. */
const GUARD_MS = 30_000;

/** A plan wanted from a thread: whoever wants it may end the search by writing a 1 into `cancel`. */
interface PlanWanted extends Omit<NightWanted, 'stop'> {
  readonly cancel?: SharedArrayBuffer;
}

function plan({ cancel, ...wanted }: PlanWanted) {
  const flag = cancel && new Int32Array(cancel);
  const cancelled = () => flag !== undefined && Atomics.load(flag, 0) === 1;
  return planNight({ ...wanted, stop: whicheverFirst(cancelled, withinMs(() => performance.now(), GUARD_MS)) });
}

interface Asking {
  readonly problem: RoundProblem;
  readonly plan: RoundPlan;
  readonly options: AnswerOptions;
}

const why = ({ problem, plan: shown, work, options }: Asking & { readonly work: Work }) => ({
  person: whyPerson(problem, shown, work, options), not: whyNot(problem, shown, work, options),
});
const suppose = ({ problem, plan: shown, what, options }: Asking & { readonly what: Supposition }) => whatIf(problem, supposed(problem, what), shown, options);

/** Iterations of a pull: a fifth of a second. Source: tests/bench/wood.mjs. */
const PULL_ITERATIONS = 120_000;

interface PullWanted {
  readonly problem: PullProblem;
  readonly seed: number;
  /** What people were told before; left out for the first pull of a night. */
  readonly before?: PullBefore;
}

function pullWood({ problem, seed, before }: PullWanted): Repull {
  const options = { seed, stop: afterIterations(PULL_ITERATIONS) };
  return before ? repullWood(problem, before, options) : { plan: planPull(problem, options), problem, kept: [], changes: [] };
}

/**
 * What the worker threads can do, by name: pure functions over plain data, so that they give the same answer in a
 * thread, in the main thread and on another machine.
 */
export const jobs = { carryFire, planNight: plan, why, whatIf: suppose, forecastCooks: forecastAll, lessonsOf, cookWhatIf: whatIfInShort, afterPit, planLoading, pullWood };
export type Jobs = typeof jobs;

type Message = { readonly name: keyof Jobs } & ({ readonly input: never } | { readonly inputs: readonly never[] });

/** The worker threads' way in. */
export function run({ name, ...given }: Message): unknown {
  const job = jobs[name] as (input: never) => unknown;
  return 'inputs' in given ? given.inputs.map(job) : job(given.input);
}
