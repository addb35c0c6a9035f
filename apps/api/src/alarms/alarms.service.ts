import { Injectable } from '@nestjs/common';
import type { AlarmView, Done, RouteInput, Routes } from '@stokehold/domain/contract';
import { type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { ALARM_KINDS, ALARM_PRIORITIES, alarmAfter } from '@stokehold/domain/shift';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, refused } from '../platform/index.js';
import { AlarmStore, type KeptAlarm } from './alarm.store.js';

const rank = ({ kind }: KeptAlarm) => ALARM_PRIORITIES.indexOf(ALARM_KINDS[kind].priority);
const isoOrNull = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

/** The alarms that stand, and taking note of them. */
@Injectable()
export class Alarms {
  constructor(
    private readonly commands: Commands,
    private readonly store: AlarmStore,
  ) {}

  /** The most pressing first, of those the oldest. */
  async view(em: EntityManager, yardId: YardId): Promise<AlarmView[]> {
    const open = await this.store.open(em, yardId);
    return open
      .sort((a, b) => rank(a) - rank(b) || a.raisedAt - b.raisedAt)
      .map(({ id, kind, pitId, state, raisedAt, returnedAt, acknowledgedBy }) => ({
        id, kind, pitId, state, raisedAt: toIso(raisedAt), returnedAt: isoOrNull(returnedAt), acknowledgedBy,
      }));
  }

  /** Takes note of an alarm; of one that somebody took note of already, nothing changes. Refuses with `alarm-unknown`. */
  acknowledge(actor: Actor, command: RouteInput<Routes['acknowledgeAlarm']>): Promise<Done> {
    return this.commands.run(actor, 'acknowledge-alarm', command, async (deed) => {
      const alarm =
        (await this.store.hold(deed.em, deed.yardId, command.alarmId)) ?? refused('alarm-unknown', 'This yard has no such alarm. Open the board to see which stand.');
      if (alarmAfter(alarm.state, 'acknowledged') !== alarm.state) {
        await this.store.step(deed, alarm, 'acknowledged', actor.person?.id ?? null);
        deed.tell({ kind: 'alarm-changed', pitId: alarm.pitId });
      }
      return { done: true };
    });
  }
}
