import { Injectable } from '@nestjs/common';
import { type CorrectRecord, type Done, MOST_RECORD_DAYS, type RecordsView, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { fromIso, HOUR_S, later, toIso, type YardId } from '@stokehold/domain/quantity';
import { absences, type KeptPerson, paidS, workedS } from '@stokehold/domain/shift';
import { DataSource, type EntityManager } from 'typeorm';
import { HeldAgainst } from '../cooking/index.js';
import { type Actor, Clock, Commands, Ids, refused } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { RecordsStore, type Stretch } from './records.store.js';

const DAY_S = 24 * HOUR_S;
/** So many lines of one log are handed out at once: a month of twelve pits is about 9000 checks. */
const MOST_LINES = 20_000;
/** How far back nights are listed, and ahead: a night that is about to begin has its light-up on record. */
const NIGHTS_BACK_S = 62 * DAY_S;

const iso = ({ from, until }: Stretch) => ({ from: toIso(from), until: toIso(until) });

/** What was kept of a stretch of time, and what is written beside a line that was wrong. */
@Injectable()
export class Records {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
    private readonly ids: Ids,
    private readonly store: RecordsStore,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
    private readonly held: HeldAgainst,
  ) {}

  nights({ yardId }: Actor): Promise<{ startsAt: string; endsAt: string }[]> {
    const now = this.clock.now(yardId);
    return this.store.nights(this.database.manager, yardId, { from: later(now, -NIGHTS_BACK_S), until: later(now, DAY_S) });
  }

  /** All of it as it stood at one instant. */
  view({ yardId }: Actor, asked: RouteInput<Routes['records']>): Promise<RecordsView> {
    const stretch = { from: fromIso(asked.from), until: fromIso(asked.until) };
    if (stretch.until <= stretch.from) refused('times-out-of-order', 'The records end before they begin. Choose a later end.');
    if (stretch.until - stretch.from > MOST_RECORD_DAYS * DAY_S) tooLong();
    return this.database.transaction('REPEATABLE READ', (em) => this.gathered(em, yardId, stretch));
  }

  correct(actor: Actor, command: CorrectRecord): Promise<Done> {
    return this.commands.run(actor, 'correct-record', command, async (deed) => {
      if (!(await this.store.hasLine(deed.em, deed.yardId, command.log, command.line))) refused('line-unknown', 'This line is not in the record of this yard. Open the page again and choose it there.');
      await this.store.correct(deed.em, { id: this.ids.next(), actor, now: deed.now, said: command });
      return { done: true };
    });
  }

  private async gathered(em: EntityManager, yardId: YardId, stretch: Stretch): Promise<RecordsView> {
    const { name, timeZone, units, practice } = await this.yards.settings(em, yardId);
    const now = this.clock.now(yardId);
    const log = async <T>(lines: Promise<readonly T[]>): Promise<T[]> => [...within(await lines)];
    const fire = await log(this.store.lines(em, yardId, 'fire', stretch, MOST_LINES + 1));
    const food = await log(this.store.lines(em, yardId, 'food', stretch, MOST_LINES + 1));
    const wood = await log(this.store.lines(em, yardId, 'wood', stretch, MOST_LINES + 1));
    const alarms = await log(this.store.lines(em, yardId, 'alarms', stretch, MOST_LINES + 1));
    const handovers = await log(this.store.handovers(em, yardId, stretch, MOST_LINES + 1));
    const hours = await this.hours(em, yardId, stretch);
    const lines = [...fire, ...food, ...wood, ...alarms, ...handovers, ...hours].map(({ id }) => id);
    return {
      yard: { name, timeZone, units, practice }, ...iso(stretch), madeAt: toIso(now), head: await this.store.head(em, yardId), fire, food, wood, alarms, handovers, hours,
      held: await this.held.of(em, yardId, now, [...new Set(food.map(({ cookId }) => cookId))]),
      corrections: await log(this.store.corrections(em, yardId, stretch, lines, MOST_LINES + 1)),
      trail: await log(this.store.lines(em, yardId, 'trail', stretch, MOST_LINES + 1)),
    };
  }

  /** Everybody's hours on the shifts that began in the stretch. */
  private async hours(em: EntityManager, yardId: YardId, stretch: Stretch): Promise<RecordsView['hours']> {
    const shifts = await this.shifts.between(em, yardId, stretch.from, stretch.until);
    const begun = shifts.filter(({ from }) => from >= stretch.from && from < stretch.until);
    return begun.flatMap(({ id, people }) => people.map((person) => hoursLine(`${id}/${person.id}`, person)));
  }
}

function hoursLine(id: string, person: KeptPerson & { readonly name: string }): RecordsView['hours'][number] {
  const { name, startsAt, endsAt, breaks } = person;
  const taken = breaks.flatMap(({ beganAt, endedAt, lengthS }) => (beganAt === undefined ? [] : [iso({ from: beganAt, until: endedAt ?? later(beganAt, lengthS) })]));
  return {
    id, person: name, startsAt: toIso(startsAt), endsAt: toIso(endsAt), away: absences(person).map(iso), breaks: taken,
    workedS: workedS(person, startsAt, endsAt), paidS: paidS(person, startsAt, endsAt),
  };
}

const within = <T>(lines: readonly T[]): readonly T[] => (lines.length > MOST_LINES ? tooLong() : lines);
const tooLong = (): never => refused('range-too-long', `This is more than can be handed out at once. Take a shorter stretch, at most ${MOST_RECORD_DAYS} days.`, { days: MOST_RECORD_DAYS });
