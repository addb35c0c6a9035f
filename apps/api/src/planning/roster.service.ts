import { Injectable } from '@nestjs/common';
import type { CookView, RosterView, RouteInput, Routes, ServiceSettings, Skill } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, MINUTE_S, toIso, type YardId } from '@stokehold/domain/quantity';
import type { RunningShift } from '@stokehold/domain/shift';
import { type NeedHour, type NightFacts, problemOfNight, rosterNeed, usualTasks } from '@stokehold/scheduling/night';
import { DataSource } from 'typeorm';
import { Food } from '../food/index.js';
import { type Actor, Clock, refused } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { Yards } from '../yards/index.js';

/** From lighting until food can go on: the bed, then the steel. Source: common practice, no source. */
const FIT_S = 105 * MINUTE_S;

/** How many people a night that is to come needs at which hours. */
@Injectable()
export class Roster {
  constructor(
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
    private readonly yards: Yards,
    private readonly food: Food,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  async view({ yardId }: Actor, { shiftId }: RouteInput<Routes['roster']>): Promise<RosterView> {
    const shift = await this.shifts.one(this.database.manager, yardId, shiftId);
    if (!shift) return refused('shift-unknown', 'There is no such shift in this yard. Choose one of those to come.');
    const now = this.clock.now(yardId);
    const { facts, cooks } = await this.facts(yardId, shift, now);
    const services = await this.food.services(this.database.manager, yardId, now);
    const supposed = usualTasks(cooks.map((cook) => toCome(cook, services)), { shiftId, from: facts.now, until: shift.until, foodOnAt: foodOnAt(shift), tasks: facts.tasks });
    const hours = rosterNeed(problemOfNight({ ...facts, tasks: [...facts.tasks, ...supposed] }));
    return {
      shift: this.shifts.shown(shift, now),
      hours: hours.map(hourView),
      supposed: supposed.map(({ id, kind, dueAt }) => ({ kind, cut: cooks.find((cook) => id.endsWith(cook.id))?.cut ?? '', at: toIso(dueAt) })),
    };
  }

  /** The night from its beginning; of its fires nothing is known but when they are lit. */
  private async facts(yardId: YardId, shift: RunningShift, now: EpochS): Promise<{ facts: NightFacts; cooks: readonly CookView[] }> {
    const em = this.database.manager;
    const { woodPlace, walkSpeedMPerS } = await this.yards.settings(em, yardId);
    const from = now > shift.from ? later(shift.from, Math.floor((now - shift.from) / HOUR_S) * HOUR_S) : shift.from;
    return {
      facts: {
        now: from, shift, woodPlace, walkSpeedMPerS, fires: [], looks: [], shown: [],
        pits: (await this.yards.pits(em, yardId)).map(({ id, xM, yM }) => ({ id, xM, yM })),
        tasks: await this.tasks.ofNight(em, yardId, now, now),
      },
      cooks: (await this.food.cooks(em, yardId, now)).filter(({ offAt }) => offAt === null),
    };
  }
}

const foodOnAt = ({ pits, from }: RunningShift): EpochS => later(pits.reduce((last, { lightAt }) => (lightAt > last ? lightAt : last), from), FIT_S);

const instantOrNull = (iso: string | null | undefined): EpochS | null => (iso == null ? null : fromIso(iso));
const toCome = ({ id, pieces, onAt, comesOffAt, serviceId }: CookView, services: readonly ServiceSettings[]) => ({
  id, pieces, onAt: instantOrNull(onAt), comesOffAt: instantOrNull(comesOffAt), readyBy: instantOrNull(services.find((service) => service.id === serviceId)?.readyBy),
});

const hourView = ({ fromAt, untilAt, bySkill, ...hour }: NeedHour): RosterView['hours'][number] => ({
  ...hour, fromAt: toIso(fromAt), untilAt: toIso(untilAt), bySkill: bySkill.map(({ skill, ...need }) => ({ ...need, skill: skill as Skill })),
});
