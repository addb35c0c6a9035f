import { Controller } from '@nestjs/common';
import { type RouteInput, routes, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Checks } from './checks.service.js';

@Controller()
export class ChecksController {
  constructor(private readonly checks: Checks) {}

  @Answers(routes.recordCheck)
  record(@Input() input: RouteInput<Routes['recordCheck']>, @By() actor: Actor) {
    return this.checks.record(actor, input);
  }

  @Answers(routes.checks)
  ofPit(@Input() input: RouteInput<Routes['checks']>, @By() actor: Actor) {
    return this.checks.ofPit(actor, input);
  }
}
