import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import { type EpochS, MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import type { Deed } from '../platform/index.js';
import { Pulls } from './pulls.service.js';

/** A pull is held against the fires after a check, but no more often than this: wood runs short over hours. */
const LOOK_EVERY_S = 30 * MINUTE_S;

/** Balances the pull again when a fire burns more than was planned, or wood that was promised is gone. */
@Injectable()
export class WoodyardReactions {
  private readonly looked = new Map<YardId, EpochS>();

  constructor(private readonly pulls: Pulls) {}

  async onCheckRecorded(_: EventOf<'check-recorded'>, deed: Deed): Promise<void> {
    const last = this.looked.get(deed.yardId);
    if (last !== undefined && deed.now >= last && deed.now - last < LOOK_EVERY_S) return;
    this.looked.set(deed.yardId, deed.now);
    await this.pulls.balance(deed);
  }
}
