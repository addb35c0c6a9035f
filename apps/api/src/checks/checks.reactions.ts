import { Injectable } from '@nestjs/common';
import type { CheckView, EventOf } from '@stokehold/domain/contract';
import { fromIso } from '@stokehold/domain/quantity';
import type { Deed } from '../platform/index.js';
import { type CheckSeen, PitsReactions } from '../pits/index.js';
import { ChecksStore } from './checks.store.js';

const seenOf = (check: CheckView): CheckSeen => ({
  checkId: check.id,
  pitId: check.pitId,
  seenAt: fromIso(check.seenAt),
  bed: check.bed,
  left: check.left,
  raked: check.raked,
  splits: check.splits,
  size: check.size,
  lotId: check.lotId,
  ...(check.air && { air: check.air }),
  ...(check.fireEndTempC !== null && { fireEndTempC: check.fireEndTempC }),
  ...(check.stackEndTempC !== null && { stackEndTempC: check.stackEndTempC }),
});

/** What a recorded check causes. */
@Injectable()
export class ChecksReactions {
  constructor(
    private readonly store: ChecksStore,
    private readonly pits: PitsReactions,
  ) {}

  /** The check corrects what is believed of its fire; a second look does not. */
  async onCheckRecorded({ checkId }: EventOf<'check-recorded'>, deed: Deed): Promise<void> {
    const check = await this.store.one(deed.em, deed.yardId, checkId);
    if (!check || check.marks.includes('second-look')) return;
    await this.pits.onCheck(seenOf(check), deed);
  }
}
