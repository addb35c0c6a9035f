import { Injectable } from '@nestjs/common';
import type { RouteInput, Routes, Supposition as Asked, WhatIfView, WhyView, Work } from '@stokehold/domain/contract';
import { fromIso, type PitId, type TaskId } from '@stokehold/domain/quantity';
import type { Supposition } from '@stokehold/scheduling/night';
import { DataSource } from 'typeorm';
import { type Actor, Clock, refused, Workers } from '../platform/index.js';
import { type NightNow, Nights, requireWork } from './night-now.js';
import { whatIfView, whyView } from './answer.view.js';
import { rulesBroken } from './plan.refusals.js';

/** Iterations for each copy of the night that an answer plans: a dozen copies are answered in a blink. */
const ITERATIONS = 120;

/** Answers about the plan. It asks copies of the night; nothing of them is kept. */
@Injectable()
export class PlanAnswers {
  constructor(
    private readonly nights: Nights,
    private readonly workers: Workers,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  async why({ yardId }: Actor, asked: RouteInput<Routes['whyWork']>): Promise<WhyView> {
    const night = await this.now(yardId);
    const work = workOf(asked);
    requireWork(night, work);
    const { problem, plan, seed } = night;
    const answer = await this.workers.run('why', { problem, plan, work, options: { seed, iterations: ITERATIONS } });
    return whyView(work, answer, night);
  }

  async whatIf({ yardId }: Actor, { what }: RouteInput<Routes['whatIf']>): Promise<WhatIfView> {
    const night = await this.now(yardId);
    const { problem, plan, seed } = night;
    const answer = await this.workers.run('whatIf', { problem, plan, what: supposition(what, night), options: { seed, iterations: ITERATIONS } });
    return answer.ok ? whatIfView(answer.value, night) : rulesBroken(answer.refusal);
  }

  private now(yardId: Actor['yardId']): Promise<NightNow> {
    return this.nights.now({ em: this.database.manager, yardId, now: this.clock.now(yardId) });
  }
}

function workOf({ kind, id, nth }: RouteInput<Routes['whyWork']>): Work {
  if (kind === 'check') return { kind, pitId: id as PitId, nth };
  return kind === 'task' ? { kind, taskId: id as TaskId } : { kind, breakId: id };
}

/** What is supposed, in the words of the planner; of what this night does not know there is nothing to suppose. */
function supposition(what: Asked, night: NightNow): Supposition {
  const { people } = night.problem;
  switch (what.code) {
    case 'person-less':
    case 'person-late':
      if (!people.some(({ id }) => id === what.personId)) refused('person-unknown', 'This person is not on the shift that runs now. Choose somebody who is.');
      return what.code === 'person-late' ? what : { ...what, fromAt: fromIso(what.fromAt) };
    case 'pit-more':
      if (!night.facts.pits.some(({ id }) => id === what.pitId)) refused('pit-unknown', 'This pit does not stand in this yard. Choose one from the yard plan.');
      return { ...what, lightAt: fromIso(what.lightAt) };
    case 'break-moved':
      if (!people.some(({ breaks }) => breaks.some(({ id }) => id === what.breakId))) refused('break-unknown', 'This break is not to come. Choose one from the night.');
      return { ...what, startsAt: fromIso(what.startsAt) };
    case 'work-given':
      requireWork(night, what.work);
      return { code: what.code, pin: { work: what.work, ...(what.people && { personIds: what.people }), ...(what.startsAt && { startsAt: fromIso(what.startsAt) }) } };
  }
}
