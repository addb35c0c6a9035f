import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { fromIso } from '@stokehold/domain/quantity';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Services } from './services.service.js';

@Controller()
export class ServicesController {
  constructor(private readonly services: Services) {}

  @Answers(routes.serviceCost)
  cost(@Input() input: RouteInput<Routes['serviceCost']>, @By() actor: Actor) {
    return this.services.cost(actor, input.serviceId);
  }

  @Answers(routes.serviceCosts)
  costs(@Input() input: RouteInput<Routes['serviceCosts']>, @By() actor: Actor) {
    return this.services.costs(actor, fromIso(input.since));
  }

  @Answers(routes.priceCook)
  price(@Input() input: RouteInput<Routes['priceCook']>, @By() actor: Actor) {
    return this.services.priceCook(actor, input);
  }

  @Answers(routes.payRules)
  payRules(@By() actor: Actor) {
    return this.services.payRules(actor);
  }

  @Answers(routes.savePayRules)
  savePayRules(@Input() input: RouteInput<Routes['savePayRules']>, @By() actor: Actor) {
    return this.services.savePayRules(actor, input);
  }
}
