import type { OnApplicationShutdown } from '@nestjs/common';
import { type OnGatewayDisconnect, type OnGatewayInit, WebSocketGateway, WebSocketServer } from '@nestjs/websockets';
import { LIVE, type LiveBeat } from '@stokehold/domain/contract';
import type { YardId } from '@stokehold/domain/quantity';
import type { IncomingMessage } from 'node:http';
import type { Server, Socket } from 'socket.io';
import { Identity, isOwnOrigin } from '../identity/index.js';
import { type Actor, log, may, Outbox } from '../platform/index.js';
import { Others } from './others.js';
import { StateOf } from './state-of.service.js';

const BEAT_MS = 1000;
/** How often each open screen is asked again who it is: a revoked device or a leaver loses it within this time. */
const ASK_AGAIN_BEATS = 4;
/** Screens only listen. */
const MOST_BYTES_TAKEN = 2_000;

type Screen = Socket<object, object, object, { yardId: YardId }>;

/**
 * Pushes what happens in a yard to the screens that are open on it, in order and with a number, and beats every second. Each
 * process reads what happened and tells its own screens, so that numbers stay in order whoever carried them.
 */
@WebSocketGateway({
  path: LIVE.path,
  serveClient: false,
  transports: ['websocket', 'polling'],
  maxHttpBufferSize: MOST_BYTES_TAKEN,
  allowRequest: ({ headers }: IncomingMessage, answer: (error: null, allowed: boolean) => void) => answer(null, isOwnOrigin(headers.origin, headers.host)),
})
export class LiveGateway implements OnGatewayInit<Server>, OnGatewayDisconnect<Screen>, OnApplicationShutdown {
  @WebSocketServer() private readonly server: Server;
  /** The last number that was sent in each yard on which a screen is open. */
  private readonly sent = new Map<YardId, number>();
  private readonly lines = new Map<YardId, Promise<void>>();
  private readonly poked = new Set<YardId>();
  /** When each yard's boards last got a beat, by `performance.now()`. */
  private readonly beatenMs = new Map<YardId, number>();
  private beats = 0;
  private timer: NodeJS.Timeout | undefined;
  private others: Others | undefined;

  constructor(
    private readonly stateOf: StateOf,
    private readonly identity: Identity,
    outbox: Outbox,
  ) {
    // Not waited for: what an event causes next must not wait for the screens.
    outbox.listen(async (yardId) => {
      this.poke(yardId);
      this.others?.ring(yardId);
    });
  }

  /** Hears at once, through Redis, what other processes of the house carried; without it the next beat brings that. */
  hearOthers(redisUrl: string): void {
    this.others = Others.join(this.server, redisUrl, (yardId) => this.poke(yardId));
  }

  /** The yards on which boards are open here: how many, and when they last got a beat, by `performance.now()`. */
  get open(): { readonly yardId: YardId; readonly boards: number; readonly beatenMs: number | undefined }[] {
    return [...this.sent.keys()].map((yardId) => ({ yardId, boards: this.server.sockets.adapter.rooms.get(yardId)?.size ?? 0, beatenMs: this.beatenMs.get(yardId) }));
  }

  /** Whether other processes are heard at once; undefined where no Redis is set. */
  get hearsOthers(): boolean | undefined {
    return this.others?.isThere;
  }

  afterInit(server: Server): void {
    server.use((socket, next) => void this.admit(socket as Screen).then(() => next(), next));
    this.timer = setInterval(() => this.beat(), BEAT_MS);
  }

  handleDisconnect({ data: { yardId } }: Screen): void {
    if (this.isEmpty(yardId)) this.leave(yardId);
  }

  onApplicationShutdown(): void {
    clearInterval(this.timer);
    this.others?.leave();
  }

  /** Lets a screen in; the yard's numbers are followed from before it is in, so that none is missed. */
  private async admit(screen: Screen): Promise<void> {
    const actor = await this.actorOf(screen);
    if (!actor) throw new Error('not-signed-in');
    screen.data.yardId = actor.yardId;
    await this.inLine(actor.yardId, async () => {
      if (!this.sent.has(actor.yardId)) this.sent.set(actor.yardId, await this.stateOf.seq(actor.yardId));
      await screen.join(actor.yardId);
    });
  }

  private async actorOf({ handshake }: Screen): Promise<Actor | undefined> {
    const actor = await this.identity.actorOf(handshake.headers.cookie, undefined);
    return actor && may(actor, 'look') ? actor : undefined;
  }

  private poke(yardId: YardId): void {
    if (!this.sent.has(yardId) || this.poked.has(yardId)) return;
    this.poked.add(yardId);
    this.inLine(yardId, () => {
      this.poked.delete(yardId);
      return this.push(yardId);
    }).catch((error: unknown) => log.error({ err: error, yardId }, 'a change was not pushed; the next beat tries again'));
  }

  /** Sends all that was carried since the last number, by this process or by another one on the same database. */
  private async push(yardId: YardId): Promise<void> {
    const after = this.sent.get(yardId);
    if (after === undefined) return;
    const { seq, changes } = await this.stateOf.since(yardId, after);
    for (const change of changes) this.server.local.to(yardId).emit(LIVE.change, change);
    this.sent.set(yardId, seq);
  }

  /** A beat comes after all that it counts. None is sent while the database is away: a screen then shows how old it is. */
  private beat(): void {
    this.beats += 1;
    for (const yardId of this.sent.keys()) {
      this.inLine(yardId, async () => {
        if (this.isEmpty(yardId)) return this.leave(yardId);
        await this.push(yardId);
        const beat: LiveBeat = { seq: this.sent.get(yardId) ?? 0, clock: this.stateOf.clockOf(yardId) };
        this.server.local.to(yardId).emit(LIVE.beat, beat);
        this.beatenMs.set(yardId, performance.now());
      }).catch((error: unknown) => log.warn({ err: error, yardId }, 'no beat'));
    }
    if (this.beats % ASK_AGAIN_BEATS === 0) void this.askAgain().catch((error: unknown) => log.warn({ err: error }, 'screens were not asked again'));
  }

  private async askAgain(): Promise<void> {
    for (const socket of this.server.sockets.sockets.values()) {
      const screen = socket as Screen;
      const actor = await this.actorOf(screen);
      if (actor?.yardId !== screen.data.yardId) screen.disconnect(true);
    }
  }

  private leave(yardId: YardId): void {
    this.sent.delete(yardId);
    this.beatenMs.delete(yardId);
  }

  private isEmpty(yardId: YardId): boolean {
    return (this.server.sockets.adapter.rooms.get(yardId)?.size ?? 0) === 0;
  }

  /** One thing after the other per yard: numbers leave in their order. */
  private inLine(yardId: YardId, work: () => Promise<void>): Promise<void> {
    const run = (this.lines.get(yardId) ?? Promise.resolve()).then(work);
    this.lines.set(yardId, run.catch(() => undefined));
    return run;
  }
}
