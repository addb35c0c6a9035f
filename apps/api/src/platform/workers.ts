import type { OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import { jobs, type Jobs } from './jobs.js';

/** What one computation may take; it is ended there, and the thread with it. */
export interface WorkerLimits {
  /** A search cuts itself off after 30 s: this is for what no longer looks at a clock. */
  readonly longestMs: number;
  readonly mostMiB: number;
  /** The module whose `run` a thread calls. */
  readonly file: string;
}
const LIMITS: WorkerLimits = { longestMs: 40_000, mostMiB: 512, file: new URL('./jobs.js', import.meta.url).href };

/** So many ended computations are remembered. */
const MOST_ENDED = 20;

/** A computation that was ended at a limit, and when by `performance.now()`. */
export interface EndedJob {
  readonly name: keyof Jobs;
  readonly atMs: number;
}

/** Long computations, out of the way of the event loop. A job is a pure function of what it is given. */
export class Workers implements OnApplicationShutdown {
  private readonly pool: Piscina | undefined;
  /** For what takes seconds: a thread of its own, so that nothing that is waited for stands behind it. */
  private readonly patient: Piscina | undefined;
  /** Patient jobs go one after the other: the time of each begins when it does. */
  private line: Promise<unknown> = Promise.resolve();
  /** Those that were ended at a limit, the last one first. */
  readonly ended: EndedJob[] = [];

  constructor(
    private readonly threads: number,
    private readonly limits: WorkerLimits = LIMITS,
  ) {
    if (threads > 0) {
      const options = { filename: limits.file, name: 'run', idleTimeout: 60_000, resourceLimits: { maxOldGenerationSizeMb: limits.mostMiB } };
      this.pool = new Piscina({ ...options, minThreads: 1, maxThreads: threads });
      this.patient = new Piscina({ ...options, minThreads: 0, maxThreads: 1 });
    }
  }

  /** Runs the named job; with no threads, here and now. Rejects when it reaches a limit. */
  async run<N extends keyof Jobs>(name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    return this.in(this.pool, name, input);
  }

  /** The same for each of several inputs, side by side in all threads; with few messages, for a message costs more than many a job. */
  async runEach<N extends keyof Jobs>(name: N, inputs: readonly Parameters<Jobs[N]>[0][]): Promise<ReturnType<Jobs[N]>[]> {
    const { pool } = this;
    if (!pool) return Promise.all(inputs.map((input) => this.run(name, input)));
    const lanes = Math.min(this.threads, inputs.length);
    const shares = Array.from({ length: lanes }, (_, lane) => inputs.filter((_input, nth) => nth % lanes === lane));
    const done = (await Promise.all(shares.map((share) => this.withinLimits(pool, { name, inputs: share })))) as ReturnType<Jobs[N]>[][];
    return inputs.map((_, nth) => done[nth % lanes]![Math.floor(nth / lanes)]!);
  }

  /** The same for a job that nobody waits for. */
  async runPatiently<N extends keyof Jobs>(name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    const run = this.line.then(() => this.in(this.patient, name, input));
    this.line = run.catch(() => undefined);
    return run;
  }

  private async in<N extends keyof Jobs>(pool: Piscina | undefined, name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    if (pool) return (await this.withinLimits(pool, { name, input })) as ReturnType<Jobs[N]>;
    return (jobs[name] as (given: typeof input) => ReturnType<Jobs[N]>)(input);
  }

  private async withinLimits(pool: Piscina, message: { readonly name: keyof Jobs; readonly input?: unknown; readonly inputs?: readonly unknown[] }): Promise<unknown> {
    const ending = new AbortController();
    const timer = setTimeout(() => ending.abort(), this.limits.longestMs);
    try {
      return await pool.run(message, { signal: ending.signal });
    } catch (error) {
      const tooMuch = ending.signal.aborted ? 'long' : (error as { code?: unknown }).code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'much memory' : undefined;
      if (tooMuch === undefined) throw error;
      this.ended.unshift({ name: message.name, atMs: performance.now() });
      this.ended.splice(MOST_ENDED);
      throw new Error(`The computation '${message.name}' took too ${tooMuch} and was ended.`, { cause: error });
    } finally {
      clearTimeout(timer);
    }
  }

  async onApplicationShutdown(): Promise<void> {
    await Promise.all([this.pool?.destroy(), this.patient?.destroy()]);
  }
}
