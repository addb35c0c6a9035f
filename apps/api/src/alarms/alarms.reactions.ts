import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import { fromIso, MINUTE_S } from '@stokehold/domain/quantity';
import { alarmSteps, type NightNow, type OpenAlarm } from '@stokehold/domain/shift';
import { Fires } from '../pits/index.js';
import type { Deed } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { WoodViews } from '../wood/index.js';
import { AlarmStore } from './alarm.store.js';

/** Wood runs short over hours: it is counted at every fifth minute. */
const COUNT_WOOD_EVERY_MINUTES = 5;

/** Holds the alarms against the night: each minute, and at once when a check changed what is believed of a fire. */
@Injectable()
export class AlarmsReactions {
  constructor(
    private readonly store: AlarmStore,
    private readonly fires: Fires,
    private readonly shifts: Shifts,
    private readonly wood: WoodViews,
  ) {}

  onMinute(_: EventOf<'minute-passed'>, deed: Deed): Promise<void> {
    return this.look(deed, Math.floor(deed.now / MINUTE_S) % COUNT_WOOD_EVERY_MINUTES === 0);
  }

  async onFireEstimated({ because }: EventOf<'fire-estimated'>, deed: Deed): Promise<void> {
    if (because === 'check') await this.look(deed, false);
  }

  private async look(deed: Deed, countWood: boolean): Promise<void> {
    const open = await this.store.open(deed.em, deed.yardId);
    const { began, steps } = alarmSteps(await this.nightNow(deed, countWood), open);
    for (const condition of began) await this.store.raise(deed, condition);
    for (const { alarm, step } of steps) await this.store.step(deed, alarm, step);
    const pits = new Set([...began, ...steps.map(({ alarm }): OpenAlarm => alarm)].map(({ pitId }) => pitId));
    for (const pitId of pits) deed.tell({ kind: 'alarm-changed', pitId });
  }

  private async nightNow({ em, yardId, now }: Deed, countWood: boolean): Promise<NightNow> {
    const shift = await this.shifts.running(em, yardId, now);
    const standing = await this.fires.standing(em, yardId, now);
    const fires = (shift?.pits ?? []).flatMap(({ pitId, lightAt }) => {
      const fire = standing.find((one) => one.pitId === pitId);
      return fire ? [{ pitId, lightAt, mode: fire.mode, latestSafeAt: fire.latestSafeAt === null ? undefined : fromIso(fire.latestSafeAt) }] : [];
    });
    if (!countWood) return { now, fires };
    return { now, fires, wood: await this.wood.view(em, yardId, now, new Map(standing.map(({ pitId, dryKgPerS }) => [pitId, dryKgPerS]))) };
  }
}
