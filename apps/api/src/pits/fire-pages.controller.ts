import { Controller } from '@nestjs/common';
import { type RouteInput, routes, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { FirePages } from './fire-pages.service.js';

@Controller()
export class FirePagesController {
  constructor(private readonly pages: FirePages) {}

  @Answers(routes.firePage)
  page(@Input() input: RouteInput<Routes['firePage']>, @By() actor: Actor) {
    return this.pages.page(actor, input);
  }

  @Answers(routes.setLearnedBack)
  setBack(@Input() input: RouteInput<Routes['setLearnedBack']>, @By() actor: Actor) {
    return this.pages.setBack(actor, input);
  }
}
