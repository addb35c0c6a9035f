import { carryFire } from '@stokehold/domain/fire';
import { planNight } from '@stokehold/scheduling/night';

/**
 * What the worker threads can do, by name: pure functions over plain data, so that they give the same answer in a
 * thread, in the main thread and on another machine.
 */
export const jobs = { carryFire, planNight };
export type Jobs = typeof jobs;

/** The worker threads' way in. */
export const run = ({ name, input }: { name: keyof Jobs; input: never }): unknown => (jobs[name] as (given: never) => unknown)(input);
