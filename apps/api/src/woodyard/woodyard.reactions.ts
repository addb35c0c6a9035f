import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import type { EpochS, YardId } from '@stokehold/domain/quantity';
import type { Deed } from '../platform/index.js';
import { BALANCE_EVERY_S, Pulls } from './pulls.service.js';

/** Balances the pull again when a fire burns more than was planned, or wood that was promised is gone. */
@Injectable()
export class WoodyardReactions {
  private readonly looked = new Map<YardId, EpochS>();

  constructor(private readonly pulls: Pulls) {}

  async onCheckRecorded(_: EventOf<'check-recorded'>, deed: Deed): Promise<void> {
    const last = this.looked.get(deed.yardId);
    if (last !== undefined && deed.now >= last && deed.now - last < BALANCE_EVERY_S) return;
    this.looked.set(deed.yardId, deed.now);
    await this.pulls.balance(deed);
  }

  /** Food that goes on brings the kitchen's wish of wood to its fire. */
  async onCook(_: EventOf<'cook-changed'>, deed: Deed): Promise<void> {
    await this.pulls.balance(deed);
  }
}
