import type { OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import { jobs, type Jobs } from './jobs.js';

/** Long computations, out of the way of the event loop. A job is a pure function of what it is given. */
export class Workers implements OnApplicationShutdown {
  private readonly pool: Piscina | undefined;

  constructor(threads: number) {
    if (threads > 0) {
      this.pool = new Piscina({
        filename: new URL('./jobs.js', import.meta.url).href,
        name: 'run',
        minThreads: 1,
        maxThreads: threads,
        idleTimeout: 60_000,
      });
    }
  }

  /** Runs the named job; with no threads, here and now. */
  async run<N extends keyof Jobs>(name: N, input: Parameters<Jobs[N]>[0]): Promise<ReturnType<Jobs[N]>> {
    if (this.pool) return (await this.pool.run({ name, input })) as ReturnType<Jobs[N]>;
    return (jobs[name] as (given: typeof input) => ReturnType<Jobs[N]>)(input);
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool?.destroy();
  }
}
