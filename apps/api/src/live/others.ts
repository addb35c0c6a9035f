import { createClient } from '@redis/client';
import { createAdapter } from '@socket.io/redis-adapter';
import type { YardId } from '@stokehold/domain/quantity';
import type { Server } from 'socket.io';
import { log } from '../platform/index.js';

const CARRIED = 'carried';
const AGAIN_AT_MOST_MS = 2000;

type Redis = ReturnType<typeof lineTo>;

/**
 * The other processes of the house, through Redis: each rings when it has carried something in a yard. A ring bears no news,
 * those are read from the database; so a ring that is lost, or comes twice or late, does no harm: the next beat looks too.
 */
export class Others {
  private readonly waiting = new Set<YardId>();

  private constructor(
    private readonly server: Server,
    private readonly out: Redis,
    private readonly incoming: Redis,
  ) {}

  /** Returns at once; while Redis does not answer, nobody is heard. */
  static join(server: Server, url: string, onCarried: (yardId: YardId) => void): Others {
    const out = open(url, { keepsUnsent: false });
    const incoming = open(url, { keepsUnsent: true }); // it subscribes before the line stands
    server.adapter(createAdapter(unfailing(out), incoming));
    server.on(CARRIED, onCarried);
    return new Others(server, out, incoming);
  }

  /** Whether the lines stand. */
  get isThere(): boolean {
    return this.out.isReady && this.incoming.isReady;
  }

  /** Several rings for one yard at a time are one. */
  ring(yardId: YardId): void {
    if (this.waiting.has(yardId)) return;
    this.waiting.add(yardId);
    setImmediate(() => {
      this.waiting.delete(yardId);
      if (this.out.isReady) this.server.serverSideEmit(CARRIED, yardId);
    });
  }

  leave(): void {
    for (const line of [this.out, this.incoming]) line.destroy();
  }
}

const lineTo = (url: string, keepsUnsent: boolean) =>
  createClient({ url, disableOfflineQueue: !keepsUnsent, socket: { reconnectStrategy: (tries) => Math.min(100 * 2 ** tries, AGAIN_AT_MOST_MS) } });

function open(url: string, { keepsUnsent }: { readonly keepsUnsent: boolean }): Redis {
  const line = lineTo(url, keepsUnsent);
  let away = false;
  line.on('error', (error: Error) => {
    if (!away) log.warn({ err: error.message }, 'Redis does not answer; what other processes carry reaches the screens with the next beat');
    away = true;
  });
  line.on('ready', () => {
    if (away) log.info('Redis answers again');
    away = false;
  });
  line.connect().catch((error: Error) => log.debug({ err: error.message }, 'the line to Redis was closed'));
  return line;
}

/** The adapter does not wait for what it sends: a line that breaks meanwhile must not end the process. */
function unfailing(line: Redis): Redis {
  const publish = line.publish.bind(line);
  return Object.assign(line, { publish: (...message: Parameters<Redis['publish']>) => publish(...message).catch(() => 0) });
}
