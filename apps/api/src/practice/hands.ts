import type { Assignment, PlanView, TaskView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, later, MINUTE_S, type PersonId, type PitId, type RandomStream } from '@stokehold/domain/quantity';
import type { Actor } from '../platform/index.js';

/** Somebody of the practice crew: where they stand, what they are on, what the night has asked of them. */
export interface Hand {
  readonly actor: Actor;
  readonly id: PersonId;
  readonly name: string;
  readonly comesAt: EpochS;
  readonly goesAt: EpochS;
  /** A pit, or the wood place. */
  place: Place;
  busyUntil: EpochS;
  errand: Errand | undefined;
  workedS: number;
  walkedS: number;
  readonly breaksBegun: Set<string>;
  restsUntil: EpochS;
  /** What calls this person, and since when they hear it. */
  hears: ReadonlyMap<string, EpochS>;
  /** The practice moves this hand right now: what comes in under its name is its own. */
  acting: boolean;
  /** Somebody at a real device has taken this person's part. */
  playedByHand: boolean;
}
export type Place = PitId | 'wood';
interface Errand {
  readonly assignment: Assignment;
  readonly arrivesAt: EpochS;
}

/** An alarm that calls somebody, or one that is over and that nobody took note of. */
export interface Call {
  readonly alarmId: string;
  readonly people: readonly PersonId[];
  readonly presses: boolean;
  readonly isOver: boolean;
}

/** What a hand can do once it has arrived; each says how long it takes. */
export interface Doings {
  check(hand: Hand, pitId: PitId, now: EpochS): Promise<number>;
  task(hand: Hand, task: TaskView, now: EpochS): Promise<number>;
  break(hand: Hand, breakId: string, now: EpochS): Promise<number>;
  /** Takes note of an alarm on the phone. */
  takeNote(hand: Hand, alarmId: string): Promise<void>;
}
/** What a hand knows of the night: the plan on the wall, the tasks, and how far it is. */
export interface NightSeen {
  plan(): Promise<PlanView | null>;
  tasks(): Promise<readonly TaskView[]>;
  calls(): Promise<readonly Call[]>;
  /** Whether somebody reported that this person is away, or comes later. */
  isAway(personId: PersonId, now: EpochS): Promise<boolean>;
  walkS(from: Place, to: Place): number;
}

/** So long after the phone rings it is in a free hand; after this, whatever the hands held is put down; what is over waits. Common practice, no source. */
const REACH_S = MINUTE_S;
const PUT_DOWN_S = 3 * MINUTE_S;
const OVER_WAITS_S = 10 * MINUTE_S;

/** A crew that follows the plan: each goes when it is time to go, does what there is to do, takes note of what calls, and looks at the wall again. */
export class PracticeCrew {
  constructor(
    readonly hands: readonly Hand[],
    private readonly doings: Doings,
    private readonly night: NightSeen,
    private readonly random: RandomStream,
  ) {}

  /** One minute of everybody's night. */
  async minute(now: EpochS): Promise<void> {
    for (const hand of this.hands) {
      if (hand.playedByHand || now < hand.comesAt) continue;
      if (now >= hand.goesAt || (await this.night.isAway(hand.id, now))) {
        hand.errand = undefined;
        continue;
      }
      await this.heed(hand, now);
      if (hand.errand && hand.errand.arrivesAt <= now) await this.arrive(hand, now);
      if (!hand.errand && hand.busyUntil <= now) await this.setOut(hand, now);
    }
  }

  /** Takes note of what calls this hand; on a break only of what presses. */
  private async heed(hand: Hand, now: EpochS): Promise<void> {
    const mine = (await this.night.calls()).filter(({ people }) => people.includes(hand.id));
    hand.hears = new Map(mine.map(({ alarmId }) => [alarmId, hand.hears.get(alarmId) ?? now]));
    for (const { alarmId, presses, isOver } of mine) {
      const waitsS = isOver ? OVER_WAITS_S : hand.busyUntil <= now ? REACH_S : PUT_DOWN_S;
      if ((now < hand.restsUntil && !presses) || now - hand.hears.get(alarmId)! < waitsS) continue;
      await this.doings.takeNote(hand, alarmId);
    }
  }

  private async setOut(hand: Hand, now: EpochS): Promise<void> {
    const plan = await this.night.plan();
    const mine = plan?.assignments.find(({ people, work }) => people.includes(hand.id) && !this.isTaken(work, hand));
    if (!mine) return;
    const walkS = this.night.walkS(hand.place, await this.placeOf(mine, hand));
    const goAt = later(fromIso(mine.startsAt), -walkS - MINUTE_S / 2);
    if (goAt > now) return;
    // Nobody sets out on the second: up to a minute and a half of finishing a sentence.
    const dallyS = Math.floor(90 * this.random.next() ** 2);
    hand.errand = { assignment: mine, arrivesAt: later(now, walkS + dallyS) };
    hand.walkedS += walkS;
  }

  /** A break that was begun is not begun again; a check that somebody else is on the way to is not walked to twice. */
  private isTaken(work: Assignment['work'], hand: Hand): boolean {
    if (work.kind === 'break') return hand.breaksBegun.has(work.breakId);
    return this.hands.some((other) => other !== hand && other.errand?.assignment.work.kind === 'check' && work.kind === 'check' && other.errand.assignment.work.pitId === work.pitId);
  }

  private async arrive(hand: Hand, now: EpochS): Promise<void> {
    const { assignment } = hand.errand!;
    hand.errand = undefined;
    hand.place = await this.placeOf(assignment, hand);
    const { work } = assignment;
    hand.acting = true;
    const lengthS = await this.doIt(hand, work, now).finally(() => (hand.acting = false));
    hand.busyUntil = later(now, lengthS);
    if (work.kind === 'break') hand.restsUntil = hand.busyUntil;
    else hand.workedS += lengthS;
  }

  private async doIt(hand: Hand, work: Assignment['work'], now: EpochS): Promise<number> {
    if (work.kind === 'check') return this.doings.check(hand, work.pitId, now);
    if (work.kind === 'break') {
      hand.breaksBegun.add(work.breakId);
      return this.doings.break(hand, work.breakId, now);
    }
    const task = (await this.night.tasks()).find(({ id }) => id === work.taskId);
    return task && !task.doneAt ? this.doings.task(hand, task, now) : 0;
  }

  private async placeOf({ work }: Assignment, hand: Hand): Promise<Place> {
    if (work.kind === 'check') return work.pitId;
    if (work.kind === 'break') return hand.place;
    const task = (await this.night.tasks()).find(({ id }) => id === work.taskId);
    return task?.kind === 'haul' ? 'wood' : (task?.pitId ?? 'wood');
  }
}
