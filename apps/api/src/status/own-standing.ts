import { Injectable } from '@nestjs/common';
import type { YardId } from '@stokehold/domain/quantity';
import { hostname } from 'node:os';
import { Broker } from '../gateways/index.js';
import { VERSION } from '../health/index.js';
import { LiveGateway } from '../live/index.js';
import { Clock, Disk, Leading, Workers } from '../platform/index.js';
import type { DiskSeen, LineSeen, ProcessSeen } from './facts.js';
import { LIMITS } from './judge.js';
import { Lasting } from './lasting.js';

/** What a process says of itself, of all yards on which boards are open at it. */
export interface Standing extends Omit<ProcessSeen, 'agoS' | 'boards' | 'beatAgoS' | 'broker' | 'redis' | 'disk'> {
  readonly open: readonly { readonly yardId: YardId; readonly boards: number; readonly beatAgoS: number | null }[];
  /** Its machine: processes there share its clock. */
  readonly host: string;
  readonly broker: LineSeen | null;
  readonly redis: LineSeen | null;
  readonly disk: DiskSeen | null;
}

const DAY_S = 86_400;
const startedMs = performance.now() - process.uptime() * 1000;

/** How this process stands; looked at again and again, for it knows since when a thing is so only as it saw it become so. */
@Injectable()
export class OwnStanding {
  private readonly brokerIsThere = new Lasting<boolean>();
  private readonly redisIsThere = new Lasting<boolean>();
  private readonly clockAheadS = new Lasting<number>();
  private readonly diskLevel = new Lasting<number>();

  constructor(
    private readonly clock: Clock,
    private readonly disk: Disk,
    private readonly leading: Leading,
    private readonly workers: Workers,
    private readonly live: LiveGateway,
    private readonly broker: Broker,
  ) {}

  look(): Standing {
    const now = performance.now();
    const ago = (ms: number) => (now - ms) / 1000;
    const { hearsOthers } = this.live;
    const aheadS = this.clock.aheadS();
    return {
      version: VERSION,
      runsForS: ago(startedMs),
      host: hostname(),
      leads: this.leading.isMine,
      clock: { aheadS, forS: this.clockAheadS.at(now, aheadS) },
      open: this.live.open.map(({ yardId, boards, beatenMs }) => ({ yardId, boards, beatAgoS: beatenMs === undefined ? null : ago(beatenMs) })),
      broker: this.broker.isMine ? { isThere: this.broker.isThere, forS: this.brokerIsThere.at(now, this.broker.isThere) } : null,
      redis: hearsOthers === undefined ? null : { isThere: hearsOthers, forS: this.redisIsThere.at(now, hearsOthers) },
      disk: this.roomLeft(now),
      ended: this.workers.ended.map(({ name, atMs }) => ({ name, agoS: ago(atMs) })).filter(({ agoS }) => agoS <= DAY_S),
    };
  }

  private roomLeft(nowMs: number): DiskSeen | null {
    const { room, isOut } = this.disk;
    if (!room) return null;
    const level = isOut ? 3 : Number(room.usedFrac >= LIMITS.fillingFrac) + Number(room.usedFrac >= LIMITS.nearlyFullFrac);
    return { ...room, isOut, forS: this.diskLevel.at(nowMs, level) };
  }
}
