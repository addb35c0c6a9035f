import { type BeforeApplicationShutdown, Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import type { YardId } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { DataSource } from 'typeorm';
import { hostname } from 'node:os';
import { Clock, DataFolder, isDiskFull, log, WantOfRoom } from '../platform/index.js';
import type { HouseFacts, ProcessSeen } from './facts.js';
import { LIMITS } from './judge.js';
import { Lasting } from './lasting.js';
import { OwnStanding, type Standing } from './own-standing.js';

const EVERY_MS = 5000;
/** A database that takes longer does not answer. */
const ANSWER_WITHIN_MS = 4000;
/** One slow answer is none: the middle of the last few is looked at. */
const ANSWERS_KEPT = 5;

const SAY = `insert into house_process (id, seen_at, standing) values ($1, clock_timestamp(), $2) on conflict (id) do update set seen_at = excluded.seen_at, standing = excluded.standing`;
const FORGET = `delete from house_process where seen_at < clock_timestamp() - make_interval(secs => $1)`;
const HELD = `select (standing->'clock'->>'aheadS')::int as "aheadS" from house_process where standing->>'host' = $1 and (standing->'clock'->>'aheadS')::int <> 0
  and seen_at > clock_timestamp() - make_interval(secs => $2) order by (standing->>'runsForS')::float8 desc limit 1`;
const OTHERS = `select extract(epoch from clock_timestamp() - seen_at)::float8 as "agoS", standing from house_process where id <> $1 order by seen_at desc, id`;

/**
 * Every few seconds this process writes down how it stands, where the others read it, and by that learns how quickly the database
 * keeps what it is given. What it says of itself is known without a database too.
 */
@Injectable()
export class HouseWatch implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly me = randomUUID();
  private readonly pace = new Lasting<'in time' | 'slow' | 'away'>();
  private answersS: number[] = [];
  private paceForS = 0;
  private standing: Standing | undefined;
  private seenMs = performance.now();
  private timer: NodeJS.Timeout | undefined;
  private stopped = false;

  constructor(
    private readonly database: DataSource,
    private readonly own: OwnStanding,
    private readonly folder: DataFolder,
    private readonly room: WantOfRoom,
    private readonly clock: Clock,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.goByTheSameTime().catch((error: unknown) => log.warn({ err: error }, 'how other processes of this machine go by its clock could not be asked'));
    const next = async () => {
      await this.look();
      if (!this.stopped) this.timer = setTimeout(() => void next(), EVERY_MS).unref();
    };
    await next();
  }

  /** A process that ends in order is not missed. */
  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearTimeout(this.timer);
    await this.database.query('delete from house_process where id = $1', [this.me]).catch(() => undefined);
  }

  /** Where another process of this machine goes by the time of before its clock was set, or one that was killed just now did, this one does too. */
  private async goByTheSameTime(): Promise<void> {
    const [other] = (await this.database.query(HELD, [hostname(), LIMITS.processSilentS])) as { readonly aheadS: number }[];
    if (other) this.clock.takeOver(other.aheadS);
  }

  /** Looks at this process, and says in the database what is seen. */
  async look(): Promise<void> {
    this.standing = this.own.look();
    this.seenMs = performance.now();
    const tookS = await this.say(this.standing);
    this.answersS = tookS === undefined ? [] : [tookS, ...this.answersS].slice(0, ANSWERS_KEPT);
    const { answerS } = this;
    this.paceForS = this.pace.at(performance.now(), answerS === undefined ? 'away' : answerS >= LIMITS.slowS ? 'slow' : 'in time');
  }

  /** How the database stood at the last look. */
  get databaseSeen(): Omit<HouseFacts['database'], 'sizeBytes'> {
    const ago = (ms: number) => (performance.now() - ms) / 1000;
    const { last } = this.room;
    return {
      answerS: this.answerS, forS: this.paceForS + ago(this.seenMs), elsewhere: !this.folder.holdsDatabase,
      full: last && { lastAgoS: ago(last.lastMs), forS: ago(last.firstMs) },
    };
  }

  /** This process as it stands now, and the others as they last said. */
  async processes(yardId: YardId): Promise<ProcessSeen[]> {
    const others = (await this.database.query(OTHERS, [this.me])) as { readonly agoS: number; readonly standing: Standing }[];
    return [ofYard(this.own.look(), yardId, 0), ...others.map(({ standing, agoS }) => ofYard(standing, yardId, agoS))];
  }

  /** The middle of the last answers; undefined while there is none. */
  private get answerS(): number | undefined {
    return [...this.answersS].sort((one, other) => one - other)[Math.floor((this.answersS.length - 1) / 2)];
  }

  /** How long it took; undefined where no answer came. */
  private async say(standing: Standing): Promise<number | undefined> {
    const began = performance.now();
    try {
      await withinTime(this.database.query(SAY, [this.me, JSON.stringify(standing)]));
      const tookS = (performance.now() - began) / 1000;
      if (standing.leads) await withinTime(this.database.query(FORGET, [LIMITS.processMissedS]));
      return tookS;
    } catch (error) {
      if (isDiskFull(error)) {
        this.room.note();
        return (performance.now() - began) / 1000;
      }
      log.debug({ err: (error as Error).message }, 'how this process stands could not be written down');
      return undefined;
    }
  }
}

const withinTime = async (asked: Promise<unknown>): Promise<void> => {
  const late = new AbortController();
  const timer = setTimeout(() => late.abort(), ANSWER_WITHIN_MS);
  const tooLate = new Promise<never>((_, failed) => late.signal.addEventListener('abort', () => failed(new Error(`no answer within ${ANSWER_WITHIN_MS} ms`))));
  await Promise.race([asked, tooLate]).finally(() => clearTimeout(timer));
};

/** Ages go on from when they were written down; a beat that was in time then is held to have gone on. */
function ofYard({ open, host: _host, broker, redis, disk, ended, runsForS, ...rest }: Standing, yardId: YardId, agoS: number): ProcessSeen {
  const here = open.find((one) => one.yardId === yardId);
  const older = <T extends { readonly forS: number }>(one: T | null): T | undefined => (one ? { ...one, forS: one.forS + agoS } : undefined);
  return {
    ...rest, agoS, runsForS: runsForS + agoS, boards: here?.boards ?? 0, beatAgoS: here?.beatAgoS ?? undefined,
    broker: older(broker), redis: older(redis), disk: older(disk), ended: ended.map((one) => ({ ...one, agoS: one.agoS + agoS })),
  };
}
