import { Injectable } from '@nestjs/common';
import type { Done, PinWork } from '@stokehold/domain/contract';
import { fromIso, toIso } from '@stokehold/domain/quantity';
import { type NightFacts, problemOfNight } from '@stokehold/scheduling/night';
import { hindrance, type Pin, type RoundProblem, validateRounds, workKey } from '@stokehold/scheduling/rounds';
import { type Actor, Commands, type Deed, Ids, refused, Workers } from '../platform/index.js';
import { SearchBudget } from './budget.js';
import { type NightNow, Nights, requireWork } from './night-now.js';
import { PinStore } from './pin.store.js';
import { type Rule, ruleBroken, ruleOfFaults, rulesBroken } from './plan.refusals.js';

/** Decisions by hand: who does a piece of work, when it begins. Only those with which the plan still passes its checker are kept. */
@Injectable()
export class Pins {
  constructor(
    private readonly commands: Commands,
    private readonly nights: Nights,
    private readonly store: PinStore,
    private readonly workers: Workers,
    private readonly budget: SearchBudget,
    private readonly ids: Ids,
  ) {}

  pin(actor: Actor, command: PinWork): Promise<Done> {
    return this.commands.run(actor, 'pin-work', command, async (deed) => {
      const night = await this.nights.now(deed);
      requireWork(night, command.work);
      const pin = pinOf(command);
      if (pin) await this.keep(deed, night, pin, actor);
      else await this.store.drop(deed.em, night.shift.id, command.work);
      deed.tell({ kind: 'work-pinned', ...(actor.person && { personId: actor.person.id }) });
      return { done: true };
    });
  }

  private async keep(deed: Deed, night: NightNow, pin: Pin, actor: Actor): Promise<void> {
    const problem = requireAllowed(night, pin);
    await this.requireHolds(night, problem, pin);
    await this.store.keep(deed.em, night.shift.id, pin, { id: this.ids.next(), at: deed.now, by: actor.person?.id ?? null });
  }

  /** The plan with the decision passes the checker, has a place for the work, and lets no fire pass latest safe that would not without it. */
  private async requireHolds({ problem: without, plan: before, seed }: NightNow, problem: RoundProblem, pin: Pin): Promise<void> {
    const wanted = { before, seed, iterations: this.budget.atOnce, untilSafe: this.budget.untilSafe, always: true };
    const planned = await this.workers.run('planNight', { ...wanted, problem });
    if (!planned.ok) return ruleBroken(ruleOfFaults(planned.faults));
    if (!planned.plan.assignments.some(({ work }) => workKey(work) === workKey(pin.work))) return ruleBroken(whyNoPlace(problem, pin, planned.plan));
    if (planned.plan.levels.unsafeS === 0) return;
    const free = await this.workers.run('planNight', { ...wanted, problem: without });
    if (free.ok && planned.plan.levels.unsafeS > free.plan.levels.unsafeS) ruleBroken('latest-safe', { lateS: planned.plan.levels.unsafeS - free.plan.levels.unsafeS });
  }
}

function pinOf({ work, people, startsAt }: PinWork): Pin | undefined {
  if (!people && !startsAt) return undefined;
  return { work, ...(people && { personIds: [...people].sort() }), ...(startsAt && { startsAt: fromIso(startsAt) }) };
}

/** The night with the decision, or the rule that is against it. */
function requireAllowed({ problem, facts }: NightNow, pin: Pin): RoundProblem {
  if (problem.frozen.some(({ work }) => workKey(work) === workKey(pin.work))) return ruleBroken('frozen');
  const stranger = pin.personIds?.find((id) => !problem.people.some((person) => person.id === id));
  if (stranger) return refused('person-unknown', 'This person is not on the shift that runs now. Choose somebody who is.', { personId: stranger });
  if (pin.startsAt !== undefined && pin.startsAt < problem.from) return ruleBroken('earliest', { earliestAt: toIso(problem.from) });
  const wanted = withPin(facts, pin);
  const valid = validateRounds({ ...problem, pins: [...problem.pins.filter(({ work }) => workKey(work) !== workKey(pin.work)), pin] });
  if (!valid.ok) return rulesBroken(valid.refusal);
  if (wanted.pins.some(({ work }) => workKey(work) === workKey(pin.work))) return wanted;
  return ruleBroken('absent', pin.personIds?.[0] ? { personId: pin.personIds[0] } : {});
}

const withPin = (facts: NightFacts, pin: Pin): RoundProblem =>
  problemOfNight({ ...facts, pins: [...(facts.pins ?? []).filter(({ work }) => workKey(work) !== workKey(pin.work)), pin] });

const RULES: { readonly [C in NonNullable<ReturnType<typeof hindrance>>['code']]: Rule } = {
  skill: 'skill', 'pinned-elsewhere': 'two-things-at-once', 'not-on-shift': 'shift', absent: 'absent', 'on-break': 'two-things-at-once', busy: 'two-things-at-once', 'too-far': 'walk',
};

function whyNoPlace(problem: RoundProblem, { work, personIds = [], startsAt }: Pin, plan: Parameters<typeof hindrance>[0]['plan']): Rule {
  if (startsAt === undefined) return 'no-place';
  const people = personIds.length > 0 ? personIds : problem.people.map(({ id }) => id);
  const found = people.flatMap((id) => hindrance({ problem, plan, work, at: startsAt }, id) ?? [])[0];
  return found ? RULES[found.code] : 'no-place';
}
