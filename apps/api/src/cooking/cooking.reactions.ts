import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import { MINUTE_S } from '@stokehold/domain/quantity';
import type { Deed } from '../platform/index.js';
import { Watch } from './watch.js';

/** Cooks are forecast at every tenth minute, and when something was logged or moved. */
const EVERY_MINUTES = 10;
/** Looked at so lately, it need not be again. */
const JUST_NOW_S = 5 * MINUTE_S;

/** When food is looked at anew. The look itself runs beside what is being carried and tells its own facts. */
@Injectable()
export class CookingReactions {
  constructor(private readonly watch: Watch) {}

  async onMinute(_: EventOf<'minute-passed'>, deed: Deed): Promise<void> {
    const last = this.watch.lookedAt(deed.yardId);
    if (Math.floor(deed.now / MINUTE_S) % EVERY_MINUTES !== 0 || (last !== undefined && deed.now - last < JUST_NOW_S)) return;
    this.watch.want(deed);
  }

  async onRecorded(_: EventOf<'food-recorded'>, deed: Deed): Promise<void> {
    this.watch.want(deed);
  }

  async onCook(_: EventOf<'cook-changed'>, deed: Deed): Promise<void> {
    this.watch.want(deed);
  }
}
