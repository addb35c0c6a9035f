import { Controller } from '@nestjs/common';
import { routes, type RouteInput, type Routes } from '@stokehold/domain/contract';
import { type Actor, Answers, By, Input } from '../platform/index.js';
import { Services } from './services.service.js';

@Controller()
export class ServicesController {
  constructor(private readonly services: Services) {}

  @Answers(routes.serviceCost)
  cost(@Input() input: RouteInput<Routes['serviceCost']>, @By() actor: Actor) {
    return this.services.cost(actor, input.serviceId);
  }
}
