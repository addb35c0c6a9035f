import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, type YardId } from '@stokehold/domain/quantity';

interface YardTime {
  readonly now: () => EpochS;
  readonly speed: number;
}

/** What time it is: for a yard on a practice night, that night's own time; for every other yard the real one. */
@Injectable()
export class Clock {
  private readonly ownTimes = new Map<YardId, YardTime>();

  /** The real time, for what is not of the night: PIN waits, codes, devices. */
  real(): EpochS {
    return epochS(Date.now() / 1000);
  }

  now(yardId: YardId): EpochS {
    return this.ownTimes.get(yardId)?.now() ?? this.real();
  }

  /** Whether the yard goes by a time that only this process knows. */
  hasOwnTime(yardId: YardId): boolean {
    return this.ownTimes.has(yardId);
  }

  /** How many seconds of the yard's night pass in a real one. */
  speed(yardId: YardId): number {
    return this.ownTimes.get(yardId)?.speed ?? 1;
  }

  /** A practice night or a test gives its yard a time of its own. */
  giveOwnTime(yardId: YardId, time: YardTime): void {
    this.ownTimes.set(yardId, time);
  }

  takeOwnTime(yardId: YardId): void {
    this.ownTimes.delete(yardId);
  }
}
