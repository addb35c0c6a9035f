import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Pulls } from './pulls.service.js';
import { WoodyardViews } from './woodyard.view.js';

@Controller()
export class WoodyardController {
  constructor(
    private readonly pulls: Pulls,
    private readonly views: WoodyardViews,
  ) {}

  @Answers(routes.woodyard)
  woodyard(@By() actor: Actor) {
    return this.views.view(actor.yardId);
  }

  @Answers(routes.saveClimate)
  saveClimate(@Input() input: RouteInput<Routes['saveClimate']>, @By() actor: Actor) {
    return this.pulls.saveClimate(actor, input);
  }

  @Answers(routes.makePull)
  makePull(@Input() input: RouteInput<Routes['makePull']>, @By() actor: Actor) {
    return this.pulls.make(actor, input);
  }
}
