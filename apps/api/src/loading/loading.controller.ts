import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Loading } from './loading.service.js';

@Controller()
export class LoadingController {
  constructor(private readonly loading: Loading) {}

  @Answers(routes.loading)
  view(@By() actor: Actor) {
    return this.loading.view(actor);
  }

  @Answers(routes.weighMove)
  weigh(@Input() input: RouteInput<Routes['weighMove']>, @By() actor: Actor) {
    return this.loading.weigh(actor, input);
  }

  @Answers(routes.supposeCook)
  suppose(@Input() input: RouteInput<Routes['supposeCook']>, @By() actor: Actor) {
    return this.loading.suppose(actor, input);
  }
}
