import { Injectable } from '@nestjs/common';
import type { AdviceView, DueView, FireView, LearnedView } from '@stokehold/domain/contract';
import { type EpochS, epochS, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, In, MoreThan } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { FireEstimateRow, type UnusedReading } from './fire-estimate.row.js';
import { FireLookRow } from './fire-look.row.js';
import type { Outcome } from './outcome.js';
import { PitFireRow } from './pit-fire.row.js';

/** A fire as it was believed last, as far as people see it. */
export interface SeenFire {
  readonly pitId: PitId;
  readonly believedAt: EpochS;
  readonly estimate: FireView;
  readonly due: DueView | null;
  readonly advice: AdviceView | null;
}
/** The same with the belief itself, from which the fire is carried on. */
export interface KeptFire extends SeenFire {
  readonly belief: Uint8Array;
}
/** When a fire was looked at last, or lit while nobody has looked. */
export interface Looked {
  readonly lookedAt: EpochS | undefined;
}
/** What was believed right after the last look; `checkId` is null while nobody looked since the fire was lit. */
export interface KeptLook {
  readonly pitId: PitId;
  readonly checkId: string | null;
  readonly lookedAt: EpochS;
  readonly belief: Uint8Array;
}
/** What was forecast right after a check, what had been advised for it, and what was learned of the pit by then. */
export interface KeptTold {
  readonly pitId: PitId;
  readonly checkId: string;
  readonly lookedAt: EpochS;
  readonly advised: AdviceView['action'] | null;
  readonly fan: FireView['forecast'];
  readonly learned: LearnedView;
}
/** A chamber at an instant of its past. */
export type ChamberSeen = Pick<PastTemp, 'pitId' | 'at' | 'tempC' | 'zoneShiftK'>;
export interface PastTemp {
  readonly pitId: PitId;
  readonly at: EpochS;
  readonly tempC: number;
  readonly measured: boolean;
  readonly bedKg: number;
  /** By how much each zone was hotter than the mean, from the fire end; null in rows from before it was kept. */
  readonly zoneShiftK: readonly number[] | null;
  /** Readings of the last stretch that were kept and not used; null when there were none. */
  readonly unused: readonly UnusedReading[] | null;
}

const dateOf = (at: EpochS) => new Date(toIso(at));
const epochOf = (at: Date) => epochS(at.getTime() / 1000);
/** The driver's buffers share memory at any offset; a copy of its own can be read as numbers and be sent to a thread. */
const bytesOf = (buffer: Buffer) => Uint8Array.from(buffer);

@Injectable()
export class PitsStore {
  private readonly remembered = new Remembered<FireVersion[]>(['fire-estimated']);
  /** A fire is long, and read mostly by the process that wrote it: by the version of its row it is known again. */
  private readonly known = new Map<PitId, Known>();

  /** The fires of a yard in the order of their ids, with what they are carried on from. */
  async fires(em: EntityManager, yardId: YardId, only?: PitId): Promise<(KeptFire & Looked)[]> {
    const fires = await this.ask(em, await this.versions(em, yardId, only), { belief: true });
    return fires.flatMap(({ fire, belief, lookedAt }) => (belief ? [{ ...fire, belief, lookedAt }] : []));
  }

  /** The same without the bytes of their belief: for screens, and for what asks every minute. */
  async seen(em: EntityManager, yardId: YardId): Promise<(SeenFire & Looked)[]> {
    const fires = await this.ask(em, await this.versions(em, yardId), { belief: false });
    return fires.map(({ fire, lookedAt }) => ({ ...fire, lookedAt }));
  }

  private async versions(em: EntityManager, yardId: YardId, only?: PitId): Promise<FireVersion[]> {
    const all = await this.remembered.once(em, yardId, () => em.query(
      `select pit_id, ${VERSION} as version, extract(epoch from looked_at)::float8 as looked_s
       from pit_fire left join fire_look using (pit_id) where yard_id = $1 order by pit_id`,
      [yardId],
    ));
    return only ? all.filter(({ pit_id }) => pit_id === only) : all;
  }

  /** What of these fires is not known yet is read. */
  private async ask(em: EntityManager, versions: readonly FireVersion[], wanted: { readonly belief: boolean }): Promise<(Known & Looked)[]> {
    const unknown = versions.filter(({ pit_id, version }) => {
      const known = this.known.get(pit_id);
      return known?.version !== version || (wanted.belief && !known.belief);
    });
    if (unknown.length > 0) await this.read(em, unknown.map(({ pit_id }) => pit_id), wanted);
    return versions.flatMap(({ pit_id, looked_s }) => {
      const known = this.known.get(pit_id);
      return known ? [{ ...known, lookedAt: looked_s === null ? undefined : epochS(looked_s) }] : [];
    });
  }

  private async read(em: EntityManager, pitIds: readonly PitId[], wanted: { readonly belief: boolean }): Promise<void> {
    const rows = (await em.query(
      `select pit_id, ${VERSION} as version, extract(epoch from believed_at)::float8 as believed_s, estimate, due, advice, case when $2 then belief end as belief
       from pit_fire where pit_id = any($1)`,
      [pitIds, wanted.belief],
    )) as FireRow[];
    for (const { pit_id, version, believed_s, belief, ...fire } of rows) {
      this.known.set(pit_id, { version, fire: { ...fire, pitId: pit_id, believedAt: epochS(believed_s) }, ...(belief && { belief: bytesOf(belief) }) });
    }
  }

  async lastLook(em: EntityManager, pitId: PitId): Promise<KeptLook | undefined> {
    const row = await em.findOneBy(FireLookRow, { pitId });
    return row ? { pitId, checkId: row.checkId, lookedAt: epochOf(row.lookedAt), belief: bytesOf(row.belief) } : undefined;
  }

  /** What came of a number of fires, in one message. */
  async save(em: EntityManager, yardId: YardId, outcomes: readonly Outcome[]): Promise<void> {
    this.remembered.forget(em);
    const all = <T>(part: (outcome: Outcome) => T | undefined) => outcomes.map(part).filter((one) => one !== undefined);
    const looks = all(({ look }) => look);
    await Promise.all([
      this.keepFires(em, yardId, all(({ fire }) => fire)),
      looks.length > 0 && this.keepLooks(em, looks, all(({ told }) => told)),
      this.addPast(em, outcomes.flatMap(({ past }) => past)),
    ]);
  }

  private async keepFires(em: EntityManager, yardId: YardId, fires: readonly KeptFire[]): Promise<void> {
    if (fires.length === 0) return;
    const json = (value: object | null) => value && JSON.stringify(value);
    // Bytes by themselves travel as they are; in an array they would travel as text of twice the length.
    const beliefs = fires.map((_, nth) => `(${nth + 1}, $${nth + 7}::bytea)`).join(', ');
    const rows = (await em.query(
      `insert into pit_fire (pit_id, yard_id, believed_at, belief, estimate, due, advice)
       select pit_id, $1, to_timestamp(believed_s), belief, estimate::jsonb, due::jsonb, advice::jsonb
       from unnest($2::uuid[], $3::float8[], $4::text[], $5::text[], $6::text[]) with ordinality as fire (pit_id, believed_s, estimate, due, advice, nth)
         join (values ${beliefs}) as bytes (nth, belief) using (nth)
       on conflict (pit_id) do update set belief = excluded.belief, believed_at = excluded.believed_at, estimate = excluded.estimate,
         due = excluded.due, advice = excluded.advice
       returning pit_id, ${VERSION} as version`,
      [
        yardId, fires.map(({ pitId }) => pitId), fires.map(({ believedAt }) => believedAt), fires.map(({ estimate }) => json(estimate)),
        fires.map(({ due }) => json(due)), fires.map(({ advice }) => json(advice)), ...fires.map(({ belief }) => Buffer.from(belief)),
      ],
    )) as Pick<FireVersion, 'pit_id' | 'version'>[];
    for (const { belief, ...fire } of fires) {
      this.known.set(fire.pitId, { version: rows.find(({ pit_id }) => pit_id === fire.pitId)?.version ?? '', fire: plain(fire), belief });
    }
  }

  /** What was believed after each look and what was told then, in one statement. */
  async keepLooks(em: EntityManager, looks: readonly KeptLook[], told: readonly KeptTold[] = []): Promise<void> {
    await em.query(
      `with looked as (
         insert into fire_look (pit_id, check_id, looked_at, belief) select * from unnest($1::uuid[], $2::uuid[], $3::timestamptz[], $4::bytea[])
         on conflict (pit_id) do update set check_id = excluded.check_id, looked_at = excluded.looked_at, belief = excluded.belief
       )
       insert into fire_told (check_id, pit_id, looked_at, advised, fan, learned)
       select check_id, pit_id, looked_at, advised, fan::jsonb, learned::jsonb
       from unnest($5::uuid[], $6::uuid[], $7::timestamptz[], $8::text[], $9::text[], $10::text[]) as told (check_id, pit_id, looked_at, advised, fan, learned)
       on conflict (check_id) do update set advised = excluded.advised, fan = excluded.fan, learned = excluded.learned`,
      [
        looks.map(({ pitId }) => pitId), looks.map(({ checkId }) => checkId), looks.map(({ lookedAt }) => toIso(lookedAt)), looks.map(({ belief }) => Buffer.from(belief)),
        told.map(({ checkId }) => checkId), told.map(({ pitId }) => pitId), told.map(({ lookedAt }) => toIso(lookedAt)), told.map(({ advised }) => advised),
        told.map(({ fan }) => JSON.stringify(fan)), told.map(({ learned }) => JSON.stringify(learned)),
      ],
    );
  }

  /** Fires that nobody keeps tonight ask for nothing. */
  async rest(em: EntityManager, pitIds: readonly PitId[]): Promise<void> {
    this.remembered.forget(em);
    if (pitIds.length > 0) await em.update(PitFireRow, { pitId: In([...pitIds]) }, { due: null, advice: null });
  }

  private async addPast(em: EntityManager, past: readonly PastTemp[]): Promise<void> {
    if (past.length === 0) return;
    await em.query(
      `insert into fire_estimate (pit_id, at, temp_c, measured, bed_kg, unused, zone_shift_k)
       select pit_id, to_timestamp(at_s), temp_c, measured, bed_kg, unused::jsonb, zone_shift_k::float8[]
       from unnest($1::uuid[], $2::float8[], $3::float8[], $4::boolean[], $5::float8[], $6::text[], $7::text[]) as past (pit_id, at_s, temp_c, measured, bed_kg, unused, zone_shift_k)
       on conflict (pit_id, at) do update set temp_c = excluded.temp_c, measured = excluded.measured, bed_kg = excluded.bed_kg, unused = excluded.unused,
         zone_shift_k = excluded.zone_shift_k`,
      [
        past.map(({ pitId }) => pitId), past.map(({ at }) => at), past.map(({ tempC }) => tempC), past.map(({ measured }) => measured),
        past.map(({ bedKg }) => bedKg), past.map(({ unused }) => unused && JSON.stringify(unused)), past.map(({ zoneShiftK }) => zoneShiftK && `{${zoneShiftK.join(',')}}`),
      ],
    );
  }

  /** The chambers every five minutes since a time, oldest first; for what lies in them. */
  async course(em: EntityManager, pitIds: readonly PitId[], since: EpochS, until?: EpochS): Promise<ChamberSeen[]> {
    const rows = (await em.query(
      `select distinct on (pit_id, floor(extract(epoch from at) / 300)) pit_id, extract(epoch from at)::float8 as at_s, temp_c, zone_shift_k
       from fire_estimate where pit_id = any($1) and at >= $2 and at <= $3 order by pit_id, floor(extract(epoch from at) / 300), at`,
      [[...pitIds], toIso(since), until === undefined ? 'infinity' : toIso(until)],
    )) as { pit_id: PitId; at_s: number; temp_c: number; zone_shift_k: number[] | null }[];
    return rows.map((row) => ({ pitId: row.pit_id, at: epochS(row.at_s), tempC: row.temp_c, zoneShiftK: row.zone_shift_k }));
  }

  async past(em: EntityManager, pitIds: readonly PitId[], since: EpochS): Promise<PastTemp[]> {
    const rows = await em.find(FireEstimateRow, { where: { pitId: In([...pitIds]), at: MoreThan(dateOf(since)) }, order: { pitId: 'asc', at: 'asc' } });
    return rows.map((row) => ({ ...row, pitId: row.pitId as PitId, at: epochOf(row.at) }));
  }
}

/** As it comes back from the database. */
const plain = ({ estimate, due, advice, ...fire }: SeenFire): SeenFire => ({ ...fire, ...(JSON.parse(JSON.stringify({ estimate, due, advice })) as Pick<SeenFire, 'estimate' | 'due' | 'advice'>) });

/** Which transaction wrote a row, and where it lies: no two versions of a row have both in common. */
const VERSION = `pit_fire.xmin::text || pit_fire.ctid::text`;
interface FireVersion {
  readonly pit_id: PitId; readonly version: string; readonly looked_s: number | null;
}
interface FireRow extends Omit<SeenFire, 'pitId' | 'believedAt'> {
  readonly pit_id: PitId; readonly version: string; readonly believed_s: number; readonly belief: Buffer | null;
}
/** A fire as a version of its row has it; the belief where somebody asked for it. */
interface Known {
  readonly version: string; readonly fire: SeenFire; readonly belief?: Uint8Array;
}
