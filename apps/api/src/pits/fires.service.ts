import { Injectable } from '@nestjs/common';
import type { AdviceView, FireView, PitView } from '@stokehold/domain/contract';
import type { Due } from '@stokehold/domain/fire';
import { type EpochS, fromIso, HOUR_S, later, MINUTE_S, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { dueFromView } from './fire-view.js';
import { type ChamberSeen, PitsStore, type SeenFire } from './pits.store.js';

/** A belief that nobody carried on for so long says nothing of the fire any more. */
const BELIEF_HOLDS_S = HOUR_S;
/** The past that a screen shows. */
const PAST_S = 70 * MINUTE_S;

/** One pit's fire as the screens show it. */
export interface PitFire extends Pick<PitView, 'fire' | 'due' | 'advice' | 'past'> {
  readonly pitId: PitId;
}
/** A fire in a few words; nothing is safe to leave until then while nothing is due. */
export interface FireStanding {
  readonly pitId: PitId;
  readonly mode: FireView['mode'];
  readonly dryKgPerS: number;
  readonly latestSafeAt: EpochS | null;
  /** By how much each zone is hotter than the middle of the chamber, from the fire end, K. */
  readonly zoneOverK: readonly number[];
  /** The middle of what its chamber is forecast to do while nobody touches it. */
  readonly ahead: { readonly from: EpochS; readonly stepS: number; readonly tempC: readonly number[] };
}
/** When a fire should be looked at, and when somebody did last (or lit it). */
export interface FireDue extends Due {
  readonly pitId: PitId;
  readonly lastLookAt: EpochS;
}

/** What is believed of each fire, for whoever asks. */
@Injectable()
export class Fires {
  constructor(private readonly store: PitsStore) {}

  /** The fires of a yard; a pit that does not burn is absent. */
  async view(em: EntityManager, yardId: YardId, now: EpochS): Promise<PitFire[]> {
    const fires = await this.burning(em, yardId, now);
    const past = await this.store.past(em, fires.map(({ pitId }) => pitId), later(now, -PAST_S));
    return fires.map(({ pitId, estimate, due, advice }) => ({
      pitId,
      fire: estimate,
      due,
      advice,
      past: past.filter((one) => one.pitId === pitId).map(({ at, tempC }) => ({ at: toIso(at), tempC })),
    }));
  }

  /** What is advised at a fire that burns; null while nothing is. */
  async advice(em: EntityManager, yardId: YardId, { pitId, now }: { readonly pitId: PitId; readonly now: EpochS }): Promise<AdviceView | null> {
    return (await this.burning(em, yardId, now)).find((fire) => fire.pitId === pitId)?.advice ?? null;
  }

  /** What the chambers were, every five minutes since a time, as measured or believed. */
  course(em: EntityManager, pitIds: readonly PitId[], since: EpochS, until?: EpochS): Promise<ChamberSeen[]> {
    return this.store.course(em, pitIds, since, until);
  }

  /** How each burning fire stands, in a few words. */
  async standing(em: EntityManager, yardId: YardId, now: EpochS): Promise<FireStanding[]> {
    return (await this.burning(em, yardId, now)).map(({ pitId, estimate: { mode, dryKgPerS, zoneTempC, chamberTempC, forecast }, due }) => ({
      pitId, mode, dryKgPerS, latestSafeAt: due && fromIso(due.latestSafeAt), zoneOverK: zoneTempC.map((tempC) => tempC - chamberTempC.p50),
      ahead: { from: fromIso(forecast.from), stepS: forecast.stepS, tempC: forecast.p50 },
    }));
  }

  /** The due times of all fires that have one, and when each was looked at last. */
  async dues(em: EntityManager, yardId: YardId): Promise<FireDue[]> {
    return (await this.store.seen(em, yardId)).flatMap(({ pitId, due, lookedAt }) => (due && lookedAt !== undefined ? [{ pitId, ...dueFromView(due), lastLookAt: lookedAt }] : []));
  }

  /** Dry wood a second that each burning fire takes: what the splits still needed are reckoned from. */
  async burnRates(em: EntityManager, yardId: YardId, now: EpochS): Promise<ReadonlyMap<PitId, number>> {
    return new Map((await this.standing(em, yardId, now)).map(({ pitId, dryKgPerS }) => [pitId, dryKgPerS]));
  }

  private async burning(em: EntityManager, yardId: YardId, now: EpochS): Promise<SeenFire[]> {
    return (await this.store.seen(em, yardId)).filter(({ believedAt }) => believedAt > now - BELIEF_HOLDS_S);
  }
}
