import { Injectable } from '@nestjs/common';
import { ALARM_LIST, type AlarmStep, byPriority, type Called, nextTold, RATE_TARGETS, ratesOf, standingAfter } from '@stokehold/domain/alarm';
import { type AlarmReport, type AlarmView, type Done, limitName, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, later, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, type Deed, refused } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { AlarmStore } from './alarm.store.js';
import type { KeptAlarm } from './kept-alarm.js';

/** Where no shift runs, the report is of the last twelve hours. */
const WITHOUT_SHIFT_S = 12 * HOUR_S;

const isoOrNull = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));
const toldOf = ({ kind, calledAt, toldTier, told }: KeptAlarm): AlarmView['told'] => {
  if (calledAt === undefined || toldTier === null) return null;
  const next = nextTold(kind, calledAt, toldTier);
  return { tier: toldTier, people: [...told], next: next && { tier: next.tier, at: toIso(next.at) } };
};
const viewOf = (alarm: KeptAlarm): AlarmView => {
  const { id, kind, pitId, cookId, limit, probeId, deviceId, state, raisedAt, returnedAt, acknowledgedBy, shelf, suppressedBy, underId } = alarm;
  const { priority, longestShelfS } = ALARM_LIST[kind];
  return {
    id, kind, priority, pitId, ...(cookId && { cookId }), ...(limit && { limit: limitName.parse(limit) }), ...(probeId && { probeId }), ...(deviceId && { deviceId }),
    state, raisedAt: toIso(raisedAt), returnedAt: isoOrNull(returnedAt), acknowledgedBy, shelf: shelf && { ...shelf, until: toIso(shelf.until) }, suppressedBy, underId,
    told: toldOf(alarm), longestShelfS: longestShelfS ?? null,
  };
};

/** The alarms that stand, what people do to them, and what a night's came to. */
@Injectable()
export class Alarms {
  constructor(
    private readonly commands: Commands,
    private readonly store: AlarmStore,
    private readonly shifts: Shifts,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  /** The most pressing first, of those the oldest. */
  async view(em: EntityManager, yardId: YardId): Promise<AlarmView[]> {
    return [...(await this.store.open(em, yardId))].sort(byPriority).map(viewOf);
  }

  /** Takes note of an alarm; of one that somebody took note of already, nothing changes. Refuses with `alarm-unknown`. */
  acknowledge(actor: Actor, command: RouteInput<Routes['acknowledgeAlarm']>): Promise<Done> {
    return this.commands.run(actor, 'acknowledge-alarm', command, (deed) => this.take(deed, actor, command.alarmId, () => ({ kind: 'acknowledged' })));
  }

  /** Sets an alarm aside for a time. Refuses with `alarm-unknown`, with `alarm-not-shelvable` for what nobody may, and with `shelf-too-long`. */
  shelve(actor: Actor, command: RouteInput<Routes['shelveAlarm']>): Promise<Done> {
    return this.commands.run(actor, 'shelve-alarm', command, (deed) =>
      this.take(deed, actor, command.alarmId, ({ kind }, personId) => {
        const { longestShelfS } = ALARM_LIST[kind];
        if (longestShelfS === undefined) return refused('alarm-not-shelvable', 'This alarm is never set aside. Do what it asks for; it ends when its cause does.');
        if (command.forS > longestShelfS) refused('shelf-too-long', `This alarm is set aside for ${longestShelfS / 60} minutes at most. Choose a shorter time.`, { minutes: longestShelfS / 60 });
        return { kind: 'shelved', shelf: { until: later(deed.now, command.forS), by: personId, way: command.way } };
      }),
    );
  }

  /** Lets a shelved alarm call again; one that is not shelved stays as it is. Refuses with `alarm-unknown`. */
  unshelve(actor: Actor, command: RouteInput<Routes['unshelveAlarm']>): Promise<Done> {
    return this.commands.run(actor, 'unshelve-alarm', command, (deed) => this.take(deed, actor, command.alarmId, () => ({ kind: 'shelf-ended' })));
  }

  /** A night's alarms by person and by alarm: of a shift, or of the one that runs. Refuses with `shift-unknown`. */
  async report({ yardId }: Actor, { shiftId }: RouteInput<Routes['alarmReport']>): Promise<AlarmReport> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const asked = shiftId ? await this.shifts.one(em, yardId, shiftId) : await this.shifts.running(em, yardId, now);
    if (shiftId && !asked) refused('shift-unknown', 'There is no such shift in this yard. Open the night to see which there are.');
    const from = asked?.from ?? later(now, -WITHOUT_SHIFT_S);
    const until = asked && asked.until < now ? asked.until : now;
    const { people, badActors, ...rates } = ratesOf(await this.store.called(em, yardId, from, until), { from, until });
    return { from: toIso(from), until: toIso(until), ...rates, people: [...people], badActors: [...badActors], targets: RATE_TARGETS };
  }

  /** Every call of a stretch of time, in order. */
  called(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<Called[]> {
    return this.store.called(em, yardId, from, until);
  }

  /** One step of a person; a step that changes nothing is none. Everyone who may has a name: a device without one is not let in here. */
  private async take(deed: Deed, actor: Actor, alarmId: string, step: (alarm: KeptAlarm, by: NonNullable<Actor['person']>['id']) => AlarmStep): Promise<Done> {
    const alarm = (await this.store.hold(deed.em, deed.yardId, alarmId)) ?? refused('alarm-unknown', 'This yard has no such alarm. Open the board to see which stand.');
    const by = actor.person?.id ?? refused('not-signed-in', 'Nobody is signed in on this device. Sign in and send it again.');
    const taken = step(alarm, by);
    if (JSON.stringify(standingAfter(alarm, taken)) !== JSON.stringify(standingOf(alarm))) {
      await this.store.step(deed, alarm, taken, by);
      deed.tell({ kind: 'alarm-changed', pitId: alarm.pitId });
    }
    return { done: true };
  }
}

const standingOf = ({ state, shelf, suppressedBy }: KeptAlarm) => ({ state, shelf, suppressedBy });
