import { Injectable } from '@nestjs/common';
import type { AdviceView, DueView, FireView } from '@stokehold/domain/contract';
import { type EpochS, epochS, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, In, MoreThan } from 'typeorm';
import { FireEstimateRow } from './fire-estimate.row.js';
import { FireLookRow } from './fire-look.row.js';
import { PitFireRow } from './pit-fire.row.js';

/** A fire as it was believed last. */
export interface KeptFire {
  readonly pitId: PitId;
  readonly belief: Uint8Array;
  readonly believedAt: EpochS;
  readonly estimate: FireView;
  readonly due: DueView | null;
  readonly advice: AdviceView | null;
}
/** What was believed right after the last look; `checkId` is null while nobody looked since the fire was lit. */
export interface KeptLook {
  readonly pitId: PitId;
  readonly checkId: string | null;
  readonly lookedAt: EpochS;
  readonly belief: Uint8Array;
}
/** A fire in a few words; `latestSafeAt` is an instant of the contract, null while nothing is due. */
export interface FireStanding {
  readonly pitId: PitId;
  readonly mode: FireView['mode'];
  readonly dryKgPerS: number;
  readonly latestSafeAt: string | null;
}
export interface PastTemp {
  readonly pitId: PitId;
  readonly at: EpochS;
  readonly tempC: number;
  readonly measured: boolean;
  readonly bedKg: number;
}

const dateOf = (at: EpochS) => new Date(toIso(at));
const epochOf = (at: Date) => epochS(at.getTime() / 1000);
/** The driver's buffers share memory at any offset; a copy of its own can be read as numbers and be sent to a thread. */
const bytesOf = (buffer: Buffer) => Uint8Array.from(buffer);

@Injectable()
export class PitsStore {
  async fires(em: EntityManager, yardId: YardId, only?: PitId): Promise<KeptFire[]> {
    const rows = await em.find(PitFireRow, { where: { yardId, ...(only && { pitId: only }) }, order: { pitId: 'asc' } });
    return rows.map((row) => ({ ...row, pitId: row.pitId as PitId, believedAt: epochOf(row.believedAt), belief: bytesOf(row.belief) }));
  }

  /** The fires without the bytes of their belief: for screens. */
  async seen(em: EntityManager, yardId: YardId, believedAfter: EpochS): Promise<Omit<KeptFire, 'belief'>[]> {
    const rows = (await em.query(
      `select pit_id, extract(epoch from believed_at)::float8 as believed_s, estimate, due, advice
       from pit_fire where yard_id = $1 and believed_at > $2 order by pit_id`,
      [yardId, toIso(believedAfter)],
    )) as SeenRow[];
    return rows.map(({ pit_id, believed_s, ...fire }) => ({ ...fire, pitId: pit_id, believedAt: epochS(believed_s) }));
  }

  /** How each fire stands, in a few words: for what asks every minute. */
  async standing(em: EntityManager, yardId: YardId, believedAfter: EpochS): Promise<FireStanding[]> {
    return (await em.query(
      `select pit_id as "pitId", estimate->>'mode' as mode, (estimate->>'dryKgPerS')::float8 as "dryKgPerS", due->>'latestSafeAt' as "latestSafeAt"
       from pit_fire where yard_id = $1 and believed_at > $2 order by pit_id`,
      [yardId, toIso(believedAfter)],
    )) as FireStanding[];
  }

  /** The due times of fires that have one, and when each was looked at last. */
  async dues(em: EntityManager, yardId: YardId): Promise<{ readonly pitId: PitId; readonly due: DueView; readonly lookedAt: EpochS }[]> {
    const rows = (await em.query(
      `select pit_id, due, extract(epoch from looked_at)::float8 as looked_s
       from pit_fire join fire_look using (pit_id) where yard_id = $1 and due is not null order by pit_id`,
      [yardId],
    )) as { pit_id: PitId; due: DueView; looked_s: number }[];
    return rows.map(({ pit_id, due, looked_s }) => ({ pitId: pit_id, due, lookedAt: epochS(looked_s) }));
  }

  async lookedAt(em: EntityManager, yardId: YardId): Promise<ReadonlyMap<PitId, EpochS>> {
    const rows = (await em.query(
      'select pit_id, extract(epoch from looked_at)::float8 as looked_s from fire_look join pit_fire using (pit_id) where yard_id = $1 order by pit_id',
      [yardId],
    )) as { pit_id: PitId; looked_s: number }[];
    return new Map(rows.map(({ pit_id, looked_s }) => [pit_id, epochS(looked_s)]));
  }

  async lastLook(em: EntityManager, pitId: PitId): Promise<KeptLook | undefined> {
    const row = await em.findOneBy(FireLookRow, { pitId });
    return row ? { pitId, checkId: row.checkId, lookedAt: epochOf(row.lookedAt), belief: bytesOf(row.belief) } : undefined;
  }

  async save(em: EntityManager, yardId: YardId, fires: readonly KeptFire[], looks: readonly KeptLook[]): Promise<void> {
    if (fires.length > 0) {
      await em.upsert(
        PitFireRow,
        fires.map((fire) => ({ ...fire, yardId, believedAt: dateOf(fire.believedAt), belief: Buffer.from(fire.belief) })),
        ['pitId'],
      );
    }
    if (looks.length > 0) {
      await em.upsert(FireLookRow, looks.map((look) => ({ ...look, lookedAt: dateOf(look.lookedAt), belief: Buffer.from(look.belief) })), ['pitId']);
    }
  }

  /** Fires that nobody keeps tonight ask for nothing. */
  async rest(em: EntityManager, pitIds: readonly PitId[]): Promise<void> {
    if (pitIds.length > 0) await em.update(PitFireRow, { pitId: In([...pitIds]) }, { due: null, advice: null });
  }

  async addPast(em: EntityManager, past: readonly PastTemp[]): Promise<void> {
    if (past.length > 0) await em.upsert(FireEstimateRow, past.map((one) => ({ ...one, at: dateOf(one.at) })), ['pitId', 'at']);
  }

  async past(em: EntityManager, pitIds: readonly PitId[], since: EpochS): Promise<PastTemp[]> {
    const rows = await em.find(FireEstimateRow, { where: { pitId: In([...pitIds]), at: MoreThan(dateOf(since)) }, order: { pitId: 'asc', at: 'asc' } });
    return rows.map((row) => ({ ...row, pitId: row.pitId as PitId, at: epochOf(row.at) }));
  }
}

interface SeenRow {
  pit_id: PitId; believed_s: number; estimate: FireView; due: DueView | null;
  advice: AdviceView | null;
}
