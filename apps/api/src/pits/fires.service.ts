import { Injectable } from '@nestjs/common';
import type { PitView } from '@stokehold/domain/contract';
import type { Due } from '@stokehold/domain/fire';
import { type EpochS, HOUR_S, later, MINUTE_S, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { dueFromView } from './fire-view.js';
import { type FireStanding, PitsStore } from './pits.store.js';

/** A belief that nobody carried on for so long says nothing of the fire any more. */
const BELIEF_HOLDS_S = HOUR_S;
/** The past that a screen shows. */
const PAST_S = 70 * MINUTE_S;

/** One pit's fire as the screens show it. */
export interface PitFire extends Pick<PitView, 'fire' | 'due' | 'advice' | 'past'> {
  readonly pitId: PitId;
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
    const fires = await this.store.seen(em, yardId, later(now, -BELIEF_HOLDS_S));
    const past = await this.store.past(em, fires.map(({ pitId }) => pitId), later(now, -PAST_S));
    return fires.map(({ pitId, estimate, due, advice }) => ({
      pitId,
      fire: estimate,
      due,
      advice,
      past: past.filter((one) => one.pitId === pitId).map(({ at, tempC }) => ({ at: toIso(at), tempC })),
    }));
  }

  /** How each burning fire stands, in a few words. */
  standing(em: EntityManager, yardId: YardId, now: EpochS): Promise<FireStanding[]> {
    return this.store.standing(em, yardId, later(now, -BELIEF_HOLDS_S));
  }

  /** The due times of all fires that burn, by pit id. */
  async dues(em: EntityManager, yardId: YardId): Promise<FireDue[]> {
    return (await this.store.dues(em, yardId)).map(({ pitId, due, lookedAt }) => ({ pitId, ...dueFromView(due), lastLookAt: lookedAt }));
  }

  /** Dry wood a second that each burning fire takes: what the splits still needed are reckoned from. */
  async burnRates(em: EntityManager, yardId: YardId, now: EpochS): Promise<ReadonlyMap<PitId, number>> {
    return new Map((await this.standing(em, yardId, now)).map(({ pitId, dryKgPerS }) => [pitId, dryKgPerS]));
  }
}
