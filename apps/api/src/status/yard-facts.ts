import { Injectable } from '@nestjs/common';
import { type EpochS, fromIso, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Broker } from '../gateways/index.js';
import { LiveGateway } from '../live/index.js';
import { type Actor, Clock, MOST_TRIES } from '../platform/index.js';
import { Probes } from '../readings/index.js';
import { Shifts } from '../shifts/index.js';
import { Forecasts } from '../weather/index.js';
import type { HouseFacts } from './facts.js';
import { HouseWatch } from './house-watch.js';

/** Undefined where the database has nothing. */
const known = (value: number | null | undefined): number | undefined => value ?? undefined;

const HOUSE = `select pg_database_size(current_database())::float8 as "sizeBytes",
  (select extract(epoch from clock_timestamp() - at)::float8 from backup_taken) as "backupAgoS"`;
const YARD = `select
  (select count(*)::int from outbox where yard_id = $1 and done_at is null) as waiting,
  (select extract(epoch from $2::timestamptz - min(at))::float8 from outbox where yard_id = $1 and done_at is null) as "oldestAgoS",
  (select extract(epoch from $2::timestamptz)::float8 - minute * 60 from minute_told where yard_id = $1) as "toldAgoS",
  (select count(*)::int from work_waiting where yard_id = $1 and tries >= ${MOST_TRIES}) as "leftAside",
  (select extract(epoch from clock_timestamp() - min(wanted_at))::float8 from work_waiting where yard_id = $1 and tries >= ${MOST_TRIES}) as "leftAsideAgoS",
  (select count(*)::int from webhook where yard_id = $1) as webhooks,
  (select extract(epoch from $2::timestamptz - max(webhook_at))::float8 from link_message where yard_id = $1) as "takenAgoS"`;
const UNTOLD = `select count(*)::int as waiting, extract(epoch from $2::timestamptz - min(at))::float8 as "oldestAgoS"
  from link_message where yard_id = $1 and webhook_at is null and at > $2::timestamptz - interval '1 day'`;
const GATEWAYS = `select name, extract(epoch from $2::timestamptz - silent_since)::float8 as "silentForS" from gateway_status join device on device.id = device_id
  where yard_id = $1 and revoked_at is null and silent_since is not null order by silent_since, name`;

/** Gathers what the status page of a yard is judged from. */
@Injectable()
export class YardFacts {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly watch: HouseWatch,
    private readonly shifts: Shifts,
    private readonly probes: Probes,
    private readonly forecasts: Forecasts,
    private readonly broker: Broker,
    private readonly live: LiveGateway,
  ) {}

  async of(actor: Actor): Promise<HouseFacts> {
    const { yardId } = actor;
    const now = this.clock.now(yardId);
    const given = [yardId, toIso(now)];
    const ask = async <T>(sql: string, values: unknown[] = given) => (await this.database.query(sql, values)) as T[];
    const [processes, [house], [yard], [untold], night, forecast] = await Promise.all([
      this.watch.processes(yardId), ask<HouseRow>(HOUSE, []), ask<YardRow>(YARD), ask<Untold>(UNTOLD), this.nightNow(yardId, now), this.forecastNow(actor, now),
    ]);
    const { waiting, oldestAgoS, toldAgoS, leftAside, leftAsideAgoS, webhooks, takenAgoS } = yard!;
    return {
      processes,
      database: { ...this.watch.databaseSeen, sizeBytes: house!.sizeBytes },
      brokerIsSet: this.broker.isSet,
      redisIsSet: this.live.hearsOthers !== undefined,
      outbox: { waiting, oldestAgoS: known(oldestAgoS) },
      minute: { shiftRunsForS: night.shiftRunsForS, toldAgoS: known(toldAgoS) },
      leftAside: { count: leftAside, agoS: known(leftAsideAgoS) },
      probes: { ...night.probes, gateways: await ask(GATEWAYS) },
      forecast,
      webhook: { isSet: webhooks > 0, waiting: untold!.waiting, oldestAgoS: known(untold!.oldestAgoS), takenAgoS: known(takenAgoS) },
      backup: house!.backupAgoS === null ? undefined : { agoS: house!.backupAgoS },
    };
  }

  /** The shift, and the probes of its fires; without one, all there are. Silent is what misses its readings, not what is doubted. */
  private async nightNow(yardId: YardId, now: EpochS) {
    const em = this.database.manager;
    const [shift, all] = await Promise.all([this.shifts.running(em, yardId, now), this.probes.standings(em, yardId, now)]);
    const burning = (shift?.pits ?? []).filter(({ lightAt }) => lightAt <= now).map(({ pitId }) => pitId);
    const looked = burning.length > 0 ? all.filter(({ pitId }) => burning.includes(pitId)) : all;
    const silent = looked.filter(({ reason }) => reason === 'missing');
    const probes = { of: looked.length, silent: silent.length, silentForS: longest(silent, now), readAgoS: shortest(looked, now), fireBurns: burning.length > 0 };
    return { shiftRunsForS: shift && Math.max(0, now - shift.from), probes };
  }

  private async forecastNow(actor: Actor, now: EpochS): Promise<HouseFacts['forecast']> {
    const { asked, placed, fetchedAt, trouble } = await this.forecasts.view(actor);
    const ago = (at: string | undefined | null) => (at ? now - fromIso(at) : undefined);
    return { isAsked: asked, isPlaced: placed, fetchedAgoS: ago(fetchedAt), failsForS: ago(trouble?.since) };
  }
}

type Last = readonly { readonly lastAt: EpochS }[];
const longest = (all: Last, now: EpochS) => (all.length > 0 ? now - Math.min(...all.map(({ lastAt }) => lastAt)) : undefined);
const shortest = (all: Last, now: EpochS) => (all.length > 0 ? now - Math.max(...all.map(({ lastAt }) => lastAt)) : undefined);

interface HouseRow {
  readonly sizeBytes: number;
  readonly backupAgoS: number | null;
}
interface Untold {
  readonly waiting: number;
  readonly oldestAgoS: number | null;
}
interface YardRow extends Untold {
  readonly toldAgoS: number | null;
  readonly leftAside: number;
  readonly leftAsideAgoS: number | null;
  readonly webhooks: number;
  readonly takenAgoS: number | null;
}
