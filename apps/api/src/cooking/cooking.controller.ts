import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { AfterPits } from './after-pits.js';
import { Cooking } from './cooking.service.js';

@Controller()
export class CookingController {
  constructor(private readonly cooking: Cooking, private readonly afterPits: AfterPits) {}

  @Answers(routes.cuts)
  cuts(@By() actor: Actor) {
    return this.cooking.cuts(actor);
  }

  @Answers(routes.saveCut)
  saveCut(@Input() input: RouteInput<Routes['saveCut']>, @By() actor: Actor) {
    return this.cooking.saveCut(actor, input);
  }

  @Answers(routes.foodLimits)
  limits(@By() actor: Actor) {
    return this.cooking.limits(actor);
  }

  @Answers(routes.saveFoodLimits)
  saveLimits(@Input() input: RouteInput<Routes['saveFoodLimits']>, @By() actor: Actor) {
    return this.cooking.saveLimits(actor, input);
  }

  @Answers(routes.recordFood)
  record(@Input() input: RouteInput<Routes['recordFood']>, @By() actor: Actor) {
    return this.cooking.record(actor, input);
  }

  @Answers(routes.cookCourse)
  course(@Input() input: RouteInput<Routes['cookCourse']>, @By() actor: Actor) {
    return this.cooking.course(actor, input);
  }

  @Answers(routes.afterPit)
  afterPit(@Input() input: RouteInput<Routes['afterPit']>, @By() actor: Actor) {
    return this.afterPits.of(actor, input);
  }

  @Answers(routes.cookWhatIf)
  whatIf(@Input() input: RouteInput<Routes['cookWhatIf']>, @By() actor: Actor) {
    return this.cooking.whatIf(actor, input);
  }
}
