import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, type YardId } from '@stokehold/domain/quantity';
import { uptime } from 'node:os';

/** The machine's clock was set by this much or more: less is let pass. Source: our own target, a duration is not wrong by more than a second. */
const STEP_MS = 1000;
/** Between two looks the machine slept: the clock that stands still meanwhile is behind the one that does not. The latter shows whole seconds. */
const SLEPT_MS = 2000;

interface YardTime {
  readonly now: () => EpochS;
  readonly speed: number;
}
interface Look {
  readonly systemMs: number;
  readonly steadyMs: number;
  readonly upMs: number;
}

const lookNow = (): Look => ({ systemMs: Date.now(), steadyMs: performance.now(), upMs: uptime() * 1000 });

/** By how much the machine's clock was set between two looks, ms; what it went on while the machine slept is no step. */
export function steppedMs(before: Look, now: Look): number {
  const steadyMs = now.steadyMs - before.steadyMs;
  const sleptMs = now.upMs - before.upMs - steadyMs;
  return now.systemMs - before.systemMs - steadyMs - (sleptMs >= SLEPT_MS ? sleptMs : 0);
}

/**
 * What time it is: for a yard on a practice night, that night's own time; for every other yard the real one. When the machine's clock is
 * set, the house goes by its time of before: nothing that burns burned meanwhile. Whoever knows that no night runs takes the new time over.
 */
@Injectable()
export class Clock {
  private readonly ownTimes = new Map<YardId, YardTime>();
  private last = lookNow();
  private aheadMs = 0;

  /** The real time, for what is not of the night: PIN waits, codes, devices. */
  real(): EpochS {
    this.look();
    return epochS((this.last.systemMs - this.aheadMs) / 1000);
  }

  now(yardId: YardId): EpochS {
    return this.ownTimes.get(yardId)?.now() ?? this.real();
  }

  /** By how much the machine's clock shows more than the time that the house goes by; whole seconds, 0 while it was not set. */
  aheadS(yardId?: YardId): number {
    this.look();
    return yardId !== undefined && this.hasOwnTime(yardId) ? 0 : Math.round(this.aheadMs / 1000);
  }

  /** From now on the house goes by the machine's clock again, or by another time that is so far behind it. */
  takeOver(aheadS = 0): void {
    this.last = lookNow();
    this.aheadMs = aheadS * 1000;
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

  private look(): void {
    const now = lookNow();
    const stepMs = steppedMs(this.last, now);
    this.last = now;
    if (Math.abs(stepMs) < STEP_MS) return;
    // A clock that is set back to where it was is right again.
    this.aheadMs = Math.abs(this.aheadMs + stepMs) < STEP_MS ? 0 : this.aheadMs + stepMs;
  }
}
