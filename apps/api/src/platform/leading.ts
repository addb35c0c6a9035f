import type { BeforeApplicationShutdown, OnApplicationBootstrap } from '@nestjs/common';
import { Client } from 'pg';
import { log } from './log.js';

const LOCK = `hashtext('lead the house')`;
const EVERY_MS = 1000;
/** The server ends the session of a process that is silent for so long, and with it the lock: one that hangs leads no more. */
const SILENT_MS = 6000;
/** A process that woke again after less must not go on with what another may have taken over. */
const SURE_FOR_MS = 4000;

/** Told when this process begins to lead, and when it no longer does. */
export interface Led {
  readonly begin: () => void;
  readonly end?: () => void;
}

/**
 * Among the processes of a house on one database, one leads: it does what is done once for all. It holds a lock of the database
 * on a line of its own. When it ends, is killed, hangs or is cut off, the lock is free within `SILENT_MS` and another takes it.
 */
export class Leading implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly led: Led[] = [];
  private line: Client | undefined;
  private timer: NodeJS.Timeout | undefined;
  private sureUntil = 0;
  private leads = false;

  constructor(private readonly databaseUrl: string) {}

  /** Whether this process leads at this moment. */
  get isMine(): boolean {
    return this.leads && performance.now() < this.sureUntil;
  }

  /** Work for the process that leads, from the moment that it does. */
  whileLeading(led: Led): void {
    this.led.push(led);
    if (this.leads) led.begin();
  }

  async onApplicationBootstrap(): Promise<void> {
    await this.look();
    const next = async () => {
      await this.look();
      if (this.timer) this.timer = setTimeout(() => void next(), EVERY_MS);
    };
    this.timer = setTimeout(() => void next(), EVERY_MS);
  }

  async beforeApplicationShutdown(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.become(false);
    await this.line?.end();
  }

  /** Tries for the lock, or makes sure that it is still held. */
  private async look(): Promise<void> {
    const asked = performance.now();
    try {
      const line = (this.line ??= await this.open());
      const { rows } = await line.query(this.leads ? 'select true as mine' : `select pg_try_advisory_lock(${LOCK}) as mine`);
      this.sureUntil = asked + SURE_FOR_MS;
      this.become((rows as [{ mine: boolean }])[0].mine);
    } catch (error) {
      this.lose(error as Error);
    }
  }

  private async open(): Promise<Client> {
    const line = new Client({
      connectionString: this.databaseUrl, application_name: `stokehold lead ${process.pid}`, connectionTimeoutMillis: SURE_FOR_MS, query_timeout: SURE_FOR_MS,
      options: `-c idle_session_timeout=${SILENT_MS}`,
    });
    line.on('error', (error) => this.lose(error));
    await line.connect();
    return line;
  }

  private lose(error: Error): void {
    if (this.leads) log.warn({ err: error.message }, 'the line on which this process leads the house broke; it is opened again');
    void this.line?.end().catch(() => undefined);
    this.line = undefined;
    this.become(false);
  }

  private become(leads: boolean): void {
    if (this.leads === leads) return;
    this.leads = leads;
    for (const led of this.led) (leads ? led.begin : led.end)?.();
  }
}
