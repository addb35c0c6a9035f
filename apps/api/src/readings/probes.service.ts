import { Injectable } from '@nestjs/common';
import type { Done, ProbesView, RouteInput, Routes } from '@stokehold/domain/contract';
import { type EpochS, epochS, type PersonId, type PitId, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type Comparison, type ProbeStanding, type ProbeUse, shownTempC, standingOf, type SampleReason } from '@stokehold/domain/reading';
import { endTempsOf } from '@stokehold/domain/chamber';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, Ids, refused, Remembered } from '../platform/index.js';
import { WeatherNow } from '../weather/index.js';
import { AsideStore } from './aside.store.js';
import { QUALITIES } from './judging.js';
import { ProbeCalibrationRow } from './probe.rows.js';
import { rawOf } from './sent.js';

/** A probe of the yard with what is known of it. */
interface KnownProbe {
  readonly id: ProbeId;
  readonly pitId: PitId;
  readonly name: string;
  readonly zone: number;
  readonly zones: number;
  readonly tempC: number | null;
  readonly lastS: number | null;
  readonly quality: number | null;
  readonly reason: SampleReason | null;
  readonly paceS: number | null;
  readonly calibration: { readonly fromS: number; readonly by: PersonId | null; readonly against: Comparison[]; readonly note: string | null } | null;
}
/** A probe with how it stands now. */
export interface ProbeNowStanding extends ProbeStanding {
  readonly pitId: PitId;
}

const USE: ProbeUse = 'chamber';

/** The probes themselves: how each stands, what corrects it, and names that nobody has set up. */
@Injectable()
export class Probes {
  /** What corrects a probe is in it too, and nothing of that is used here: a calibration is no fact. */
  private readonly remembered = new Remembered<KnownProbe[]>(['readings-recorded', 'pit-set-up']);

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
    private readonly ids: Ids,
    private readonly aside: AsideStore,
    private readonly weather: WeatherNow,
  ) {}

  async view({ yardId }: Actor): Promise<ProbesView> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const [probes, sources] = await Promise.all([this.known(em, yardId), this.aside.sources(em, yardId)]);
    const standings = new Map((await this.standingsOf(em, yardId, now, probes)).map((standing) => [standing.id, standing]));
    return {
      probes: probes.map(({ id, pitId, name, zone, tempC, lastS, calibration }) => ({
        id, pitId, name, zone, tempC, lastAt: lastS === null ? null : toIso(epochS(lastS)), quality: standings.get(id)?.quality ?? null, reason: standings.get(id)?.reason ?? null,
        calibration: calibration && { from: toIso(epochS(calibration.fromS)), by: calibration.by, against: calibration.against, note: calibration.note },
      })),
      aside: sources.map(({ firstAt, lastAt, last, ...source }) => {
        const shown = shownTempC(rawOf(last));
        return { ...source, firstAt: toIso(firstAt), lastAt: toIso(lastAt), lastTempC: shown.ok ? shown.value : null };
      }),
    };
  }

  /** How the probes of the yard stand; one that never showed anything is absent. */
  async standings(em: EntityManager, yardId: YardId, now: EpochS): Promise<ProbeNowStanding[]> {
    return this.standingsOf(em, yardId, now, await this.remembered.once(em, yardId, () => this.known(em, yardId)));
  }

  /** Keeps what a probe showed beside the truth; it corrects what is read from now on. Refuses with `probe-unknown`. */
  calibrate(actor: Actor, command: RouteInput<Routes['calibrateProbe']>): Promise<Done> {
    return this.commands.run(actor, 'calibrate-probe', command, async (deed) => {
      const { probeId, against, note } = command;
      if (!(await this.known(deed.em, deed.yardId)).some(({ id }) => id === probeId)) refused('probe-unknown', 'This yard has no such probe. Open Setup to see which there are.');
      await deed.em.insert(ProbeCalibrationRow, {
        id: this.ids.next(), probeId, fromAt: new Date(deed.now * 1000), against: [...against], note: note ?? null, crewMemberId: actor.person?.id ?? null,
      });
      return { done: true };
    });
  }

  private async standingsOf(em: EntityManager, yardId: YardId, now: EpochS, probes: readonly KnownProbe[]): Promise<ProbeNowStanding[]> {
    const { ambientTempC } = await this.weather.at(em, yardId, now);
    return [...new Set(probes.map(({ pitId }) => pitId))].flatMap((pitId) => {
      const own = probes.filter((probe) => probe.pitId === pitId && probe.lastS !== null);
      return standingOf({ now, ambientTempC, probes: own.map(probeNow) }).map((standing) => ({ ...standing, pitId }));
    });
  }

  private async known(em: EntityManager, yardId: YardId): Promise<KnownProbe[]> {
    return (await em.query(
      `select probe.id, pit_id as "pitId", name, zone_nth as zone, (select count(*)::int from zone where zone.pit_id = probe.pit_id) as zones,
         temp_c as "tempC", extract(epoch from last_at)::float8 as "lastS", quality::int as quality, reason, pace_s as "paceS",
         (select json_build_object('fromS', extract(epoch from from_at), 'by', crew_member_id, 'against', against, 'note', note)
          from probe_calibration where probe_calibration.probe_id = probe.id order by from_at desc limit 1) as calibration
       from probe left join probe_signal on probe_signal.probe_id = probe.id where yard_id = $1 and not removed order by pit_id, zone_nth, name, probe.id`,
      [yardId],
    )) as KnownProbe[];
  }
}

function probeNow({ id, zone, zones, tempC, lastS, quality, reason, paceS }: KnownProbe) {
  const ends = endTempsOf([{ zone, tempC: 0 }], Math.max(1, zones));
  const isFireEnd = ends.fireEndTempC !== undefined && ends.stackEndTempC === undefined;
  const isStackEnd = ends.stackEndTempC !== undefined && ends.fireEndTempC === undefined;
  return {
    id, use: USE, end: isFireEnd ? ('fire-end' as const) : isStackEnd ? ('stack-end' as const) : undefined, tempC: tempC ?? undefined,
    last: { at: epochS(lastS ?? 0), quality: QUALITIES[quality ?? 0]!, reason: reason ?? undefined }, paceS: paceS ?? 0,
  };
}
