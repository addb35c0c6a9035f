import { Injectable } from '@nestjs/common';
import type { Done, PlanShift, ReportBreak, ReportPresence, ShiftView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, type PersonId, type ShiftId, type YardId } from '@stokehold/domain/quantity';
import {
  breakReported, changed, type KeptPerson, type KeptShift, LEAD_S, paidS, plannable, type PlannedShift, reported, runningOf, type RunningShift,
} from '@stokehold/domain/shift';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, type Deed, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { shiftRefused } from './shift.refusals.js';
import { ShiftStore } from './shift.store.js';
import { type BreakTimes, plannedOf, shiftView } from './shift.view.js';
import { Tasks } from './tasks.service.js';

/** How long before their shift somebody may say that they will be late or not come. */
const HEARD_BEFORE_S = 24 * HOUR_S;
/** How far ahead shifts are shown. */
const COMING_S = 14 * 24 * HOUR_S;

/** The nights: who works when, which pits burn, who is there. */
@Injectable()
export class Shifts {
  constructor(
    private readonly commands: Commands,
    private readonly store: ShiftStore,
    private readonly tasks: Tasks,
    private readonly yards: Yards,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  plan(actor: Actor, command: PlanShift): Promise<Done> {
    return this.commands.run(actor, 'plan-shift', command, async (deed) => {
      await this.store.hold(deed.em, deed.yardId);
      const before = await this.before(deed, command);
      const shift = await this.wanted(deed, plannedOf(command), before);
      await this.store.save(deed.em, deed.yardId, shift);
      await this.tasks.lightUp(deed, shift);
      deed.tell({ kind: 'shift-planned', shiftId: shift.id });
      return { done: true };
    });
  }

  reportPresence(actor: Actor, command: ReportPresence): Promise<Done> {
    return this.commands.run(actor, 'report-presence', command, async (deed) => {
      const { personId, state, until } = command;
      await this.store.hold(deed.em, deed.yardId);
      const { shift, person } = await this.onShift(deed, personId);
      const after = reported(person, { state, at: deed.now, ...(until !== undefined && { until: fromIso(until) }) });
      await this.store.savePerson(deed.em, shift.id, after);
      deed.tell({ kind: 'presence-reported', personId });
      return { done: true };
    });
  }

  reportBreak(actor: Actor, command: ReportBreak): Promise<Done> {
    return this.commands.run(actor, 'report-break', command, async (deed) => {
      await this.store.hold(deed.em, deed.yardId);
      const { shift, person } = await this.withBreak(deed, command.breakId);
      const breaks = person.breaks.map((rest) => (rest.id === command.breakId ? breakReported(rest, command.state, deed.now) : rest));
      await this.store.savePerson(deed.em, shift.id, { ...person, breaks });
      deed.tell({ kind: 'break-reported', personId: person.id });
      return { done: true };
    });
  }

  /** The shift that runs now; the next one counts from three hours before its start. */
  async running(em: EntityManager, yardId: YardId, now: EpochS): Promise<RunningShift | undefined> {
    return runningOf(await this.store.between(em, yardId, now, now), now);
  }

  /** A shift as the screens show it. */
  shown(shift: RunningShift, now: EpochS): ShiftView {
    return shiftView(shift, now, new Map());
  }

  /** The shift with this id, of this yard. */
  async one(em: EntityManager, yardId: YardId, id: ShiftId): Promise<RunningShift | undefined> {
    const known = await this.store.one(em, id);
    return known?.yardId === yardId ? known.shift : undefined;
  }

  /** The shift that runs and those of the next two weeks, as the screens show them. */
  async coming({ yardId }: Actor): Promise<ShiftView[]> {
    const now = this.clock.now(yardId);
    const shifts = await this.store.between(this.database.manager, yardId, now, later(now, COMING_S));
    return shifts.filter(({ until }) => until > now).map((shift) => this.shown(shift, now));
  }

  /** The shifts that meet a stretch of time, from first to last. */
  between(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<RunningShift[]> {
    return this.store.between(em, yardId, from, until);
  }

  /** The running shift as the screens show it; the plan says when each break should begin. */
  async view(em: EntityManager, yardId: YardId, now: EpochS, planned: BreakTimes = new Map()): Promise<ShiftView | null> {
    const shift = await this.running(em, yardId, now);
    return shift ? shiftView(shift, now, planned) : null;
  }

  /** Paid time of everybody who was on a shift between two instants, by person. */
  async paid(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<readonly { readonly personId: PersonId; readonly paidS: number }[]> {
    const times = new Map<PersonId, number>();
    for (const { people } of await this.store.between(em, yardId, from, until)) {
      for (const person of people) times.set(person.id, (times.get(person.id) ?? 0) + paidS(person, from, until));
    }
    return [...times].map(([personId, paid]) => ({ personId, paidS: paid })).sort((one, other) => (one.personId < other.personId ? -1 : 1));
  }

  private async before(deed: Deed, { id }: PlanShift): Promise<KeptShift | undefined> {
    const known = await this.store.one(deed.em, id);
    if (known && known.yardId !== deed.yardId) refused('shift-unknown', 'This shift is not of this yard. Plan a new one.');
    if (known && known.shift.until <= deed.now) shiftRefused({ code: 'shift-has-ended' });
    return known?.shift;
  }

  private async wanted(deed: Deed, planned: PlannedShift, before: KeptShift | undefined): Promise<KeptShift> {
    const others = planned.until > planned.from ? await this.store.between(deed.em, deed.yardId, later(planned.from, -LEAD_S), later(planned.until, LEAD_S)) : [];
    const result = plannable(planned, others, deed.now);
    if (!result.ok) return shiftRefused(result.refusal);
    const crew = await this.yards.crew(deed.em, deed.yardId);
    const isKnown = ({ id }: { id: PersonId }) => crew.some((one) => one.id === id && (!one.left || before?.people.some((person) => person.id === id)));
    if (!planned.people.every(isKnown)) refused('person-unknown', 'Somebody on this shift is not of this crew. Choose people from the crew list.');
    const pits = await this.yards.pits(deed.em, deed.yardId);
    const stands = (pitId: string) => pits.some((pit) => pit.id === pitId && (!pit.retired || before?.pits.some((one) => one.pitId === pitId)));
    if (!planned.pits.every(({ pitId }) => stands(pitId))) refused('pit-unknown', 'A pit of this shift does not stand in this yard or is no longer used. Choose from the yard plan.');
    const shift = changed(before, planned);
    if (await this.store.isBreakTaken(deed.em, shift)) refused('id-taken', 'A break has the id of a break on another shift. Give each new break an id of its own.');
    return shift;
  }

  private async onShift(deed: Deed, personId: PersonId): Promise<{ shift: KeptShift; person: KeptPerson }> {
    const near = await this.store.between(deed.em, deed.yardId, deed.now, later(deed.now, HEARD_BEFORE_S));
    for (const shift of near) {
      const person = shift.people.find(({ id, endsAt }) => id === personId && endsAt > deed.now);
      if (person) return { shift, person };
    }
    return refused('person-not-on-shift', 'This person is on no shift now or within a day. Put them on the shift first.');
  }

  private async withBreak(deed: Deed, breakId: string): Promise<{ shift: KeptShift; person: KeptPerson }> {
    for (const shift of await this.store.between(deed.em, deed.yardId, deed.now, later(deed.now, HEARD_BEFORE_S))) {
      const person = shift.people.find(({ breaks }) => breaks.some(({ id }) => id === breakId));
      if (person && runningOf([shift], deed.now)) return { shift, person };
      if (person) return refused('person-not-on-shift', 'The shift of this break does not run now.');
    }
    return refused('break-unknown', 'There is no such break on the shift. Open the night to see who breaks when.');
  }
}
