import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { makeRoomToStart } from '../kept-back.js';
import { log } from '../log.js';
import { isLast, joinKeepers, type Keeper, urlOf } from './keeper.js';
import { withLease } from './lease.js';
import { type EmbeddedOptions, type Place, preparePlace } from './place.js';
import { findPostmaster } from './postmaster.js';
import { freePort, layFiles, startServer, stopServer } from './server.js';

/**
 * The PostgreSQL server that the house brings along. A server that already runs on the folder is adopted: one left
 * over when this program was killed, or one that another process of the house uses. The last to leave stops it.
 */
export class EmbeddedDatabase {
  private closing = false;

  private constructor(
    private readonly place: Place,
    private keeper: Keeper,
    /** Whether it ran already. */
    readonly adopted: boolean,
  ) {
    this.watch();
  }

  /** Starts or adopts the server. Rejects with a sentence that says what to do. */
  static async open(options: EmbeddedOptions): Promise<EmbeddedDatabase> {
    const place = await preparePlace(options);
    const { keeper, adopted } = await startOrAdopt(place);
    return new EmbeddedDatabase(place, keeper, adopted);
  }

  get url(): string {
    return urlOf(this.place, this.keeper);
  }

  /** The folder of the house's data. */
  get folder(): string {
    return this.place.folder;
  }

  /** Leaves the server, and stops it when nobody else of the house uses it. */
  async close(): Promise<void> {
    this.closing = true;
    // The lock is held while it stops: who wants to adopt it now waits, sees it end, and starts one.
    if (await isLast(this.keeper)) await stopServer(this.place).catch((error: unknown) => log.error({ err: error }, 'the database did not stop'));
    await this.keeper.client.end().catch(() => undefined);
  }

  /** A server that ends by itself is brought back on the same port, so that the house's connections find it again. */
  private watch(): void {
    this.keeper.client.once('end', () => {
      if (!this.closing) void this.bringBack();
    });
  }

  private async bringBack(): Promise<void> {
    log.error('the database ended by itself; it is started again');
    for (let waitS = 1; !this.closing; waitS = Math.min(waitS * 2, 30)) {
      try {
        const { keeper } = await startOrAdopt(this.place, this.keeper.port);
        const moved = keeper.port !== this.keeper.port;
        this.keeper = keeper;
        if (this.closing) return await this.close();
        this.watch();
        if (!moved) return;
        log.fatal('the database came back on another port: start Stokehold again');
        process.kill(process.pid, 'SIGTERM');
        return;
      } catch (error) {
        log.error({ err: error, waitS }, 'the database did not come back; it is tried again');
        await pause(waitS * 1000, undefined, { ref: false });
      }
    }
  }
}

/** Adopts where a server answers, else starts one; one process at a time, so that two never start on one folder. */
const startOrAdopt = (place: Place, wantedPort?: number): Promise<{ keeper: Keeper; adopted: boolean }> =>
  withLease(join(place.folder, 'database.starting'), async () => {
    const running = findPostmaster(place.files);
    const adopted = running && (await joinKeepers(place, running.pid));
    if (adopted) return { keeper: adopted, adopted: true };
    await makeRoomToStart(place.folder);
    await layFiles(place);
    await startServer(place, wantedPort ?? (await freePort()));
    const started = findPostmaster(place.files);
    const keeper = started && (await joinKeepers(place, started.pid));
    if (!keeper) throw new Error(`The database did not start; its own words are in ${place.log}.`);
    return { keeper, adopted: false };
  });
