import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import { type CarriedFire, carryFire, type FireToCarry, type WoodAtHand } from '@stokehold/domain/fire';
import { type EpochS, MINUTE_S, type PitId, seedFrom } from '@stokehold/domain/quantity';
import { USUAL_SPLIT } from '@stokehold/domain/wood';
import { type Deed, log, Workers } from '../platform/index.js';
import { Readings, type ZoneMean } from '../readings/index.js';
import { Wood } from '../wood/index.js';
import { endsByStretch, type Errand } from './errand.js';
import { outcomeOf } from './outcome.js';
import { PitsStore } from './pits.store.js';
import { isAdviceStale, isOutlookStale } from './stale.js';
import type { PitTonight } from './tonight.js';

export type Cause = EventOf<'fire-estimated'>['because'];

/** Means of the probes are taken in by the two minutes, as the estimator was made for. */
const STRETCH_S = 2 * MINUTE_S;
/** So few minutes, with no look ahead, are carried in a fraction of a millisecond: less than the way to a thread takes. */
const NEAR_S = 5 * MINUTE_S;

/** Carries fires to now in the workers, keeps what comes out and tells it. */
@Injectable()
export class FireKeeper {
  constructor(
    private readonly store: PitsStore,
    private readonly readings: Readings,
    private readonly wood: Wood,
    private readonly workers: Workers,
  ) {}

  /** The fires of one event, side by side. */
  async carry(deed: Deed, errands: readonly Errand[], because: Cause): Promise<void> {
    if (errands.length === 0) return;
    const from = errands.reduce<EpochS>((first, { begin }) => (begin.at < first ? begin.at : first), deed.now);
    const means = this.readings.means(deed.em, deed.yardId, { from, until: deed.now, stretchS: STRETCH_S });
    const asked = await Promise.all(errands.map((errand) => this.asked(deed, errand, means)));
    const carried = await this.carried(errands, asked);
    const outcomes = errands.map((errand, nth) => outcomeOf(errand, asked[nth]!, carried[nth]!, deed.now));
    for (const [nth, { pit }] of errands.entries()) sayRejected(pit, carried[nth]!);
    deed.alongside(this.store.save(deed.em, deed.yardId, outcomes));
    const moved = outcomes.filter((outcome) => outcome.moved).map(({ fire }) => fire.pitId);
    deed.tell({ kind: 'fire-estimated', pitIds: errands.map(({ pit }) => pit.id), because });
    if (moved.length > 0) deed.tell({ kind: 'due-moved', pitIds: moved, because: because === 'minute' ? 'due-moved' : because });
  }

  private async carried(errands: readonly Errand[], asked: readonly FireToCarry[]): Promise<CarriedFire[]> {
    const near = asked.map(({ to, wantsOutlook, advice }, nth) => !wantsOutlook && !advice && to - errands[nth]!.begin.at <= NEAR_S);
    const far = await this.workers.runEach('carryFire', asked.filter((_, nth) => !near[nth]));
    let next = 0;
    return asked.map((fire, nth) => (near[nth] ? carryFire(fire) : far[next++]!));
  }

  private async asked(deed: Deed, errand: Errand, means: Promise<ReadonlyMap<PitId, readonly ZoneMean[]>>): Promise<FireToCarry> {
    const { pit, kept, begin, look, lastLookAt, anew } = errand;
    const due = kept?.due ?? null;
    const wantsAdvice = anew || isAdviceStale(kept?.advice ?? null, due, deed.now);
    const wood = wantsAdvice ? this.woodAtHand(deed, pit.id) : undefined;
    const read = (await means).get(pit.id) ?? [];
    return {
      from: begin,
      shape: pit.shape,
      seed: seedFrom(pit.name, begin.at),
      to: deed.now,
      around: pit.around,
      band: pit.band,
      readings: endsByStretch(read, pit, { from: begin.at, to: deed.now }),
      ...(look && { look }),
      lastLookAt,
      wantsOutlook: anew || isOutlookStale(kept?.estimate, due, deed.now),
      ...(wood && { advice: { wood: await wood, seed: seedFrom(pit.name, deed.now) } }),
    };
  }

  private async woodAtHand(deed: Deed, pitId: PitId): Promise<WoodAtHand> {
    const [top, offcuts] = await Promise.all([this.wood.topOfCart(deed.em, deed.yardId, pitId), this.wood.offcutsBooked(deed.em, deed.yardId)]);
    const { species, lengthM, thicknessM, moisture, onCart } = top ?? { ...USUAL_SPLIT, onCart: 0 };
    return { species, lengthM, thicknessM, moisture, onCart, offcuts };
  }
}

function sayRejected(pit: PitTonight, { rejected, lost }: CarriedFire): void {
  if (lost.length > 0) log.warn({ pitId: pit.id, pit: pit.name, lost }, 'a probe keeps showing what cannot be; it counts as lost');
  else if (rejected.length > 0) log.info({ pitId: pit.id, pit: pit.name, rejected }, 'readings that cannot be are kept and not used');
}
