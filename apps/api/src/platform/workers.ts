import type { OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import { jobs, type Jobs } from './jobs.js';

/** Long computations, out of the way of the event loop. A job is a pure function of what it is given. */
export class Workers implements OnApplicationShutdown {
  private readonly pool: Piscina | undefined;
  /** For what takes seconds: a thread of its own, so that nothing that is waited for stands behind it. */
  private readonly patient: Piscina | undefined;

  constructor(private readonly threads: number) {
    if (threads > 0) {
      const options = { filename: new URL('./jobs.js', import.meta.url).href, name: 'run', idleTimeout: 60_000 };
      this.pool = new Piscina({ ...options, minThreads: 1, maxThreads: threads });
      this.patient = new Piscina({ ...options, minThreads: 0, maxThreads: 1 });
    }
  }

  /** Runs the named job; with no threads, here and now. */
  async run<N extends keyof Jobs>(name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    return this.in(this.pool, name, input);
  }

  /** The same for each of several inputs, side by side in all threads; with few messages, for a message costs more than many a job. */
  async runEach<N extends keyof Jobs>(name: N, inputs: readonly Parameters<Jobs[N]>[0][]): Promise<ReturnType<Jobs[N]>[]> {
    const { pool } = this;
    if (!pool) return Promise.all(inputs.map((input) => this.run(name, input)));
    const lanes = Math.min(this.threads, inputs.length);
    const shares = Array.from({ length: lanes }, (_, lane) => inputs.filter((_input, nth) => nth % lanes === lane));
    const done = (await Promise.all(shares.map((share) => pool.run({ name, inputs: share })))) as ReturnType<Jobs[N]>[][];
    return inputs.map((_, nth) => done[nth % lanes]![Math.floor(nth / lanes)]!);
  }

  /** The same for a job that nobody waits for. */
  async runPatiently<N extends keyof Jobs>(name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    return this.in(this.patient, name, input);
  }

  private async in<N extends keyof Jobs>(pool: Piscina | undefined, name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    if (pool) return (await pool.run({ name, input })) as ReturnType<Jobs[N]>;
    return (jobs[name] as (given: typeof input) => ReturnType<Jobs[N]>)(input);
  }

  async onApplicationShutdown(): Promise<void> {
    await Promise.all([this.pool?.destroy(), this.patient?.destroy()]);
  }
}
