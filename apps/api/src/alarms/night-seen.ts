import { Injectable } from '@nestjs/common';
import { ALARM_LIST, comesBack, conditionHolds, type FireNow, lastMeanC, type NightNow, type OpenAlarm, type OutOfBand, outOfBand, together } from '@stokehold/domain/alarm';
import { type EpochS, HOUR_S, later, MINUTE_S } from '@stokehold/domain/quantity';
import { GatewayMessages } from '../gateways/index.js';
import { Fires, type FireStanding } from '../pits/index.js';
import type { Deed } from '../platform/index.js';
import { type ChamberLately, Probes, Readings } from '../readings/index.js';
import { Shifts } from '../shifts/index.js';
import { WeatherNow } from '../weather/index.js';
import { WoodViews } from '../wood/index.js';
import { Yards } from '../yards/index.js';

/** A fire that was lit this long ago is held against its band; before that it is on its way there. Source: our own choice. */
const WARM_UP_S = 90 * MINUTE_S;
/** A gateway that changes its network is back within this. Source: our own choice. */
const SILENT_S = MINUTE_S;
/** A screen is set and a round begun early within this. Source: our own choice. */
const GUSTS_WITHIN_S = HOUR_S;
/** Only these mean that a probe is of no use; the rest is doubted and shown, and passes. */
const FAILS: readonly (string | undefined)[] = ['open', 'short', 'out-of-range', 'stuck', 'missing'];

/** What the alarms look at: the fires, their chambers, the probes, the wood. */
@Injectable()
export class NightSeen {
  constructor(
    private readonly fires: Fires,
    private readonly readings: Readings,
    private readonly probes: Probes,
    private readonly gateways: GatewayMessages,
    private readonly shifts: Shifts,
    private readonly wood: WoodViews,
    private readonly weather: WeatherNow,
    private readonly yards: Yards,
  ) {}

  async firesNow({ em, yardId, now }: Deed): Promise<FireNow[]> {
    const [shift, standing, dues] = await Promise.all([this.shifts.running(em, yardId, now), this.fires.standing(em, yardId, now), this.fires.dues(em, yardId)]);
    return (shift?.pits ?? []).flatMap(({ pitId, lightAt }): FireNow[] => {
      const fire = standing.find((one) => one.pitId === pitId);
      const due = dues.find((one) => one.pitId === pitId);
      return fire ? [{ pitId, lightAt, mode: fire.mode, latestSafeAt: fire.latestSafeAt ?? undefined, dueAt: due?.dueAt, lookedAt: due?.lastLookAt }] : [];
    });
  }

  /** Chambers that are out of their band, of fires that burn and have had the time to get there. */
  async bandsNow({ em, yardId, now }: Deed, open: readonly OpenAlarm[]): Promise<Pick<NightNow, 'bands'>> {
    const [shift, chambers, fires] = await Promise.all([this.shifts.running(em, yardId, now), this.readings.chambers(em, yardId, now), this.fires.standing(em, yardId, now)]);
    const warm = (shift?.pits ?? []).filter(({ lightAt }) => later(lightAt, WARM_UP_S) <= now);
    const bands = warm.flatMap(({ pitId, band }) => {
      const chamber = chambers.find((one) => one.pitId === pitId);
      const fire = fires.find((one) => one.pitId === pitId);
      return chamber ? bandOf({ now, chamber, fire, band, stands: bandAlarm(open, pitId) }) : [];
    });
    return { bands };
  }

  /** Probes of burning pits that are of no use. */
  async probesNow({ em, yardId, now }: Deed): Promise<Pick<NightNow, 'probes'>> {
    const [shift, standings] = await Promise.all([this.shifts.running(em, yardId, now), this.probes.standings(em, yardId, now)]);
    const burning = (shift?.pits ?? []).filter(({ lightAt }) => lightAt <= now).map(({ pitId }) => pitId);
    const failed = standings.filter(({ pitId, quality, reason }) => quality === 'bad' && FAILS.includes(reason) && burning.includes(pitId));
    return { probes: failed.map(({ id, pitId }) => ({ probeId: id, pitId })) };
  }

  /** Gateways that the broker calls silent, while any fire burns. */
  async gatewaysNow({ em, yardId, now }: Deed): Promise<Pick<NightNow, 'gateways'>> {
    const shift = await this.shifts.running(em, yardId, now);
    const burns = (shift?.pits ?? []).some(({ lightAt }) => lightAt <= now);
    return { gateways: burns ? await this.gateways.silent(em, yardId, later(now, -SILENT_S)) : [] };
  }

  /** Burning pits onto which strong gusts are forecast within the hour. */
  async gustsNow({ em, yardId, now }: Deed): Promise<Pick<NightNow, 'gusts'>> {
    const [shift, pits] = await Promise.all([this.shifts.running(em, yardId, now), this.yards.pits(em, yardId)]);
    const burning = pits.filter(({ id }) => shift?.pits.some(({ pitId, lightAt }) => pitId === id && lightAt <= now));
    const gusts = await this.weather.gustsAhead(em, yardId, { now, withinS: GUSTS_WITHIN_S, pits: burning });
    return { gusts: gusts.map(({ pitId }) => pitId) };
  }

  async woodNow({ em, yardId, now }: Deed): Promise<Pick<NightNow, 'wood'>> {
    return { wood: await this.wood.view(em, yardId, now, await this.fires.burnRates(em, yardId, now)) };
  }
}

/** A chamber against its band, by its believed probes and, where one is missing or time is to tell, by what is believed of its fire. */
function bandOf({ now, chamber, fire, band, stands }: {
  readonly now: EpochS; readonly chamber: ChamberLately; readonly fire: FireStanding | undefined; readonly band: { readonly lowC: number; readonly highC: number }; readonly stands: OpenAlarm | undefined;
}): NonNullable<NightNow['bands']>[number][] {
  const overK = fire?.zoneOverK ?? [];
  const samples = together(chamber.probes.map((probe) => ({ samples: probe.samples, overK: overK[Math.min(probe.zone, overK.length - 1)] ?? 0 })));
  const side = outOfBand({ now, samples, noiseK: chamber.noiseK, ...band, was: stands?.kind as OutOfBand | undefined });
  if (!side) return [];
  const then = later(now, ALARM_LIST[side].timeToActS);
  const thenC = fire?.ahead.tempC[Math.round((then - fire.ahead.from) / fire.ahead.stepS)];
  const was = stands?.kind === side && stands.suppressedBy === 'comes-back';
  return [{ pitId: chamber.pitId, side, comesBack: comesBack({ side, nowC: lastMeanC(samples), thenC, ...band, was }) }];
}

function bandAlarm(open: readonly OpenAlarm[], pitId: OpenAlarm['pitId']): OpenAlarm | undefined {
  return open.find((alarm) => (alarm.kind === 'above-band' || alarm.kind === 'below-band') && alarm.pitId === pitId && conditionHolds(alarm.state));
}
