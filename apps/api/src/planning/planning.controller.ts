import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Fairness } from './fairness.service.js';
import { Pins } from './pins.service.js';
import { PlanAnswers } from './plan-answers.service.js';
import { Roster } from './roster.service.js';

@Controller()
export class PlanningController {
  constructor(
    private readonly answers: PlanAnswers,
    private readonly pins: Pins,
    private readonly shares: Fairness,
    private readonly rosters: Roster,
  ) {}

  @Answers(routes.whyWork)
  why(@Input() input: RouteInput<Routes['whyWork']>, @By() actor: Actor) {
    return this.answers.why(actor, input);
  }

  @Answers(routes.whatIf)
  whatIf(@Input() input: RouteInput<Routes['whatIf']>, @By() actor: Actor) {
    return this.answers.whatIf(actor, input);
  }

  @Answers(routes.fairness)
  fairness(@By() actor: Actor) {
    return this.shares.view(actor);
  }

  @Answers(routes.roster)
  roster(@Input() input: RouteInput<Routes['roster']>, @By() actor: Actor) {
    return this.rosters.view(actor, input);
  }

  @Answers(routes.pinWork)
  pin(@Input() input: RouteInput<Routes['pinWork']>, @By() actor: Actor) {
    return this.pins.pin(actor, input);
  }
}
