import { Injectable } from '@nestjs/common';
import { alarmSteps, type NightNow } from '@stokehold/domain/alarm';
import type { EventOf } from '@stokehold/domain/contract';
import { MINUTE_S, type PitId } from '@stokehold/domain/quantity';
import type { Deed } from '../platform/index.js';
import { AlarmStore } from './alarm.store.js';
import { Calling } from './calling.js';
import type { KeptAlarm } from './kept-alarm.js';
import { NightSeen } from './night-seen.js';

/** Wood runs short over hours: it is counted at every fifth minute. */
const COUNT_WOOD_EVERY_MINUTES = 5;

/** Holds the alarms against the night: each minute, and at once when a check changed what is believed of a fire. */
@Injectable()
export class AlarmsReactions {
  constructor(
    private readonly store: AlarmStore,
    private readonly calling: Calling,
    private readonly night: NightSeen,
  ) {}

  async onMinute(_: EventOf<'minute-passed'>, deed: Deed): Promise<void> {
    const countsWood = Math.floor(deed.now / MINUTE_S) % COUNT_WOOD_EVERY_MINUTES === 0;
    const open = await this.store.open(deed.em, deed.yardId);
    const seen = await Promise.all([this.night.bandsNow(deed, open), this.night.probesNow(deed), this.night.gatewaysNow(deed), this.night.gustsNow(deed), countsWood ? this.night.woodNow(deed) : {}]);
    await this.look(deed, Object.assign({}, ...seen) as Partial<NightNow>);
  }

  async onFireEstimated({ because }: EventOf<'fire-estimated'>, deed: Deed): Promise<void> {
    if (because === 'check') await this.look(deed);
  }

  /** Asked for every batch of readings: where nothing runs away and no probe turned bad or good again, nothing is done. */
  async onReadings({ runningAway = [], probesTurned }: EventOf<'readings-recorded'>, deed: Deed): Promise<void> {
    if (runningAway.length > 0 || probesTurned) await this.look(deed, { runningAway, ...(probesTurned && (await this.night.probesNow(deed))) });
  }

  /** Limits of food, whenever all cooks were held against them. */
  onFoodJudged({ limits }: EventOf<'food-judged'>, deed: Deed): Promise<void> {
    return this.look(deed, { food: limits });
  }

  /** Somebody acknowledged, shelved or let an alarm call again: who is called follows at once. */
  async onAlarmChanged(_: EventOf<'alarm-changed'>, deed: Deed): Promise<void> {
    await this.calling.call(deed);
  }

  private async look(deed: Deed, seen: Omit<NightNow, 'now' | 'fires'> = {}): Promise<void> {
    const [open, fires] = await Promise.all([this.store.open(deed.em, deed.yardId), this.night.firesNow(deed)]);
    const { began, steps } = alarmSteps({ now: deed.now, fires, ...seen }, open);
    const stands = new Map<string, KeptAlarm>(open.map((alarm) => [alarm.id, alarm]));
    for (const one of began) await this.store.raise(deed, one);
    for (const { alarm, step } of steps) stands.set(alarm.id, await this.store.step(deed, stands.get(alarm.id)!, step));
    const changed = new Set<PitId | null>([...began.map(({ condition }) => condition.pitId), ...steps.map(({ alarm }) => alarm.pitId), ...(await this.calling.call(deed))]);
    for (const pitId of changed) deed.tell({ kind: 'alarm-changed', pitId });
  }
}
