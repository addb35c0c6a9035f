import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Handovers } from './handovers.service.js';

@Controller()
export class HandoversController {
  constructor(private readonly handovers: Handovers) {}

  @Answers(routes.signHandover)
  sign(@Input() input: RouteInput<Routes['signHandover']>, @By() actor: Actor) {
    return this.handovers.sign(actor, input);
  }

  @Answers(routes.handoverNow)
  now(@Input() input: RouteInput<Routes['handoverNow']>, @By() actor: Actor) {
    return this.handovers.now(actor, input);
  }

  @Answers(routes.handovers)
  last(@By() actor: Actor) {
    return this.handovers.last(actor);
  }
}
